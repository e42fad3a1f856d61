//! Observing floor: where a person's weight reaches the ground, and what stands over the block.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::pier::Pier;

/// A share of a load that reaches the ground at one place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Footprint {
    /// East of the pier's axis.
    pub x_m: f64,
    /// North of the pier's axis.
    pub y_m: f64,
    /// Share of the weight, 0 to 1.
    pub share_ratio: f64,
}

/// The floor.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Floor {
    /// Posts that carry a deck; empty for ground and slab.
    pub supports: Vec<[f64; 2]>,
}

/// Where a weight at a place on the floor reaches the ground: shares that add to one.
#[must_use]
pub fn footprints(_floor: &Floor, x_m: f64, y_m: f64) -> Vec<Footprint> {
    vec![Footprint { x_m, y_m, share_ratio: 1.0 }]
}

/// Finds the floor.
#[must_use]
pub fn stage(brief: &Brief, _ground: &Ground, _block: &Block, _pier: &Pier) -> Found<Floor> {
    Found { value: Floor { supports: brief.floor.supports.clone() }, notes: Notes::default() }
}
