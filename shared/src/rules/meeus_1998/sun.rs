//! The sun's place and the equation of time.
//! Meeus 1998, chapters 25 and 28.

use super::{Position, centuries};
use crate::source::Source;

/// Source of the formulas.
pub const SOURCE: Source = Source::second_hand(
    "Meeus, Astronomical Algorithms",
    "1998",
    "chapters 25 (low accuracy) and 28",
);

/// The sun on a day, with what leads to the equation of time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sun {
    /// Apparent place.
    pub place: Position,
    /// How far a sundial is ahead of a clock that keeps mean time, minutes.
    pub equation_of_time_min: f64,
}

/// The sun at a Julian day.
///
/// # Source
/// Meeus 1998, equations 25.2 to 25.8 and 28.1.
///
/// # Valid for
/// 0.01 degrees in place and some three seconds in the equation of time, for the centuries round 2000. The day may be of
/// universal time: the minute or so to dynamical time turns the sun by a tenth of that.
///
/// # Example
/// ```
/// use stillground::rules::meeus_1998::sun::at;
/// // Meeus 1998, examples 25.a and 28.b: 1992 October 13, 0h.
/// let sun = at(2_448_908.5);
/// assert!((sun.place.right_ascension_deg - 198.38083).abs() < 0.0001);
/// assert!((sun.place.declination_deg + 7.78507).abs() < 0.0001);
/// // The examples' equation of time takes a finer sun; 0.01 degrees of place are 0.04 minutes.
/// assert!((sun.equation_of_time_min - 13.7109).abs() < 0.04);
/// ```
pub fn at(julian_day: f64) -> Sun {
    let t = centuries(julian_day);
    let mean_longitude = 280.466_46 + 36_000.769_83 * t + 0.000_303_2 * t * t;
    let anomaly = (357.529_11 + 35_999.050_29 * t - 0.000_153_7 * t * t).to_radians();
    let centre = (1.914_602 - 0.004_817 * t - 0.000_014 * t * t) * anomaly.sin()
        + (0.019_993 - 0.000_101 * t) * (2.0 * anomaly).sin()
        + 0.000_289 * (3.0 * anomaly).sin();
    let node = (125.04 - 1_934.136 * t).to_radians();
    let longitude = (mean_longitude + centre - 0.005_69 - 0.004_78 * node.sin()).to_radians();
    let mean_obliquity = 23.439_291_11 - 0.013_004_167 * t - 1.64e-7 * t * t + 5.04e-7 * t.powi(3);
    let obliquity = (mean_obliquity + 0.002_56 * node.cos()).to_radians();
    let right_ascension = (obliquity.cos() * longitude.sin())
        .atan2(longitude.cos())
        .to_degrees();
    let nutation_in_longitude = -0.004_78 * node.sin();
    let equation =
        mean_longitude - 0.005_718_3 - right_ascension + nutation_in_longitude * obliquity.cos();
    Sun {
        place: Position {
            right_ascension_deg: right_ascension.rem_euclid(360.0),
            declination_deg: (obliquity.sin() * longitude.sin()).asin().to_degrees(),
        },
        equation_of_time_min: 4.0 * ((equation + 180.0).rem_euclid(360.0) - 180.0),
    }
}

/// Julian day, in universal time, of local apparent noon on the day that begins at `midnight` (a Julian day of universal
/// time that ends in one half), at a longitude east of Greenwich: when the sun crosses the meridian.
///
/// # Source
/// Meeus 1998, chapter 28: noon by the sun is noon by the mean sun less the equation of time.
///
/// # Valid for
/// Some five seconds. Two rounds, since the equation changes by less than half a minute in a day.
pub fn noon(midnight: f64, longitude_deg: f64) -> f64 {
    let mean = midnight + 0.5 - longitude_deg / 360.0;
    let first = mean - at(mean).equation_of_time_min / 1440.0;
    mean - at(first).equation_of_time_min / 1440.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sun_crosses_the_meridian_at_noon() {
        for longitude in [-179.0, -75.0, 0.0, 10.5, 179.0] {
            for day in 0..40 {
                let noon = noon(2_461_041.5 + 9.0 * f64::from(day), longitude);
                let sidereal = super::super::earth::sidereal_time_deg(noon);
                let hour_angle = (sidereal + longitude - at(noon).place.right_ascension_deg
                    + 180.0)
                    .rem_euclid(360.0)
                    - 180.0;
                assert!(hour_angle.abs() < 0.01, "{longitude} {day}: {hour_angle}");
            }
        }
    }
}
