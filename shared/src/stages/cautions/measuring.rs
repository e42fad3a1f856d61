//! The finished pier measured, and mended: what can hurt whoever does it.

use crate::brief::Brief;
use crate::figure::{Unit, Units};
use crate::notes::{Notes, When};
use crate::source::Source;

/// Hardest pull at the pier's top and at the telescope, N.
const MOST_AT_TOP_N: f64 = 200.0;
const MOST_AT_TELESCOPE_N: f64 = 50.0;

/// Pulls that measure a pier, each as the round figure of a luggage scale that is no more than what is allowed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pulls {
    /// A light one at the pier's top, half of the firm one.
    pub light: Pull,
    /// The hardest at the pier's top.
    pub firm: Pull,
    /// The hardest at the telescope.
    pub at_telescope: Pull,
}

/// One pull.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pull {
    /// The force.
    pub force: String,
    /// What a luggage scale shows of it.
    pub on_scale: String,
}

impl Pulls {
    /// In these units.
    pub fn new(units: Units) -> Self {
        let pull = |newtons: f64| match units {
            // A luggage scale shows a kilogram for every ten newtons, near enough.
            Units::Metric => Pull {
                force: units.say(newtons, Unit::Newton),
                on_scale: units.say(newtons / 10.0, Unit::Kilogram),
            },
            Units::Imperial => {
                let pounds = 10.0 * (newtons * Unit::Newton.imperial_factor() / 10.0).floor();
                Pull {
                    force: format!("{pounds}\u{a0}lbf"),
                    on_scale: format!("{pounds}\u{a0}lb"),
                }
            }
        };
        Self {
            light: pull(MOST_AT_TOP_N / 2.0),
            firm: pull(MOST_AT_TOP_N),
            at_telescope: pull(MOST_AT_TELESCOPE_N),
        }
    }
}

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
    let pulls = Pulls::new(brief.units);
    add(
        "measure.pull",
        &format!(
            "A strap can slip and the telescope fall: pull slowly, {} at most at the pier's top, {} at the telescope; stand clear.",
            pulls.firm.force, pulls.at_telescope.force
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
