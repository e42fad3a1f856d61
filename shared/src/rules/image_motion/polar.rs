//! What a leaning polar axis costs.
//!
//! Spherical trigonometry: the sky turns 15.041 arcsec in a second.

use crate::source::Source;
use crate::units::ARCSEC_PER_RADIAN;

/// Where it comes from.
pub const SOURCE: Source = Source::derived(
    "drift in declination is the sky's rate, 15.041 arcsec/s, times the axis's error",
);
/// Rate of the sky, arcsec/s.
pub const SKY_ARCSEC_S: f64 = 15.041;

/// Largest drift in declination in arcsec a minute for an error of the axis in arcmin.
///
/// # Source
/// Geometry of the sphere.
/// # Valid for
/// Small errors; a star in the worst direction.
pub fn drift_arcsec_per_min(error_arcmin: f64) -> f64 {
    60.0 * SKY_ARCSEC_S * error_arcmin * 60.0 / ARCSEC_PER_RADIAN
}

/// Lean in arcsec of a base one side of which moves by so much more than the other.
///
/// # Source
/// Geometry: Δ/b.
/// # Valid for
/// Small leans.
pub fn lean_arcsec(difference_m: f64, base_m: f64) -> f64 {
    ARCSEC_PER_RADIAN * difference_m / base_m
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed: 1 arcmin drifts 0.2625 arcsec a minute; 0.1 mm across a metre leans 20.6 arcsec.
    #[test]
    fn a_leaning_axis_drifts() {
        assert!((drift_arcsec_per_min(1.0) - 0.2625).abs() < 0.0001);
        assert!((lean_arcsec(0.1e-3, 1.0) - 20.63).abs() < 0.01);
    }
}
