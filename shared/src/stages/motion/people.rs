//! People: what a weight at a place on the floor does to the star, standing, shifting, sitting down, and a door.

use crate::brief::Brief;
use crate::site_plan::floor::Stand;
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::history::{self, Forces, History, STEP_S};
use crate::stages::motion::influence::{Influence, through_floor};
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
/// A door falling shut: its blow on the ground at the wall, N s, and how long it takes, s.
const DOOR_N_S: f64 = 10.0;
const DOOR_S: f64 = 0.05;
/// Time that is followed after it, s.
const DOOR_LASTS_S: f64 = 0.4;
/// Where the door comes from.
pub const DOOR_SOURCE: Source =
    Source::judgement("a light door falling shut: 10 N s into the ground at the wall within 50 ms");

/// Turn of the star in arcsec towards east and north under a steady load on the block.
#[must_use]
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
    #[must_use]
    pub fn under(&self, planes: &Planes, mass_kg: f64, place: [f64; 2]) -> [f64; 2] {
        let newtons = mass_kg * STANDARD_GRAVITY_M_S2;
        let one = through_floor(self.influence, self.floor, place[0], place[1]);
        steady(planes, &one.map(|value| value * newtons))
    }

    /// Turn of the star from one foot to the other when somebody who stands there shifts.
    #[must_use]
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
    #[must_use]
    pub fn sitting(&self, planes: &Planes, stand: &Stand) -> [f64; 2] {
        self.under(
            planes,
            stand.mass_kg * SITTING_RATIO,
            [stand.x_m, stand.y_m],
        )
    }

    /// What a door does that falls shut, of doors in the four walls the loudest.
    #[must_use]
    pub fn door(&self, planes: &Planes, distance_m: f64) -> History {
        let count = (DOOR_S / STEP_S).round() as usize;
        let peak = DOOR_N_S * std::f64::consts::FRAC_PI_2 / DOOR_S;
        let blow: Vec<f64> = (0..=count)
            .map(|i| peak * (std::f64::consts::PI * i as f64 / count as f64).sin())
            .collect();
        let from = |[x, y]: [f64; 2]| {
            let mut forces = Forces::at_rest(DOOR_LASTS_S);
            forces.add(
                &through_floor(self.influence, self.floor, x * distance_m, y * distance_m),
                0.0,
                &blow,
            );
            history::run(planes, &forces)
        };
        let (east, north) = (from([1.0, 0.0]), from([0.0, 1.0]));
        if north.peak_arcsec() > east.peak_arcsec() {
            north
        } else {
            east
        }
    }
}

/// Distance at which a door is thought to be.
#[must_use]
pub fn door_distance_m(brief: &Brief) -> f64 {
    0.5 * metre::get(brief.floor.length.value).max(metre::get(brief.floor.width.value))
}
