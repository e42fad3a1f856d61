//! What was measured, and what a pier is expected to show.

use crate::proof::chance::ln_student;
use crate::proof::ground::{Contact, Lean};
use crate::site_plan::commissioning::{self, Commissioning};
use crate::stages::floor::Floor;
use crate::stages::motion::rig::Axis;
use crate::units::STANDARD_GRAVITY_M_S2;

/// Model errors as standard deviations of logarithms: frequency with the mount, without it, a second swing, a lean of which
/// a part is shared by all leans, a pull. Judgement, until piers have been measured.
const MOUNTED: f64 = 0.015;
const BARE: f64 = 0.03;
const SECOND: f64 = 0.04;
const LEAN: [f64; 2] = [0.112, 0.10];
const PULL: f64 = 0.03;

/// What a measurement is of.
#[derive(Debug, Clone)]
pub enum Of {
    /// A knock's frequency.
    Knock {
        /// Which way.
        axis: Axis,
        /// With the load.
        with_mount: bool,
        /// Which swing, from nought.
        mode: usize,
    },
    /// A lean under a weight.
    Lean {
        /// Under a newton, times the modulus.
        lean: Lean,
        /// The weight.
        newtons: f64,
    },
    /// A pull.
    Pull {
        /// Which way.
        axis: Axis,
        /// Above ground.
        height_m: f64,
        /// Force.
        newtons: f64,
    },
}

/// A measurement.
#[derive(Debug, Clone)]
pub struct Measure {
    /// In words.
    pub words: String,
    /// What of.
    pub of: Of,
    /// What was found, Hz or arcsec.
    pub value: f64,
    /// Standard deviation of its logarithm: as measured, and what the model is wrong by.
    pub sd_ln: f64,
    /// Unit.
    pub unit: &'static str,
}

/// What a measurement would be: up to two swings may be the one that is heard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// The likelier first.
    pub values: [f64; 2],
    /// How likely the second is to be the one, at most a half.
    pub second: f64,
}

impl Expected {
    pub(super) fn one(value: f64) -> Self {
        Self {
            values: [value, value],
            second: 0.0,
        }
    }

    /// The one that is nearer to what was found.
    pub fn nearer(&self, found: f64) -> f64 {
        let off = |value: f64| (value / found).ln().abs();
        if self.second > 0.0 && off(self.values[1]) < off(self.values[0]) {
            self.values[1]
        } else {
            self.values[0]
        }
    }

    /// Logarithm of the likelihood: heavy tails, so that one bad measurement does not drag all.
    pub fn ln_likelihood(&self, measure: &Measure) -> f64 {
        let of = |value: f64| ln_student((measure.value / value).ln() / measure.sd_ln);
        if self.second > 0.0 {
            let (a, b) = (
                of(self.values[0]) + (1.0 - self.second).ln(),
                of(self.values[1]) + self.second.ln(),
            );
            let most = a.max(b);
            most + ((a - most).exp() + (b - most).exp()).ln()
        } else {
            of(self.values[0])
        }
    }
}

/// The measurements of a plan, each with its words and its errors.
pub(super) fn measures(
    said: &Commissioning,
    contact: &Contact,
    floor: &Floor,
    lean_ratio: f64,
) -> Vec<Measure> {
    let axis = |direction: commissioning::Direction| match direction {
        commissioning::Direction::X => Axis::X,
        commissioning::Direction::Y => Axis::Y,
    };
    let way = |direction: commissioning::Direction| match direction {
        commissioning::Direction::X => "east and west",
        commissioning::Direction::Y => "north and south",
    };
    let mut found = Vec::new();
    for (n, knock) in said.knocks.iter().enumerate() {
        let mode = knock.mode.unwrap_or(1).clamp(1, 2) as usize - 1;
        let alike = said
            .knocks
            .iter()
            .filter(|other| {
                other.with_mount == knock.with_mount
                    && other.direction == knock.direction
                    && other.mode == knock.mode
            })
            .count() as f64;
        let model = match (mode, knock.with_mount) {
            (0, true) => MOUNTED,
            (0, false) => BARE,
            _ => SECOND,
        };
        let own = knock
            .frequency_sd_hz
            .map_or(0.01, |sd| sd / knock.frequency_hz);
        found.push(Measure {
            words: format!(
                "Knock {}, {}, {}{}",
                n + 1,
                way(knock.direction),
                if knock.with_mount {
                    "mount and telescope on"
                } else {
                    "nothing on the pier"
                },
                if mode == 1 { ", second swing" } else { "" }
            ),
            of: Of::Knock {
                axis: axis(knock.direction),
                with_mount: knock.with_mount,
                mode,
            },
            value: knock.frequency_hz,
            // What the model is wrong by is the same for all of them, and not averaged away.
            sd_ln: own.hypot(model * alike.sqrt()),
            unit: "Hz",
        });
    }
    for (n, lean) in said.leans.iter().enumerate() {
        let own = lean.tilt_sd_arcsec.map_or(0.25, |sd| sd / lean.tilt_arcsec);
        let shared = LEAN[1] * (said.leans.len() as f64).sqrt();
        found.push(Measure {
            words: format!("Lean {}", n + 1),
            of: Of::Lean {
                lean: contact.lean(floor, lean.x_m, lean.y_m, lean_ratio),
                newtons: lean.mass_kg * STANDARD_GRAVITY_M_S2,
            },
            value: lean.tilt_arcsec,
            sd_ln: own.hypot(LEAN[0]).hypot(shared),
            unit: "arcsec",
        });
    }
    for (n, pull) in said.pulls.iter().enumerate() {
        let own = pull.tilt_sd_arcsec.map_or(0.1, |sd| sd / pull.tilt_arcsec);
        found.push(Measure {
            words: format!("Pull {}, {}", n + 1, way(pull.direction)),
            of: Of::Pull {
                axis: axis(pull.direction),
                height_m: pull.height_m,
                newtons: pull.force_n,
            },
            value: pull.tilt_arcsec,
            sd_ln: own.hypot(PULL * (said.pulls.len() as f64).sqrt()),
            unit: "arcsec",
        });
    }
    found
}
