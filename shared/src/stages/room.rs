//! The room in which a block may be cast: how deep, and at that depth how long and wide.

use serde::Serialize;

use crate::brief::{Brief, Origin};
use crate::rules::osha_1926_p_1989::slopes::{run_over_rise_ratio, when_wet};
use crate::site_plan::excavation::Sides;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;
use crate::units::{Length, metre};

/// What limits the depth of the pit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DepthLimit {
    /// The person said so.
    Stated,
    /// Nobody said, and a depth was taken.
    Assumed,
    /// Groundwater.
    Water,
    /// Rock under softer ground.
    Rock,
    /// Battered sides run out of room.
    Batter,
}

/// The room in which a block may be cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Longest block along x with its base at `depth`.
    pub length: Length,
    /// Widest block along y with its base at `depth`.
    pub width: Length,
    /// Deepest base below ground.
    pub depth: Length,
    /// What limits the depth.
    pub limited_by: DepthLimit,
    /// Whether the concrete is poured against the ground; else the sides hold only as well as the fill is rammed.
    pub against_ground: bool,
    /// Run of the sides for a rise of one; nought for vertical ones.
    pub run_over_rise_ratio: f64,
    /// Room to work round the form at the bottom; nought where the concrete is poured against the ground.
    pub working_space: Length,
    /// Longest and widest pit at ground level.
    pub pit: [Length; 2],
}

/// Dry bottom above the highest groundwater.
const ABOVE_WATER_M: f64 = 0.1;
/// A pit shallower than this is no footing; where water stands higher the depth is limited to this, and checks say that it is wet.
const LEAST_USEFUL_DEPTH_M: f64 = 0.3;
/// Block that a battered pit should leave room for.
const LEAST_USEFUL_SIDE_M: f64 = 0.8;
/// Least side of a block and least depth of a pit that the plan knows.
const LEAST_SIDE_M: f64 = 0.2;
const LEAST_DEPTH_M: f64 = 0.1;

impl Room {
    /// Longest and widest block with its base at another depth: battered sides leave more room to a shallower one.
    /// Never less than 0.2 m, the least block of a plan; a check then says that it does not fit.
    pub fn at(&self, depth: Length) -> [Length; 2] {
        let taken = self.working_space * 2.0 + depth * (2.0 * self.run_over_rise_ratio);
        self.pit
            .map(|side| (side - taken).max(metre::new(LEAST_SIDE_M)))
    }
}

/// Finds the room for a block.
pub fn room(brief: &Brief, ground: &Ground) -> Room {
    let pit = &brief.excavation;
    let against_ground = pit.sides.value == Sides::Vertical;
    let (deepest, limited_by) = deepest(brief, ground);
    let seeps = ground
        .groundwater_depth
        .is_some_and(|water| water < deepest);
    let slope = if seeps {
        when_wet(ground.slope_type)
    } else {
        ground.slope_type
    };
    let mut room = Room {
        length: pit.max_length.value,
        width: pit.max_width.value,
        depth: deepest,
        limited_by,
        against_ground,
        run_over_rise_ratio: if against_ground {
            0.0
        } else {
            run_over_rise_ratio(slope)
        },
        working_space: if against_ground {
            metre::new(0.0)
        } else {
            pit.working_space.value
        },
        pit: [pit.max_length.value, pit.max_width.value],
    };
    batter(&mut room);
    [room.length, room.width] = room.at(room.depth);
    room
}

/// Deepest base by what was said, by rock and by water.
fn deepest(brief: &Brief, ground: &Ground) -> (Length, DepthLimit) {
    let said = &brief.excavation.max_depth;
    let mut found = (
        said.value,
        if said.origin == Origin::Assumed {
            DepthLimit::Assumed
        } else {
            DepthLimit::Stated
        },
    );
    let rock = ground
        .rock_depth
        .filter(|_| ground.group != Group::Rock)
        .map(|depth| (depth, DepthLimit::Rock));
    let water = ground
        .groundwater_depth
        .map(|depth| (depth - metre::new(ABOVE_WATER_M), DepthLimit::Water));
    let least = metre::new(LEAST_USEFUL_DEPTH_M);
    if let Some((depth, limit)) = rock.filter(|(depth, _)| *depth < found.0 && *depth >= least) {
        found = (depth, limit);
    }
    // However high the water stands it limits the depth: a plan with more water is never let deeper.
    if let Some((depth, limit)) = water.map(|(depth, limit)| (depth.max(least), limit))
        && depth < found.0
    {
        found = (depth, limit);
    }
    found
}

/// Battered sides take room at ground level: the pit is only so deep that a useful block still fits its bottom.
fn batter(room: &mut Room) {
    if room.run_over_rise_ratio <= 0.0 {
        return;
    }
    let side =
        room.pit[0].min(room.pit[1]) - room.working_space * 2.0 - metre::new(LEAST_USEFUL_SIDE_M);
    let deepest = (side / (2.0 * room.run_over_rise_ratio))
        .max(metre::new(LEAST_USEFUL_DEPTH_M))
        .max(metre::new(LEAST_DEPTH_M));
    if deepest < room.depth {
        room.depth = deepest;
        room.limited_by = DepthLimit::Batter;
    }
}
