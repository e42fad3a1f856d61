//! The nuts: each at each pass, after a day, after a week.

use super::Job;
use super::bands::{fine_to, number, up_to};
use crate::figure::Unit;
use crate::record::item::Item;
use crate::record::verdict::Verdict;
use crate::source::Source;
use crate::units::newton_metre;

/// A wrench is read to this share.
const READ_RATIO: f64 = 0.1;
/// A nut that begins to turn below this share of its torque has bedded in more than it should.
const BEDDED_RATIO: f64 = 0.8;
/// Below this share something creeps.
const CREEPS_RATIO: f64 = 0.5;
const LIMIT: Source = Source::judgement("never above the lowest limit of the plan");
/// What the product's sheet says.
const SHEET: Source = Source::second_hand("The product's sheet", "", "largest installation torque");
/// Share that rounding may hide.
const DUST_RATIO: f64 = 1e-9;
const AGAIN: Source = Source::judgement(
    "torque at which a nut begins to turn on, against the torque that was put on",
);

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    let count = job.design.anchors.studs.len();
    if job.brief.anchors.max_torque.is_none() {
        items.push(sheet(job));
    }
    let passes = &job.design.anchors.torque.passes;
    for (place, pass) in passes.iter().enumerate() {
        let full = place + 1 == passes.len();
        items.extend(
            (1..=count)
                .map(|stud| at_pass(job, place + 1, stud, newton_metre::get(pass.torque), full)),
        );
    }
    for (task, when) in [
        ("torque_day", "after a day"),
        ("torque_week", "after a week"),
    ] {
        items.extend((1..=count).map(|stud| again(job, task, when, stud)));
    }
}

/// The largest torque on the product's sheet, which must be there before a nut is turned.
fn sheet(job: &Job) -> Item {
    let set = newton_metre::get(job.design.anchors.torque.set);
    let said = job.say(set, Unit::NewtonMetre);
    let less = format!(
        "do not tighten to {said}: the resin's product allows less. Enter its figure in the plan; the plan's torque follows it."
    );
    let bands = up_to(
        set * (1.0 - DUST_RATIO),
        Verdict::stop(less, "whoever made the plan"),
    )
    .above(Verdict::Within);
    Item::new(
        "sheet_torque",
        "torque",
        "Largest torque on the resin's sheet",
        format!("{said} or more"),
        number(Unit::NewtonMetre, [1.0, 2000.0], bands),
    )
    .lead("The resin's sheet allows")
    .how(
        "Installation torque or maximum torque for this size of thread, in newton metres, on the sheet of the cartridge that was used. Nobody \
         tightens before it is here. More than the plan's torque changes nothing until it is entered in the plan.",
    )
    .first()
    .from(SHEET)
}

fn at_pass(job: &Job, pass: usize, stud: usize, torque: f64, full: bool) -> Item {
    let units = |value| job.say(value, Unit::NewtonMetre);
    let most = newton_metre::get(job.design.anchors.torque.high);
    let over = format!(
        "slacken it to snug, and watch whether the stud turns with it. It is over {}, the lowest of this plan's limits: stud, resin or concrete \
         may have suffered, and a stud that turns in its hole is lost.",
        units(most)
    );
    let low = torque * (1.0 - READ_RATIO);
    let bands = if job.brief.anchors.max_torque.is_none() {
        // Nobody is told to bring a nut up to a figure that no sheet gave.
        fine_to(most)
    } else {
        let more = if full {
            "leave it: it is within the limit. Write it down and tell whoever made the plan."
        } else {
            "go on with the others at the plan's figure."
        };
        up_to(
            low,
            Verdict::outside(format!("bring it up to {}.", units(torque))),
        )
        .fine_to((torque * (1.0 + READ_RATIO)).min(most))
        .up_to(most, Verdict::outside(more))
    }
    .above(Verdict::lasting_stop(
        over,
        "whoever made the plan, or an engineer",
    ));
    let name = if full {
        format!("Nut {stud}, last pass")
    } else {
        format!("Nut {stud}, pass {pass}")
    };
    let item = Item::new(
        format!("torque:{pass}:{stud}"),
        "torque",
        name,
        units(torque),
        number(Unit::NewtonMetre, [0.0, 2000.0], bands),
    )
    .how(format!("More than {} stops the work.", units(most)))
    .from(LIMIT);
    if full { item.proves().needed() } else { item }
}

fn again(job: &Job, task: &'static str, when: &str, stud: usize) -> Item {
    let units = |value| job.say(value, Unit::NewtonMetre);
    let torque = &job.design.anchors.torque;
    let (set, most) = (
        newton_metre::get(torque.set),
        newton_metre::get(torque.high),
    );
    let bedded = Verdict::outside(if job.brief.anchors.max_torque.is_none() {
        "it bedded in: write it down, and look again after as long.".to_owned()
    } else {
        format!(
            "it bedded in: make it up to {} and no further, and look again after as long.",
            units(set)
        )
    });
    let creeps = "do not load the pier. Resin, thread or plate gives way under the nut.";
    let bands = up_to(
        set * CREEPS_RATIO,
        Verdict::stop(creeps, "whoever made the plan, or the resin's maker"),
    )
    .up_to(set * BEDDED_RATIO, bedded)
    .fine_to(most)
    .above(Verdict::outside(
        "the thread may have seized, or the nut was over its limit: do not force it, and tell whoever made the plan.",
    ));
    Item::new(
        format!("{task}:{stud}"),
        task,
        format!("Nut {stud} {when}"),
        units(set),
        number(Unit::NewtonMetre, [0.0, 2000.0], bands),
    )
    .how("The torque at which the nut begins to turn on.")
    .proves()
    .needed()
    .from(AGAIN)
}
