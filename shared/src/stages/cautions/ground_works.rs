//! Before anything is done, and at the pour. What can hurt at the pit stands in the excavation stage.

use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::site_plan::block::Mix;
use crate::source::Source;
use crate::units::kilogram;

use super::Job;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    planning(notes);
    cement(job, notes);
    lifting_bags(job, notes);
}

fn planning(notes: &mut Notes) {
    notes.caution(
        "plan.codes",
        When::Planning,
        "This plan is a calculation, not a permit. Ask the building office what it wants for a footing, a hut or a mast, keep to the local \
         codes where they differ from this plan, and have an engineer of the place sign what they reserve for engineers.",
        Source::common_practice("local codes and licensed practice come first"),
    );
    notes.caution(
        "plan.alone",
        When::Planning,
        "Nobody digs, pours, lifts or drills alone. Somebody knows where you are and has a telephone that works there.",
        Source::common_practice("no dangerous work alone"),
    );
}

fn cement(job: &Job, notes: &mut Notes) {
    notes.caution(
        "pour.cement",
        When::Pouring,
        "Wet concrete is strongly alkaline: it burns skin without pain at first, and blinds. Waterproof gloves, boots and long trousers \
         outside the boots, goggles at every splash. Wash it off at once with much water; into the eyes: rinse for a quarter of an hour \
         and see a doctor. Do not kneel in it.",
        Source::common_practice("safety data sheets of cement"),
    );
    if job.brief.block.mix.value == Mix::Ready {
        notes.caution(
            "pour.lorry",
            When::Pouring,
            "A full concrete lorry weighs some thirty tonnes. Keep it away from the pit by more than the pit's depth, off drains and soft \
             verges, and let one person give the driver signs.",
            Source::common_practice("delivery of concrete"),
        );
    }
}

fn lifting_bags(job: &Job, notes: &mut Notes) {
    if job.brief.block.mix.value == Mix::Ready {
        return;
    }
    let tonnes = job.brief.units.say(kilogram::get(job.block.mass) / 1000.0, Unit::Tonne);
    notes.caution(
        "pour.bags",
        When::Pouring,
        format!(
            "About {tonnes} go through your hands this day. Small bags, stacked at hip height beside the mixer, two people, pauses. Open \
             them downwind with a mask on: the dust burns eyes and lungs. Keep hands and shovel out of a turning drum."
        ),
        Source::common_practice("manual handling"),
    );
}
