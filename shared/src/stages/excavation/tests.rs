//! The excavation stage as a whole.

use super::*;
use crate::brief::resolve;
use crate::site_plan::SitePlan;
use crate::site_plan::excavation::Sides;
use crate::site_plan::site::Soil;
use crate::stages::{block, ground, loads, room};

fn excavation(change: impl FnOnce(&mut SitePlan)) -> (Room, Excavation) {
    let mut plan = SitePlan::unknown();
    change(&mut plan);
    let brief = resolve(&plan).unwrap();
    let ground = ground::stage(&brief).value;
    let room = room::room(&brief, &ground);
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room, &loads).value;
    (room, stage(&brief, &ground, &room, &block).value)
}

#[test]
fn water_and_rock_limit_the_depth() {
    let (room, _) = excavation(|plan| plan.site.groundwater_depth_m = Some(0.8));
    assert_eq!(
        (room.limited_by, metre::get(room.depth)),
        (DepthLimit::Water, 0.8 - 0.1)
    );
    let (room, _) = excavation(|plan| plan.site.rock_depth_m = Some(0.5));
    assert_eq!(
        (room.limited_by, metre::get(room.depth)),
        (DepthLimit::Rock, 0.5)
    );
    let (room, pit) = excavation(|plan| plan.site.groundwater_depth_m = Some(0.0));
    assert_eq!(
        (room.limited_by, metre::get(room.depth)),
        (DepthLimit::Water, 0.3)
    );
    assert!(pit.dewatering);
}

/// With water at 0.5 m a metre's pit was too deep and with water at 0.35 m it was not: more water must never be kinder.
#[test]
fn higher_water_never_lets_a_pit_go_deeper() {
    let mut before = f64::INFINITY;
    for water in (0..=40).rev().map(|tenth| 0.05 * f64::from(tenth)) {
        let (room, _) = excavation(|plan| {
            plan.site.groundwater_depth_m = Some(water);
            plan.block.depth_m = Some(1.0);
        });
        let depth = metre::get(room.depth);
        assert!(depth <= before + 1e-12, "{water}: {depth} after {before}");
        before = depth;
    }
}

#[test]
fn a_battered_pit_in_sand_is_as_wide_as_the_published_example() {
    // A metre's block, 1.2 m deep, type C, 0.3 m to work: 1.6 m at the bottom, 5.2 m at the top.
    let (room, pit) = excavation(|plan| {
        plan.site.soil = Some(Soil::MediumSand);
        plan.excavation.sides = Some(Sides::Sloped);
        plan.excavation.max_length_m = Some(8.0);
        plan.excavation.max_width_m = Some(8.0);
        plan.block.length_m = Some(1.0);
        plan.block.width_m = Some(1.0);
        plan.block.depth_m = Some(1.2);
    });
    assert!(!room.against_ground);
    assert!(
        (metre::get(pit.bottom_length) - 1.6).abs() < 1e-12
            && (metre::get(pit.length) - 5.2).abs() < 1e-12
    );
}

#[test]
fn battered_sides_run_out_of_room() {
    let (room, _) = excavation(|plan| {
        plan.excavation.sides = Some(Sides::Sloped);
        plan.excavation.max_length_m = Some(3.0);
        plan.excavation.max_width_m = Some(3.0);
    });
    // 3 − 2 × 0.3 − 0.8 = 1.6 m for two sides at 1 : 1.
    assert_eq!(room.limited_by, DepthLimit::Batter);
    assert!(
        (metre::get(room.depth) - 0.8).abs() < 1e-12
            && (metre::get(room.width) - 0.8).abs() < 1e-12
    );
}

#[test]
fn only_sound_rock_needs_no_protection() {
    let deep = |soil| {
        excavation(|plan| {
            plan.site.soil = Some(soil);
            plan.block.depth_m = Some(1.6);
            plan.excavation.max_depth_m = Some(1.6);
        })
        .1
        .protection
    };
    assert!(deep(Soil::WeatheredRock) && deep(Soil::FirmClay) && !deep(Soil::Rock));
}

#[test]
fn what_goes_away_is_what_the_block_takes() {
    let (_, pit) = excavation(|plan| {
        plan.site.soil = Some(Soil::FirmClay);
        plan.excavation.sides = Some(Sides::Sloped);
        plan.block.length_m = Some(1.0);
        plan.block.width_m = Some(1.2);
        plan.block.depth_m = Some(1.0);
    });
    let buried = metre::get(pit.depth) * 1.0 * 1.2;
    assert!((crate::units::cubic_metre::get(pit.away_volume) - 1.25 * buried).abs() < 1e-9);
    assert!(
        (crate::units::cubic_metre::get(pit.volume - pit.backfill_volume) - buried).abs() < 1e-9
    );
}
