//! How far the Earth has turned.
//! Meeus 1998, chapter 12.

use super::centuries;
use crate::source::Source;

/// Source of the formula.
pub const SOURCE: Source =
    Source::second_hand("Meeus, Astronomical Algorithms", "1998", "equation 12.4");

/// Mean sidereal time at Greenwich at a Julian day of universal time, degrees from 0 to 360.
///
/// # Source
/// Meeus 1998, equation 12.4.
///
/// # Valid for
/// A second of time over the centuries round 2000; the nutation, at most a second, is left out.
///
/// # Example
/// ```
/// use stillground::rules::meeus_1998::earth::sidereal_time_deg;
/// // Meeus 1998, example 12.b: 1987 April 10, 19h21m00s UT.
/// assert!((sidereal_time_deg(2_446_896.306_25) - 128.737_873_4).abs() < 1e-6);
/// ```
pub fn sidereal_time_deg(julian_day: f64) -> f64 {
    let t = centuries(julian_day);
    (280.460_618_37 + 360.985_647_366_29 * (julian_day - 2_451_545.0) + 0.000_387_933 * t * t)
        .rem_euclid(360.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn example_12_a() {
        // 1987 April 10, 0h UT: 13h10m46.3668s.
        assert!(
            (sidereal_time_deg(2_446_895.5) - 15.0 * (13.0 + 10.0 / 60.0 + 46.366_8 / 3600.0))
                .abs()
                < 1e-6
        );
    }
}
