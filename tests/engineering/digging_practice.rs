//! Common practice of digging and of footings for piers: facts of the trade without a published source, each marked so.

use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::NoShelf;
use stillground::notes::Verdict;
use stillground::site_plan::SitePlan;
use stillground::site_plan::excavation::Method;
use stillground::site_plan::site::Soil;
use stillground::stages::ground::soil_table;
use stillground::units::{cubic_metre, metre};

fn metre_cube(soil: Soil, method: Method) -> Design {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(soil);
    plan.excavation.method = Some(method);
    plan.block.length_m = Some(1.0);
    plan.block.width_m = Some(1.0);
    plan.block.depth_m = Some(1.0);
    design_plan(&plan, &NoShelf).unwrap()
}

#[test]
fn dug_soil_takes_more_room() {
    // Common practice: sand and gravel 1.10 to 1.15, clay 1.2 to 1.4, rock 1.5 to 1.7.
    for (soils, low, high) in [
        (
            vec![
                Soil::LooseSand,
                Soil::MediumSand,
                Soil::DenseSand,
                Soil::Gravel,
            ],
            1.10,
            1.15,
        ),
        (
            vec![
                Soil::SoftClay,
                Soil::FirmClay,
                Soil::StiffClay,
                Soil::HardClay,
            ],
            1.2,
            1.4,
        ),
        (vec![Soil::WeatheredRock, Soil::Rock], 1.5, 1.7),
    ] {
        for soil in soils {
            assert!(
                (low..=high).contains(&soil_table::row(soil).bulking_ratio),
                "{}",
                soil.key()
            );
        }
    }
}

#[test]
fn a_metre_cube_of_clay_is_a_day_for_one_and_some_twenty_barrows() {
    // Common practice: two and a half to four hours for a cubic metre by hand, about 15 barrows to the cubic metre of spoil.
    let pit = metre_cube(Soil::FirmClay, Method::Hand).excavation;
    assert!(
        (2.0..=6.0).contains(&pit.digging_person_h),
        "{}",
        pit.digging_person_h
    );
    assert!(
        (15..=25).contains(&pit.barrow_loads),
        "{}",
        pit.barrow_loads
    );
    assert!((cubic_metre::get(pit.spoil_volume) - 1.25).abs() < 1e-12 && pit.skips == 1);
}

#[test]
fn a_small_digger_is_done_in_a_morning() {
    let pit = metre_cube(Soil::StiffClay, Method::Machine).excavation;
    assert!(pit.digging_h < 4.0);
}

#[test]
fn where_it_cannot_go_deep_it_goes_wide() {
    // Common practice: wider where it cannot go deep. Half a metre deep: about one and a half metres wide.
    let mut plan = SitePlan::unknown();
    plan.site.rock_depth_m = Some(0.5);
    let design = design_plan(&plan, &NoShelf).unwrap();
    let side = metre::get(design.excavation.as_stiff_side.unwrap());
    assert!((1.4..=1.6).contains(&side), "{side}");
    let said = &design.block.rules_of_thumb[0].calculation;
    assert!(said.contains("wider: 1.53\u{a0}m square"), "{said}");
    // A rule of thumb is told and never fails: a small post for looking needs no metre cube.
    plan.excavation.max_length_m = Some(1.0);
    plan.excavation.max_width_m = Some(1.0);
    plan.load.mass_kg = Some(15.0);
    let small = design_plan(&plan, &NoShelf).unwrap();
    let mut pit = small.checks.iter();
    let pit =
        pit.all(|check| !check.id.starts_with("excavation.") || check.verdict != Verdict::Fails);
    assert!(pit, "{:?}", small.verdict);
}
