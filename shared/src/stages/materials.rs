//! Materials: everything to order or hire.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Found, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::pier::Pier;

/// One line of the order.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Material {
    /// What.
    pub item: String,
    /// How much, with waste, in `unit`.
    pub quantity: f64,
    /// Unit.
    pub unit: Unit,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: String,
    /// Waste, stock length, hire, and the like.
    pub note: String,
}

/// Lists what to order.
#[must_use]
pub fn stage(
    _brief: &Brief,
    _excavation: &Excavation,
    _block: &Block,
    _pier: &Pier,
    _anchors: &Anchors,
    _floor: &Floor,
) -> Found<Vec<Material>> {
    Found { value: Vec::new(), notes: Notes::default() }
}
