//! Any valid site, pit and floor gives finite figures, ordered ranges and shares that add to one.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use proptest::prelude::*;
use proptest::sample::select;

use stillground::brief::resolve;
use stillground::field::NumberField;
use stillground::site_plan::excavation::{Method, Sides};
use stillground::site_plan::floor::FloorKind;
use stillground::site_plan::site::Soil;
use stillground::site_plan::{Excavation, Floor, Site, SitePlan, Stand};
use stillground::stages::{block, excavation, floor, ground, loads, pier, room};
use stillground::units::Spread;

/// Each number of the sections not known, at an end of its range, or anywhere in it.
fn numbers() -> impl Strategy<Value = Vec<Option<f64>>> {
    let one = |field: &'static NumberField| {
        prop_oneof![
            4 => Just(None),
            1 => Just(Some(field.least)),
            1 => Just(Some(field.most)),
            4 => (field.least..field.most).prop_map(Some),
        ]
    };
    fields().map(one).collect::<Vec<_>>()
}

fn fields() -> impl Iterator<Item = &'static NumberField> {
    [Site::NUMBERS, Excavation::NUMBERS, Floor::NUMBERS]
        .into_iter()
        .flatten()
}

fn place() -> impl Strategy<Value = [f64; 2]> {
    // A coarse grid lets posts fall on one line and on one another.
    prop_oneof![
        (-5i32..=5, -5i32..=5).prop_map(|(x, y)| [f64::from(x) * 0.5, f64::from(y) * 0.5]),
        [-50.0..50.0, -50.0..50.0]
    ]
}

fn plan() -> impl Strategy<Value = SitePlan> {
    let choices = (
        proptest::option::of(select(Soil::ALL)),
        proptest::option::of(select(Method::ALL)),
        proptest::option::of(select(Sides::ALL)),
        proptest::option::of(select(FloorKind::ALL)),
    );
    let places = (
        proptest::option::of(proptest::collection::vec(place(), 0..=12)),
        proptest::option::of(proptest::collection::vec(place(), 0..=12)),
        proptest::option::of(proptest::collection::vec(place(), 0..=20)),
    );
    (numbers(), choices, places).prop_map(
        |(numbers, (soil, method, sides, kind), (stands, walk, supports))| {
            let mut plan = SitePlan::unknown();
            for (field, value) in fields().zip(numbers) {
                (field.set)(&mut plan, value);
            }
            (
                plan.site.soil,
                plan.excavation.method,
                plan.excavation.sides,
                plan.floor.kind,
            ) = (soil, method, sides, kind);
            let stand = |[x_m, y_m]: [f64; 2]| Stand {
                name: "Somebody".into(),
                x_m,
                y_m,
                mass_kg: 80.0,
            };
            plan.floor.stands = stands.map(|places| places.into_iter().map(stand).collect());
            (plan.floor.walk, plan.floor.supports) = (walk, supports);
            plan
        },
    )
}

/// No number in a value's text is not a number or without end.
fn finite(what: &str, value: &impl std::fmt::Debug) {
    let text = format!("{value:?}");
    let bad = text
        .split(|c: char| !c.is_alphanumeric())
        .find(|word| ["NaN", "inf"].contains(word));
    assert!(bad.is_none(), "{what}: {text}");
}

fn ordered<T: PartialOrd>(what: &str, spread: &Spread<T>) {
    assert!(
        spread.low <= spread.typical && spread.typical <= spread.high,
        "{what}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn any_valid_site_pit_and_floor_is_finite(plan in plan()) {
        // A contradiction is named, and then there is nothing to design.
        let Ok(brief) = resolve(&plan) else { return Ok(()) };
        let ground = ground::stage(&brief);
        let room = room::room(&brief, &ground.value);
        let loads = loads::stage(&brief).value;
        let block = block::stage(&brief, &ground.value, &room, &loads).value;
        let pit = excavation::stage(&brief, &ground.value, &room, &block);
        let column = pier::stage(&brief, &block, &loads).value;
        let floor = floor::stage(&brief, &ground.value, &block, &column);
        finite("room", &room);
        finite("ground", &ground);
        finite("pit", &pit);
        finite("floor", &floor);

        let ground = ground.value;
        ordered("unit weight", &ground.unit_weight_range);
        ordered("Poisson's ratio", &ground.poisson_ratio_range);
        ground.shear_modulus.iter().for_each(|spread| ordered("shear modulus", spread));
        ground.presumed_bearing_range.iter().for_each(|spread| ordered("bearing", spread));
        if let (Some(speed), Some(weight)) = (plan.site.shear_wave_speed_m_s, plan.site.unit_weight_kn_m3) {
            let exact = weight * 1000.0 / 9.806_65 * speed * speed;
            let found = ground.shear_modulus.map(|spread| spread.typical.value);
            prop_assert!(found.is_some_and(|found| (found - exact).abs() <= 1e-12 * exact), "{found:?} against {exact}");
        }
        prop_assert!(ground.poisson_ratio_range.low >= 0.0 && ground.poisson_ratio_range.high < 0.5);
        prop_assert!(room.depth.value > 0.0 && room.length.value > 0.0 && room.width.value > 0.0);
        prop_assert!(pit.value.spoil_volume >= pit.value.volume && pit.value.volume.value > 0.0);

        for [x, y] in [[0.0, 0.3], [1.0, -1.0], [4.0, 7.0], [-0.6, 0.2]] {
            let shares = floor::footprints(&floor.value, x, y);
            finite("footprints", &shares);
            prop_assert!(shares.iter().all(|share| share.share_ratio >= 0.0));
            prop_assert!((shares.iter().map(|share| share.share_ratio).sum::<f64>() - 1.0).abs() < 1e-9);
        }
    }
}
