//! Meeus, Astronomical Algorithms, second edition, 1998: the sun and the pole star, as closely as a builder needs them.

pub mod earth;
pub mod horizon;
pub mod star;
pub mod sun;

/// Centuries of 36 525 days since 2000-01-01, noon, of a Julian day.
///
/// # Source
/// Meeus 1998, equation 22.1.
pub fn centuries(julian_day: f64) -> f64 {
    (julian_day - 2_451_545.0) / 36_525.0
}

/// Where a body stands in the sky of a date: right ascension and declination, degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    /// Right ascension.
    pub right_ascension_deg: f64,
    /// Declination.
    pub declination_deg: f64,
}
