//! The one row of each number of a measurement: its name, unit, range and reason, and what a form asks for. Range check,
//! interface and form read it.

use crate::figure::Unit;

/// A number of a measurement.
#[derive(Debug, Clone, Copy)]
pub struct Bound {
    /// Name of the field.
    pub name: &'static str,
    /// Unit.
    pub unit: Unit,
    /// Least that is taken.
    pub least: f64,
    /// Most that is taken.
    pub most: f64,
    /// Why the range is so.
    pub why: &'static str,
    /// What a form asks for; empty where it has no box.
    pub asks: &'static str,
    /// Whether a measurement needs it.
    pub needed: bool,
}

const fn row(name: &'static str, unit: Unit, range: [f64; 2], why: &'static str) -> Bound {
    Bound {
        name,
        unit,
        least: range[0],
        most: range[1],
        why,
        asks: "",
        needed: false,
    }
}

impl Bound {
    const fn asks(mut self, asks: &'static str) -> Self {
        self.asks = asks;
        self
    }

    const fn needed(mut self) -> Self {
        self.needed = true;
        self
    }
}

const SD: &str = "nothing is known exactly";
const NEAR: &str = "farther away nobody leans a pier";

/// Numbers of a knock, in the order of its fields.
pub const OF_KNOCK: [Bound; 4] = [
    row(
        "frequency_hz",
        Unit::Hertz,
        [0.5, 300.0],
        "slower than half a hertz hangs loose, faster than 300 no pier is heard",
    )
    .asks("Frequency")
    .needed(),
    row("frequency_sd_hz", Unit::Hertz, [1e-5, 50.0], SD)
        .asks("Uncertainty of the frequency (one standard deviation)"),
    row(
        "damping_ratio",
        Unit::One,
        [1e-4, 0.9],
        "less rings for minutes, more does not swing",
    )
    .asks("Damping ratio (share of critical damping), for instance 0.02"),
    row(
        "mode",
        Unit::One,
        [1.0, 2.0],
        "the first or the second swing",
    ),
];
/// Numbers of a lean, in the order of its fields.
pub const OF_LEAN: [Bound; 6] = [
    row("x_m", Unit::Metre, [-20.0, 20.0], NEAR)
        .asks("Place east of the pier’s axis (west is negative)")
        .needed(),
    row("y_m", Unit::Metre, [-20.0, 20.0], NEAR)
        .asks("Place north of the pier’s axis (south is negative)")
        .needed(),
    row(
        "mass_kg",
        Unit::Kilogram,
        [10.0, 500.0],
        "from a child to some people together",
    )
    .asks("Mass of the person who stood there")
    .needed(),
    row(
        "tilt_arcsec",
        Unit::Arcsecond,
        [0.001, 300.0],
        "less cannot be seen; more is a pier that topples",
    )
    .asks("How far the star moved")
    .needed(),
    row("tilt_sd_arcsec", Unit::Arcsecond, [1e-4, 100.0], SD)
        .asks("Uncertainty of that (one standard deviation)"),
    row("bearing_deg", Unit::Degree, [0.0, 360.0], "a whole turn")
        .asks("Direction in which the top leaned, clockwise from north"),
];
/// Numbers of a pull, in the order of its fields.
pub const OF_PULL: [Bound; 4] = [
    row(
        "height_m",
        Unit::Metre,
        [0.05, 6.0],
        "from the column's foot to the telescope",
    )
    .asks("Height of the pull above ground level")
    .needed(),
    row(
        "force_n",
        Unit::Newton,
        [1.0, 1000.0],
        "less moves nothing; a harder pull can topple a light pier or part a joint",
    )
    .asks("Force, or the scale’s reading with its unit")
    .needed(),
    row(
        "tilt_arcsec",
        Unit::Arcsecond,
        [0.001, 3600.0],
        "less cannot be seen; a degree is a pier that falls",
    )
    .asks("How far the star moved")
    .needed(),
    row("tilt_sd_arcsec", Unit::Arcsecond, [1e-4, 1000.0], SD)
        .asks("Uncertainty of that (one standard deviation)"),
];
/// Numbers of the symptoms.
pub const OF_SYMPTOMS: [Bound; 2] = [
    row(
        "lasts_s",
        Unit::Second,
        [0.05, 600.0],
        "shorter nobody sees; ten minutes is no trembling",
    )
    .asks("How long it lasts"),
    row(
        "moves_arcsec",
        Unit::Arcsecond,
        [0.01, 3600.0],
        "less cannot be seen",
    )
    .asks("How far the star moves"),
];
