//! Sloping ground and banks: whether somebody has to look, and what can hurt.

use crate::brief::Brief;
use crate::brief::site::ASSUMED_BANK_M;
use crate::figure::{Degree, Unit};
use crate::notes::{Check, Notes};
use crate::paths;
use crate::source::Source;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;

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

/// The steepest slope on which nobody has to look first.
pub fn most_deg(group: Group) -> f64 {
    if group == Group::Clay {
        UNSTABLE_CLAY_DEG
    } else {
        UNSTABLE_DEG
    }
}

/// Adds the checks.
pub fn notes(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    bank(brief, notes);
    let Some(slope) = brief.site.stated.slope_deg else {
        return;
    };
    let most = most_deg(ground.group);
    if ground.group != Group::Unfit {
        notes.check(
            Check::at_most(
                "ground.slope",
                "Is the ground level enough to build on without a ground engineer?", slope, most, Degree,
                SOURCE,
            )
            .asks_beyond()
            .note(
                "Sloping ground carries less, and the bearing figures allow for that. Steeper than this it may creep or \
                 slide, and no figure is reliable: have a ground engineer look before you dig.",
            )
            .moved_by(paths![site.slope_deg, site.soil]),
        );
    }
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
            "Behind the line that rises at 45° from its foot the pier neither loads the wall nor loses its own ground. If it \
             is nearer, ask somebody who knows what the wall can take.",
        )
        .moved_by(paths![site.bank_distance_m, site.bank_height_m]),
    );
}
