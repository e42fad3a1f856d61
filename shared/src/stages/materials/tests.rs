//! What is on the list follows the plan.

use crate::design::design_plan;
use crate::halfspace::NoShelf;
use crate::site_plan::SitePlan;
use crate::site_plan::block::{Mix, Reinforcement};
use crate::site_plan::excavation::{Method, Sides};
use crate::site_plan::pier::{Fill, Levelling};

use super::{Group, Material, up};

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
    for group in [Group::Digging, Group::Concrete, Group::Column, Group::Studs, Group::Floor, Group::Wiring, Group::Tools, Group::Safety] {
        assert!(list.iter().any(|line| line.group == group), "{group:?}");
    }
    for item in
        ["Hammer-drill bit", "Wire brush", "Blow-out pump", "nozzles", "Washer", "Gloves", "Goggles", "Dust masks", "Fence", "level"]
    {
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
    for item in ["Reinforcing bar", "Duct", "grout", "Kiln-dried sand", "Mini digger", "Trench rammer", "Concrete mixer"] {
        assert!(find(&plain, item).is_none(), "{item}");
    }
    let rich = list(|plan| {
        plan.block.mix = Some(Mix::Site);
        plan.pier.levelling = Some(Levelling::Grout);
        plan.pier.fill = Some(Fill::Sand);
        plan.excavation.method = Some(Method::Machine);
        plan.excavation.sides = Some(Sides::Sloped);
    });
    for item in ["Cement in bags", "Sharp sand", "grout", "Kiln-dried sand", "Mini digger", "Trench rammer", "Plywood", "Concrete mixer"] {
        assert!(find(&rich, item).is_some(), "{item}");
    }
}

#[test]
fn quantities_follow_the_design() {
    let four = list(|_| {});
    assert_eq!(find(&four, "Stud M16").map(|line| line.quantity), Some(5.0));
    let gloves = |people| find(&list(|plan| plan.work.people = Some(people)), "Goggles").map(|line| line.quantity);
    assert_eq!((gloves(1), gloves(5)), (Some(1.0), Some(5.0)));
}

#[test]
fn rounding_up_keeps_what_is_a_step_already() {
    assert_eq!((up(1.2, 0.1), up(1.21, 0.1), up(0.05, 0.25)), (1.2, 1.3, 0.25));
}
