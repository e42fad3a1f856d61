//! Turbulence: its strength, its spectrum, the response of a small body and the peak of it.
//!
//! EN 1991-1-4:2005, 4.3 to 4.5, Annex B.1 and B.2.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{Frequency, Length, Velocity, hertz, metre, metre_per_second};

/// Where it comes from.
pub const SOURCE: Source = Source::second_hand("EN 1991-1-4", "2005", "4.4, Annex B.1 and B.2");

/// Intensity of turbulence at a height over ground of a roughness length, I_v = 1/ln(z/z₀).
///
/// # Source
/// EN 1991-1-4:2005, (4.7) with k_I and c_o of 1.
/// # Valid for
/// Heights above the terrain's least height; below it, take the value there.
pub fn intensity_ratio(height: Length, roughness: Length) -> f64 {
    1.0 / (metre::get(height) / metre::get(roughness)).ln()
}

/// Length of the eddies, L = 300 m (z/200 m)^(0.67 + 0.05 ln z₀).
///
/// # Source
/// EN 1991-1-4:2005, (B.1).
/// # Valid for
/// Heights to 200 m.
pub fn length_scale(height: Length, roughness: Length) -> Length {
    metre::new(300.0 * (metre::get(height) / 200.0).powf(0.67 + 0.05 * metre::get(roughness).ln()))
}

/// Spectral density S_L = 6.8 f_L/(1 + 10.2 f_L)^(5/3) at f_L = nL/v: n S/σ².
///
/// # Source
/// EN 1991-1-4:2005, (B.2).
/// # Valid for
/// The along-wind component.
pub fn spectrum_ratio(eddies: f64) -> f64 {
    6.8 * eddies / (1.0 + 10.2 * eddies).powf(5.0 / 3.0)
}

/// The dimensionless frequency f_L = n L/v.
///
/// # Source
/// EN 1991-1-4:2005, (B.2).
/// # Valid for
/// A mean speed above nought.
pub fn eddies_ratio(frequency: Frequency, length: Length, speed: Velocity) -> f64 {
    hertz::get(frequency) * metre::get(length) / metre_per_second::get(speed)
}

/// Share of the variance above a dimensionless frequency: (1 + 10.2 f_L)^(−2/3).
///
/// # Source
/// Derived: the integral of (B.2) over d ln n from f_L on; one at nought.
/// # Valid for
/// As the spectrum.
pub fn share_above_ratio(eddies: f64) -> f64 {
    (1.0 + 10.2 * eddies).powf(-2.0 / 3.0)
}

/// Share of the variance that is left where each frequency counts by a weight: Σ w(f) ΔS over steps of a twelfth of an
/// octave, to eight cycles in the window; quicker eddies count whole.
///
/// # Source
/// Derived: the spectrum of (B.2) cut into pieces whose shares are exact.
/// # Valid for
/// Weights that tend to nought for slow eddies and to one for quick ones.
pub fn share_weighed_ratio(
    eddies_per_hertz: f64,
    window_s: f64,
    weight: impl Fn(f64) -> f64,
) -> f64 {
    const PIECES: i32 = 204;
    const MOST_CYCLES: f64 = 8.0;
    let cycles = |piece: i32| MOST_CYCLES * 2f64.powf(-f64::from(piece) / 12.0);
    let above = |cycles: f64| share_above_ratio(eddies_per_hertz * cycles / window_s);
    let mut quicker = above(MOST_CYCLES);
    let mut sum = quicker;
    for piece in 1..=PIECES {
        let slower = above(cycles(piece));
        sum += weight((cycles(piece) * cycles(piece - 1)).sqrt()) * (slower - quicker);
        quicker = slower;
    }
    sum
}

/// Peak above the mean over the mean, of a force that goes with the square of the speed, from what the linear rule gives
/// for it, 2 k_p I_v √(B² + R²): with x half of that, (1 + x)² − 1.
///
/// # Source
/// Derived from the drag's square; EN 1991-1-4 leaves the square out.
/// # Valid for
/// A body that follows the gust.
pub fn gust_ratio(linear_ratio: f64) -> f64 {
    let x = 0.5 * linear_ratio;
    2.0 * x + x * x
}

/// Resonant response factor R² = π²/(2δ) S_L for a body so small that the gust takes it whole.
///
/// # Source
/// EN 1991-1-4:2005, (B.6) with admittances of 1.
/// # Valid for
/// Light damping; bodies small against the eddies.
pub fn resonance_ratio(log_decrement_ratio: f64, spectrum_ratio: f64) -> f64 {
    PI * PI / (2.0 * log_decrement_ratio) * spectrum_ratio
}

/// Peak factor k_p = √(2 ln νT) + 0.6/√(2 ln νT), not below 3.
///
/// # Source
/// EN 1991-1-4:2005, (B.4), T = 600 s.
/// # Valid for
/// Gaussian response.
pub fn peak_factor(up_crossing: Frequency) -> f64 {
    let root = (2.0 * (hertz::get(up_crossing).max(0.08) * 600.0).ln()).sqrt();
    (root + 0.6 / root).max(3.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis: f_L 9.89 gives 0.0302 (Steel Buildings in Europe, MSB03 App. A); I_v 0.1887 at 10 m over 0.05 m.
    #[test]
    fn the_spectrum_and_the_intensity_have_their_known_values() {
        assert!((spectrum_ratio(9.89) - 0.0302).abs() < 0.0002);
        assert!((intensity_ratio(metre::new(10.0), metre::new(0.05)) - 0.1887).abs() < 0.0001);
    }

    /// Basis, computed: in light wind near the ground the square makes a gust 1.15 to 1.49 times the linear one. Here for
    /// intensities of 0.1 to 0.29 and peak factors of 3 to 3.4.
    #[test]
    fn a_gust_has_the_drag_s_square() {
        for (intensity, peak, expected) in [(0.10, 3.0, 1.15), (0.29, 3.4, 1.49)] {
            let linear = 2.0 * peak * intensity;
            let ratio = gust_ratio(linear) / linear;
            assert!((ratio - expected).abs() < 0.01, "{ratio}");
        }
    }

    /// Computed apart by a sum over 400 000 frequencies: the slow part's rms with a guider that takes out the mean of the
    /// interval before, over a sharp cut at a quarter of its rate. The basis' 12 to 27 % is for the wind as a whole, with the
    /// modes' resonance, which neither takes out.
    #[test]
    fn a_guider_leaves_more_than_a_sharp_cut() {
        use crate::rules::mechanics::guider;
        for (per_hertz, window, expected) in [
            (20.0, 4.0, 1.566),
            (5.0, 2.0, 1.515),
            (2.0, 4.0, 1.339),
            (1.0, 5.0, 1.225),
        ] {
            let guided = share_weighed_ratio(per_hertz, window, guider::left_ratio);
            let cut = share_above_ratio(per_hertz * 0.25 / window);
            let ratio = (guided / cut).sqrt();
            assert!(
                (ratio / expected - 1.0).abs() < 0.01,
                "{per_hertz} {window}: {ratio}"
            );
        }
    }

    #[test]
    fn a_weight_of_one_leaves_all_of_it() {
        let all = share_weighed_ratio(10.0, 2.0, |_| 1.0);
        assert!((all - 1.0).abs() < 5e-3, "{all}");
    }

    #[test]
    fn the_share_above_is_the_integral_of_the_spectrum() {
        let (mut sum, n) = (0.0, 200_000);
        let (from, to) = (0.7f64.ln(), 1e6f64.ln());
        for i in 0..n {
            let x = from + (to - from) * (f64::from(i) + 0.5) / f64::from(n);
            sum += spectrum_ratio(x.exp()) * (to - from) / f64::from(n);
        }
        assert!((sum - share_above_ratio(0.7)).abs() < 1e-3, "{sum}");
        assert_eq!(share_above_ratio(0.0), 1.0);
    }
}
