//! Sloping ground and banks: whether somebody has to look, and what can hurt.

use crate::brief::Brief;
use crate::brief::site::ASSUMED_BANK_M;
use crate::figure::{Degree, Unit};
use crate::notes::{Check, Notes, When};
use crate::paths;
use crate::source::Source;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;

/// Slope above which the figures carry a factor worth saying: about 1 in 10.
const SAID_DEG: f64 = 6.0;
/// Slope above which the ground itself may move: about 1 in 3, and less in clay.
const UNSTABLE_DEG: f64 = 18.0;
const UNSTABLE_CLAY_DEG: f64 = 8.0;
/// Where those come from.
const SOURCE: Source =
    Source::judgement("slopes of 1 in 3, in clay of 8 degrees, are looked at first");
/// Where the line behind a bank comes from.
const BANK: Source = Source::judgement(
    "a base stays behind the line that rises at 45 degrees from the foot of a bank",
);

/// Adds the checks and the caution.
pub fn notes(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    bank(brief, notes);
    let Some(slope) = brief.site.stated.slope_deg else {
        return;
    };
    let most = if ground.group == Group::Clay {
        UNSTABLE_CLAY_DEG
    } else {
        UNSTABLE_DEG
    };
    if ground.group != Group::Unfit {
        notes.check(
            Check::at_most(
                "ground.slope",
                "Is the ground level enough to build on without a ground engineer?", slope, most, Degree,
                SOURCE,
            )
            .asks_beyond()
            .note(
                "Ground that falls away carries less, which the bearing figures count; steeper than this it may creep or slide, and a figure \
                 would only pretend. Have a ground engineer look before you dig.",
            )
            .moved_by(paths![site.slope_deg, site.soil]),
        );
    }
    if slope > SAID_DEG {
        caution(brief, slope, slope > most, notes);
    }
}

fn caution(brief: &Brief, slope: f64, unstable: bool, notes: &mut Notes) {
    let said = brief.units.say(slope, Degree);
    let text = if unstable {
        format!(
            "A slope of {said} may creep or slide, the more so with a pit cut into it. Ask a ground engineer before you dig, and keep clear \
             of the foot of the slope after rain."
        )
    } else {
        format!(
            "On a slope of {said} the pit is deeper uphill than downhill. Measure depths from the downhill edge, pile the spoil downhill, \
             and lead rainwater round the pit."
        )
    };
    notes.caution(
        "ground.slope",
        When::Planning,
        text,
        Source::judgement("ground on a slope"),
    );
}

/// A retaining wall or a cut bank below the pier: its height counts as a face of 90° from its foot.
fn bank(brief: &Brief, notes: &mut Notes) {
    let stated = &brief.site.stated;
    let Some(distance) = stated.bank_distance_m else {
        return;
    };
    let height = stated.bank_height_m.unwrap_or(ASSUMED_BANK_M);
    notes.check(
        Check::at_least(
            "ground.bank",
            "Is the pier far enough behind the bank or retaining wall?",
            distance,
            height,
            Unit::Metre,
            BANK,
        )
        .asks_beyond()
        .note(
            "Behind the line that rises at 45° from its foot the pier neither loads the wall nor loses its own ground. Nearer, have somebody \
             look who knows what the wall can take.",
        )
        .moved_by(paths![site.bank_distance_m, site.bank_height_m]),
    );
}
