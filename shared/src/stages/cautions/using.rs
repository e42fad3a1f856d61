//! Floor, wiring, and the finished pier.

use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::site_plan::floor::FloorKind;
use crate::source::{Source, Standing};
use crate::units::{metre, millimetre};

use super::Job;

/// Height of a floor from which a fall hurts, m.
const RAIL_M: f64 = 0.6;
/// Width of a gap that takes a heel, mm.
const HEEL_MM: f64 = 25.0;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    floor(job, notes);
    wiring(notes);
    observing(job, notes);
}

fn floor(job: &Job, notes: &mut Notes) {
    let floor = &job.brief.floor;
    let level = metre::get(floor.level.value);
    if level >= RAIL_M {
        notes.caution(
            "floor.rail",
            When::Flooring,
            format!(
                "The floor lies {} above ground, and people walk on it in the dark: it needs a rail and a step with a handhold, by the \
                 local code.",
                job.brief.units.say(level, Unit::Metre)
            ),
            Source::common_practice("guard rails of platforms"),
        );
    }
    if millimetre::get(floor.gap.value) > HEEL_MM {
        notes.caution(
            "floor.gap",
            When::Flooring,
            "The gap round the pier takes a heel or an eyepiece. Close it with something soft that touches without carrying, and mark it with \
             something that shows in red light.",
            Source::judgement("a gap in a dark floor"),
        );
    }
    if floor.kind.value == FloorKind::Deck {
        notes.caution(
            "floor.dew",
            When::Flooring,
            "Boards are slippery in dew and frost. Sand the finish or lay a mat where people stand.",
            Source::common_practice("outdoor decks"),
        );
    }
}

fn wiring(notes: &mut Notes) {
    notes.caution(
        "wire.licensed",
        When::Wiring,
        "Mains out of doors kills. A licensed electrician chooses, connects and tests cable, residual-current device and earth, by the code \
         of the place. Until then only what a low-voltage supply indoors feeds goes to the pier.",
        Source::common_practice("electrical work is for licensed people"),
    );
    notes.caution(
        "wire.lightning",
        When::Wiring,
        "A steel column in the open draws lightning's attention. Ask the electrician about bonding and surge protection, unplug when you \
         leave, and stay away from it in a thunderstorm.",
        Source::new("EN 62305-3", "2011", "touch and step voltages", Standing::FromMemory),
    );
}

fn observing(job: &Job, notes: &mut Notes) {
    notes.caution(
        "observe.climbing",
        When::Observing,
        "A pier is no ladder and no anchor for a rope or a swing. It is reckoned for a person who leans on it and one ladder, not for \
         climbing children.",
        Source::judgement("what the footing was checked for"),
    );
    notes.caution(
        "observe.dark",
        When::Observing,
        "Cables run in the ducts or under mats, tools have a place, and the telescope's swing is kept clear: people, dogs and a slewing mount \
         share the dark.",
        Source::common_practice("working in the dark"),
    );
    if job.excavation.dewatering {
        notes.caution(
            "observe.wet",
            When::Observing,
            "Groundwater stands near this block. After floods look for settlement and re-align before you trust the pier.",
            Source::judgement("wet ground moves"),
        );
    }
}
