//! The pit: its depth, its soil and its neighbours.

use crate::brief::Brief;
use crate::figure::{Degree, Metre, Unit};
use crate::notes::{Notes, When};
use crate::rules::osha_1926_p_1989::{distances, slopes};
use crate::site_plan::excavation::Method;
use crate::source::Source;
use crate::stages::excavation::face::SHUTTERED_M;
use crate::stages::excavation::{Excavation, neighbours};
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::{Length, metre};

/// Clauses of the same document, each behind one caution.
const WATER: Source = Source::from_memory("29 CFR 1926 Subpart P", "1989", "1926.651(h)");
const INSPECTION: Source = Source::from_memory("29 CFR 1926 Subpart P", "1989", "1926.651(k)");
const DUST: Source = Source::from_memory(
    "29 CFR 1926",
    "2016",
    "1926.1153, respirable crystalline silica",
);

/// Lists the cautions.
pub(super) fn list(brief: &Brief, ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    always(brief, pit, notes);
    collapse(brief, ground, pit, notes);
    if pit.shuttered {
        lining(brief, notes);
    }
    if pit.way_out {
        way_out(brief, notes);
    }
    if pit.dewatering {
        water(notes);
    }
    if brief.excavation.method.value == Method::Machine {
        bottom(notes);
    } else if pit.depth > metre::new(DEEP_BY_HAND_M) {
        deep_by_hand(brief, pit, notes);
    }
    if ground.group == Group::Rock {
        breaking_rock(notes);
    }
    if !pit.cast_against_ground {
        backfill(brief, notes);
    }
    building(brief, ground, pit, notes);
}

fn say(brief: &Brief, length: Length) -> String {
    brief.units.say(length, Metre)
}

fn always(brief: &Brief, pit: &Excavation, notes: &mut Notes) {
    let text = format!(
        "Keep spoil, tools and materials at least {} back from the edge, and lorries, mixers and stacked bags at least {} back: weight \
         on the edge pushes the side in.",
        say(brief, pit.spoil_distance),
        say(brief, pit.load_distance)
    );
    notes.caution("excavation.spoil", When::Digging, text, distances::SPOIL);
}

fn collapse(brief: &Brief, ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let limit = say(brief, distances::protection_from());
    let text = match (ground.group, pit.cast_against_ground) {
        _ if ground.is_stable_rock() => {
            "Sound rock stands, but look for cracks and layers that dip into the pit, and scale loose pieces off before \
                             anyone works below them."
                .to_owned()
        }
        (_, false) => format!(
            "The sides are cut back to {} from level, the steepest that the table has for this soil. Flatten them further when cracks open or \
             water seeps, and keep away from the foot of a side that moves.",
            brief.units.say( pit.slope_deg, Degree)
        ),
        (Group::Rock, true) => format!(
            "Weathered rock lets go of single blocks without warning, along cracks that cannot be seen. Scale loose pieces off from above and \
             keep out from under the face. From {limit} on a protective system is required in any ground but stable rock."
        ),
        (Group::Sand | Group::Gravel | Group::Silt | Group::Unfit, true) => format!(
            "A vertical face in this soil stands only while it is damp, and falls without warning. Keep out of the pit at any depth unless \
             its sides are held, work from the edge on a board, and pour the same day; where the face runs, line it with boards as \
              you go, or slope it back. From {limit} on a protective system is required in any soil but stable rock.",
        ),
        (Group::Clay, true) => format!(
            "A vertical face in clay stands for a while and then falls in one piece, most often after rain or a dry spell. Nobody stands in \
             an unsupported pit on the strength of this plan: trim and clean it from above, and pour soon. From {limit} on a protective \
             system is required in any soil but stable rock.",
        ),
    };
    let source = if pit.cast_against_ground {
        distances::PROTECTION
    } else {
        slopes::SOURCE
    };
    notes.caution("excavation.collapse", When::Digging, text, source);
    notes.caution(
        "excavation.inspect",
        When::Digging,
        "Have somebody who knows the ground look at the pit each day before work, and again after rain, frost or a shock. \
         Local rules and the advice of a licensed engineer come before anything said here.",
        INSPECTION,
    );
}

/// Faces that will not stand by themselves.
fn lining(brief: &Brief, notes: &mut Notes) {
    let text = format!(
        "The pit's faces are lined and strutted because they will not stand by themselves. Drive the boards ahead of the digging and set \
         struts from the edge, a frame at the top first; never from inside. Take a strut out only when the concrete has reached it, and \
         draw the boards up as it rises. Deeper than {}, have somebody plan it who shores pits for a living.",
        say(brief, metre::new(SHUTTERED_M))
    );
    notes.caution(
        "excavation.lining",
        When::Digging,
        text,
        Source::common_practice("boards and struts of a small pit are set and drawn from above"),
    );
}

fn way_out(brief: &Brief, notes: &mut Notes) {
    let text = format!(
        "At {} and deeper a ladder, ramp or stair must stand in the pit, no more than {} from anyone in it, tied, and reaching {} above \
         the edge. Someone stays above and in sight.",
        say(brief, distances::way_out_from()),
        say(brief, distances::farthest_way_out()),
        say(brief, metre::new(1.0))
    );
    notes.caution(
        "excavation.way_out",
        When::Digging,
        text,
        distances::WAY_OUT,
    );
}

fn water(notes: &mut Notes) {
    notes.caution(
        "excavation.water",
        When::Digging,
        "This pit goes below the groundwater. Nobody works in a pit where water gathers unless it is kept down by means that someone \
         watches; an electric pump needs a residual-current device. Concrete is poured in the dry, or by an experienced contractor through \
         a pipe from the bottom up.",
        WATER,
    );
}

/// Depth from which a spade no longer throws out of the pit.
const DEEP_BY_HAND_M: f64 = 1.5;

fn deep_by_hand(brief: &Brief, pit: &Excavation, notes: &mut Notes) {
    let text = format!(
        "By hand, {} is deeper than a spade throws and than anyone can dig from the edge: somebody has to be in the pit, \
         which needs shored or sloped sides, buckets on a rope, and a second person above. Go less deep and wider, or hire a small digger.",
        say(brief, pit.depth)
    );
    notes.caution(
        "excavation.deep_by_hand",
        When::Planning,
        text,
        Source::common_practice("reach of a spade"),
    );
}

fn bottom(notes: &mut Notes) {
    notes.caution(
        "excavation.bottom",
        When::Digging,
        "Stop the machine a hand's breadth short of sides and bottom, and trim the rest by hand with a long-handled spade \
         from the edge: the bucket's teeth loosen the ground that has to hold the block.",
        Source::common_practice("trimming by hand"),
    );
}

fn breaking_rock(notes: &mut Notes) {
    notes.caution(
        "excavation.rock",
        When::Digging,
        "Rock needs a breaker or expanding grout, never explosives by yourself. Wear goggles, ear defenders and a fitted \
         dust mask of class P3 or N100, and wet the rock while you break it: its dust harms the lungs for good. Limit hours at a breaker, which numbs the hands.",
        DUST,
    );
}

fn backfill(brief: &Brief, notes: &mut Notes) {
    let text = format!(
        "Fill round the block in layers of no more than {} and ram each one, evenly on all sides, when the concrete is a week old. Loose \
         fill gives the block's sides no hold: count on that contact only as far as it has been rammed.",
        brief.units.about(150.0, Unit::Millimetre)
    );
    notes.caution(
        "excavation.backfill",
        When::Pouring,
        text,
        Source::common_practice("backfill in rammed layers"),
    );
}

const UNDERMINING: Source = Source::from_memory("29 CFR 1926 Subpart P", "1989", "1926.651(i)");

fn building(brief: &Brief, ground: &Ground, pit: &Excavation, notes: &mut Notes) {
    let near = neighbours::footing(brief, ground, pit).filter(|footing| {
        footing.needed_m > 0.0 && footing.clear_m < footing.needed_m + neighbours::NEAR_LINE_M
    });
    let (Some(_), Some(distance)) = (near, brief.site.stated.building_distance_m) else {
        return;
    };
    let text = format!(
        "A building's footing lies {} from the axis, near the pit for its depth: the pit can undermine it. Do not dig before a structural \
         engineer has seen both; move the pier away or go less deep and wider.",
        brief.units.say(distance, Unit::Metre)
    );
    notes.caution("excavation.building", When::Digging, text, UNDERMINING);
}
