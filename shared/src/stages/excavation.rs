//! Excavation: the room there is, and the pit that the block needs.
//!
//! With vertical sides the concrete is poured against the ground: the pit is as large as the block, and the ground is
//! hard against its sides. With battered sides the block is cast in a form at the bottom of a larger pit and the rest is
//! filled again: the sides then hold only as well as the fill is rammed.

pub mod checks;
pub mod digging;
pub mod digging_table;
pub mod face;
pub mod figures;
pub mod neighbours;
pub mod pit;
pub mod spoil;
pub mod wider;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::room::{DepthLimit, Room};
use crate::units::{Length, Mass, Volume, cubic_metre, kilogram, metre};

/// The pit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Excavation {
    /// Length at ground level.
    #[serde(rename = "length_m", with = "metre")]
    pub length: Length,
    /// Width at ground level.
    #[serde(rename = "width_m", with = "metre")]
    pub width: Length,
    /// Depth.
    #[serde(rename = "depth_m", with = "metre")]
    pub depth: Length,
    /// Length at the bottom.
    #[serde(rename = "bottom_length_m", with = "metre")]
    pub bottom_length: Length,
    /// Width at the bottom.
    #[serde(rename = "bottom_width_m", with = "metre")]
    pub bottom_width: Length,
    /// Slope of the sides, degrees from level; 90 for vertical ones.
    pub slope_deg: f64,
    /// Whether the concrete is poured against the ground, without a form below ground level.
    pub cast_against_ground: bool,
    /// Volume in the ground.
    #[serde(rename = "volume_m3", with = "cubic_metre")]
    pub volume: Volume,
    /// Volume when dug, bulked.
    #[serde(rename = "spoil_volume_m3", with = "cubic_metre")]
    pub spoil_volume: Volume,
    /// Mass of the spoil.
    #[serde(rename = "spoil_mass_kg", with = "kilogram")]
    pub spoil_mass: Mass,
    /// Volume round the block that is filled again, as rammed.
    #[serde(rename = "backfill_volume_m3", with = "cubic_metre")]
    pub backfill_volume: Volume,
    /// Bulked volume of the spoil that does not go back.
    #[serde(rename = "away_volume_m3", with = "cubic_metre")]
    pub away_volume: Volume,
    /// Width of the heap of spoil, a ridge as long as the pit is wide.
    #[serde(rename = "heap_width_m", with = "metre")]
    pub heap_width: Length,
    /// Height of that ridge.
    #[serde(rename = "heap_height_m", with = "metre")]
    pub heap_height: Length,
    /// Least distance of the spoil from the pit's edge.
    #[serde(rename = "spoil_distance_m", with = "metre")]
    pub spoil_distance: Length,
    /// Least distance of machines, lorries and stacked goods from the pit's edge.
    #[serde(rename = "load_distance_m", with = "metre")]
    pub load_distance: Length,
    /// Barrow loads of spoil.
    pub barrow_loads: u32,
    /// Skips for the spoil that does not go back.
    pub skips: u32,
    /// Hours of digging, from the first spade to the trimmed bottom.
    pub digging_h: f64,
    /// The same in one person's hours.
    pub digging_person_h: f64,
    /// Whether a ladder or ramp is needed to get out.
    pub way_out: bool,
    /// Whether the sides need a protective system before anyone enters.
    pub protection: bool,
    /// Whether its upright faces are lined with boards and strutted as it is dug, since they will not stand so high by themselves.
    pub shuttered: bool,
    /// Whether water has to be kept out while the pit is open.
    pub dewatering: bool,
    /// What limits the depth.
    pub depth_limited_by: DepthLimit,
    /// Deepest base there is room for.
    #[serde(rename = "room_depth_m", with = "metre")]
    pub room_depth: Length,
    /// Side of a square block at that depth that is as stiff in rocking as a metre cube; none where a metre can be dug, and in rock.
    #[serde(rename = "as_stiff_side_m", with = "metre::option")]
    pub as_stiff_side: Option<Length>,
}

/// Finds the pit for the block.
pub fn stage(brief: &Brief, ground: &Ground, room: &Room, block: &Block) -> Found<Excavation> {
    let mut notes = Notes::default();
    let pit = pit::pit(room, block, ground, &mut notes);
    let spoil = spoil::spoil(brief, ground, &pit, block, &mut notes);
    let digging = digging::digging(brief, &pit, &mut notes);
    let value = Excavation {
        length: pit.top[0],
        width: pit.top[1],
        depth: pit.depth,
        bottom_length: pit.bottom[0],
        bottom_width: pit.bottom[1],
        slope_deg: pit.slope_deg,
        cast_against_ground: room.against_ground,
        volume: pit.volume,
        spoil_volume: spoil.bulked,
        spoil_mass: spoil.mass,
        backfill_volume: spoil.backfill,
        away_volume: spoil.away,
        heap_width: spoil.heap_width,
        heap_height: spoil.heap_height,
        spoil_distance: spoil.distance,
        load_distance: spoil.load_distance,
        barrow_loads: spoil.barrow_loads,
        skips: spoil.skips,
        digging_h: digging.hours,
        digging_person_h: digging.person_hours,
        way_out: pit.way_out,
        protection: pit.protection,
        shuttered: room.against_ground && face::face(ground, pit.depth).is_lined(pit.depth),
        dewatering: pit.dewatering,
        depth_limited_by: room.limited_by,
        room_depth: room.depth,
        as_stiff_side: wider::as_stiff_side(ground.group, room.depth),
    };
    checks::checks(brief, ground, room, &value, &mut notes);
    face::check(ground, &value, &mut notes);
    Found { value, notes }
}

#[cfg(test)]
mod tests;
