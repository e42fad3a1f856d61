//! Concrete: EN 206-1:2000 Table F.1, EN 1991-1-1 Table A.1, published mixes, and the trade's rules of thumb.

use serde::Deserialize;
use stillground::decided::design_plan;
use stillground::design::Design;
use stillground::halfspace::NoShelf;
use stillground::rules::aci_207_2r_07::adiabatic_rise;
use stillground::rules::aci_211_1_91::absolute_volume;
use stillground::rules::calendar::days_after;
use stillground::rules::en_206_1_2000::exposure::{Exposure, limits};
use stillground::rules::en_13670_2009::curing;
use stillground::site_plan::SitePlan;
use stillground::site_plan::block::Mix;
use stillground::units::{day, kilogram, kilogram_per_cubic_metre as kg_m3, megapascal};
use stillground_tests::close;

fn cube(change: impl Fn(&mut SitePlan)) -> Design {
    let mut plan = SitePlan::unknown();
    (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
        (Some(1.0), Some(1.0), Some(1.0));
    plan.block.upstand_m = Some(0.0);
    change(&mut plan);
    design_plan(&plan, &NoShelf).unwrap()
}

/// EN 206-1:2000, page 65: Table F.1, read.
#[test]
fn exposure_classes_as_printed() {
    for (class, water_cement, strength, cement, air) in [
        (Exposure::Xc2, 0.60, 25.0, 280.0, None),
        (Exposure::Xc4, 0.50, 30.0, 300.0, None),
        (Exposure::Xf1, 0.55, 30.0, 300.0, None),
        (Exposure::Xf3, 0.50, 30.0, 320.0, Some(4.0)),
    ] {
        let found = limits(class);
        assert_eq!(
            (found.water_cement_ratio, found.air_per_cent),
            (water_cement, air),
            "{}",
            found.name
        );
        assert_eq!(
            (megapascal::get(found.strength), kg_m3::get(found.cement)),
            (strength, cement),
            "{}",
            found.name
        );
    }
}

/// EN 1991-1-1 Table A.1: 24 kN/m³; common practice: 2300 to 2400 kg/m³.
#[test]
fn a_cubic_metre_weighs_what_both_say() {
    let code = 24.0;
    let ours = kg_m3::get(stillground::rules::en_1991_1_1_2002::concrete::density());
    close("against the code", ours * 9.80665 / 1000.0, code, 0.02);
    assert!((2300.0..=2400.0).contains(&ours), "common practice");
}

/// Common practice: a metre cube weighs 2.3 to 2.4 t.
#[test]
fn the_metre_cube_of_the_trade() {
    let mass = kilogram::get(cube(|_| {}).block.mass);
    assert!((2300.0..=2400.0).contains(&mass), "{mass}");
}

/// A published mix by absolute volume: 400 kg cement, 180 kg water, 2 % air, 617.4 kg sand of 2.62 and 1246.3 kg stone of 2.83.
#[test]
fn a_published_mix_fills_a_cubic_metre() {
    let solid = 617.44 / 2620.0 + 1246.33 / 2830.0;
    let found = absolute_volume::aggregate(
        kg_m3::new(400.0),
        kg_m3::new(180.0),
        0.02,
        kg_m3::new(1000.0),
    );
    close(
        "solid volume of the aggregate",
        kg_m3::get(found) / 1000.0,
        solid,
        0.005,
    );
}

/// The trade's round figures for a cubic metre: 350 kg cement, 700 kg sand, 1200 kg stone, 150 to 200 l of water.
#[test]
fn a_site_mix_is_near_the_trades_round_figures() {
    let order = cube(|plan| plan.block.mix = Some(Mix::Site)).block.concrete;
    let volume = stillground::units::cubic_metre::get(order.volume);
    close("cement", order.cement_kg.unwrap() / volume, 350.0, 0.10);
    close("sand", order.sand_kg.unwrap() / volume, 700.0, 0.10);
    close("gravel", order.gravel_kg.unwrap() / volume, 1200.0, 0.10);
    assert!((150.0..=200.0).contains(&(order.water_l.unwrap() / volume)));
}

/// Sellers of bagged concrete: 108 bags of 20 kg to a cubic metre.
#[test]
fn bags_to_a_cubic_metre_as_sold() {
    let order = cube(|plan| {
        plan.block.mix = Some(Mix::Bagged);
        plan.block.bag_mass_kg = Some(20.0);
    })
    .block
    .concrete;
    let volume = stillground::units::cubic_metre::get(order.volume);
    close("bags", f64::from(order.bags.unwrap()) / volume, 108.0, 0.04);
}

/// Trade's rule: 10 to 14 K for each 100 kg of cement. Finite differences (`reference/block_heat.*`): a metre cube in the ground
/// keeps a half to four fifths of that at its middle.
#[test]
fn a_metre_cube_keeps_more_than_half_of_its_heat() {
    #[derive(Deserialize)]
    struct Case {
        cement_kg_m3: f64,
        cast_c: f64,
        core_c: f64,
    }
    let cases: Vec<Case> = serde_json::from_str(include_str!("reference/block_heat.json")).unwrap();
    for case in cases {
        let rise = adiabatic_rise::rise_k(kg_m3::new(case.cement_kg_m3), kg_m3::new(2400.0));
        let kept = (case.core_c - case.cast_c) / rise;
        assert!((0.4..=0.8).contains(&kept), "{kept}");
    }
}

/// Guidance for housebuilders: four days for plain, seven for reinforced concrete; EN 13670 class 3, a week at 10 to 15 °C.
#[test]
fn curing_is_about_a_week_in_spring() {
    let found = curing::least(12.0, curing::Development::Medium)
        .map(day::get)
        .unwrap();
    close("curing", found, 7.0, 1e-9);
    assert!(day::get(cube(|_| {}).block.curing) >= 7.0);
}

/// ACI 318: no hole for a bonded anchor before 21 days; and common practice, four weeks before the telescope.
#[test]
fn a_summer_block_is_drilled_after_three_weeks_and_loaded_after_four() {
    let block = cube(|plan| plan.work.temperature_c = Some(20.0)).block;
    assert_eq!(day::get(block.drill_after), 21.0);
    close("loaded", day::get(block.load_after), 28.0, 0.04);
}

/// Python's own calendar (`reference/calendar_days.*`).
#[test]
fn dates_as_another_calendar_counts_them() {
    #[derive(Deserialize)]
    struct Case {
        start: String,
        days: i64,
        end: String,
    }
    let cases: Vec<Case> =
        serde_json::from_str(include_str!("reference/calendar_days.json")).unwrap();
    assert!(cases.len() > 150);
    for case in cases {
        assert_eq!(
            days_after(&case.start, case.days).as_deref(),
            Some(case.end.as_str())
        );
    }
}
