//! From the sky of a date to a bearing and a height above the horizon.
//! Meeus 1998, chapter 13.

use super::Position;
use crate::source::Source;

/// Source of the formulas.
pub const SOURCE: Source = Source::second_hand(
    "Meeus, Astronomical Algorithms",
    "1998",
    "equations 13.5 and 13.6",
);

/// A direction: clockwise from true north, and above the horizon, degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Direction {
    /// Clockwise from true north, from −180 to 180.
    pub bearing_deg: f64,
    /// Above the horizon.
    pub altitude_deg: f64,
}

/// Where a body is seen from a latitude when so much sidereal time has passed at the place, in degrees.
///
/// # Source
/// Meeus 1998, equations 13.5 and 13.6, with the bearing counted from north.
///
/// # Valid for
/// A body far away; refraction lifts it by half a degree at the horizon and less above, and does not turn it.
///
/// # Example
/// ```
/// use stillground::rules::meeus_1998::{Position, horizon::seen};
/// // Meeus 1998, example 13.b: Venus from Washington, hour angle 64.352133°.
/// let venus = Position { right_ascension_deg: 0.0, declination_deg: -6.719892 };
/// let seen = seen(venus, 64.352133, 38.921389);
/// assert!((seen.bearing_deg - (68.0337 - 180.0)).abs() < 0.0005 && (seen.altitude_deg - 15.1249).abs() < 0.0005);
/// ```
pub fn seen(body: Position, local_sidereal_time_deg: f64, latitude_deg: f64) -> Direction {
    let hour = (local_sidereal_time_deg - body.right_ascension_deg).to_radians();
    let (sin_latitude, cos_latitude) = latitude_deg.to_radians().sin_cos();
    let (sin_declination, cos_declination) = body.declination_deg.to_radians().sin_cos();
    let east = -cos_declination * hour.sin();
    let north = cos_latitude * sin_declination - sin_latitude * cos_declination * hour.cos();
    let up = sin_latitude * sin_declination + cos_latitude * cos_declination * hour.cos();
    Direction {
        bearing_deg: east.atan2(north).to_degrees(),
        altitude_deg: up.atan2(east.hypot(north)).to_degrees(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_star_on_the_pole_stands_in_the_north_as_high_as_the_latitude() {
        let pole = Position {
            right_ascension_deg: 77.0,
            declination_deg: 90.0,
        };
        let seen = seen(pole, 12.0, 52.0);
        assert!(seen.bearing_deg.abs() < 1e-9 && (seen.altitude_deg - 52.0).abs() < 1e-9);
    }
}
