//! All the piers that fit, against brute force: the whole design of every candidate of the lattice, one after another.
//!
//! Expected are the fronts that brute force finds, computed here by `stillground::design::design`.

use stillground::brief::resolve;
use stillground::candidates::{lattice, lattice_of};
use stillground::halfspace::SmallShelf;
use stillground::options;
use stillground::site_plan::SitePlan;
use stillground::verdict::{Says, Within};
use stillground_tests::piers::{both, price};

/// The example of a garden on firm clay, its pit and its column narrowed down to a small lattice.
fn small(change: impl FnOnce(&mut SitePlan)) -> SitePlan {
    let mut plan: SitePlan =
        serde_json::from_str(include_str!("../examples/firm-clay-garden.json")).unwrap();
    plan.site.frost_depth_m = Some(0.4);
    plan.excavation.max_depth_m = Some(0.5);
    plan.block.length_m = Some(0.9);
    plan.block.width_m = Some(0.9);
    plan.pier.outside_diameter_mm = Some(177.8);
    plan.pier.levelling = None;
    price(&mut plan);
    change(&mut plan);
    plan
}

/// The search finds the front of brute force, and all that it looked at and skipped is the lattice.
fn agrees(plan: &SitePlan, least: usize) -> usize {
    let found = both(plan).unwrap();
    assert_eq!(found.looked_at + found.skipped, found.size);
    assert_eq!(found.searched, found.expected);
    assert_eq!(found.searched_by_cost, found.expected_by_cost);
    assert!(found.expected.len() >= least, "{:?}", found.expected);
    found.looked_at
}

#[test]
fn a_small_lattice_has_the_front_of_brute_force() {
    // Depths 0.3 to 0.5 m, of which two are above the frost; four walls, three fills less two, nuts and grout.
    let looked_at = agrees(
        &small(|plan| plan.pier.fill = Some(stillground::site_plan::pier::Fill::None)),
        2,
    );
    assert!(looked_at < 24, "{looked_at}");
}

#[test]
fn sides_that_are_open_have_the_front_of_brute_force() {
    agrees(
        &small(|plan| {
            (plan.block.length_m, plan.block.width_m) = (None, None);
            (plan.excavation.max_length_m, plan.excavation.max_width_m) = (Some(1.7), Some(1.6));
            plan.block.depth_m = Some(0.5);
            plan.pier.wall_mm = Some(6.3);
            plan.pier.fill = Some(stillground::site_plan::pier::Fill::None);
        }),
        2,
    );
}

/// Of every candidate of a lattice the bound is no more than what the modes give, and not so little that it skips nothing.
#[test]
fn the_bound_is_below_what_the_modes_give() {
    use stillground::cast::Cast;
    use stillground::stages::ground_stiffness;
    use stillground::stages::motion::alone::{Standing, season};
    let shelf = SmallShelf::holding(8);
    let mut plan: SitePlan =
        serde_json::from_str(include_str!("../examples/quarry-lane.json")).unwrap();
    plan.pier.outside_diameter_mm = None;
    plan.pier.wall_mm = None;
    plan.pier.plate_side_mm = None;
    plan.pier.fill = None;
    plan.anchors.circle_diameter_mm = None;
    let lattice = lattice_of(&plan, &resolve(&plan).unwrap());
    let size = lattice.sizes().last().unwrap();
    let (mut looked_at, mut nearest) = (0, 0.0f64);
    for column in lattice.columns().step_by(5) {
        let Some((_, brief)) = lattice::tried(&plan, Some(&size), &column) else {
            continue;
        };
        let cast = Cast::of(&brief);
        let (ground, block, pier) = (&cast.ground.value, &cast.block.value, &cast.pier.value);
        let held = ground_stiffness::stage(&brief, ground, block, &shelf).value;
        let standing = Standing::of(&brief, pier);
        let season = season(&brief, ground, block);
        let growth = |alone: stillground::stages::motion::Alone| alone.cost.star_growth_ratio.worst;
        let bound = growth(
            standing
                .at_least(&brief, ground, block, &held, pier, season)
                .unwrap(),
        );
        let modes = growth(
            standing
                .found(&brief, ground, block, &held, pier, season)
                .unwrap(),
        );
        assert!(bound <= modes, "{column:?}: {bound} {modes}");
        nearest = nearest.max(bound / modes);
        looked_at += 1;
    }
    assert!(looked_at > 30 && nearest > 0.5, "{looked_at} {nearest}");
}

/// Ground and pit are asked before any column is chosen, and say the same whatever it is.
#[test]
fn nothing_of_the_column_is_asked_by_ground_and_pit() {
    use stillground::cast::Cast;
    let plan = SitePlan::unknown();
    let lattice = lattice_of(&plan, &resolve(&plan).unwrap());
    let columns: Vec<_> = lattice.columns().collect();
    assert!(columns.len() > 100);
    for size in lattice.sizes().step_by(97) {
        let checks = |at: usize| {
            let (_, brief) = lattice::tried(&plan, Some(&size), &columns[at]).unwrap();
            let cast = Cast::of(&brief);
            (cast.ground, cast.excavation)
        };
        let first = checks(0);
        for at in (0..columns.len()).step_by(41) {
            assert_eq!(checks(at), first);
        }
    }
}

#[test]
fn the_three_ways_are_within_what_is_asked_and_in_order() {
    let plan = small(|plan| plan.excavation.max_depth_m = Some(0.6));
    let found = options::find(&plan, &SmallShelf::holding(64), &|_| true).unwrap();
    let named = &found.named;
    let three =
        [&named.least_digging, &named.middle, &named.stillest].map(|one| one.as_ref().unwrap());
    for one in three {
        assert_eq!(one.still, Some(Within::Within));
        assert!(one.fails.is_empty() && one.build != Says::No);
        assert!(!one.fields.is_empty());
    }
    assert!(three[0].dig_volume_m3 <= three[1].dig_volume_m3);
    assert!(three[1].dig_volume_m3 <= three[2].dig_volume_m3);
    assert!(found.in_the_way.is_empty() && found.nearest.is_none());
    assert_eq!(found.rules_of_thumb.len(), 2);
    assert_eq!(
        serde_json::to_string(&found).unwrap(),
        serde_json::to_string(&options::find(&plan, &SmallShelf::holding(64), &|_| true).unwrap())
            .unwrap()
    );
}

/// A telescope of 2 m² in the open, in a gale, on a slim tall column: nothing that fits a shallow pit keeps the star.
#[test]
fn where_nothing_is_enough_what_stands_in_the_way_is_said() {
    let plan = small(|plan| {
        plan.load.wind_area_m2 = Some(2.0);
        plan.load.enclosure = Some(stillground::site_plan::load::Enclosure::Open);
        plan.load.observing_wind_m_s = Some(10.0);
    });
    let found = options::find(&plan, &SmallShelf::holding(64), &|_| true).unwrap();
    assert!(found.named.least_digging.is_none());
    assert!(found.nearest.is_some());
    assert!(found.in_the_way.len() >= 3, "{:?}", found.in_the_way);
    assert!(found.in_the_way.iter().any(|one| one.would_do.is_some()));
}

#[test]
fn a_pit_too_small_for_any_block_is_answered_plainly() {
    let plan = small(|plan| {
        (plan.block.length_m, plan.block.width_m) = (None, None);
        (plan.excavation.max_length_m, plan.excavation.max_width_m) = (Some(0.35), Some(0.35));
    });
    let found = options::find(&plan, &SmallShelf::holding(8), &|_| true).unwrap();
    assert!(found.front.is_empty() && found.named.least_digging.is_none());
    assert_eq!(found.looked_at + found.skipped, found.lattice.size());
    assert!(!found.in_the_way.is_empty());
}

#[test]
fn a_contradiction_is_named_and_nothing_is_searched() {
    let plan = small(|plan| plan.pier.wall_mm = Some(100.0));
    let problems = options::find(&plan, &SmallShelf::holding(8), &|_| true).unwrap_err();
    let fields: Vec<&String> = problems.0.iter().flat_map(|one| &one.fields).collect();
    assert!(
        fields.iter().any(|field| *field == "pier.wall_mm"),
        "{fields:?}"
    );
}

#[test]
fn peat_is_answered_plainly() {
    let mut plan = small(|_| ());
    plan.site.soil = Some(stillground::site_plan::site::Soil::Peat);
    let found = options::find(&plan, &SmallShelf::holding(8), &|_| true).unwrap();
    assert!(found.front.is_empty());
    assert_eq!(found.in_the_way.len(), 1);
    assert_eq!(found.looked_at + found.skipped, found.lattice.size());
}

#[test]
fn a_plan_with_everything_said_is_one_candidate() {
    let plan = small(|plan| {
        plan.block.depth_m = Some(0.5);
        plan.pier.wall_mm = Some(5.0);
        plan.pier.fill = Some(stillground::site_plan::pier::Fill::None);
        plan.pier.levelling = Some(stillground::site_plan::pier::Levelling::Nuts);
    });
    let found = options::find(&plan, &SmallShelf::holding(8), &|_| true).unwrap();
    assert_eq!((found.lattice.size(), found.looked_at), (1, 1));
}

#[test]
fn without_time_it_says_what_was_not_reached() {
    let plan = small(|_| ());
    let found = options::find(&plan, &SmallShelf::holding(8), &|_| false).unwrap();
    assert!(found.front.is_empty() && found.not_reached > 0);
    assert_eq!(
        found.looked_at + found.skipped + found.not_reached,
        found.lattice.size()
    );
}
