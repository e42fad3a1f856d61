//! Angles on the sensor and at the eye.
//!
//! Geometrical optics; Rayleigh 1879 for the limit of an aperture.

use crate::source::Source;
use crate::units::{ARCSEC_PER_RADIAN, Length, metre};

/// Where it comes from.
pub const SOURCE: Source =
    Source::derived("an angle at the objective is a length at the focus: 206 265 p/f");
/// Where the limit of an aperture comes from.
pub const RAYLEIGH_SOURCE: Source =
    Source::derived("first zero of the diffraction disc of a round aperture, 1.22 λ/D, at 550 nm");
/// Wavelength at which an aperture's limit is told, m.
pub const WAVELENGTH_M: f64 = 550e-9;

/// Seconds of arc on one pixel, 206 265 p/f.
///
/// # Source
/// Geometrical optics.
/// # Valid for
/// Small angles.
pub fn arcsec_per_pixel(pixel: Length, focal_length: Length) -> f64 {
    ARCSEC_PER_RADIAN * metre::get(pixel) / metre::get(focal_length)
}

/// Limit of a round aperture in seconds of arc, 1.22 λ/D.
///
/// # Source
/// Rayleigh 1879, criterion of resolution.
/// # Valid for
/// A free, round aperture in green light.
pub fn rayleigh_arcsec(aperture: Length) -> f64 {
    ARCSEC_PER_RADIAN * 1.22 * WAVELENGTH_M / metre::get(aperture)
}

/// Width at half height of the disc that a round aperture shows, in seconds of arc, 1.029 λ/D.
///
/// # Source
/// The Airy pattern (2 J₁(x)/x)² is a half at x = 1.6163; twice that over π.
/// # Valid for
/// A free, round aperture in green light.
pub fn disc_arcsec(aperture: Length) -> f64 {
    ARCSEC_PER_RADIAN * 2.0 * 1.616_34 / std::f64::consts::PI * WAVELENGTH_M / metre::get(aperture)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{micrometre, millimetre};

    /// Basis, computed: 3.76 µm at 1000 mm is 0.776 arcsec; 2.9 µm at 2000 mm 0.299; 200 mm resolve 0.69 arcsec.
    #[test]
    fn pixels_and_apertures_have_their_angles() {
        assert!(
            (arcsec_per_pixel(micrometre::new(3.76), millimetre::new(1000.0)) - 0.776).abs()
                < 0.001
        );
        assert!(
            (arcsec_per_pixel(micrometre::new(2.9), millimetre::new(2000.0)) - 0.299).abs() < 0.001
        );
        assert!((rayleigh_arcsec(millimetre::new(200.0)) - 0.692).abs() < 0.001);
        // Computed: 1.029 of 550 nm over 200 mm.
        assert!((disc_arcsec(millimetre::new(200.0)) - 0.5837).abs() < 0.0005);
    }
}
