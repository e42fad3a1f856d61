//! What pulls and pushes at the studs: the loads at the column's foot with the codes' partial factors.

use serde::Serialize;

use crate::figure::{Count, Kilonewton, KilonewtonMetre, Millimetre, Unit};
use crate::notes::{Notes, Working};
use crate::site_plan::Code;
use crate::source::Source;
use crate::stages::loads::{self, Loads};
use crate::units::{Force, Length, Moment, kilonewton, kilonewton_metre, metre, newton};

/// Where a horizontal force acts beside the axis.
const BESIDE: Source = Source::judgement(
    "a hand 0.75 m beside the axis; a gust a quarter of the telescope's width beside it, as EN 1991-1-4 7.4.3 takes it",
);
/// Partial factors of EN 1990.
const EN_1990: Source = Source::from_memory("EN 1990", "2002", "Table A1.2(B) and 6.4.3.3");
/// Load factors of ACI 318.
const ACI_LOADS: Source = Source::from_memory("ACI 318", "19", "Table 5.3.1");

/// What acts at the foot, characteristic.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Action {
    /// Stable name.
    pub id: &'static str,
    /// In words.
    pub title: &'static str,
    /// Weight that presses.
    #[serde(rename = "weight_kn", with = "kilonewton")]
    pub weight: Force,
    /// Across the column.
    #[serde(rename = "shear_kn", with = "kilonewton")]
    pub shear: Force,
    /// Bending at the foot.
    #[serde(rename = "moment_kn_m", with = "kilonewton_metre")]
    pub moment: Moment,
    /// Twist about the column's axis, where the force acts beside it.
    #[serde(rename = "torsion_kn_m", with = "kilonewton_metre")]
    pub torsion: Moment,
    /// Whether it is an accident, which has no partial factor.
    pub accidental: bool,
    /// Where it comes from.
    pub source: Source,
}

/// An action with its partial factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Factored {
    /// Weight that presses, at its least.
    pub weight: Force,
    /// Across the column.
    pub shear: Force,
    /// Bending at the foot.
    pub moment: Moment,
    /// Twist about the column's axis.
    pub torsion: Moment,
}

impl Action {
    /// With the code's factors; weight helps, and counts at its least.
    pub fn factored(&self, code: Code) -> Factored {
        let weight = match (code, self.accidental) {
            (_, true) | (Code::Eurocode, false) => 1.0,
            (Code::Aci, false) => 0.9,
        };
        let variable = loads::factor(code, self.accidental);
        Factored {
            weight: self.weight * weight,
            shear: self.shear * variable,
            moment: self.moment * variable,
            torsion: self.torsion * variable,
        }
    }
}

/// Every load at the column's foot, as the studs feel it.
pub fn all(loads: &Loads) -> Vec<Action> {
    loads
        .all
        .iter()
        .map(|load| Action {
            id: load.id,
            title: load.title,
            weight: load.axial,
            shear: load.shear,
            moment: load.moment,
            torsion: load.torsion,
            accidental: load.accidental,
            source: load.source,
        })
        .collect()
}

/// The line of calculation for the action that governs.
pub fn working(action: &Action, code: Code, notes: &mut Notes) {
    let factored = action.factored(code);
    let source = if code == Code::Aci {
        ACI_LOADS
    } else {
        EN_1990
    };
    notes.working(
        Working::new(
            "anchors.action",
            format!("Worst for the studs: {}", action.title),
            "M_Ed = γ M, N_Ed at its least",
            source,
        )
        .with("M", action.moment, KilonewtonMetre)
        .with("V_Ed", factored.shear, Kilonewton)
        .with("N_Ed", factored.weight, Kilonewton)
        .gives("M_Ed", factored.moment, KilonewtonMetre),
    );
}

/// The line of calculation for the stud that a twist loads most.
pub fn twist(action: &Action, code: Code, count: usize, radius: Length, notes: &mut Notes) {
    let factored = action.factored(code);
    notes.working(
        Working::new(
            "anchors.torsion",
            format!(
                "Shear of the most loaded stud under {}, with the twist of a force beside the axis",
                action.title
            ),
            "V₁ = V_Ed/n + T_Ed/(n R)",
            BESIDE,
        )
        .with("V_Ed", factored.shear, Kilonewton)
        .with("T_Ed", factored.torsion, KilonewtonMetre)
        .with("n", count as f64, Count)
        .with("R", radius, Millimetre)
        .gives(
            "V₁",
            kilonewton::get(factored.twisted_shear(radius)) / count as f64,
            Unit::Kilonewton,
        ),
    );
}

impl Factored {
    /// Shear that loads every stud as the most loaded one is: V + T/R.
    pub fn twisted_shear(&self, radius: Length) -> Force {
        self.shear + self.torsion / radius
    }

    /// How far beside the studs' middle the shear acts.
    pub fn eccentricity(&self) -> Length {
        if newton::get(self.shear) > 0.0 {
            self.torsion / self.shear
        } else {
            metre::new(0.0)
        }
    }
}
