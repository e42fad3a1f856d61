//! What is on the list follows the plan.

use crate::brief::resolve;
use crate::decided::design_plan;
use crate::halfspace::NoShelf;
use crate::site_plan::SitePlan;
use crate::site_plan::block::{FrostRemedy, Mix, Reinforcement};
use crate::site_plan::excavation::{Method, Sides};
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::{anchors, block, excavation, floor, ground, loads, pier, room};

use super::{Group, Material, up};
use crate::figure::{Unit, Units};
use crate::site_plan::floor::FloorKind;
use crate::site_plan::prices::lines::{self, LINES};
use crate::site_plan::site::Soil;
use crate::stock::Stock;
use std::collections::BTreeSet;

fn list(change: impl Fn(&mut SitePlan)) -> Vec<Material> {
    let mut plan = SitePlan::unknown();
    change(&mut plan);
    design_plan(&plan, &NoShelf).unwrap().materials
}

fn find<'a>(list: &'a [Material], item: &str) -> Option<&'a Material> {
    list.iter().find(|line| line.item.contains(item))
}

#[test]
fn every_part_of_the_work_has_its_lines() {
    let list = list(|_| {});
    for group in [
        Group::Digging,
        Group::Concrete,
        Group::Column,
        Group::Studs,
        Group::Floor,
        Group::Wiring,
        Group::Tools,
        Group::Safety,
    ] {
        assert!(list.iter().any(|line| line.group == group), "{group:?}");
    }
    for item in [
        "Hammer-drill bit",
        "Wire brush",
        "Blow-out pump",
        "nozzles",
        "Washer",
        "Gloves",
        "Goggles",
        "Dust masks",
        "Fence",
        "level",
    ] {
        assert!(find(&list, item).is_some(), "{item}");
    }
}

#[test]
fn nothing_is_ordered_that_the_plan_does_not_build() {
    let plain = list(|plan| {
        plan.block.reinforcement = Some(Reinforcement::Plain);
        plan.block.duct_count = Some(0);
        plan.pier.levelling = Some(Levelling::Nuts);
        plan.pier.fill = Some(Fill::None);
    });
    for item in [
        "Reinforcing bar",
        "Duct",
        "grout",
        "Kiln-dried sand",
        "Mini digger",
        "Trench rammer",
        "Concrete mixer",
    ] {
        assert!(find(&plain, item).is_none(), "{item}");
    }
    let rich = list(|plan| {
        plan.block.mix = Some(Mix::Site);
        plan.pier.levelling = Some(Levelling::Grout);
        plan.pier.fill = Some(Fill::Sand);
        plan.excavation.method = Some(Method::Machine);
        plan.excavation.sides = Some(Sides::Sloped);
    });
    for item in [
        "Cement CEM I 42.5 N",
        "Sharp sand",
        "grout",
        "Kiln-dried sand",
        "Mini digger",
        "Trench rammer",
        "Plywood",
        "Concrete mixer",
    ] {
        assert!(find(&rich, item).is_some(), "{item}");
    }
}

#[test]
fn quantities_follow_the_design() {
    let four = list(|_| {});
    assert_eq!(find(&four, "Stud M16").map(|line| line.quantity), Some(5.0));
    let gloves = |people| {
        find(&list(|plan| plan.work.people = Some(people)), "Goggles").map(|line| line.quantity)
    };
    assert_eq!((gloves(1), gloves(5)), (Some(1.0), Some(5.0)));
}

#[test]
fn rounding_up_keeps_what_is_a_step_already() {
    assert_eq!(
        (up(1.2, 0.1), up(1.21, 0.1), up(0.05, 0.25)),
        (1.2, 1.3, 0.25)
    );
}

/// Plans that between them ask for every line.
fn made_up(pick: usize) -> SitePlan {
    let mut plan = SitePlan::unknown();
    plan.units = [Units::Metric, Units::Imperial].get(pick % 2).copied();
    plan.block.mix = Mix::ALL.get(pick % 3).copied();
    plan.block.reinforcement = Reinforcement::ALL.get(pick / 2 % 3).copied();
    plan.pier.fill = Fill::ALL.get(pick / 3 % 3).copied();
    plan.pier.levelling = Levelling::ALL.get(pick / 4 % 2).copied();
    plan.excavation.method = Method::ALL.get(pick / 5 % 2).copied();
    plan.excavation.sides = Sides::ALL.get(pick / 6 % 2).copied();
    plan.floor.kind = FloorKind::ALL.get(pick / 7 % 3).copied();
    plan.site.soil = Soil::ALL.get(pick % Soil::ALL.len()).copied();
    match pick % 4 {
        0 => plan.site.groundwater_depth_m = Some(0.1),
        1 => (plan.excavation.max_depth_m, plan.block.depth_m) = (Some(2.5), Some(2.0)),
        2 => plan.pier.stiffener_count = Some(4),
        _ => {}
    }
    plan.block.dowel_count = pick.is_multiple_of(3).then_some(4);
    plan.block.frost_remedy = (pick % 5 < 4).then(|| FrostRemedy::ALL[pick % 5 % 4]);
    plan.block.upstand_m = pick.is_multiple_of(4).then_some(0.1);
    plan.work.temperature_c = (pick % 3 == 1).then_some(4.0);
    plan
}

/// The materials by themselves, without what takes long to find and changes nothing of them.
fn order(plan: &SitePlan) -> Option<Vec<Material>> {
    let brief = resolve(plan).ok()?;
    let ground = ground::stage(&brief).value;
    let room = room::room(&brief, &ground);
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room, &loads).value;
    let excavation = excavation::stage(&brief, &ground, &room, &block).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    let anchors = anchors::stage(&brief, &block, &loads).value;
    let floor = floor::stage(&brief, &ground, &block, &pier).value;
    let parts = crate::stages::parts::stage(&brief, &block, &pier).value;
    Some(super::stage(&brief, &excavation, &block, &pier, &anchors, &floor, &parts).value)
}

#[test]
fn every_line_has_a_name_of_its_own_and_keeps_its_unit() {
    let mut met = BTreeSet::new();
    for pick in 0..120 {
        let Some(materials) = order(&made_up(pick)) else {
            continue;
        };
        let mut seen = BTreeSet::new();
        for line in &materials {
            let known =
                lines::line(line.id).unwrap_or_else(|| panic!("{} is not catalogued", line.id));
            assert_eq!(known.unit, line.unit, "{}", line.id);
            assert!(seen.insert(line.id), "{} stands twice", line.id);
            assert!(!line.other_words.is_empty());
            for stock in &line.stock {
                assert_eq!(
                    lines::line(stock.id).map(|known| known.unit),
                    Some(Unit::Count),
                    "{}",
                    stock.id
                );
                assert!(
                    seen.insert(stock.id) && stock.pieces > 0 && stock.waste_m >= 0.0,
                    "{}",
                    stock.id
                );
            }
        }
        met.extend(seen);
    }
    let missing: Vec<_> = LINES
        .iter()
        .map(|line| line.id)
        .filter(|id| !met.contains(id))
        .collect();
    assert!(missing.is_empty(), "no plan asks for {missing:?}");
}

#[test]
fn studs_can_be_cut_from_rods_and_the_tube_from_whole_lengths() {
    let list = list(|_| {});
    let of = |id: &str| list.iter().find(|line| line.id == id).unwrap();
    let stud = of("stud");
    for stock in &stud.stock {
        assert!(
            f64::from(stock.pieces) * stock.length_m > stock.waste_m,
            "{stock:?}"
        );
    }
    assert_eq!(stud.stock.len(), 3);
    assert!(of("tube").stock.iter().all(|stock| stock.pieces == 1));
    assert!(of("nut").stock.is_empty());
}

/// EN 206-1:2000 Table F.1, XF3: 4 % of air; ACI 318-19 Table 19.3.3.1 (from memory), F2 with 3/4 in stone: 6 %.
#[test]
fn concrete_that_freezes_wet_is_ordered_with_air_in_it() {
    let ready = |frost, stock| {
        list(|plan| {
            plan.stock = Some(stock);
            plan.block.mix = Some(Mix::Ready);
            plan.site.frost_depth_m = Some(frost);
        })
        .into_iter()
        .find(|line| line.id == "concrete-ready")
        .unwrap()
    };
    for (stock, air) in [(Stock::Metric, "4% of air"), (Stock::Inch, "6% of air")] {
        let line = ready(0.8, stock);
        assert!(line.item.ends_with("air-entrained"), "{}", line.item);
        assert!(line.note.contains(air), "{}", line.note);
        assert!(!ready(0.0, stock).note.contains("air"));
    }
}
