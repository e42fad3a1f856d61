//! Turbulence: its strength, its spectrum, the response of a small body and the peak of it.
//!
//! EN 1991-1-4:2005, 4.3 to 4.5, Annex B.1 and B.2.

use std::f64::consts::PI;

use crate::source::{Source, Standing};
use crate::units::{Frequency, Length, Velocity, hertz, metre, metre_per_second};

/// Where it comes from.
pub const SOURCE: Source = Source::new(
    "EN 1991-1-4",
    "2005",
    "4.4, Annex B.1 and B.2",
    Standing::SecondHand,
);

/// Intensity of turbulence at a height over ground of a roughness length, I_v = 1/ln(z/z₀).
///
/// # Source
/// EN 1991-1-4:2005, (4.7) with k_I and c_o of 1.
/// # Valid for
/// Heights above the terrain's least height; below it, take the value there.
#[must_use]
pub fn intensity_ratio(height: Length, roughness: Length) -> f64 {
    1.0 / (metre::get(height) / metre::get(roughness)).ln()
}

/// Length of the eddies, L = 300 m (z/200 m)^(0.67 + 0.05 ln z₀).
///
/// # Source
/// EN 1991-1-4:2005, (B.1).
/// # Valid for
/// Heights to 200 m.
#[must_use]
pub fn length_scale(height: Length, roughness: Length) -> Length {
    metre::new(300.0 * (metre::get(height) / 200.0).powf(0.67 + 0.05 * metre::get(roughness).ln()))
}

/// Spectral density S_L = 6.8 f_L/(1 + 10.2 f_L)^(5/3) at f_L = nL/v: n S/σ².
///
/// # Source
/// EN 1991-1-4:2005, (B.2).
/// # Valid for
/// The along-wind component.
#[must_use]
pub fn spectrum_ratio(eddies: f64) -> f64 {
    6.8 * eddies / (1.0 + 10.2 * eddies).powf(5.0 / 3.0)
}

/// The dimensionless frequency f_L = n L/v.
///
/// # Source
/// EN 1991-1-4:2005, (B.2).
/// # Valid for
/// A mean speed above nought.
#[must_use]
pub fn eddies_ratio(frequency: Frequency, length: Length, speed: Velocity) -> f64 {
    hertz::get(frequency) * metre::get(length) / metre_per_second::get(speed)
}

/// Share of the variance above a dimensionless frequency: (1 + 10.2 f_L)^(−2/3).
///
/// # Source
/// Derived: the integral of (B.2) over d ln n from f_L on; one at nought.
/// # Valid for
/// As the spectrum.
#[must_use]
pub fn share_above_ratio(eddies: f64) -> f64 {
    (1.0 + 10.2 * eddies).powf(-2.0 / 3.0)
}

/// Resonant response factor R² = π²/(2δ) S_L for a body so small that the gust takes it whole.
///
/// # Source
/// EN 1991-1-4:2005, (B.6) with admittances of 1.
/// # Valid for
/// Light damping; bodies small against the eddies.
#[must_use]
pub fn resonance_ratio(log_decrement_ratio: f64, spectrum_ratio: f64) -> f64 {
    PI * PI / (2.0 * log_decrement_ratio) * spectrum_ratio
}

/// Peak factor k_p = √(2 ln νT) + 0.6/√(2 ln νT), not below 3.
///
/// # Source
/// EN 1991-1-4:2005, (B.4), T = 600 s.
/// # Valid for
/// Gaussian response.
#[must_use]
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
