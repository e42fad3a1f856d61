//! The nuts: each at each pass, after a day, after a week.

use super::Job;
use super::bands::{number, up_to};
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
const AGAIN: Source = Source::judgement(
    "torque at which a nut begins to turn on, against the torque that was put on",
);

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    let count = job.design.anchors.studs.len();
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

fn at_pass(job: &Job, pass: usize, stud: usize, torque: f64, full: bool) -> Item {
    let units = |value| job.say(value, Unit::NewtonMetre);
    let most = newton_metre::get(job.design.anchors.torque.high).max(torque);
    let over = format!(
        "do not tighten any further, and do not loosen it. It is over {}, the lowest of this plan's limits: stud, resin or concrete may have \
         suffered.",
        units(most)
    );
    let more = if full {
        "leave it: it is within the limit. Write it down and tell whoever made the plan."
    } else {
        "go on with the others at the plan's figure."
    };
    let bands = up_to(
        torque * (1.0 - READ_RATIO),
        Verdict::outside(format!("bring it up to {}.", units(torque))),
    )
    .fine_to((torque * (1.0 + READ_RATIO)).min(most))
    .up_to(most, Verdict::outside(more))
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
    );
    let item = item
        .how(format!("More than {} stops the work.", units(most)))
        .from(LIMIT);
    if full { item.proves() } else { item }
}

fn again(job: &Job, task: &'static str, when: &str, stud: usize) -> Item {
    let units = |value| job.say(value, Unit::NewtonMetre);
    let used = newton_metre::get(job.design.anchors.torque.used);
    let most = newton_metre::get(job.design.anchors.torque.high).max(used);
    let creeps = "do not load the pier. Resin, thread or plate gives way under the nut.";
    let bands = up_to(
        used * CREEPS_RATIO,
        Verdict::stop(creeps, "whoever made the plan, or the resin's maker"),
    )
    .up_to(
        used * BEDDED_RATIO,
        Verdict::outside(format!(
            "it bedded in: make it up to {}, and look again after as long.",
            units(used)
        )),
    )
    .fine_to(most)
    .above(Verdict::outside(
        "the thread may have seized: do not force it, and tell whoever made the plan.",
    ));
    Item::new(
        format!("{task}:{stud}"),
        task,
        format!("Nut {stud} {when}"),
        units(used),
        number(Unit::NewtonMetre, [0.0, 2000.0], bands),
    )
    .how("The torque at which the nut begins to turn on.")
    .proves()
    .from(AGAIN)
}
