//! Demands on the floor held against what it is given.

use crate::brief::Brief;
use crate::figure::{Metre, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::site_plan::floor::FloorKind;
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::floor::opening::{OVER_BLOCK_M, Round, underside};
use crate::stages::floor::places::to_block;
use crate::units::{metre, millimetre};

/// Least gap round the pier: a slab creeps and swells a little, a deck sags and its boards move with the weather.
const SLAB_GAP_MM: f64 = 10.0;
const DECK_GAP_MM: f64 = 20.0;
/// A post nearer than this to the block presses on the ground that holds it, or on the block.
const POST_CLEAR_M: f64 = 0.15;

/// A person stands in half a metre.
const LEAST_ROOM_M: f64 = 0.5;

/// Adds the checks.
pub fn checks(brief: &Brief, block: &Block, floor: &Floor, notes: &mut Notes) {
    let needed = match floor.kind {
        FloorKind::Ground => return,
        FloorKind::Slab => SLAB_GAP_MM,
        FloorKind::Deck => DECK_GAP_MM,
    };
    gap(brief, needed, notes);
    room(floor, notes);
    if floor.kind == FloorKind::Deck {
        deck(brief, block, floor, notes);
    }
}

fn gap(brief: &Brief, needed_mm: f64, notes: &mut Notes) {
    let given = millimetre::get(brief.floor.gap.value);
    let note = if given < needed_mm {
        "The floor would touch column or block, and every step would reach the telescope through it. Make the gap wider, and put \
         nothing stiff into it."
    } else {
        "The floor touches neither pier nor block. Keep grit, cables under tension and sealant out of the gap."
    };
    let source = Source::judgement("gap between floor and pier");
    notes.check(
        Check::at_least(
            "floor.gap",
            "Does the floor stay clear of column and block?",
            given,
            needed_mm,
            Unit::Millimetre,
            source,
        )
        .note(note)
        .moved_by(paths![floor.gap_mm, floor.kind]),
    );
}

/// Room for a person between the hole and the floor's edge, on the roomier sides.
fn room(floor: &Floor, notes: &mut Notes) {
    let Some(hole) = floor.opening else { return };
    let beside = ((floor.length - hole.length) * 0.5).max((floor.width - hole.width) * 0.5);
    let note = match hole.round {
        Round::Pier => "Width of floor between the hole round the pier and the edge.",
        Round::Block => {
            "The floor goes round the whole block, whose top is not below it; raised over the block it would have more room."
        }
    };
    let source = Source::judgement("room to stand");
    notes.check(
        Check::at_least(
            "floor.room",
            "Is there room to stand beside the pier?",
            beside,
            metre::new(LEAST_ROOM_M),
            Metre,
            source,
        )
        .note(note)
        .moved_by(paths![floor.length_m, floor.width_m, floor.level_m]),
    );
}

fn deck(brief: &Brief, block: &Block, floor: &Floor, notes: &mut Notes) {
    let source = Source::judgement("a deck bears on the ground, not on the block");
    let nearest = floor
        .supports
        .iter()
        .map(|&post| to_block(floor.block_half_m, post))
        .fold(f64::INFINITY, f64::min);
    notes.check(
        Check::at_least("floor.posts", "Are the deck's posts clear of the block?", nearest, POST_CLEAR_M, Unit::Metre, source)
            .note("A post on the block or close to it passes every footstep to the pier. Move it as far away as you can.")
            .moved_by(paths![floor.supports]),
    );
    let clear = underside(brief).unwrap_or(floor.level) - block.upstand;
    notes.check(
        Check::at_least("floor.level", "Do the deck's joists clear the top of the block?", clear, metre::new(OVER_BLOCK_M), Metre, source)
            .note(
                "Joists that lie on the block carry every step into it. Raise the floor, lower the block's top, or frame the joists round \
                   the whole block.",
            )
            .moved_by(paths![floor.level_m, block.upstand_m]),
    );
}
