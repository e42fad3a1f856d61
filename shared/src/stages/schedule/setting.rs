//! From the first hole to the tightened column.

use crate::figure::{Celsius, Millimetre, Unit};
use crate::notes::When;
use crate::rules::en_1992_1_1_2004::maturity;
use crate::site_plan::pier::Fill;
use crate::stages::anchors::Seat;
use crate::stages::anchors::torque::WaitsFor;
use crate::stages::pier::{ONE_PERSON_KG, TWO_PEOPLE_KG};
use crate::units::{hour, kilogram};

use super::{Job, Plan};

/// The longest curing time of any resin's table, h.
const LONGEST_CURE_H: f64 = 72.0;
/// Grout's wait at 20 °C, h.
const GROUT_H: f64 = 72.0;

pub(super) fn tasks(job: &Job, plan: &mut Plan) {
    drilling(job, plan);
    standing(job, plan);
    tightening(job, plan);
}

/// Hours before the studs may be loaded, and why; outside the resin's range the longest of the table
/// keeps the rest of the schedule readable.
fn resin_cures(job: &Job) -> (f64, String) {
    let temperature = job.brief.anchors.concrete_temperature_c.value;
    let at = job.brief.units.say(temperature, Celsius);
    if let Some(time) = job.anchors.setting.cure_time {
        return (
            hour::get(time),
            format!(
                "The resin's curing time at {at}, doubled in wet holes; the product's own sheet replaces it."
            ),
        );
    }
    let why = format!(
        "At {at} the resin's table allows no bonding: do not bond then. The time shown, the longest in the table, only fills \
         the place."
    );
    (LONGEST_CURE_H, why)
}

fn drilling(job: &Job, plan: &mut Plan) {
    let count = job.brief.anchors.count.value;
    plan.work(
        When::Drilling,
        "drill",
        "Lay the template and drill",
        &["harden", "strike", "backfill"],
        1.0 + 0.25 * count,
        format!(
            "{count:.0} holes, {} deep: one pilot pass and one to depth for each, depth and angle checked with a dry stud.",
            job.brief.units.say( job.anchors.hole_depth, Millimetre)
        ),
    );
    plan.work(
        When::Bonding,
        "bond",
        "Clean the holes, inject and set the studs",
        &["drill"],
        0.5 + 0.2 * count,
        "Blown, brushed and blown as the resin's sheet counts it; one cartridge at a time, each stud set before the resin gels.",
    );
    let (hours, why) = resin_cures(job);
    plan.wait(
        When::Bonding,
        "resin_cures",
        "Wait: the resin cures",
        &["bond"],
        hours,
        why,
    );
}

/// What is lifted over the studs, and by whom: the empty column, since it is filled only where it stands.
fn lifted(job: &Job) -> String {
    let mass = kilogram::get(job.pier.lifted_mass);
    let by = if mass <= ONE_PERSON_KG {
        "one person lifts it and a second guides it"
    } else if mass <= TWO_PEOPLE_KG {
        "two people lift it and a third guides it"
    } else {
        "two people and a hoist, nobody beneath"
    };
    let filled = if job.brief.pier.fill.value == Fill::None {
        ""
    } else {
        " It is filled only when it stands and its nuts are on."
    };
    format!(
        "{} over standing threads: {by}.{filled}",
        job.brief.units.say(mass, Unit::Kilogram)
    )
}

fn standing(job: &Job, plan: &mut Plan) {
    plan.work(
        When::Lifting,
        "stand",
        "Set the column on its studs",
        &["resin_cures"],
        1.5,
        lifted(job),
    );
    plan.work(
        When::Tightening,
        "level",
        "Level the plate",
        &["stand"],
        1.5,
        job.brief.units.either(
            "All lower nuts or shims within a tenth of a millimetre, the level turned end for end.",
            "All lower nuts or shims within four thousandths of an inch, the level turned end for end.",
        ),
    );
    if Seat::wants_grout(job.brief) {
        let pace = maturity::pace_factor(job.brief.work.temperature_c.value);
        plan.work(
            When::Tightening,
            "grout",
            "Grout under the plate",
            &["level"],
            1.5,
            "From one side until it rises at the other; a drain left open.",
        );
        plan.wait(
            When::Tightening,
            "grout_sets",
            "Wait: the grout hardens",
            &["grout"],
            GROUT_H / pace,
            format!(
                "Three days at {}, longer in the cold; its bag may say otherwise.",
                job.celsius(20.0)
            ),
        );
    }
    if job.brief.pier.fill.value != Fill::None {
        plan.work(
            When::Lifting,
            "fill",
            "Fill the column",
            &["level", "grout_sets"],
            job.shared(2.0),
            "Round the ducts, shaken down, and the hole closed.",
        );
    }
}

/// What the nuts are tightened to: the torque's own sentence, and the rounds where it may be done.
fn tightening_says(job: &Job) -> String {
    let torque = &job.anchors.torque;
    match torque.waits_for {
        WaitsFor::Sheet => torque.says.clone(),
        WaitsFor::Nothing | WaitsFor::Grout => format!(
            "In a star and in {} rounds. {}",
            torque.passes.len().max(1),
            torque.says
        ),
    }
}

fn tightening(job: &Job, plan: &mut Plan) {
    plan.work(
        When::Tightening,
        "torque",
        "Tighten the nuts",
        &["level", "grout_sets"],
        0.5 + 0.1 * job.brief.anchors.count.value,
        tightening_says(job),
    );
    plan.wait(
        When::Tightening,
        "relax_day",
        "Wait one day",
        &["torque"],
        24.0,
        "Threads and coatings bed in within hours.",
    );
    plan.work(
        When::Tightening,
        "torque_day",
        "Check the torque after a day",
        &["relax_day"],
        0.25,
        "What has bedded in is made up, to the same torque and never above it.",
    );
    plan.wait(
        When::Tightening,
        "relax_week",
        "Wait one week",
        &["torque"],
        168.0,
        "Resin under steady pull creeps for days.",
    );
    plan.work(
        When::Tightening,
        "torque_week",
        "Check the torque after a week",
        &["relax_week", "torque_day"],
        0.25,
        "Mark nut, stud and plate with one line of paint: a nut that turns shows.",
    );
}
