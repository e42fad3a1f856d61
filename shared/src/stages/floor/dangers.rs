//! What can hurt on the floor, and what spoils the image.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::site_plan::floor::FloorKind;
use crate::source::{Source, Standing};
use crate::stages::floor::Floor;
use crate::units::{metre, millimetre};

/// Gap that catches a heel, a castor or a dropped eyepiece.
const WIDE_GAP_MM: f64 = 30.0;
/// Height from which a floor's edge needs a guard.
const GUARD_FROM_M: f64 = 0.6;
/// Source of the guard; codes differ between 0.6 m and 0.76 m.
const GUARD: Source = Source::new("IBC", "2012", "1013.2, guards from 30 in; other codes from 0.6 m", Standing::FromMemory);

/// Lists the cautions.
pub fn cautions(brief: &Brief, floor: &Floor, notes: &mut Notes) {
    over_block(brief, floor, notes);
    off_floor(floor, notes);
    if floor.kind == FloorKind::Ground {
        return;
    }
    gap(brief, notes);
    if floor.level >= metre::new(GUARD_FROM_M) {
        let text = format!(
            "The floor is {} above the ground: its edge and its stairs need a guard that the local code describes, and light that keeps \
             night vision.",
            brief.units.say(metre::get(floor.level), Unit::Metre)
        );
        notes.caution("floor.guard", When::Flooring, text, GUARD);
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
            "Cast the slab apart from the block with a clean gap all round, and lift any board that formed it: a forgotten strip of wood or \
             a lip of mortar joins the two as well as a bolt.",
            Source::common_practice("isolated slab"),
        );
    }
}

fn over_block(brief: &Brief, floor: &Floor, notes: &mut Notes) {
    let names: Vec<&str> = floor.stands.iter().filter(|stand| stand.over_block).map(|stand| stand.name.as_str()).collect();
    let direct = !floor.passes_over_block();
    if !names.is_empty() {
        let (list, how) = (names.join(", "), if direct { "presses straight on it" } else { "reaches the ground close beside it" });
        let text = format!(
            "Over the block's plan: {list}. A weight there {how} and tilts the pier more than anywhere else. Stand outside the block, or \
             carry the floor over it on posts that stand well clear."
        );
        notes.caution("floor.over_block", When::Observing, text, Source::derived("weight over the block"));
    }
    if floor.walk_over_block {
        let text = format!(
            "The walk crosses the block's plan. Lead it round, {} from the block or more, or each step shows in the image.",
            brief.units.say(metre::get(floor.reach), Unit::Metre)
        );
        notes.caution("floor.walk_over_block", When::Observing, text, Source::derived("steps over the block"));
    }
}

fn off_floor(floor: &Floor, notes: &mut Notes) {
    let names: Vec<&str> = floor.stands.iter().filter(|stand| !stand.on_floor).map(|stand| stand.name.as_str()).collect();
    if floor.kind != FloorKind::Ground && !names.is_empty() {
        let text = format!("Off the floor: {}. The weight there is taken to press on the ground itself.", names.join(", "));
        notes.caution("floor.off_floor", When::Planning, text, Source::judgement("weight beside the floor"));
    }
}

fn gap(brief: &Brief, notes: &mut Notes) {
    let gap = millimetre::get(brief.floor.gap.value);
    if gap <= WIDE_GAP_MM {
        return;
    }
    let text = format!(
        "A gap of {} catches heels, castors and dropped eyepieces in the dark. Cover it with a soft skirt that hangs from the floor and \
         rests on nothing of the pier's.",
        brief.units.say(gap, Unit::Millimetre)
    );
    notes.caution("floor.gap", When::Flooring, text, Source::judgement("gap as a trip"));
}
