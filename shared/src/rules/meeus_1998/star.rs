//! Where a star of the catalogue stands after years of precession; the pole star's catalogue entry.
//! Meeus 1998, chapter 21.

use super::{Position, centuries};
use crate::source::Source;

/// Source of the precession.
pub const SOURCE: Source = Source::second_hand(
    "Meeus, Astronomical Algorithms",
    "1998",
    "equations 21.3 and 21.4",
);

/// A star of a catalogue for the equinox of 2000.0, with its own motion in milliarcseconds a year (in right ascension
/// as an arc on the sky).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Star {
    /// Place at 2000.0.
    pub place: Position,
    /// Own motion towards the east.
    pub east_mas_a: f64,
    /// Own motion towards the north.
    pub north_mas_a: f64,
}

/// The pole star, Hipparcos 11767.
pub const POLARIS: Star = Star {
    place: Position {
        right_ascension_deg: 37.954_560_67,
        declination_deg: 89.264_108_97,
    },
    east_mas_a: 44.48,
    north_mas_a: -11.85,
};

const MAS_PER_DEGREE: f64 = 3_600_000.0;

/// A star's mean place at a Julian day.
///
/// # Source
/// Meeus 1998, equations 21.3 and 21.4, after its own motion.
///
/// # Valid for
/// The centuries round 2000. Aberration and nutation, together at most 30 seconds of arc, are left out.
///
/// # Example
/// ```
/// use stillground::rules::meeus_1998::star::{POLARIS, mean_place};
/// // Meeus 1998, chapter 21: the pole star comes within 27'09" of the pole in March 2102; what is left out, 30" at most.
/// let place = mean_place(&POLARIS, 2_488_865.0);
/// let beyond = 90.0 - place.declination_deg - (27.0 + 9.0 / 60.0) / 60.0;
/// assert!(beyond.abs() < 30.0 / 3600.0);
/// ```
pub fn mean_place(star: &Star, julian_day: f64) -> Position {
    let t = centuries(julian_day);
    let years = 100.0 * t;
    let declination =
        (star.place.declination_deg + years * star.north_mas_a / MAS_PER_DEGREE).to_radians();
    let eastward =
        years * star.east_mas_a / MAS_PER_DEGREE / star.place.declination_deg.to_radians().cos();
    let angle = |one: f64, two: f64, three: f64| {
        ((one * t + two * t * t + three * t.powi(3)) / 3600.0).to_radians()
    };
    let zeta = angle(2_306.218_1, 0.301_88, 0.017_998);
    let z = angle(2_306.218_1, 1.094_68, 0.018_203);
    let theta = angle(2_004.310_9, -0.426_65, -0.041_833);
    let turned = (star.place.right_ascension_deg + eastward).to_radians() + zeta;
    let a = declination.cos() * turned.sin();
    let b = theta.cos() * declination.cos() * turned.cos() - theta.sin() * declination.sin();
    let c = theta.sin() * declination.cos() * turned.cos() + theta.cos() * declination.sin();
    Position {
        right_ascension_deg: (a.atan2(b) + z).to_degrees().rem_euclid(360.0),
        // Near the pole the arc sine of c would lose digits; the distance from the axis keeps them.
        declination_deg: c.atan2(a.hypot(b)).to_degrees(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn example_21_b() {
        // θ Persei, 2028 November 13.19: 2h46m11.331s, +49°20'54.54".
        let star = Star {
            place: Position {
                right_ascension_deg: 15.0 * (2.0 + 44.0 / 60.0 + 11.986 / 3600.0),
                declination_deg: 49.0 + 13.0 / 60.0 + 42.48 / 3600.0,
            },
            east_mas_a: 15_000.0 * 0.034_25 * (49.228_47_f64).to_radians().cos(),
            north_mas_a: -89.5,
        };
        let place = mean_place(&star, 2_462_088.69);
        assert!(
            (place.right_ascension_deg - 41.547_214).abs() < 1e-5,
            "{place:?}"
        );
        assert!(
            (place.declination_deg - 49.348_483).abs() < 1e-5,
            "{place:?}"
        );
    }
}
