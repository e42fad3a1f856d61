//! The year's temperature as one wave: how long the frost lasts for a mean and a freezing index.
//!
//! With the daily mean as T(t) = T̄ − A cos(2πt/365), it is below nought for t within ±φ of midwinter, cos φ = T̄/A, and
//! the freezing index is I = (365/π)(A sin φ − T̄ φ). The amplitude A that gives the stated index is found by bisection.

use std::f64::consts::PI;

use crate::source::Source;

/// Source of the season.
pub const SOURCE: Source = Source::derived("the year's temperature as one wave");

/// Days of a year.
const YEAR_D: f64 = 365.0;
/// Amplitudes between the seasons reach about 32 K on the coldest continent; this is looked for at most.
const MOST_AMPLITUDE_K: f64 = 200.0;
/// Halvings of the amplitude's interval.
const STEPS: usize = 60;

/// The cold part of the year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Season {
    /// Days with a mean below freezing.
    pub days: f64,
    /// Amplitude of the yearly wave, K.
    pub amplitude_k: f64,
}

/// Finds the season below freezing.
///
/// # Source
/// Derived from a yearly wave; see the module's text.
///
/// # Valid for
/// A freezing index that is not negative. In a mean far below freezing the whole year may freeze.
pub fn season(mean_c: f64, freezing_index_k_d: f64) -> Season {
    let (mut low, mut high) = (0.0, MOST_AMPLITUDE_K);
    for _ in 0..STEPS {
        let amplitude = 0.5 * (low + high);
        if index(mean_c, amplitude) < freezing_index_k_d {
            low = amplitude;
        } else {
            high = amplitude;
        }
    }
    Season {
        days: YEAR_D * half_angle(mean_c, high) / PI,
        amplitude_k: high,
    }
}

/// Freezing index of a yearly wave, K d: I = (365/π)(A sin φ − T̄ φ).
///
/// # Source
/// Derived from a yearly wave; see the module's text.
///
/// # Valid for
/// An amplitude that is not negative.
pub fn index(mean_c: f64, amplitude_k: f64) -> f64 {
    let phi = half_angle(mean_c, amplitude_k);
    YEAR_D / PI * (amplitude_k * phi.sin() - mean_c * phi)
}

/// Half of the cold season as an angle of the year, radians.
fn half_angle(mean_c: f64, amplitude_k: f64) -> f64 {
    if amplitude_k <= 0.0 {
        return if mean_c < 0.0 { PI } else { 0.0 };
    }
    (mean_c / amplitude_k).clamp(-1.0, 1.0).acos()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mean_of_nought_freezes_half_the_year() {
        let season = season(0.0, 1000.0);
        assert!((season.days - 182.5).abs() < 1e-6);
        // A 365/π = 1000.
        assert!((season.amplitude_k - 1000.0 * PI / 365.0).abs() < 1e-6);
    }

    #[test]
    fn the_amplitude_found_gives_the_index_back() {
        for (mean, asked) in [(9.0, 200.0), (3.0, 1400.0), (-5.0, 3000.0), (25.0, 5.0)] {
            let found = index(mean, season(mean, asked).amplitude_k);
            assert!(
                (found - asked).abs() < 1e-6 * asked,
                "{mean}: {found} against {asked}"
            );
        }
    }
}
