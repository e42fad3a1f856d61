//! What was measured of a pier that stands: knocks, leans, pulls, and how it trembles.

mod bounds;
mod measurement;

use serde::{Deserialize, Serialize};

use crate::field::Problem;
use crate::site_plan::SitePlan;

pub use bounds::{Bound, OF_KNOCK, OF_LEAN, OF_PULL, OF_SYMPTOMS};
pub use measurement::{Measurement, MeasurementKind};

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

    /// Its name in the JSON interface.
    pub const fn key(self) -> &'static str {
        match self {
            Self::X => "x",
            Self::Y => "y",
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::X => "east and west",
            Self::Y => "north and south",
        }
    }

    /// The direction with this name.
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
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether anything can be fitted to.
    pub fn is_measured(&self) -> bool {
        !(self.knocks.is_empty() && self.leans.is_empty() && self.pulls.is_empty())
    }
}

/// Numbers out of range, and too many measurements.
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
        found.extend(knock.problems(&format!("knocks[{i}]")));
    }
    for (i, lean) in said.leans.iter().enumerate() {
        found.extend(lean.problems(&format!("leans[{i}]")));
    }
    for (i, pull) in said.pulls.iter().enumerate() {
        found.extend(pull.problems(&format!("pulls[{i}]")));
    }
    let symptoms = [said.symptoms.lasts_s, said.symptoms.moves_arcsec];
    found.extend(outside("symptoms", &OF_SYMPTOMS, &symptoms));
    found
}

impl Knock {
    /// Its numbers that are out of range; it stands at `place` below the plan's measurements.
    pub(crate) fn problems(&self, place: &str) -> Vec<Problem> {
        let values = [
            Some(self.frequency_hz),
            self.frequency_sd_hz,
            self.damping_ratio,
            self.mode.map(f64::from),
        ];
        outside(place, &OF_KNOCK, &values)
    }
}

impl Lean {
    /// As for a knock.
    pub(crate) fn problems(&self, place: &str) -> Vec<Problem> {
        let values = [
            Some(self.x_m),
            Some(self.y_m),
            Some(self.mass_kg),
            Some(self.tilt_arcsec),
            self.tilt_sd_arcsec,
            self.bearing_deg,
        ];
        outside(place, &OF_LEAN, &values)
    }
}

impl Pull {
    /// As for a knock.
    pub(crate) fn problems(&self, place: &str) -> Vec<Problem> {
        let values = [
            Some(self.height_m),
            Some(self.force_n),
            Some(self.tilt_arcsec),
            self.tilt_sd_arcsec,
        ];
        outside(place, &OF_PULL, &values)
    }
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
                    bound.unit.symbol(),
                    bound.least,
                    bound.most,
                    bound.why
                ),
            })
        })
        .collect()
}
