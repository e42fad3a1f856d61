//! Floor, wiring, telescope, and what is looked at again later.

use crate::notes::When;
use crate::site_plan::floor::FloorKind;
use crate::stages::schedule::MEASURE;
use crate::units::square_metre;

use super::{Job, Plan};

/// Half a year, in which a winter or a dry summer has passed, h.
const HALF_YEAR_H: f64 = 24.0 * 182.0;

pub(super) fn tasks(job: &Job, plan: &mut Plan) {
    floor(job, plan);
    plan.work(
        When::Wiring,
        "wire",
        "Wire and earth",
        &["stand", "floor"],
        4.0,
        "A licensed electrician draws, connects and tests; the column is earthed before anything is plugged in.",
    );
    plan.work(
        When::Observing,
        "load",
        "Fit the mount and telescope",
        &["full_strength", "torque_day", "wire", "floor", "fill"],
        job.shared(4.0),
        "When the concrete has its full strength. A light mount may stand earlier in calm weather, once the nuts have been checked.",
    );
    plan.work(
        When::Measuring,
        MEASURE,
        "Measure what was built",
        &["load"],
        2.0,
        "A knock, a lean and a pull show how stiff the pier is. Enter them, and this pier's figures stand beside the plan's.",
    );
    plan.work(
        When::Observing,
        "align",
        "Polar-align the mount",
        &["measure"],
        2.0,
        "On the first clear night.",
    );
    plan.wait(
        When::Observing,
        "seasons",
        "Wait through the first winter, or half a year",
        &["align"],
        HALF_YEAR_H,
        "Ground that freezes, dries or settles does it now.",
    );
    plan.work(
        When::Observing,
        "winter",
        "Check polar alignment and nuts after the first winter",
        &["seasons", "torque_week"],
        2.0,
        job.brief.units.either(
            "A tenth of a millimetre across a metre of block is twenty arcseconds. Afterwards once a year.",
            "Four thousandths of an inch across a yard of block are twenty-three arcseconds. Afterwards once a year.",
        ),
    );
}

fn floor(job: &Job, plan: &mut Plan) {
    let said = &job.brief.floor;
    let area = square_metre::get(said.length.value * said.width.value);
    let (person_hours, why) = match said.kind.value {
        FloorKind::Ground => (
            0.3 * area,
            "Gravel or boards on the ground, kept off the block's top.",
        ),
        FloorKind::Slab => (
            1.2 * area,
            "A separate slab, kept off the block by soft foam that is taken out again.",
        ),
        FloorKind::Deck => (
            1.5 * area + job.floor.supports.len() as f64,
            "Posts first, as far from the block as the joists allow; nothing touches the pier.",
        ),
    };
    plan.work(
        When::Flooring,
        "floor",
        "Build the observing floor",
        &["cure", "backfill", "torque"],
        job.shared(person_hours),
        why,
    );
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;

    #[test]
    fn nothing_starts_before_what_it_waits_for() {
        let mut plan = SitePlan::unknown();
        plan.work.start_date = Some("2027-04-19".into());
        let tasks = design_plan(&plan, &NoShelf).unwrap().schedule;
        let find = |id: &str| tasks.iter().find(|task| task.id == id).unwrap();
        for task in &tasks {
            for before in &task.after {
                assert!(
                    find(before).done_h <= task.earliest_h + 1e-9,
                    "{} before {}",
                    task.id,
                    before
                );
            }
        }
        assert!(find("drill").earliest_h - find("pour").done_h >= 21.0 * 24.0);
        assert_eq!(find("set_out").earliest, "2027-04-19");
        assert!(find("drill").earliest.as_str() >= "2027-05-10");
    }

    #[test]
    fn more_hands_and_a_lorry_are_quicker() {
        use crate::site_plan::block::Mix;
        let pour = |people, mix| {
            let mut plan = SitePlan::unknown();
            (plan.work.people, plan.block.mix) = (Some(people), Some(mix));
            let tasks = design_plan(&plan, &NoShelf).unwrap().schedule;
            tasks
                .iter()
                .find(|task| task.id == "pour")
                .map(|task| task.lasts_h)
                .unwrap()
        };
        assert!(pour(1, Mix::Site) > pour(2, Mix::Site) && pour(2, Mix::Site) > pour(4, Mix::Site));
        assert!(pour(2, Mix::Ready) < pour(2, Mix::Bagged));
    }

    #[test]
    fn a_task_without_a_start_day_has_a_number() {
        let tasks = design_plan(&SitePlan::unknown(), &NoShelf)
            .unwrap()
            .schedule;
        assert_eq!(tasks[0].earliest, "day 1");
        for id in ["torque_day", "torque_week", "winter"] {
            assert!(tasks.iter().any(|task| task.id == id), "{id}");
        }
    }
}
