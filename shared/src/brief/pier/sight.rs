//! What must clear what, and the height of the pier that follows.

use crate::brief::block;
use crate::brief::floor::Floor;
use crate::brief::load::Load;
use crate::brief::{Ask, Given, Taken, taken};
use crate::figure::{Metre, Unit, Units};
use crate::rules::sightline;
use crate::site_plan::{Pier as Said, SitePlan};
use crate::source::Source;
use crate::stock::Stock;
use crate::units::{Length, metre};

/// Height of the eye of a standing observer, m: between a small and a tall adult.
const EYE_M: f64 = 1.55;
/// Room left between the telescope's swing and the floor, m.
const ABOVE_FLOOR_M: f64 = 0.05;
/// Heights are rounded up to this, m.
pub fn round_m(stock: Stock) -> f64 {
    stock.step_m()
}
/// Range of the field, m.
const RANGE_M: (f64, f64) = (0.15, 6.0);

/// A wall that the telescope looks over in one direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// Which way.
    pub towards: Towards,
    /// Height above the floor.
    pub height: Length,
    /// Distance from the pier's axis.
    pub distance: Length,
    /// Lowest altitude wanted, degrees; none: not said.
    pub wanted_deg: Option<f64>,
}

/// A quarter of the sky.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Towards {
    /// North.
    North,
    /// East.
    East,
    /// South.
    South,
    /// West.
    West,
}

/// What must clear what.
#[derive(Debug, Clone, PartialEq)]
pub struct Sight {
    /// Walls, where their height is known.
    pub walls: Vec<Wall>,
    /// Height of the observer's eye above the floor.
    pub eye_height: Length,
    /// Radius that the telescope sweeps; none: not said.
    pub swing_radius: Option<Length>,
    /// Height of the telescope's axes above the floor for a pier of no height: plate's seat and load's centre less the floor.
    pub seat: Length,
}

impl Sight {
    /// What the person said of walls, eye and swing; `seat_m` is the load's centre over the floor for a pier of no height.
    pub fn new(plan: &SitePlan, load: &Load, floor: &Floor, gap: Length, stock: Stock) -> Self {
        let said = &plan.pier;
        let upstand = metre::new(plan.block.upstand_m.unwrap_or(block::upstand_m(stock)));
        let extents = [
            (Towards::North, floor.width),
            (Towards::East, floor.length),
            (Towards::South, floor.width),
            (Towards::West, floor.length),
        ];
        let wanted = [
            said.lowest_altitude_north_deg,
            said.lowest_altitude_east_deg,
            said.lowest_altitude_south_deg,
            said.lowest_altitude_west_deg,
        ];
        let wall = |height: f64| {
            extents
                .into_iter()
                .zip(wanted)
                .map(move |((towards, extent), wanted_deg)| Wall {
                    towards,
                    height: metre::new(height),
                    distance: said.wall_distance_m.map_or(extent.value / 2.0, metre::new),
                    wanted_deg,
                })
        };
        Self {
            walls: said.wall_height_m.into_iter().flat_map(wall).collect(),
            eye_height: metre::new(said.eye_height_m.unwrap_or(EYE_M)),
            swing_radius: said.swing_radius_m.map(metre::new),
            seat: upstand + gap + load.centre_above_pier.value - floor.level.value,
        }
    }

    /// Height of the axes above the floor on a pier of a height.
    pub fn axis(&self, pier: Length) -> Length {
        self.seat + pier
    }
}

/// Height of the pier: stated, or what eye, walls and swing ask for.
pub fn height(plan: &SitePlan, sight: &Sight, load: &Load, ask: &mut Ask) -> Given<Length> {
    if let Some(stated) = plan.pier.height_m {
        return Given::said(metre::new(stated));
    }
    if plan.pier.eye_height_m.is_none() {
        ask.note_number(Said::eye_height_m.row, EYE_M, taken!(Said::eye_height_m));
    }
    let (axis, reason) = wanted_axis(sight, load, ask.units);
    let exact = metre::get(axis - sight.seat);
    // Whole steps, so that the figure reads as it is rounded.
    let step = round_m(ask.stock);
    let rounded = ((exact / step - 1e-9).ceil() * step * 1e7).round() / 1e7;
    let value = rounded.clamp(RANGE_M.0, RANGE_M.1);
    let limit = if value == rounded {
        ""
    } else {
        "; that is beyond what a pier may be, so the nearest height is used"
    };
    ask.note_number(Said::height_m.row, value, Taken {
            why: format!(
                "{reason}: the telescope's axes {} above the floor, less {} from the floor to them without a pier{limit}",
                ask.units.say(axis, Metre),
                ask.units.say(sight.seat, Metre)
            ),
            effect: "bending of the column, height of the eyepiece, what can be seen over the walls".into(),
            source: Source::derived("eye height, sight over the walls, swing above the floor"),
        },
    );
    Given::assumed(metre::new(value))
}

/// Height of the axes above the floor, and what asks for it.
pub fn wanted_axis(sight: &Sight, load: &Load, units: Units) -> (Length, String) {
    let mut wanted = (
        sight.eye_height,
        "axes at the eye of a standing observer".to_owned(),
    );
    for wall in &sight.walls {
        let Some(altitude) = wall.wanted_deg else {
            continue;
        };
        let axis = sightline::axis_height(
            wall.height,
            wall.distance,
            altitude,
            load.aperture.value / 2.0,
        );
        if axis > wanted.0 {
            wanted = (
                axis,
                format!(
                    "sight over the wall down to {}",
                    units.say(altitude, Unit::Degree)
                ),
            );
        }
    }
    if let Some(swing) = sight.swing_radius {
        let axis = swing + metre::new(ABOVE_FLOOR_M);
        if axis > wanted.0 {
            wanted = (axis, "the telescope's swing clears the floor".to_owned());
        }
    }
    wanted
}
