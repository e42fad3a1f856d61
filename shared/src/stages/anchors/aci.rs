//! Resistances by ACI 318-19 chapter 17, nominal and reduced.

mod shear;
mod tension;

use crate::notes::Notes;
use crate::rules::aci_318_19::edition::Edition;
use crate::rules::aci_318_19::factors::{self, Category};
use crate::stages::anchors::areas::EdgeArea;
use crate::stages::anchors::situation::{Acting, Scope, Situation};
use crate::stages::anchors::strength::Strengths;

/// Elongation above which a steel counts as ductile, ACI 318-19 chapter 2: 14 % over its gauge and 30 % of the area.
const DUCTILE_RATIO: f64 = 0.14;

/// Resistances of studs that act together, with every factor on the way.
pub fn strengths(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Strengths {
    let mut strengths = Strengths::default();
    let pulled = tension::put(situation, acting, &mut strengths, notes);
    // A shear is borne by all studs, whichever of them are pulled.
    if acting.scope != Scope::Pulled {
        shear::put(situation, acting, pulled, &mut strengths, notes);
    }
    strengths
}

/// The side that breaks off first.
pub fn worst_edge(situation: &Situation, acting: &Acting) -> Option<EdgeArea> {
    shear::worst_edge(situation, acting).map(|(area, ..)| area)
}

/// Whether the steel counts as ductile.
fn ductile(situation: &Situation) -> bool {
    situation.steel.elongation_ratio >= DUCTILE_RATIO
}

/// The edition of the code: inch rods by the inch one.
fn edition(situation: &Situation) -> Edition {
    Edition::of(situation.brief.anchors.size.value.stock())
}

/// The product's category.
fn category(situation: &Situation) -> Category {
    factors::category(situation.brief.anchors.product.installation_factor.value)
}
