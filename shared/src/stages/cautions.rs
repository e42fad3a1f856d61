//! Cautions: what can hurt, said where the danger is.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::pier::Pier;

/// Lists the cautions that this plan calls for.
#[must_use]
pub fn stage(
    _brief: &Brief,
    _ground: &Ground,
    _excavation: &Excavation,
    _block: &Block,
    _pier: &Pier,
    _anchors: &Anchors,
    _floor: &Floor,
) -> Notes {
    Notes::default()
}
