//! What the nuts may be tightened to by the way in which the plate stands, with and without the product's sheet.
//!
//! The ceilings are the least of published sheets of bonded studs, rounded down: of M10 read, of M12 and up from memory, so that they
//! may rise and never be passed before a sheet is at hand (`shared/data/torque_ceilings.csv`).

use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::NoShelf;
use stillground::notes::Verdict;
use stillground::record::items;
use stillground::rules::threads;
use stillground::site_plan::SitePlan;
use stillground::site_plan::anchors::{LowerNuts, Size};
use stillground::site_plan::pier::Levelling;
use stillground::stages::anchors::torque::{WaitsFor, Way};
use stillground::units::{millimetre, newton_metre};

fn design(change: impl FnOnce(&mut SitePlan)) -> Design {
    let mut plan = SitePlan::unknown();
    change(&mut plan);
    design_plan(&plan, &NoShelf).unwrap()
}

fn on(way: Way, plan: &mut SitePlan) {
    match way {
        Way::Nuts => {}
        Way::Grouted => plan.pier.levelling = Some(Levelling::Grout),
        Way::Straight => {
            plan.anchors.lower_nuts = Some(LowerNuts::None);
            plan.pier.gap_mm = Some(0.0);
        }
        Way::Ungrouted => plan.anchors.lower_nuts = Some(LowerNuts::BackedOff),
    }
}

/// Basis: M10 12, M12 25, M16 40, M20 60, M24 100 N m; half nearer than five diameters to an edge.
#[test]
fn no_nut_passes_the_ceiling_before_a_sheet_is_at_hand() {
    let sizes = [Size::M10, Size::M12, Size::M16, Size::M20, Size::M24];
    for (size, ceiling) in sizes.into_iter().zip([12.0, 25.0, 40.0, 60.0, 100.0]) {
        let at =
            |edge: f64| newton_metre::get(threads::torque_ceiling(size, millimetre::new(edge)));
        let five = 5.0 * millimetre::get(threads::thread(size).diameter);
        assert_eq!(
            [at(five), at(five - 1.0), at(1000.0)],
            [ceiling, ceiling / 2.0, ceiling]
        );
        for way in Way::ALL {
            let found = design(|plan| {
                plan.anchors.size = Some(size);
                on(way, plan);
            });
            let torque = &found.anchors.torque;
            assert!(
                newton_metre::get(torque.high) <= ceiling,
                "{way:?} {size:?}"
            );
            assert!(torque.set <= torque.high && torque.used <= torque.high);
            let waits_for = if way == Way::Ungrouted {
                WaitsFor::Grout
            } else {
                WaitsFor::Sheet
            };
            assert_eq!(torque.waits_for, waits_for);
            let check = found
                .checks
                .iter()
                .find(|check| check.id == "anchors.torque");
            assert_eq!(check.unwrap().verdict, Verdict::Unknown, "{way:?} {size:?}");
        }
    }
}

/// The plate with backed-off nuts and no grout was told 2.6 N m; no installer sets that. It is grouted first, and the plan has the grout.
#[test]
fn a_plate_with_backed_off_nuts_is_grouted_and_not_tightened() {
    for nuts in [LowerNuts::BackedOff, LowerNuts::None] {
        let found = design(|plan| {
            plan.anchors.lower_nuts = Some(nuts);
            plan.anchors.max_torque_n_m = Some(80.0);
        });
        let torque = &found.anchors.torque;
        assert!(
            torque.says.starts_with("Do not tighten yet") && torque.says.contains("Grout"),
            "{}",
            torque.says
        );
        assert!(newton_metre::get(torque.set) > 20.0, "no 2.6 N m");
        let after = |id: &str| {
            let task = found.schedule.iter().find(|task| task.id == id);
            task.unwrap_or_else(|| panic!("no {id}")).after.clone()
        };
        assert!(after("torque").contains(&"grout_sets"));
        assert_eq!(after("grout_sets"), ["grout"]);
        assert!(found.materials.iter().any(|line| line.id == "grout"));
    }
}

/// With the sheet: the least of the product's maximum, the lasting pull on the bond, the thread, and the foot's bending.
#[test]
fn with_the_sheet_the_least_limit_governs_and_is_named() {
    let known = |way: Way, most: f64| {
        design(|plan| {
            on(way, plan);
            plan.anchors.max_torque_n_m = Some(most);
        })
    };
    for way in [Way::Nuts, Way::Grouted] {
        let torque = known(way, 80.0).anchors.torque;
        assert_eq!(newton_metre::get(torque.high), 80.0, "{way:?}");
        assert!(
            torque.says.contains("the product's own maximum decides"),
            "{}",
            torque.says
        );
    }
    // Half of an M16's proof load of 91.1 kN at K 0.2 is 146 N m; seven tenths are 204 (computed apart).
    let nuts = known(Way::Nuts, 500.0).anchors.torque;
    assert_eq!(newton_metre::get(nuts.high), 145.0);
    assert!(nuts.says.contains("half of the stud's proof load decides"));
    assert_eq!(
        newton_metre::get(known(Way::Grouted, 500.0).anchors.torque.high),
        200.0
    );
    let straight = known(Way::Straight, 500.0).anchors.torque;
    assert!(straight.high < nuts.high && straight.says.contains("bending of plate and wall"));
    // 0.52 of 40 N m twists a stud whose lower nut turns (computed apart): 21 N m.
    assert!(
        known(Way::Nuts, 40.0)
            .anchors
            .torque
            .says
            .contains("21\u{a0}N")
    );
}

/// One home: step, schedule, record and interface say one figure.
#[test]
fn one_figure_stands_everywhere() {
    for way in Way::ALL {
        for most in [None, Some(60.0)] {
            let mut plan = SitePlan::unknown();
            on(way, &mut plan);
            plan.anchors.max_torque_n_m = most;
            let brief = stillground::brief::resolve(&plan).unwrap();
            let found = design_plan(&plan, &NoShelf).unwrap();
            let torque = &found.anchors.torque;
            let step = found.anchors.steps.iter().find(|step| step.id == "torque");
            assert_eq!(step.unwrap().says, torque.says);
            let task = found
                .schedule
                .iter()
                .find(|task| task.id == "torque")
                .unwrap();
            assert!(task.why.contains(&torque.says), "{}", task.why);
            let set = brief.units.say(
                newton_metre::get(torque.set),
                stillground::figure::Unit::NewtonMetre,
            );
            let items = items(&brief, &found);
            let expected = |id: &str| {
                let item = items.iter().find(|item| item.id == id);
                item.unwrap_or_else(|| panic!("no {id}")).expected.clone()
            };
            let last = format!("torque:{}:1", torque.passes.len());
            assert_eq!(
                [expected(&last), expected("torque_day:1")],
                [set.clone(), set]
            );
            let written = serde_json::to_value(&found).unwrap();
            assert_eq!(
                written["anchors"]["torque"]["set_n_m"],
                newton_metre::get(torque.set)
            );
        }
    }
}
