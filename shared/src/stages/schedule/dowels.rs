//! Dowels into the rock: drilled, grouted, tested, before the steel goes in.

use crate::figure::{Kilonewton, Metre};
use crate::notes::When;
use crate::units::{metre, millimetre};

use super::{Job, Plan};

/// Person-hours a metre of hole in rock.
const HOURS_PER_M: f64 = 0.75;
/// Days before a grouted bar is pulled.
const HARDENS_D: f64 = 7.0;

/// The last of its tasks, for what comes after it.
pub(super) const LAST: &str = "dowel_pull";

pub(super) fn tasks(job: &Job, plan: &mut Plan) {
    let Some(dowels) = &job.block.dowels else {
        return;
    };
    let say = |length| job.brief.units.say(length, Metre);
    let metres = f64::from(dowels.count) * metre::get(dowels.length);
    plan.work(
        When::Drilling,
        "dowels",
        "Drill the rock and grout the dowels",
        &["inspect"],
        job.shared(1.0 + HOURS_PER_M * metres),
        format!(
            "{} holes of {}, {} deep in sound rock, blown and washed out; bars pushed into fresh grout and left alone. The rock's face is \
             brushed and washed at the same time.",
            dowels.count,
            job.about_mm(millimetre::get(dowels.hole)),
            say(dowels.length)
        ),
    );
    plan.wait(
        When::Drilling,
        "dowels_harden",
        "Wait: the dowels' grout hardens",
        &["dowels"],
        24.0 * HARDENS_D,
        "A bar that is touched before the grout is hard does not hold.",
    );
    plan.work(
        When::Drilling,
        LAST,
        "Pull-test the dowels",
        &["dowels_harden"],
        job.shared(0.5 * f64::from(dowels.count)),
        format!(
            "Each to {}, held for five minutes. Their tension counts only after that: enter the force in the plan.",
            job.brief
                .units
                .say( dowels.pull_test, Kilonewton)
        ),
    );
}
