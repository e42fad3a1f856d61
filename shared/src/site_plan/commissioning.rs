//! What was measured of a pier that stands: knocks, leans, pulls, and how it trembles.

use serde::{Deserialize, Serialize};

use crate::field::Problem;
use crate::site_plan::SitePlan;

/// Most measurements of one kind.
pub const MOST: usize = 20;

/// What there is of the pier.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// It is planned, or being built by this plan.
    Planned,
    /// It stands already, whoever built it.
    Standing,
}

impl State {
    /// Their names in the JSON interface.
    pub const KEYS: &'static [&'static str] = &["planned", "standing"];
}

/// Which way something goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// East and west.
    X,
    /// North and south.
    Y,
}

impl Direction {
    /// Their names in the JSON interface.
    pub const KEYS: &'static [&'static str] = &["x", "y"];

    /// The direction with this name.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        match key {
            "x" => Some(Self::X),
            "y" => Some(Self::Y),
            _ => None,
        }
    }
}

/// A swing that a knock left.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Knock {
    /// Which way it swung.
    pub direction: Direction,
    /// Whether mount and telescope were on the pier; otherwise nothing was.
    pub with_mount: bool,
    /// Frequency of the swing.
    pub frequency_hz: f64,
    /// Its standard deviation; left out: one part in a hundred.
    #[serde(default)]
    pub frequency_sd_hz: Option<f64>,
    /// Damping over critical.
    #[serde(default)]
    pub damping_ratio: Option<f64>,
    /// Which swing it is, the slowest first; left out: the first.
    #[serde(default)]
    pub mode: Option<u32>,
}

/// A lean while somebody stood at a place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lean {
    /// East of the pier's axis.
    pub x_m: f64,
    /// North of the pier's axis.
    pub y_m: f64,
    /// Mass of who stood there.
    pub mass_kg: f64,
    /// How far the star moved.
    pub tilt_arcsec: f64,
    /// Its standard deviation; left out: a quarter.
    #[serde(default)]
    pub tilt_sd_arcsec: Option<f64>,
    /// Direction in which the top leaned, clockwise from north.
    #[serde(default)]
    pub bearing_deg: Option<f64>,
}

/// A steady pull.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pull {
    /// Height of the pull above ground level; above the pier's top it pulls at the telescope.
    pub height_m: f64,
    /// Force.
    pub force_n: f64,
    /// Which way.
    pub direction: Direction,
    /// How far the star moved.
    pub tilt_arcsec: f64,
    /// Its standard deviation; left out: a tenth.
    #[serde(default)]
    pub tilt_sd_arcsec: Option<f64>,
}

/// How the pier trembles.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Symptoms {
    /// In the wind.
    pub in_wind: Option<bool>,
    /// When somebody steps near it.
    pub at_steps: Option<bool>,
    /// When it is touched.
    pub at_touch: Option<bool>,
    /// When the mount slews.
    pub at_slew: Option<bool>,
    /// How long it lasts.
    pub lasts_s: Option<f64>,
    /// How far the star moves.
    pub moves_arcsec: Option<f64>,
}

/// All that was measured.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Commissioning {
    /// Knocks.
    pub knocks: Vec<Knock>,
    /// Leans.
    pub leans: Vec<Lean>,
    /// Pulls.
    pub pulls: Vec<Pull>,
    /// How it trembles.
    pub symptoms: Symptoms,
}

impl Commissioning {
    /// Whether nothing was measured.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether anything can be fitted to.
    #[must_use]
    pub fn is_measured(&self) -> bool {
        !(self.knocks.is_empty() && self.leans.is_empty() && self.pulls.is_empty())
    }
}

/// A number of a measurement: name, least, most, unit, why.
pub struct Bound {
    /// Name of the field.
    pub name: &'static str,
    /// Least that is taken.
    pub least: f64,
    /// Most that is taken.
    pub most: f64,
    /// Unit.
    pub unit: &'static str,
    /// Why the range is so.
    pub why: &'static str,
}

const fn bound(
    name: &'static str,
    least: f64,
    most: f64,
    unit: &'static str,
    why: &'static str,
) -> Bound {
    Bound {
        name,
        least,
        most,
        unit,
        why,
    }
}

/// Numbers of a knock, in the order of [`Knock`].
pub const OF_KNOCK: [Bound; 4] = [
    bound(
        "frequency_hz",
        0.5,
        300.0,
        "Hz",
        "slower than half a hertz hangs loose, faster than 300 no pier is heard",
    ),
    bound(
        "frequency_sd_hz",
        1e-5,
        50.0,
        "Hz",
        "nothing is known exactly",
    ),
    bound(
        "damping_ratio",
        1e-4,
        0.9,
        "",
        "less rings for minutes, more does not swing",
    ),
    bound("mode", 1.0, 2.0, "", "the first or the second swing"),
];
/// Numbers of a lean, in the order of [`Lean`].
pub const OF_LEAN: [Bound; 6] = [
    bound("x_m", -20.0, 20.0, "m", "farther away nobody leans a pier"),
    bound("y_m", -20.0, 20.0, "m", "farther away nobody leans a pier"),
    bound(
        "mass_kg",
        10.0,
        500.0,
        "kg",
        "from a child to some people together",
    ),
    bound(
        "tilt_arcsec",
        0.001,
        300.0,
        "arcsec",
        "less cannot be seen; more is a pier that topples",
    ),
    bound(
        "tilt_sd_arcsec",
        1e-4,
        100.0,
        "arcsec",
        "nothing is known exactly",
    ),
    bound("bearing_deg", 0.0, 360.0, "°", "a whole turn"),
];
/// Numbers of a pull, in the order of [`Pull`].
pub const OF_PULL: [Bound; 4] = [
    bound(
        "height_m",
        0.05,
        6.0,
        "m",
        "from the column's foot to the telescope",
    ),
    bound(
        "force_n",
        1.0,
        1000.0,
        "N",
        "less moves nothing; a harder pull can topple a light pier or part a joint",
    ),
    bound(
        "tilt_arcsec",
        0.001,
        3600.0,
        "arcsec",
        "less cannot be seen; a degree is a pier that falls",
    ),
    bound(
        "tilt_sd_arcsec",
        1e-4,
        1000.0,
        "arcsec",
        "nothing is known exactly",
    ),
];
/// Numbers of the symptoms.
pub const OF_SYMPTOMS: [Bound; 2] = [
    bound(
        "lasts_s",
        0.05,
        600.0,
        "s",
        "shorter nobody sees; ten minutes is no trembling",
    ),
    bound(
        "moves_arcsec",
        0.01,
        3600.0,
        "arcsec",
        "less cannot be seen",
    ),
];

/// Numbers out of range, and too many measurements.
#[must_use]
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let said = &plan.commissioning;
    let mut found = Vec::new();
    for (name, count) in [
        ("knocks", said.knocks.len()),
        ("leans", said.leans.len()),
        ("pulls", said.pulls.len()),
    ] {
        if count > MOST {
            found.push(Problem {
                fields: vec![format!("commissioning.{name}")],
                value: Some(count as f64),
                said: format!(
                    "These are {count} measurements; {MOST} of a kind are the most that is taken."
                ),
            });
        }
    }
    for (i, knock) in said.knocks.iter().enumerate() {
        let values = [
            Some(knock.frequency_hz),
            knock.frequency_sd_hz,
            knock.damping_ratio,
            knock.mode.map(f64::from),
        ];
        found.extend(outside(&format!("knocks[{i}]"), &OF_KNOCK, &values));
    }
    for (i, lean) in said.leans.iter().enumerate() {
        let values = [
            Some(lean.x_m),
            Some(lean.y_m),
            Some(lean.mass_kg),
            Some(lean.tilt_arcsec),
            lean.tilt_sd_arcsec,
            lean.bearing_deg,
        ];
        found.extend(outside(&format!("leans[{i}]"), &OF_LEAN, &values));
    }
    for (i, pull) in said.pulls.iter().enumerate() {
        let values = [
            Some(pull.height_m),
            Some(pull.force_n),
            Some(pull.tilt_arcsec),
            pull.tilt_sd_arcsec,
        ];
        found.extend(outside(&format!("pulls[{i}]"), &OF_PULL, &values));
    }
    let symptoms = [said.symptoms.lasts_s, said.symptoms.moves_arcsec];
    found.extend(outside("symptoms", &OF_SYMPTOMS, &symptoms));
    found
}

fn outside(place: &str, bounds: &[Bound], values: &[Option<f64>]) -> Vec<Problem> {
    bounds
        .iter()
        .zip(values)
        .filter_map(|(bound, value)| {
            let value = (*value)?;
            let fits = value.is_finite() && value >= bound.least && value <= bound.most;
            (!fits).then(|| Problem {
                fields: vec![format!("commissioning.{place}.{}", bound.name)],
                value: value.is_finite().then_some(value),
                said: format!(
                    "{value} {} is outside the range of {} to {}: {}.",
                    bound.unit, bound.least, bound.most, bound.why
                ),
            })
        })
        .collect()
}
