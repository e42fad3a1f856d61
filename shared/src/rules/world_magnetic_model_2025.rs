//! The World Magnetic Model 2025: which way a compass points, anywhere, from 2025.0 to 2030.0.
//! World Magnetic Model 2025, technical report (DOI 10.25923/prbc-s316), section 1.2; coefficient file of 13 November 2024.
//!
//! # Source
//! NOAA NCEI and British Geological Survey, The US/UK World Magnetic Model for 2025–2030. `data/wmm_2025.cof` is the
//! published coefficient file as it was given out; it is in the public domain. The equations are those of the report,
//! quoted by open implementations of it.

mod geodetic;
mod harmonics;

use crate::source::Source;
use geodetic::Geocentric;
use harmonics::{DEGREE, Legendre};

/// Where the model comes from.
pub const SOURCE: Source = Source::second_hand(
    "World Magnetic Model",
    "2025",
    "section 1.2, equations 4 to 19",
);
/// Where its doubt and its blackout zones come from.
pub const UNCERTAINTY: Source =
    Source::second_hand("World Magnetic Model", "2025", "sections 1.8 and 3.4");

/// First year for which the model is valid.
pub const FIRST_YEAR: f64 = 2025.0;
/// End of its validity.
pub const LAST_YEAR: f64 = 2030.0;
/// Horizontal field, nT, below which the model is not to be used for a compass: the blackout zones round the poles.
pub const BLACKOUT_NT: f64 = 2000.0;
/// Horizontal field, nT, below which a compass has to be used with caution.
pub const CAUTION_NT: f64 = 6000.0;
/// Beyond this latitude east and north have no meaning for a builder.
const LAST_LATITUDE_DEG: f64 = 89.99;

const TABLE: &str = include_str!("../../data/wmm_2025.cof");

/// The field at a place and time: northward, eastward and downward, nT.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// Northward.
    pub north_nt: f64,
    /// Eastward.
    pub east_nt: f64,
    /// Downward.
    pub down_nt: f64,
}

impl Field {
    /// Horizontal intensity, nT.
    ///
    /// # Source
    /// World Magnetic Model 2025, equation 19, H = √(X² + Y²).
    pub fn horizontal_nt(self) -> f64 {
        self.north_nt.hypot(self.east_nt)
    }

    /// Declination: how far to the east of true north the needle points, degrees.
    ///
    /// # Source
    /// World Magnetic Model 2025, equation 19, D = atan2(Y, X).
    pub fn declination_deg(self) -> f64 {
        self.east_nt.atan2(self.north_nt).to_degrees()
    }

    /// Inclination: how far the field dips below the horizon, degrees.
    ///
    /// # Source
    /// World Magnetic Model 2025, equation 19, I = atan2(Z, H).
    pub fn inclination_deg(self) -> f64 {
        self.down_nt.atan2(self.horizontal_nt()).to_degrees()
    }

    /// One standard deviation of the declination, degrees: √(0.26² + (5417/H)²).
    ///
    /// # Source
    /// World Magnetic Model 2025, section 3.4, error model. It holds for open ground, not beside steel.
    pub fn declination_doubt_deg(self) -> f64 {
        0.26_f64.hypot(5417.0 / self.horizontal_nt())
    }
}

/// The field at a latitude and longitude (WGS 84, degrees), a height above the ellipsoid in metres, and a decimal year.
/// None outside the model's years and at the poles themselves.
///
/// # Source
/// World Magnetic Model 2025, equations 4 to 18: spherical harmonics to degree 12 of a field that changes evenly.
///
/// # Valid for
/// 1 km below the ellipsoid to 850 km above it, 2025.0 to 2030.0. It leaves out the rocks of the crust, buildings, steel
/// and storms on the sun; heights above the sea may be given, since the ellipsoid is less than 110 m away from it.
///
/// # Example
/// ```
/// use stillground::rules::world_magnetic_model_2025::field;
/// // Test values published with the model: declination 1.28° at 80° N, 0° E, at the surface, 2025.0.
/// assert!((field(80.0, 0.0, 0.0, 2025.0).unwrap().declination_deg() - 1.28).abs() <= 0.005);
/// assert!(field(80.0, 0.0, 0.0, 2030.5).is_none());
/// ```
pub fn field(latitude_deg: f64, longitude_deg: f64, height_m: f64, year: f64) -> Option<Field> {
    if !(FIRST_YEAR..=LAST_YEAR).contains(&year) || latitude_deg.abs() > LAST_LATITUDE_DEG {
        return None;
    }
    let place = Geocentric::of(latitude_deg, height_m);
    let legendre = Legendre::at(place.latitude_rad);
    let longitude = longitude_deg.to_radians();
    let (mut north, mut east, mut down) = (0.0, 0.0, 0.0);
    for term in TABLE.lines().skip(1).filter_map(Term::of) {
        let (n, m) = (term.n as f64, term.m as f64);
        let (g, h) = (
            term.g + term.g_rate * (year - FIRST_YEAR),
            term.h + term.h_rate * (year - FIRST_YEAR),
        );
        let (sin, cos) = (m * longitude).sin_cos();
        let reach = place.reach_ratio.powi(term.n as i32 + 2);
        let (value, slope) = legendre.of(term.n, term.m);
        north -= reach * (g * cos + h * sin) * slope;
        east += reach * m * (g * sin - h * cos) * value / place.latitude_rad.cos();
        down -= reach * (n + 1.0) * (g * cos + h * sin) * value;
    }
    let (sin, cos) = (place.latitude_rad - latitude_deg.to_radians()).sin_cos();
    Some(Field {
        north_nt: north * cos - down * sin,
        east_nt: east,
        down_nt: north * sin + down * cos,
    })
}

/// A line of the coefficient file: degree, order, coefficients in nT and their change in a year.
struct Term {
    n: usize,
    m: usize,
    g: f64,
    h: f64,
    g_rate: f64,
    h_rate: f64,
}

impl Term {
    fn of(line: &str) -> Option<Self> {
        let mut cells = line.split_whitespace();
        let (n, m) = (cells.next()?.parse().ok()?, cells.next()?.parse().ok()?);
        let mut number = || cells.next()?.parse::<f64>().ok();
        let term = Self {
            n,
            m,
            g: number()?,
            h: number()?,
            g_rate: number()?,
            h_rate: number()?,
        };
        (term.n <= DEGREE && term.m <= term.n).then_some(term)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_has_every_term_to_degree_twelve() {
        let terms: Vec<_> = TABLE
            .lines()
            .skip(1)
            .filter_map(Term::of)
            .map(|term| (term.n, term.m))
            .collect();
        let all: Vec<_> = (1..=DEGREE)
            .flat_map(|n| (0..=n).map(move |m| (n, m)))
            .collect();
        assert_eq!(terms, all);
    }

    #[test]
    fn the_reports_worked_example_comes_out() {
        // Report, table 3b: 2027.5, 100 km above 80° S, 120° W.
        let found = field(-80.0, -120.0, 100_000.0, 2027.5).unwrap();
        for (found, printed) in [
            (found.north_nt, 5_983.976_049_651_8),
            (found.east_nt, 14_760.135_975_786_8),
            (found.down_nt, -49_317.670_615_425_5),
            (found.horizontal_nt(), 15_927.007_986_013_0),
            (found.declination_deg(), 1.185_630_840_7_f64.to_degrees()),
            (found.inclination_deg(), -1.258_422_154_1_f64.to_degrees()),
        ] {
            assert!((found - printed).abs() < 1e-7, "{found} against {printed}");
        }
    }

    #[test]
    fn no_year_outside_and_no_pole() {
        assert!(field(50.0, 0.0, 0.0, 2024.999).is_none());
        assert!(field(90.0, 0.0, 0.0, 2026.0).is_none());
        assert!(field(50.0, 0.0, 0.0, f64::NAN).is_none());
    }
}
