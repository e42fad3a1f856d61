//! Whatever plan is made up, it is planned with or refused in words: nothing panics, no figure is infinite, every sheet prints.

use stillground::brief::resolve;
use stillground::design::design;
use stillground_server::shelf::MemoryShelf;
use stillground_tests::generated::{faults, plan, plan_on, sheet_faults, shown_faults};

/// Plans in each run; the example `generated_plans` tries as many as one likes.
const PLANS: u64 = 150;
/// One in so many is drawn and printed.
const PRINTED: u64 = 30;

#[test]
fn a_made_up_plan_is_sound_or_refused() {
    let shelf = MemoryShelf::new();
    let mut planned = 0;
    for seed in 0..PLANS {
        let Ok(brief) = resolve(&plan(seed)) else {
            continue;
        };
        let found = design(&brief, &shelf);
        let mut wrong = faults(&found);
        if planned % PRINTED == 0 {
            wrong.extend(sheet_faults(&brief, &found));
        }
        assert!(wrong.is_empty(), "plan {seed}: {wrong:?}");
        planned += 1;
    }
    assert!(
        planned > PLANS / 10,
        "only {planned} of {PLANS} could be planned with"
    );
}

#[test]
fn plans_on_one_ground_differ_and_are_all_sound() {
    let shelf = MemoryShelf::new();
    let mut refused = 0;
    for seed in 0..40 {
        let (plan, refusals) = plan_on(7, Some([1.0, 1.0, 1.0]), seed);
        refused += refusals.len();
        let found = design(
            &resolve(&plan).expect("contradictions were taken back"),
            &shelf,
        );
        assert_eq!(shown_faults(&found), Vec::<String>::new(), "plan {seed}");
    }
    assert!(
        refused > 0,
        "no plan held a contradiction: the answers are too tame"
    );
}

#[test]
fn a_figure_that_is_none_is_found_wherever_it_is_shown() {
    let brief = resolve(&stillground::site_plan::SitePlan::unknown()).expect("nothing is known");
    let mut found = design(&brief, &MemoryShelf::new());
    assert_eq!(shown_faults(&found), Vec::<String>::new());
    found.materials[0].quantity = f64::NAN;
    found.checks[0].note = "It is inf times as much.".into();
    found.ground_stiffness.low.vertical =
        Some(stillground::units::newton_per_metre::new(f64::INFINITY));
    found.cautions.clear();
    let said = shown_faults(&found).join("; ");
    for what in [
        "quantity is NaN",
        "It is inf times",
        "is inf;",
        "no cautions",
    ] {
        assert!(said.contains(what), "{what}: {said}");
    }
}
