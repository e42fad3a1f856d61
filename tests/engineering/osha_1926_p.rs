//! 29 CFR 1926 Subpart P: slopes of Appendix B, Table B-1, and the depths and distances of 1926.651 and 1926.652.

use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::NoShelf;
use stillground::rules::osha_1926_p_1989::distances::spoil_from_edge;
use stillground::rules::osha_1926_p_1989::slopes::{
    SlopeType, angle_deg, deepest, run_over_rise_ratio, when_wet,
};
use stillground::site_plan::SitePlan;
use stillground::site_plan::excavation::Sides;
use stillground::site_plan::site::Soil;
use stillground::units::metre;
use stillground_tests::close;

fn pit(soil: Soil, depth_m: f64) -> Design {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(soil);
    plan.excavation.sides = Some(Sides::Sloped);
    plan.excavation.max_length_m = Some(20.0);
    plan.excavation.max_width_m = Some(20.0);
    plan.excavation.max_depth_m = Some(6.0);
    plan.excavation.working_space_m = Some(0.3);
    plan.block.length_m = Some(1.0);
    plan.block.width_m = Some(1.0);
    plan.block.depth_m = Some(depth_m);
    design_plan(&plan, &NoShelf).unwrap()
}

#[test]
fn table_b_1_ratios_and_angles() {
    for (soil, ratio, angle) in [
        (SlopeType::StableRock, 0.0, 90.0),
        (SlopeType::A, 0.75, 53.0),
        (SlopeType::B, 1.0, 45.0),
        (SlopeType::C, 1.5, 34.0),
    ] {
        assert_eq!(run_over_rise_ratio(soil), ratio);
        assert_eq!(angle_deg(soil).round(), angle);
    }
}

#[test]
fn twenty_feet_is_the_deepest_slope_of_the_table() {
    close("20 ft", metre::get(deepest()), 6.096, 1e-12);
}

#[test]
fn submerged_soil_is_type_c() {
    assert_eq!(
        [SlopeType::A, SlopeType::B, SlopeType::C].map(when_wet),
        [SlopeType::C; 3]
    );
    assert_eq!(when_wet(SlopeType::StableRock), SlopeType::StableRock);
}

#[test]
fn a_simple_slope_in_type_b_and_c() {
    // Figure B-1: in type C a 1.2 m side runs out 1.8 m, so 1 m + 2 × 0.3 m become 5.2 m; in type B 4.0 m.
    close(
        "type C",
        metre::get(pit(Soil::MediumSand, 1.2).excavation.length),
        5.2,
        1e-12,
    );
    close(
        "type B",
        metre::get(pit(Soil::FirmClay, 1.2).excavation.length),
        4.0,
        1e-12,
    );
}

#[test]
fn a_ladder_from_four_feet_and_protection_from_five() {
    let shallow = pit(Soil::FirmClay, 1.21).excavation;
    let deep = pit(Soil::FirmClay, 1.22).excavation;
    assert!(
        !shallow.way_out && deep.way_out,
        "1926.651(c)(2): 4 ft is 1.219 m"
    );
    let upright = |depth_m| {
        let mut plan = SitePlan::unknown();
        plan.block.depth_m = Some(depth_m);
        plan.excavation.max_depth_m = Some(3.0);
        design_plan(&plan, &NoShelf).unwrap().excavation.protection
    };
    assert!(
        !upright(1.52) && upright(1.53),
        "1926.652(a)(1): 5 ft is 1.524 m"
    );
}

#[test]
fn spoil_lies_two_feet_back() {
    close("2 ft", metre::get(spoil_from_edge()), 0.6096, 1e-12);
    // The plan says it as a tape shows it: up to the next centimetre, never nearer than the rule.
    let planned = metre::get(pit(Soil::FirmClay, 1.0).excavation.spoil_distance);
    assert!((0.6096..0.6196).contains(&planned), "{planned}");
}
