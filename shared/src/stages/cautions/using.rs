//! Wiring, and the finished pier. The floor's own dangers stand in its stage.

use crate::brief::Brief;
use crate::figure::Arcminute;
use crate::notes::{Notes, When};
use crate::source::Source;
use crate::stages::motion::{Season, season};

use super::Job;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    wiring(notes);
    observing(job, notes);
}

fn wiring(notes: &mut Notes) {
    notes.caution(
        "wire.licensed",
        When::Wiring,
        "Outdoor mains can kill. A licensed electrician chooses, connects and tests cable, residual-current device and \
         earth, by the local code. Until then, take nothing to the pier but what a low-voltage supply indoors feeds.",
        Source::common_practice("electrical work is for licensed people"),
    );
    notes.caution(
        "wire.lightning",
        When::Wiring,
        "Lightning can strike a steel column in the open. Ask the electrician about bonding and surge protection, unplug when you \
         leave, and stay away from it in a thunderstorm.",
        Source::from_memory("EN 62305-3", "2011", "touch and step voltages"),
    );
}

fn observing(job: &Job, notes: &mut Notes) {
    notes.caution(
        "observe.climbing",
        When::Observing,
        "A pier is no ladder and no anchor for a rope or a swing. It is designed for one person leaning on it and one ladder, not for children climbing.",
        Source::judgement("what the footing was checked for"),
    );
    notes.caution(
        "observe.dark",
        When::Observing,
        "Run cables in the ducts or under mats, give tools a place, and keep the telescope's swing clear: nobody can see a \
         cable or a moving telescope in the dark.",
        Source::common_practice("working in the dark"),
    );
    if job.excavation.dewatering {
        notes.caution(
            "observe.wet",
            When::Observing,
            "Groundwater stands near this block. After a flood, check for settlement and align the mount again before you \
             trust the pier.",
            Source::judgement("wet ground moves"),
        );
    }
}

/// The polar axis moves with the ground.
pub(super) fn season(brief: &Brief, season: &Season, notes: &mut Notes) {
    let lean = season.arcmin_per_year;
    if lean > 0.0 {
        notes.caution(
            "motion.season",
            When::Observing,
            format!(
                "The ground moves with the seasons and with it the polar axis, here by about {} in a year. Check the polar \
                 alignment after the first winter and the first dry season, and leave the mount's adjusters where they can be reached.",
                brief.units.say( lean, Arcminute)
            ),
            season::SOURCE,
        );
    }
}

/// Finding north by the sun.
pub(super) fn north(notes: &mut Notes) {
    notes.caution(
        "north.sun",
        When::Digging,
        "Never look at the sun to find north: not with bare eyes, not through a finder, a telescope, a level or a compass's sight. It \
         burns the eye without pain and for good. The shadow on the ground tells all you need; cover every telescope nearby.",
        Source::common_practice("the sun is never looked at"),
    );
}
