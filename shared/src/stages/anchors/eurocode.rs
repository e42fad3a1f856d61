//! Resistances by EN 1992-4.

mod shear;
mod tension;

use crate::notes::Notes;
use crate::stages::anchors::areas::EdgeArea;
use crate::stages::anchors::situation::{Acting, Scope, Situation};
use crate::stages::anchors::strength::Strengths;

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

/// The side that breaks off first; none where every edge is far.
pub fn worst_edge(situation: &Situation, acting: &Acting) -> Option<EdgeArea> {
    shear::worst_edge(situation, acting).map(|(area, ..)| area)
}
