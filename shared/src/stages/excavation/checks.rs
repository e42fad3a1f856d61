//! Demands on the pit held against what the site allows.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Check, Notes};
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::excavation::{Excavation, Room};
use crate::stages::ground::Ground;
use crate::units::metre;

/// Adds the checks.
pub fn checks(_brief: &Brief, _ground: &Ground, room: &Room, _block: &Block, pit: &Excavation, notes: &mut Notes) {
    let said = Source::judgement("room on the site");
    for (id, title, demand, capacity, fields) in [
        (
            "excavation.length",
            "The pit fits along x",
            pit.length,
            room.pit[0],
            &["block.length_m", "excavation.max_length_m", "excavation.sides"] as &'static [&'static str],
        ),
        (
            "excavation.width",
            "The pit fits along y",
            pit.width,
            room.pit[1],
            &["block.width_m", "excavation.max_width_m", "excavation.sides"],
        ),
    ] {
        notes.check(Check::at_most(id, title, metre::get(demand), metre::get(capacity), Unit::Metre, said).moved_by(fields));
    }
}
