//! Width of a star that moves.
//!
//! Variances add: a Gaussian of rms σ is 2 √(2 ln 2) σ = 2.355 σ wide at half its height.

use std::f64::consts::PI;

use crate::source::Source;

/// Where it comes from.
pub const SOURCE: Source = Source::derived(
    "variances of independent movements add; full width at half maximum is 2.355 rms of a Gaussian",
);
/// Full width at half maximum over rms of a Gaussian, 2 √(2 ln 2).
pub const FWHM_PER_RMS_RATIO: f64 = 2.354_820_045;

/// Width of the star with a movement of rms σ along one axis, √(w² + (2.355 σ)²).
///
/// # Source
/// Mechanics; variances add.
/// # Valid for
/// Widths; the shape of a star that swings is not a Gaussian.
pub fn grown_arcsec(seeing_arcsec: f64, rms_arcsec: f64) -> f64 {
    seeing_arcsec.hypot(FWHM_PER_RMS_RATIO * rms_arcsec)
}

/// Growth of the round width √(w_x w_y) by a swing of amplitude A along one axis, (1 + (2.355 A)²/(2 w²))^¼ − 1.
///
/// # Source
/// Derived from the line above; a swing of amplitude A has an rms of A/√2.
/// # Valid for
/// A steady swing through a long exposure, A up to a third of the width; a fitted star grows by a twentieth of that more.
pub fn growth_of_swing_ratio(seeing_arcsec: f64, amplitude_arcsec: f64) -> f64 {
    let square = (FWHM_PER_RMS_RATIO * amplitude_arcsec / seeing_arcsec).powi(2) / 2.0;
    (1.0 + square).powf(0.25) - 1.0
}

/// Amplitude along one axis that widens a star by a share of its round width: √2 w √((1 + s)⁴ − 1)/2.355.
///
/// # Source
/// [`growth_of_swing_ratio`], turned round.
/// # Valid for
/// As above.
pub fn swing_for_growth_arcsec(seeing_arcsec: f64, growth_ratio: f64) -> f64 {
    2f64.sqrt() * seeing_arcsec * ((1.0 + growth_ratio).powi(4) - 1.0).sqrt() / FWHM_PER_RMS_RATIO
}

/// Share of a swing's rms that blurs one exposure: √(1 − sinc²(f t)).
///
/// # Source
/// Derived: variance within a window of random phase.
/// # Valid for
/// A steady swing of one frequency.
pub fn blur_ratio(frequency_hz: f64, exposure_s: f64) -> f64 {
    let x = PI * frequency_hz * exposure_s;
    let sinc = if x.abs() < 1e-9 { 1.0 } else { x.sin() / x };
    (1.0 - sinc * sinc).max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed apart: 0.2755 widths all through widen the axis by a tenth by plain variance, which is 4.9 % of the round
    /// width; by images 5.2 %. 10 Hz in 10 ms blurs 0.180, in 20 ms 0.353.
    #[test]
    fn a_swing_a_growth_and_a_short_frame() {
        assert!((growth_of_swing_ratio(1.0, 0.2755) - 0.0488).abs() < 0.0002);
        assert!((growth_of_swing_ratio(1.0, 0.2755) / 0.052 - 1.0).abs() < 0.1);
        for growth in [0.001, 0.05, 0.3] {
            let swing = swing_for_growth_arcsec(2.0, growth);
            assert!((growth_of_swing_ratio(2.0, swing) / growth - 1.0).abs() < 1e-9);
        }
        assert!((swing_for_growth_arcsec(2.0, 0.05) - 0.5576).abs() < 0.0005);
        assert!((grown_arcsec(2.0, 0.389) - 2.2).abs() < 0.001);
        assert!((blur_ratio(10.0, 0.010) - 0.180).abs() < 0.001);
        assert!((blur_ratio(10.0, 0.020) - 0.353).abs() < 0.001);
        assert!((blur_ratio(15.0, 0.010) - 0.268).abs() < 0.001);
    }
}
