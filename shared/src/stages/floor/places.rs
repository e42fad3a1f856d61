//! Stands and walk against the block and its reach.

use serde::Serialize;

use crate::brief::Brief;
use crate::stages::floor::Floor;
use crate::units::{Length, metre};

/// Where somebody stands.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StandPlace {
    /// What it is called.
    pub name: String,
    /// East of the pier's axis.
    pub x_m: f64,
    /// North of the pier's axis.
    pub y_m: f64,
    /// Mass of the person or thing.
    pub mass_kg: f64,
    /// Whether it is over the block's plan.
    pub over_block: bool,
    /// Whether it is nearer to the block's side than the block is deep.
    pub within_reach: bool,
    /// Distance to the block's side, nought over it.
    #[serde(rename = "to_block_m", with = "metre")]
    pub to_block: Length,
    /// Whether it is on the floor.
    pub on_floor: bool,
}

/// A corner of the walk.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WalkCorner {
    /// East of the pier's axis.
    pub x_m: f64,
    /// North of the pier's axis.
    pub y_m: f64,
    /// Whether it is over the block's plan.
    pub over_block: bool,
    /// Whether it is nearer to the block's side than the block is deep.
    pub within_reach: bool,
}

/// Puts the stands and the walk into the floor.
pub fn locate(brief: &Brief, floor: &mut Floor) {
    let reach = metre::get(floor.reach);
    let stands = brief.floor.stands.value.iter().map(|stand| {
        let to_block = to_block(floor.block_half_m, [stand.x_m, stand.y_m]);
        StandPlace {
            name: stand.name.clone(),
            x_m: stand.x_m,
            y_m: stand.y_m,
            mass_kg: stand.mass_kg,
            over_block: to_block <= 0.0,
            within_reach: to_block < reach,
            to_block: metre::new(to_block),
            on_floor: floor.carries(stand.x_m, stand.y_m),
        }
    });
    floor.stands = stands.collect();
    let corners = brief.floor.walk.value.iter().map(|&[x_m, y_m]| {
        let to_block = to_block(floor.block_half_m, [x_m, y_m]);
        WalkCorner {
            x_m,
            y_m,
            over_block: to_block <= 0.0,
            within_reach: to_block < reach,
        }
    });
    floor.walk = corners.collect();
    floor.walk_to_block =
        walk_to_block(floor.block_half_m, &brief.floor.walk.value).map(metre::new);
    floor.walk_over_block = floor
        .walk_to_block
        .is_some_and(|distance| distance <= metre::new(0.0));
}

/// Distance from a place to the block's plan, nought inside it.
pub fn to_block([bx, by]: [f64; 2], [x, y]: [f64; 2]) -> f64 {
    (x.abs() - bx).max(0.0).hypot((y.abs() - by).max(0.0))
}

/// Shortest distance from a path to the block's plan; none without a path.
///
/// The distance to a convex plan along a straight leg falls and then rises, so that its least is found by halving.
pub fn walk_to_block(block_half_m: [f64; 2], walk: &[[f64; 2]]) -> Option<f64> {
    let single = walk.first().map(|&place| to_block(block_half_m, place));
    walk.windows(2)
        .map(|leg| leg_to_block(block_half_m, leg[0], leg[1]))
        .reduce(f64::min)
        .or(single)
}

fn leg_to_block(block_half_m: [f64; 2], from: [f64; 2], to: [f64; 2]) -> f64 {
    let at = |t: f64| {
        to_block(
            block_half_m,
            [
                from[0] + t * (to[0] - from[0]),
                from[1] + t * (to[1] - from[1]),
            ],
        )
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..60 {
        let (a, b) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
        if at(a) <= at(b) {
            high = b;
        } else {
            low = a;
        }
    }
    at(0.5 * (low + high)).min(at(0.0)).min(at(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_past_the_block_comes_as_near_as_its_nearest_point() {
        let half = [0.5, 0.5];
        assert!((walk_to_block(half, &[[-2.0, -1.2], [2.0, -1.2]]).unwrap() - 0.7).abs() < 1e-12);
        assert_eq!(walk_to_block(half, &[[-2.0, -2.0], [2.0, 2.0]]), Some(0.0));
        assert_eq!(walk_to_block(half, &[[0.2, 0.4]]), Some(0.0));
        assert_eq!(walk_to_block(half, &[]), None);
        assert!((to_block(half, [3.5, 4.5]) - 5.0).abs() < 1e-12);
    }
}
