//! Force of one foot on the floor, from heel strike to toe off.
//!
//! Li et al. 2010, J. Sound Vib.: five sine terms over the time of contact.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{Frequency, Time, hertz, second};

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory(
    "Li et al., J. Sound Vib.",
    "2010",
    "step load as five sine terms",
);
/// Paces for which the coefficients were fitted, Hz.
pub const FITTED_HZ: (f64, f64) = (1.6, 2.32);

/// Time for which one foot stands, T_e = 1/(0.76 f).
///
/// # Source
/// Li et al. 2010.
/// # Valid for
/// Walking, 1.6 to 2.32 steps a second.
pub fn contact(pace: Frequency) -> Time {
    second::new(1.0 / (0.76 * hertz::get(pace)))
}

/// The five coefficients A₁ to A₅ at a pace; outside the fitted paces those of the nearest.
///
/// # Source
/// Li et al. 2010; the shape of the step outside the fitted range is a judgement.
/// # Valid for
/// Walking, 1.6 to 2.32 steps a second.
pub fn coefficients(pace: Frequency) -> [f64; 5] {
    let f = hertz::get(pace).clamp(FITTED_HZ.0, FITTED_HZ.1);
    [
        1.211 - 0.0698 * f,
        0.1052 * f - 0.1284,
        0.3002 * f - 0.1534,
        0.0416 * f - 0.0288,
        0.0608 - 0.0275 * f,
    ]
}

/// Force over weight at a time after heel strike; nought outside the contact.
///
/// # Source
/// Li et al. 2010: F/G = Σ Aₙ sin(nπt/T_e).
/// # Valid for
/// Walking, 1.6 to 2.32 steps a second.
pub fn force_ratio(pace: Frequency, after: Time) -> f64 {
    let phase: f64 = (after / contact(pace)).value;
    if !(0.0..=1.0).contains(&phase) {
        return 0.0;
    }
    coefficients(pace)
        .iter()
        .zip(1u8..)
        .map(|(a, n)| a * (f64::from(n) * PI * phase).sin())
        .sum()
}

/// Mean of the whole walk over weight, which mechanics wants to be one: f ∫F/G dt.
///
/// # Source
/// Derived from the terms: only the odd ones have a mean, 2/(nπ).
/// # Valid for
/// As the terms.
pub fn mean_ratio(pace: Frequency) -> f64 {
    let [a1, _, a3, _, a5] = coefficients(pace);
    2.0 / PI * (a1 + a3 / 3.0 + a5 / 5.0) / 0.76
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of this project's basis, computed there from the same coefficients: 1.057, 1.034, 0.650, 0.777, 0.986, 0.536.
    #[test]
    fn a_step_has_two_humps() {
        let pace = hertz::new(2.0);
        for (t, expected) in [
            (0.1, 1.057),
            (0.2, 1.034),
            (0.3, 0.650),
            (0.4, 0.777),
            (0.5, 0.986),
            (0.6, 0.536),
        ] {
            assert!(
                (force_ratio(pace, second::new(t)) - expected).abs() < 0.001,
                "{t}"
            );
        }
        assert!((mean_ratio(pace) - 1.023).abs() < 0.001);
        assert_eq!(force_ratio(pace, second::new(0.7)), 0.0);
    }
}
