//! The floor stage as a whole.

use super::*;
use crate::brief::resolve;
use crate::site_plan::SitePlan;
use crate::stages::{block, ground, loads, pier, room};

fn floor(change: impl FnOnce(&mut SitePlan)) -> Found<Floor> {
    let mut plan = SitePlan::unknown();
    change(&mut plan);
    let brief = resolve(&plan).unwrap();
    let ground = ground::stage(&brief).value;
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room::room(&brief, &ground), &loads).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    stage(&brief, &ground, &block, &pier)
}

/// Shares add to one, and their centre is the place.
fn balanced(floor: &Floor, x: f64, y: f64) {
    let shares = footprints(floor, x, y);
    let sum = |value: fn(&Footprint) -> f64| {
        shares
            .iter()
            .map(|share| share.share_ratio * value(share))
            .sum::<f64>()
    };
    assert!(
        (sum(|_| 1.0) - 1.0).abs() < 1e-9
            && (sum(|s| s.x_m) - x).abs() < 1e-9
            && (sum(|s| s.y_m) - y).abs() < 1e-9,
        "{shares:?}"
    );
}

#[test]
fn every_kind_of_floor_keeps_a_weight_in_balance() {
    for kind in [FloorKind::Ground, FloorKind::Slab, FloorKind::Deck] {
        let found = floor(|plan| {
            plan.floor.kind = Some(kind);
            plan.floor.length_m = Some(4.0);
        });
        for [x, y] in [[0.0, -1.0], [1.2, 0.9], [-0.3, 0.2], [1.7, -1.35]] {
            balanced(&found.value, x, y);
        }
    }
}

#[test]
fn stated_posts_share_by_the_lever_rule() {
    let found = floor(|plan| {
        plan.floor.kind = Some(FloorKind::Deck);
        plan.floor.supports = Some(vec![[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]]);
    });
    let shares = footprints(&found.value, 0.5, -1.0);
    assert_eq!(shares.len(), 2);
    assert!(
        shares
            .iter()
            .any(|share| share.x_m == 1.0 && (share.share_ratio - 0.75).abs() < 1e-12)
    );
    balanced(&found.value, 0.3, 0.4);
}

#[test]
fn posts_that_make_no_rectangle_share_by_three() {
    let found = floor(|plan| {
        plan.floor.kind = Some(FloorKind::Deck);
        plan.floor.supports = Some(vec![[-1.5, -1.0], [1.5, -1.2], [0.1, 1.4], [0.1, 1.4]]);
    });
    assert_eq!(
        found.value.supports.len(),
        3,
        "the same post twice is one post"
    );
    balanced(&found.value, 0.1, 0.0);
}

#[test]
fn posts_that_are_laid_out_stand_clear_of_the_block() {
    let found = floor(|plan| plan.floor.kind = Some(FloorKind::Deck));
    let check = found
        .notes
        .checks
        .iter()
        .find(|check| check.id == "floor.posts")
        .unwrap();
    assert!(check.capacity.unwrap() >= 0.3 - 1e-12);
    assert!(
        found
            .notes
            .assumptions
            .iter()
            .any(|assumption| assumption.field == "floor.supports")
    );
}
