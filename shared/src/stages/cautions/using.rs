//! Wiring, and the finished pier. The floor's own dangers stand in its stage.

use crate::notes::{Notes, When};
use crate::source::{Source, Standing};

use super::Job;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    wiring(notes);
    observing(job, notes);
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
        "Lightning can strike a steel column in the open. Ask the electrician about bonding and surge protection, unplug when you \
         leave, and stay away from it in a thunderstorm.",
        Source::new("EN 62305-3", "2011", "touch and step voltages", Standing::FromMemory),
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
        "Cables run in the ducts or under mats, tools have a place, and the telescope's swing is kept clear: nobody can see a cable or a moving telescope in the dark.",
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
