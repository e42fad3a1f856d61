//! What can hurt at the pit.

use crate::brief::Brief;
use crate::notes::Notes;
use crate::stages::excavation::Excavation;
use crate::stages::ground::Ground;

/// Lists the cautions.
pub fn cautions(_brief: &Brief, _ground: &Ground, _pit: &Excavation, _notes: &mut Notes) {}
