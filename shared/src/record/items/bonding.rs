//! Holes and resin.

use super::Job;
use super::bands::{number, up_to};
use crate::figure::{Celsius, Unit, Units};
use crate::record::item::{Answer, Asks, Item, Moment};
use crate::record::verdict::Verdict;
use crate::rules::resin;
use crate::source::Source;
use crate::units::{hour, millimetre};

/// A hole may be deeper by this before it only costs resin, mm and in.
const DEEPER: (f64, f64) = (20.0, 0.75);
/// What a hole may lack of its own depth, and of the embedment.
const SHALLOWER: (f64, f64) = (2.0, 0.125);
const SHORT: (f64, f64) = (0.5, 0.0625);
/// A drill wanders by so much.
const WANDER: (f64, f64) = (1.0, 0.0625);
/// Wider by more than this the resin's sheet does not know the hole.
const WIDE: (f64, f64) = (3.0, 0.125);
/// Colder than planned by more than this changes the times, °C and °F.
const COOLER: (f64, f64) = (2.0, 4.0);
const PLANNER: &str = "whoever made the plan";
const PRODUCT: Source = Source::second_hand("The product's sheet", "", "holes and times");

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    for stud in 1..=job.design.anchors.studs.len() {
        items.push(depth(job, stud));
        items.push(diameter(job, stud));
    }
    items.push(met());
    batch(job, items);
}

fn depth(job: &Job, stud: usize) -> Item {
    let units = |value| job.say(value, Unit::Millimetre);
    let (embedment, depth) = (
        millimetre::get(job.design.anchors.embedment),
        millimetre::get(job.design.anchors.hole_depth),
    );
    let shallow = format!(
        "do not set this stud. It would be held by less than the {} of the plan. Drill on to {}.",
        units(embedment),
        units(depth)
    );
    let limit = |(mm, inches)| job.limit_mm(mm, inches);
    let bands = up_to(embedment - limit(SHORT), Verdict::stop(shallow, PLANNER))
        .up_to(
            depth - limit(SHALLOWER),
            Verdict::outside(format!(
                "drill on to {}; dust fills the last of it.",
                units(depth)
            )),
        )
        .fine_to(depth + limit(DEEPER))
        .above(Verdict::outside(
            "mark the stud's depth on it with tape, and have resin for the deeper hole.",
        ));
    Item::new(
        format!("hole_depth:{stud}"),
        "drill",
        format!("Hole {stud}: depth"),
        units(depth),
        number(Unit::Millimetre, [0.0, 2000.0], bands),
    )
    .lead(format!("Hole {stud}, depth"))
    .how(format!(
        "From the block's top, after blowing it out. Less than {} stops this stud.",
        units(embedment)
    ))
    .needed()
}

fn diameter(job: &Job, stud: usize) -> Item {
    let units = |value| job.say(value, Unit::Millimetre);
    let wanted = millimetre::get(job.design.anchors.hole_diameter);
    let limit = |(mm, inches)| job.limit_mm(mm, inches);
    let bands = up_to(
        wanted - limit(WANDER),
        Verdict::outside(
            "the stud with its resin will not go in: drill it out with the right bit.",
        ),
    )
    .fine_to(wanted + limit(WANDER))
    .up_to(
        wanted + limit(WIDE),
        Verdict::outside(
            "look whether the resin's sheet allows so wide a gap, and count more resin.",
        ),
    )
    .above(Verdict::stop(
        "do not set this stud. No resin's sheet knows so wide a hole for it.",
        "whoever made the plan, and the resin's maker",
    ));
    Item::new(
        format!("hole_diameter:{stud}"),
        "drill",
        format!("Hole {stud}: diameter"),
        units(wanted),
        number(Unit::Millimetre, [0.0, 200.0], bands),
    )
    .lead(format!("Hole {stud}, diameter"))
    .from(PRODUCT)
}

fn met() -> Item {
    let bar = Verdict::stop(
        "do not drill on. A cut bar weakens the block, and a duct may have a cable in it.",
        PLANNER,
    );
    let void = Verdict::stop(
        "do not set studs. Resin runs away in it, and the concrete round it is weak.",
        "whoever made the plan, or an engineer",
    );
    let answers = vec![
        Answer::fine("sound", "sound concrete all the way"),
        Answer::then("bar", "a steel bar or a duct", bar),
        Answer::then("void", "a hollow, a crack or soft concrete", void),
    ];
    Item::new(
        "hole_met",
        "drill",
        "What the drill met",
        "sound concrete",
        Asks::Choice(answers),
    )
    .lead("The drill met")
}

fn batch(job: &Job, items: &mut Vec<Item>) {
    items.push(
        Item::new(
            "resin_batch",
            "bond",
            "Resin: product and batch",
            "as ordered",
            Asks::Text,
        )
        .lead("Resin")
        .needed(),
    );
    let past = Verdict::stop(
        "do not use it. Resin that is past its day may never harden.",
        "whoever sold it; take a fresh cartridge",
    );
    items.push(
        Item::new(
            "resin_use_by",
            "bond",
            "Resin: use by",
            "not past",
            Asks::Day { past },
        )
        .lead("Resin to be used by")
        .how("Printed on the cartridge. Past its day it is not used.")
        .from(PRODUCT),
    );
    items.push(temperature(job));
    let last = Item::new("set_at", "bond", "Last stud set at", "", Asks::Moment(None))
        .lead("Last stud set at");
    items.push(last.how("The time to full load counts from here."));
    let Some(cure) = job.design.anchors.setting.cure_time else {
        return;
    };
    let hours = hour::get(cure);
    let said = format!("{} after the last stud", job.say(hours, Unit::Hour));
    let sooner = Verdict::stop(
        format!(
            "do not load the studs. The resin needs {}.",
            job.say(hours, Unit::Hour)
        ),
        "nobody: wait; the product's own sheet says how long",
    );
    let moment = Moment {
        after: "set_at".to_owned(),
        hours,
        sooner,
    };
    items.push(
        Item::new(
            "cured_at",
            "resin_cures",
            "Resin left alone until",
            said,
            Asks::Moment(Some(moment)),
        )
        .lead("Resin left alone until")
        .how("Nobody touches a stud before. A trial dab beside the holes must be hard.")
        .from(PRODUCT),
    );
}

fn temperature(job: &Job) -> Item {
    let units = |value| job.say(value, Celsius);
    let planned = job.brief.anchors.concrete_temperature_c.value;
    let [least, most] = resin::generic::range_c(job.brief.anchors.stated.resin);
    let (least, most) = (least.min(planned), most.max(planned));
    let outside = "do not bond. The times of the resin are not known at this temperature, unless its own sheet says so.";
    let cooler = "the resin hardens more slowly than planned: take the time for this temperature from its sheet, and wait that long.";
    let cooler_k = match job.brief.units {
        Units::Metric => COOLER.0,
        Units::Imperial => COOLER.1 / Unit::Kelvin.imperial_factor(),
    };
    let bands = up_to(least - 0.1, Verdict::stop(outside, PLANNER))
        .up_to(planned - cooler_k, Verdict::outside(cooler))
        .fine_to(planned + cooler_k)
        .up_to(most, Verdict::outside("the resin gels sooner than planned: fewer holes from one nozzle, and have the studs ready."))
        .above(Verdict::stop(outside, PLANNER));
    Item::new(
        "bond_temperature",
        "bond",
        "Temperature of the concrete",
        units(planned),
        number(Unit::Celsius, [-40.0, 80.0], bands),
    )
    .lead("Concrete at")
    .how(format!(
        "In a hole, not in the air. Under {} or over {} no stud is set.",
        units(least),
        units(most)
    ))
    .needed()
    .from(resin::TIMES)
}
