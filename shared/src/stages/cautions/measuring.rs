//! The finished pier measured, and mended: what can hurt whoever does it.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::source::Source;

/// Hardest pull at the pier's top and at the telescope, N.
const MOST_AT_TOP_N: f64 = 200.0;
const MOST_AT_TELESCOPE_N: f64 = 50.0;

pub(super) fn list(brief: &Brief, notes: &mut Notes) {
    let mut add = |id, text: &str, source| notes.caution(id, When::Measuring, text, source);
    add(
        "measure.knock",
        "Knock with the hand, not with a hammer near glass, and not from a ladder. Two people lift mount and telescope off.",
        Source::judgement("a hand's blow is enough, and a telescope is heavy at arm's length"),
    );
    add(
        "measure.lean",
        "Somebody walks in the dark: mark the place and the way to it, and clear them of cables.",
        Source::common_practice("working in the dark"),
    );
    let newtons = |force: f64| brief.units.say(force, Unit::Newton);
    add(
        "measure.pull",
        &format!(
            "A strap or a clutch can slip, and the telescope fall. Pull level and slowly, {} at most at the pier's top and {} at \
             the telescope; stand clear of it, and never on a ladder.",
            newtons(MOST_AT_TOP_N),
            newtons(MOST_AT_TELESCOPE_N)
        ),
        Source::judgement("a firm pull with one arm, and a finger's at the telescope"),
    );
    add(
        "measure.level",
        "Keep hands out of the gap under the plate while a nut is loose.",
        Source::common_practice("hands stay out of gaps"),
    );
    add(
        "mend.unload",
        "Take telescope and mount off before work on a standing column, and hold a column whose nuts are slackened.",
        Source::common_practice("nothing is worked on under a load"),
    );
    add(
        "mend.undermine",
        "Digging beside a block takes away its hold: one side at a time, never below its base. Find cables and pipes first, and \
         fill the hole the same day.",
        Source::common_practice("no footing is undermined"),
    );
}
