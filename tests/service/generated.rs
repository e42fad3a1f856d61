//! Whatever plan is made up, it is planned with or refused in words: nothing panics, no figure is infinite, every sheet prints.

use stillground::brief::resolve;
use stillground::design::design;
use stillground_server::shelf::MemoryShelf;
use stillground_tests::generated::{faults, plan, sheet_faults};

/// Plans in each run; the example `generated_plans` tries as many as one likes.
const PLANS: u64 = 150;
/// One in so many is drawn and printed.
const PRINTED: u64 = 30;

#[test]
fn a_made_up_plan_is_sound_or_refused() {
    let shelf = MemoryShelf::new();
    let mut planned = 0;
    for seed in 0..PLANS {
        let Ok(brief) = resolve(&plan(seed)) else { continue };
        let found = design(&brief, &shelf);
        let mut wrong = faults(&found);
        if planned % PRINTED == 0 {
            wrong.extend(sheet_faults(&brief, &found));
        }
        assert!(wrong.is_empty(), "plan {seed}: {wrong:?}");
        planned += 1;
    }
    assert!(planned > PLANS / 10, "only {planned} of {PLANS} could be planned with");
}
