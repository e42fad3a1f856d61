//! What spoils the image on this floor, and what is not designed here.

use crate::brief::Brief;
use crate::figure::Metre;
use crate::notes::{Notes, When};
use crate::site_plan::floor::FloorKind;
use crate::source::Source;
use crate::stages::floor::Floor;

/// Lists the cautions.
pub(super) fn list(brief: &Brief, floor: &Floor, notes: &mut Notes) {
    over_block(brief, floor, notes);
    off_floor(floor, notes);
    if floor.kind == FloorKind::Ground {
        return;
    }
    if floor.kind == FloorKind::Deck {
        notes.caution(
            "floor.deck",
            When::Flooring,
            "The posts drawn here say only where weight reaches the ground. Joists, beams, posts, their footings and fixings are sized by \
             the local code or a carpenter who knows it; a deck is never hung from pier or block.",
            Source::judgement("the deck itself is not designed here"),
        );
    } else {
        notes.caution(
            "floor.slab",
            When::Flooring,
            "Cast the slab separate from the block with a clean gap all round, and take out every board that shaped it: a \
             forgotten strip of wood or a lip of mortar joins the two as firmly as a bolt.",
            Source::common_practice("isolated slab"),
        );
    }
}

fn over_block(brief: &Brief, floor: &Floor, notes: &mut Notes) {
    let names: Vec<&str> = floor
        .stands
        .iter()
        .filter(|stand| stand.over_block)
        .map(|stand| stand.name.as_str())
        .collect();
    let direct = !floor.passes_over_block();
    if !names.is_empty() {
        let (list, how) = (
            names.join(", "),
            if direct {
                "presses straight on it"
            } else {
                "reaches the ground close beside it"
            },
        );
        let text = format!(
            "Over the block's plan: {list}. A weight there {how} and tilts the pier more than anywhere else. Stand outside the block, or \
             carry the floor over it on posts that stand well clear."
        );
        notes.caution(
            "floor.over_block",
            When::Observing,
            text,
            Source::derived("weight over the block"),
        );
    }
    if floor.walk_over_block {
        let text = format!(
            "The route crosses the block. Lead it round the block, {} from it or more, or each step shows in the image.",
            brief.units.say(floor.reach, Metre)
        );
        notes.caution(
            "floor.walk_over_block",
            When::Observing,
            text,
            Source::derived("steps over the block"),
        );
    }
}

fn off_floor(floor: &Floor, notes: &mut Notes) {
    let names: Vec<&str> = floor
        .stands
        .iter()
        .filter(|stand| !stand.on_floor)
        .map(|stand| stand.name.as_str())
        .collect();
    if floor.kind != FloorKind::Ground && !names.is_empty() {
        let text = format!(
            "Off the floor: {}. The weight there is assumed to press on the ground itself.",
            names.join(", ")
        );
        notes.caution(
            "floor.off_floor",
            When::Planning,
            text,
            Source::judgement("weight beside the floor"),
        );
    }
}
