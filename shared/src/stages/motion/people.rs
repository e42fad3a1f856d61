//! People: what a weight at a place on the floor does to the star, standing, shifting, sitting down, and a door.

use std::sync::Arc;

use crate::brief::Brief;
use crate::site_plan::floor::{FloorKind, Stand, Wall};
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::history::{self, Forces, History, Place, STEP_S, Trace};
use crate::stages::motion::influence::{Influence, sideways_through_posts, through_floor};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::{Planes, steady_turn_arcsec};
use crate::units::{STANDARD_GRAVITY_M_S2, metre};

/// Half the way that the weight goes when somebody shifts from foot to foot, m.
const SHIFT_M: f64 = 0.15;
/// Where the shift comes from.
pub const SHIFT_SOURCE: Source = Source::judgement("from one foot to the other, 0.3 m");
/// Share of the weight that comes and goes when somebody sits down or kneels.
const SITTING_RATIO: f64 = 0.3;
/// Where the sitting comes from.
pub const SITTING_SOURCE: Source =
    Source::judgement("sitting down or kneeling: three tenths of the weight more, once");
/// A door falling shut: its blow on the frame, N s, in how long, s, and at which height, m.
const DOOR_N_S: f64 = 10.0;
const DOOR_S: f64 = 0.015;
const DOOR_HEIGHT_M: f64 = 1.0;
/// Time that is followed after it, s.
const DOOR_LASTS_S: f64 = 0.4;
/// Where the door comes from.
pub const DOOR_SOURCE: Source = Source::judgement(
    "a door falling shut: 10 N s (5 to 20) across its wall at a metre's height within 15 ms; the walls stand on the ground \
     where they are drawn",
);

/// Turn of the star in arcsec towards east and north under a steady load on the block.
pub fn steady(planes: &Planes, load: &[f64; 6]) -> [f64; 2] {
    let x = steady_turn_arcsec(&planes.x, |mode: &Mode| {
        mode.base * load[0] + mode.block_turn * load[4]
    });
    let y = steady_turn_arcsec(&planes.y, |mode: &Mode| {
        mode.base * load[1] - mode.block_turn * load[3]
    });
    [x, y]
}

/// The ground with what stands on it, as people feel it through the floor.
#[derive(Clone, Copy)]
pub struct Ground<'a> {
    /// Floor.
    pub floor: &'a Floor,
    /// Influence of a weight on the ground.
    pub influence: &'a dyn Influence,
}

impl Ground<'_> {
    /// Turn of the star under a mass at a place.
    pub fn under(&self, planes: &Planes, mass_kg: f64, place: [f64; 2]) -> [f64; 2] {
        let newtons = mass_kg * STANDARD_GRAVITY_M_S2;
        let one = through_floor(self.influence, self.floor, place[0], place[1]);
        steady(planes, &one.map(|value| value * newtons))
    }

    /// Turn of the star from one foot to the other when somebody who stands there shifts.
    pub fn shifting(&self, planes: &Planes, stand: &Stand) -> [f64; 2] {
        let difference = |dx: f64, dy: f64| {
            let a = self.under(planes, stand.mass_kg, [stand.x_m + dx, stand.y_m + dy]);
            let b = self.under(planes, stand.mass_kg, [stand.x_m - dx, stand.y_m - dy]);
            [a[0] - b[0], a[1] - b[1]]
        };
        // A person faces the pier: the shift is across the line to it.
        let distance = stand.x_m.hypot(stand.y_m).max(1e-6);
        difference(
            -SHIFT_M * stand.y_m / distance,
            SHIFT_M * stand.x_m / distance,
        )
    }

    /// Turn of the star when somebody there sits down or kneels.
    pub fn sitting(&self, planes: &Planes, stand: &Stand) -> [f64; 2] {
        self.under(
            planes,
            stand.mass_kg * SITTING_RATIO,
            [stand.x_m, stand.y_m],
        )
    }

    /// The lean through time after a door has fallen shut.
    pub fn door_history(&self, planes: &Planes, door: DoorPlace) -> History {
        let count = (DOOR_S / STEP_S).round().max(2.0) as usize;
        // By the whole samples that it lasts: a peak for 15 ms over 16 ms would strike a fifteenth too hard.
        let peak = DOOR_N_S * std::f64::consts::FRAC_PI_2 / (count as f64 * STEP_S);
        let blow =
            (0..=count).map(|i| peak * (std::f64::consts::PI * i as f64 / count as f64).sin());
        let blow = Trace {
            whole: blow.collect(),
            slow: Arc::new([]),
        };
        let place = Place {
            distance_m: door.place[0].hypot(door.place[1]),
            blow_s: DOOR_S,
        };
        let mut forces = Forces::at_rest(DOOR_LASTS_S);
        forces.add_wave(&self.under_door(door), 0.0, &blow, place);
        history::run(planes, &forces)
    }

    /// The block's load for a newton on a door's frame: a push on the ground under its wall, and the wall that is tipped
    /// presses there and lifts at the wall across.
    fn under_door(&self, door: DoorPlace) -> [f64; 6] {
        let DoorPlace {
            place: [x, y],
            outward: [ux, uy],
            across_m,
        } = door;
        let push = if self.floor.kind == FloorKind::Deck && self.floor.carries(x, y) {
            sideways_through_posts(self.influence, &self.floor.supports)
        } else {
            self.influence.per_newton_sideways(x, y)
        };
        let tip = DOOR_HEIGHT_M / across_m;
        let here = through_floor(self.influence, self.floor, x, y);
        let there = through_floor(
            self.influence,
            self.floor,
            x - ux * across_m,
            y - uy * across_m,
        );
        std::array::from_fn(|i| ux * push[0][i] + uy * push[1][i] + tip * (here[i] - there[i]))
    }
}

/// Where a door is, which way its wall faces, and how far the wall across is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DoorPlace {
    /// Middle of the door.
    pub place: [f64; 2],
    /// Out of the house.
    pub outward: [f64; 2],
    /// Distance to the wall across.
    pub across_m: f64,
}

/// The door that was said, or one in the middle of each wall.
pub fn doors(brief: &Brief) -> Vec<DoorPlace> {
    let floor = &brief.floor;
    let (length, width) = (
        metre::get(floor.length.value),
        metre::get(floor.width.value),
    );
    let along = metre::get(floor.door_offset.value);
    let place = |wall: Wall| {
        let (outward, across_m) = match wall {
            Wall::North => ([0.0, 1.0], width),
            Wall::South => ([0.0, -1.0], width),
            Wall::East => ([1.0, 0.0], length),
            Wall::West => ([-1.0, 0.0], length),
        };
        let half = 0.5 * across_m;
        let place = match wall {
            Wall::North | Wall::South => [along, half * outward[1]],
            Wall::East | Wall::West => [half * outward[0], along],
        };
        DoorPlace {
            place,
            outward,
            across_m,
        }
    };
    match floor.door_wall {
        Some(wall) => vec![place(wall)],
        None => Wall::ALL.iter().copied().map(place).collect(),
    }
}
