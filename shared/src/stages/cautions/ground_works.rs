//! Before and while digging, and at the pour. What depends on the pit's own figures stands in the excavation stage.

use crate::figure::{Metre, Tonne, Unit};
use crate::notes::{Notes, When};
use crate::site_plan::block::{FrostRemedy, Mix};
use crate::site_plan::excavation::Method;
use crate::source::Source;
use crate::stages::ground::Ground;

use super::Job;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    planning(notes);
    services(job, notes);
    open_pit(job, notes);
    digging(job, notes);
    frost_remedy(job, notes);
    dowels(job, notes);
    cement(job, notes);
    lifting_bags(job, notes);
}

/// Ground of which nothing may be presumed is judged before money is spent or a hole is dug.
pub(super) fn judge_first(ground: &Ground, notes: &mut Notes) {
    if ground.ask_an_engineer.is_some() {
        notes.caution(
            "plan.ground_first",
            When::Planning,
            "Order nothing and dig nothing before a ground engineer has judged this ground. The block, the lists and the \
             days in this plan only show what such a pier would need in ground that can carry it; here they may all change, \
             and another foundation may be needed.",
            Source::judgement("no sizes are ordered for ground that nobody has judged"),
        );
    }
}

fn planning(notes: &mut Notes) {
    notes.caution(
        "plan.codes",
        When::Planning,
        "This plan is a calculation, not a permit. Ask the building office what it wants for a footing, a hut or a mast, keep to the local \
         codes where they differ from this plan, and have a local engineer sign what the codes reserve for engineers.",
        Source::common_practice("local codes and licensed practice come first"),
    );
    notes.caution(
        "plan.alone",
        When::Planning,
        "Never dig, pour, lift or drill alone. Tell somebody where you are, and have a telephone that works there.",
        Source::common_practice("no dangerous work alone"),
    );
}

fn services(job: &Job, notes: &mut Notes) {
    let hand = job.brief.units.about(0.5, Unit::Metre);
    let machine = match job.brief.excavation.method.value {
        Method::Machine => format!(
            " No bucket works within {hand} of a service that has been found; that strip is dug by hand."
        ),
        Method::Hand => String::new(),
    };
    notes.caution(
        "dig.services",
        When::Digging,
        format!(
            "Cables, gas and water lie shallower than any plan shows. Ask the owners for their plans, sweep the ground with a locator and \
             dig the first {hand} by hand with an insulated spade. If you smell gas or cut a cable, everybody moves away \
              first, then calls for help.{machine}"
        ),
        Source::from_memory("29 CFR 1926.651", "1989", "(b), underground installations"),
    );
}

fn open_pit(job: &Job, notes: &mut Notes) {
    notes.caution(
        "dig.open_pit",
        When::Digging,
        format!(
            "A pit {} deep is a trap for a child, a dog, or yourself in the dark. Fence it a stride clear all round from the \
             first hour, put a lid on it whenever nobody works there, and keep a way out in it. The lid keeps things out; it \
             carries nobody.",
            job.brief.units.say( job.excavation.depth, Metre)
        ),
        Source::from_memory("29 CFR 1926.651", "1989", "(c), (l)"),
    );
}

fn digging(job: &Job, notes: &mut Notes) {
    if job.brief.excavation.method.value == Method::Machine {
        notes.caution(
            "dig.machine",
            When::Digging,
            "Stand where the driver sees you and never within the swing of the boom. The machine stays as far from the pit's \
             edge as the pit is deep, is driven by somebody trained on it, and lifts no people.",
            Source::common_practice("working beside a digger"),
        );
    }
    notes.caution(
        "dig.back",
        When::Digging,
        "Spoil is heavy. Lift with your legs, half-fill the barrow, change over every quarter of an hour, and drink enough.",
        Source::common_practice("manual handling"),
    );
}

/// Holes in rock are drilled in a pit, and bars are pulled.
fn dowels(job: &Job, notes: &mut Notes) {
    if job.block.dowels.is_some() {
        notes.caution(
            "block.dowels",
            When::Drilling,
            "Drilling rock makes dust that scars the lungs, and a pit keeps it in: water or an extractor at the bit, close-fitting FFP3 or \
             P100 mask, goggles, ear defenders. Cap every bar that stands up until the pour. A bar under test can fly out: nobody in line \
             with it, and the load goes on from the side.",
            Source::common_practice("drilling in rock and pull tests"),
        );
    }
}

/// The remedy against frost is dug and laid beside the finished block.
fn frost_remedy(job: &Job, notes: &mut Notes) {
    let text = match job.block.side_frost.remedy {
        FrostRemedy::None => return,
        FrostRemedy::Insulation => {
            "The strip for the insulation lies outside the pit: find buried services there as well before you dig. Foam boards burn with \
             poisonous smoke and solvents eat them: no flame, petrol or hot work near them, and cover them the same day."
        }
        FrostRemedy::Sleeve => {
            "Hang the sleeve from above: nobody climbs into the pit to fix it. Greased sheet on the ground is slippery; keep it out of where \
             people walk."
        }
        FrostRemedy::Gravel => {
            "The trench for the gravel lies outside the pit: find buried services there as well, nobody kneels or lies in it, and it is \
             fenced until it is filled."
        }
    };
    notes.caution(
        "block.frost_remedy",
        When::Digging,
        text,
        Source::common_practice("digging and laying insulation beside a foundation"),
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
            format!(
                "A full concrete lorry weighs about thirty {}. Keep it farther from the pit than the pit is deep, and off \
                 drains and soft verges; let one person signal to the driver.",
                job.brief.units.either("tonnes", "tons")
            ),
            Source::common_practice("delivery of concrete"),
        );
    }
}

fn lifting_bags(job: &Job, notes: &mut Notes) {
    if job.brief.block.mix.value == Mix::Ready {
        return;
    }
    let tonnes = job.brief.units.say(job.block.mass, Tonne);
    notes.caution(
        "pour.bags",
        When::Pouring,
        format!(
            "About {tonnes} go through your hands this day. Buy small bags, stack them at hip height beside the mixer, work \
             in pairs and take breaks. Wear a mask and open bags downwind of you: the dust burns eyes and lungs. Keep hands and shovel out of a turning drum."
        ),
        Source::common_practice("manual handling"),
    );
}
