//! The finished pier measured, and mended: what can hurt whoever does it.

use crate::brief::Brief;
use crate::figure::{Unit, Units};
use crate::notes::{Notes, When};
use crate::source::Source;

/// Hardest pull at the pier's top and at the telescope, N.
const MOST_AT_TOP_N: f64 = 200.0;
const MOST_AT_TELESCOPE_N: f64 = 50.0;

pub(super) fn list(brief: &Brief, notes: &mut Notes) {
    let mut add = |id, text: &str, source| notes.caution(id, When::Measuring, text, source);
    add(
        "measure.knock",
        "Knock with the hand, from the ground. Two people lift mount and telescope off.",
        Source::judgement("a hand's blow is enough, and a telescope is heavy at arm's length"),
    );
    add(
        "measure.lean",
        "Somebody walks in the dark: clear the way of cables.",
        Source::common_practice("working in the dark"),
    );
    // Down to what a scale in pounds shows as a round figure.
    let newtons = |force: f64| match brief.units {
        Units::Metric => Units::Metric.say(force, Unit::Newton),
        Units::Imperial => {
            let tens = (force * Unit::Newton.imperial_factor() / 10.0).floor();
            format!("{}\u{a0}lbf", 10.0 * tens)
        }
    };
    add(
        "measure.pull",
        &format!(
            "A strap can slip and the telescope fall: pull slowly, {} at most at the pier's top, {} at the telescope; stand clear.",
            newtons(MOST_AT_TOP_N),
            newtons(MOST_AT_TELESCOPE_N)
        ),
        Source::judgement("a firm pull with one arm, and a finger's at the telescope"),
    );
    add(
        "measure.level",
        "Keep hands out of the gap under a loose plate.",
        Source::common_practice("hands stay out of gaps"),
    );
    add(
        "mend.unload",
        "Take telescope and mount off before work on a standing column.",
        Source::common_practice("nothing is worked on under a load"),
    );
    add(
        "mend.undermine",
        "Digging beside a block takes its hold: one side at a time, never below its base, cables found first.",
        Source::common_practice("no footing is undermined"),
    );
}
