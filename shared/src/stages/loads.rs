//! Loads: rest, a leaning person, a gust, a ladder and a knock, found once at the column's foot.
//!
//! Block, column and studs read them, each with its own lever arm. The cases are looked at one by one, never together.

mod kinds;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::site_plan::Code;
use crate::site_plan::load::Enclosure;
use crate::source::Source;
use crate::stages::pier::section;
use crate::units::{Force, Moment, gravity, newton, newton_metre};

/// Whether something keeps the wind off the pier while a load acts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Roof {
    /// Nothing does: there is no roof, or the storm caught it open.
    Open,
    /// The roof is shut.
    Closed,
}

/// What acts at the foot of the column, on the underside of its base plate, characteristic.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Load {
    /// Stable name.
    pub id: &'static str,
    /// In words.
    pub title: &'static str,
    /// Across the column.
    #[serde(rename = "shear_n", with = "newton")]
    pub shear: Force,
    /// Bending at the foot.
    #[serde(rename = "moment_n_m", with = "newton_metre")]
    pub moment: Moment,
    /// Weight that presses.
    #[serde(rename = "axial_n", with = "newton")]
    pub axial: Force,
    /// Twist about the column's axis, where the force acts beside it.
    #[serde(rename = "torsion_n_m", with = "newton_metre")]
    pub torsion: Moment,
    /// Whether the wind reaches the pier.
    pub roof: Roof,
    /// Whether it is an accident, which has no partial factor.
    pub accidental: bool,
    /// Partial factor by the plan's code, on shear, moment and twist.
    pub factor: f64,
    /// Where it comes from.
    pub source: Source,
}

/// Partial factor of what pushes: an accident has none.
///
/// # Source
/// EN 1990:2002, Table A1.2(B) and 6.4.3.3; ACI 318-19, Table 5.3.1, where the gust is one of a service level. From memory.
pub const fn factor(code: Code, accidental: bool) -> f64 {
    match (code, accidental) {
        (_, true) => 1.0,
        (Code::Eurocode, false) => 1.5,
        (Code::Aci, false) => 1.6,
    }
}

/// Every load.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Loads {
    /// In a fixed order: rest, leaning, gust, ladder, knock.
    pub all: Vec<Load>,
}

impl Loads {
    /// A load by its name.
    pub fn of(&self, id: &str) -> Option<&Load> {
        self.all.iter().find(|load| load.id == id)
    }

    /// Weight of column, telescope and mount.
    pub fn weight(&self) -> Force {
        self.of("rest").map_or(newton::new(0.0), |load| load.axial)
    }
}

/// Finds them.
pub fn stage(brief: &Brief) -> Found<Loads> {
    let weight: Force = (section::find(brief).mass() + brief.load.mass.value) * gravity();
    let mut notes = Notes::default();
    kinds::gust_pressure(brief).note(&mut notes);
    let mut all = vec![kinds::rest(brief, weight)];
    for find in [kinds::leaning, kinds::gust, kinds::ladder, kinds::knock] {
        let (load, line) = find(brief, weight);
        all.push(load);
        notes.working(line);
    }
    let value = Loads { all };
    Found { value, notes }
}

/// Whether a roof is shut over the pier when nobody looks: then no wind acts with the other loads.
const fn shut(brief: &Brief) -> bool {
    !matches!(brief.load.enclosure.value, Enclosure::Open)
}

#[cfg(test)]
mod tests;
