//! Observing floor: where a person's weight reaches the ground, and what stands over the block.
//!
//! On bare ground a weight presses where it stands. A slab spreads it over a ring of points. A deck carries it to its
//! posts: along the joists to the bearers and along these to the posts, or, where no joists are known, to the posts round it.
//! Whatever the kind, the shares add to one and their centre is the place of the weight, except
//! beyond the outermost posts of a deck.

pub mod checks;
pub mod deck;
pub mod opening;
pub mod places;
pub mod slab;

use serde::Serialize;

use crate::brief::{Brief, Origin};
use crate::notes::{Found, Notes};
use crate::site_plan::floor::FloorKind;
use crate::stages::block::Block;
use crate::stages::floor::deck::Framing;
use crate::stages::floor::opening::{Opening, Round};
use crate::stages::floor::places::{StandPlace, WalkCorner};
use crate::stages::ground::Ground;
use crate::stages::pier::Pier;
use crate::units::{Length, metre};

/// A share of a load that reaches the ground at one place. A place inside the block's plan presses on the block itself.
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
    /// What people stand on.
    pub kind: FloorKind,
    /// Level above ground.
    #[serde(rename = "level_m", with = "metre")]
    pub level: Length,
    /// Extent along x, evenly on both sides of the axis.
    #[serde(rename = "length_m", with = "metre")]
    pub length: Length,
    /// Extent along y, evenly on both sides of the axis.
    #[serde(rename = "width_m", with = "metre")]
    pub width: Length,
    /// Hole in it for pier or block; none in bare ground.
    pub opening: Option<Opening>,
    /// Posts that carry a deck; empty for ground and slab.
    pub supports: Vec<[f64; 2]>,
    /// Whether those posts were stated or laid out here.
    pub supports_origin: Origin,
    /// Distance over which a slab spreads a load; none for ground and deck.
    #[serde(rename = "slab_spread_m", with = "metre::option")]
    pub slab_spread: Option<Length>,
    /// Where people stand against block and reach.
    pub stands: Vec<StandPlace>,
    /// Corners of the walk against block and reach.
    pub walk: Vec<WalkCorner>,
    /// Whether the walk crosses the block's plan.
    pub walk_over_block: bool,
    /// Shortest distance from the walk to the block's side, nought over it; none without a walk.
    #[serde(rename = "walk_to_block_m", with = "metre::option")]
    pub walk_to_block: Option<Length>,
    /// Distance from the block's side within which a weight tilts it most: its depth.
    #[serde(rename = "reach_m", with = "metre")]
    pub reach: Length,
    /// Half the block's sides, along x and y.
    #[serde(skip)]
    pub block_half_m: [f64; 2],
    /// Bearers and joists of a deck; none where its posts stand in no lines that could carry them.
    #[serde(skip)]
    pub framing: Option<Framing>,
}

impl Floor {
    /// Whether the floor passes over the block; if not, who stands over the block stands on it.
    pub fn passes_over_block(&self) -> bool {
        self.opening
            .is_some_and(|opening| opening.round == Round::Pier)
    }

    /// Whether a place is on the floor, or between its posts.
    pub fn carries(&self, x_m: f64, y_m: f64) -> bool {
        let most = |axis: usize, half: f64| {
            self.supports
                .iter()
                .map(|post| post[axis].abs())
                .fold(half, f64::max)
        };
        x_m.abs() <= most(0, 0.5 * metre::get(self.length))
            && y_m.abs() <= most(1, 0.5 * metre::get(self.width))
    }
}

/// Where a weight at a place on the floor reaches the ground: shares that add to one. Off the floor it is the place itself.
pub fn footprints(floor: &Floor, x_m: f64, y_m: f64) -> Vec<Footprint> {
    let itself = vec![Footprint {
        x_m,
        y_m,
        share_ratio: 1.0,
    }];
    if !floor.carries(x_m, y_m) {
        return itself;
    }
    match floor.kind {
        FloorKind::Ground => itself,
        FloorKind::Slab => slab::footprints(floor, x_m, y_m).unwrap_or(itself),
        FloorKind::Deck => deck::footprints(floor, x_m, y_m).unwrap_or(itself),
    }
}

/// Finds the floor.
pub fn stage(brief: &Brief, ground: &Ground, block: &Block, pier: &Pier) -> Found<Floor> {
    let mut notes = Notes::default();
    let said = &brief.floor;
    let kind = said.kind.value;
    let block_half_m = [block.length, block.width].map(|side| 0.5 * metre::get(side));
    let posts = deck::posts(brief, block_half_m, &mut notes);
    let mut value = Floor {
        kind,
        level: said.level.value,
        length: said.length.value,
        width: said.width.value,
        opening: opening::opening(brief, block, pier, &mut notes),
        supports: posts.places,
        supports_origin: posts.origin,
        slab_spread: slab::spread(brief, ground, &mut notes),
        stands: Vec::new(),
        walk: Vec::new(),
        walk_over_block: false,
        walk_to_block: None,
        reach: block.depth,
        block_half_m,
        framing: posts.framing,
    };
    places::locate(brief, &mut value);
    checks::checks(brief, block, &value, &mut notes);
    Found { value, notes }
}

#[cfg(test)]
mod deck_tests;
#[cfg(test)]
mod tests;
