//! Steps: the footfalls of a walk as forces on the block.

use crate::brief::Brief;
use crate::site_plan::floor::{FloorKind, Soles};
use crate::source::Source;
use crate::stages::floor::Floor;
use crate::stages::motion::feet::{self, Foot, LONGEST_S};
use crate::stages::motion::footfall::{self, Footfall, Strength, footfall};
use crate::stages::motion::history::Place;
#[cfg(test)]
use crate::stages::motion::history::{Forces, STEP_S, Trace};
use crate::stages::motion::influence::{Influence, sideways_through_posts, through_floor};
use crate::stages::motion::system::Planes;
use crate::units::{STANDARD_GRAVITY_M_S2, hertz, kilogram, metre_per_second};

/// Time that is followed after the last step, s.
pub const AFTER_S: f64 = 1.5;
/// So many feet nearest to the pier push sideways; farther ones are hardly felt.
const SIDEWAYS_FEET: usize = 12;
/// A timber deck's own swing, and its damping.
pub const DECK_HZ: f64 = 12.0;
/// Slowest and quickest that such a deck swings.
pub const DECK_BAND_HZ: (f64, f64) = (8.0, 20.0);
const DECK_DAMPING_RATIO: f64 = 0.035;
/// Where the deck's swing comes from.
pub const DECK_SOURCE: Source =
    Source::judgement("a timber deck swings at 8 to 20 Hz, here 12, with 3 to 4 % damping");

/// A pace, and the row of chance by which its steps are uneven: another for each pace of a band, so that no one row decides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Steps a second.
    pub hertz: f64,
    /// Number of the row.
    pub row: u8,
}

/// What a newton of a foot does to the block: downward, along its way, and outward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Influences {
    /// Downward.
    pub down: [f64; 6],
    /// Along its way.
    pub along: [f64; 6],
    /// Away from the other foot's track.
    pub outward: [f64; 6],
    /// Whether the two sideways ones are felt at all.
    pub push: bool,
}

/// One foot.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Tread {
    influences: Influences,
    distance_m: f64,
    on_deck: bool,
}

/// The places of a walk's feet with what each does to the block: the same at every pace, since the stride stays.
#[derive(Debug, Clone, PartialEq)]
pub struct Trodden {
    treads: Vec<Tread>,
    soles: Soles,
    weight_n: f64,
    /// The deck's own swing; none on other floors.
    deck_hz: Option<f64>,
}

impl Trodden {
    /// Treads the drawn path; none where there is none.
    pub fn take(brief: &Brief, floor: &Floor, influence: &dyn Influence) -> Option<Self> {
        let pace = hertz::get(brief.floor.pace.value);
        let feet = feet::feet(
            &brief.floor.walk.value,
            metre_per_second::get(brief.floor.walk_speed.value) / pace,
            (LONGEST_S * pace) as usize,
        );
        if feet.is_empty() {
            return None;
        }
        let on_deck = |foot: &Foot| {
            floor.kind == FloorKind::Deck && floor.carries(foot.place[0], foot.place[1])
        };
        let deck = feet
            .iter()
            .any(on_deck)
            .then(|| sideways_through_posts(influence, &floor.supports));
        let tread = |(foot, pushes): (&Foot, bool)| {
            let [x, y] = foot.place;
            let on_deck = on_deck(foot);
            let push = match deck.filter(|_| on_deck) {
                Some(push) => push,
                None if pushes => influence.per_newton_sideways(x, y),
                None => [[0.0; 6]; 2],
            };
            let towards =
                |[ux, uy]: [f64; 2]| std::array::from_fn(|i| ux * push[0][i] + uy * push[1][i]);
            Tread {
                influences: Influences {
                    down: through_floor(influence, floor, x, y),
                    along: towards(foot.along),
                    outward: towards(foot.outward),
                    push: push != [[0.0; 6]; 2],
                },
                distance_m: x.hypot(y),
                on_deck,
            }
        };
        let treads = feet.iter().zip(pushing(&feet)).map(tread).collect();
        Some(Self::of(brief, floor, treads))
    }

    /// So many steps on one spot whose influence for a newton is given.
    pub fn on_the_spot(brief: &Brief, floor: &Floor, count: usize, down: [f64; 6]) -> Self {
        let tread = Tread {
            influences: Influences {
                down,
                along: [0.0; 6],
                outward: [0.0; 6],
                push: false,
            },
            distance_m: 0.0,
            on_deck: false,
        };
        Self::of(brief, floor, vec![tread; count])
    }

    fn of(brief: &Brief, floor: &Floor, treads: Vec<Tread>) -> Self {
        Self {
            treads,
            soles: brief.floor.soles.value,
            weight_n: kilogram::get(brief.floor.walker_mass.value) * STANDARD_GRAVITY_M_S2,
            deck_hz: (floor.kind == FloorKind::Deck).then_some(DECK_HZ),
        }
    }

    /// The same with a deck that swings otherwise; none: it hands each step on as it is.
    pub fn with_deck(&self, deck_hz: Option<f64>) -> Self {
        Self {
            deck_hz,
            ..self.clone()
        }
    }

    /// Number of steps.
    pub fn count(&self) -> usize {
        self.treads.len()
    }

    /// Distance of the nearest foot from the pier's axis, m.
    pub fn nearest_m(&self) -> f64 {
        self.treads
            .iter()
            .map(|tread| tread.distance_m)
            .reduce(f64::min)
            .unwrap_or(0.0)
    }

    /// Weight of the walker, N.
    pub fn weight_n(&self) -> f64 {
        self.weight_n
    }

    /// The footfall at a pace, over weight.
    pub fn footfall(&self, pace_hz: f64, strength: Strength) -> Footfall {
        footfall(hertz::new(pace_hz), self.soles, strength)
    }

    /// The deck's own swing; none on other floors.
    pub fn deck_hz(&self) -> Option<f64> {
        self.deck_hz
    }

    /// When each foot falls.
    pub fn times_s(&self, pace: Pace) -> Vec<f64> {
        feet::times_s(self.count(), pace.hertz, pace.row)
    }

    /// What a newton of a foot does to the block.
    pub fn influences(&self, foot: usize) -> Influences {
        self.treads[foot].influences
    }

    /// Whether a foot falls on a deck.
    pub fn on_deck(&self, foot: usize) -> bool {
        self.treads[foot].on_deck
    }

    /// How many times as far a foot tilts the ground for a mode that it makes swing as if it were at rest.
    pub fn wave_ratio(&self, planes: &Planes, omega: f64, foot: usize) -> f64 {
        self.place(&self.treads[foot])
            .wave_ratio(omega, planes.shear_speed_m_s)
    }

    /// What arrives below the deck of a footfall on it; none on other floors and where the deck hands each step on as it is.
    pub fn below_deck(&self, plain: &Footfall) -> Option<Footfall> {
        let deck = hertz::new(self.deck_hz?);
        Some(plain.clone().through_deck(deck, DECK_DAMPING_RATIO))
    }

    /// A footfall of this walker in newtons.
    pub fn weigh(&self, step: &mut Footfall) {
        for part in step.each() {
            part.iter_mut().for_each(|value| *value *= self.weight_n);
        }
    }

    /// Through a deck the force enters at posts of several distances; the foot's own stands for them.
    fn place(&self, tread: &Tread) -> Place {
        Place {
            distance_m: tread.distance_m,
            blow_s: footfall::heel_lasts_s(self.soles),
        }
    }

    /// The walk at a pace as forces on the block.
    #[cfg(test)]
    pub fn forces(&self, pace: Pace) -> Forces {
        let plain = self.footfall(pace.hertz, Strength::Mean);
        let times = self.times_s(pace);
        let last = times.last().copied().unwrap_or_default();
        let lasts_s = last + plain.slow.len() as f64 * STEP_S;
        let weighed = |mut step: Footfall| {
            self.weigh(&mut step);
            let down = Trace {
                whole: step.downward().into(),
                slow: step.slow.as_slice().into(),
            };
            (step, down)
        };
        let below = self.below_deck(&plain).map(weighed);
        let plain = weighed(plain);
        let mut forces = Forces::at_rest(lasts_s + AFTER_S);
        for (tread, at) in self.treads.iter().zip(times) {
            let (step, down) = below.as_ref().filter(|_| tread.on_deck).unwrap_or(&plain);
            let Influences {
                down: of_down,
                along,
                outward,
                ..
            } = &tread.influences;
            forces.add_wave(of_down, at, down, self.place(tread));
            forces.add(along, at, &step.along);
            forces.add(outward, at, &step.outward);
        }
        forces
    }
}

/// Which feet push sideways: those nearest to the pier.
fn pushing(feet: &[Foot]) -> Vec<bool> {
    let mut order: Vec<usize> = (0..feet.len()).collect();
    let distance = |i: usize| feet[i].place[0].hypot(feet[i].place[1]);
    order.sort_by(|&a, &b| distance(a).total_cmp(&distance(b)));
    let mut pushes = vec![false; feet.len()];
    for i in order.into_iter().take(SIDEWAYS_FEET) {
        pushes[i] = true;
    }
    pushes
}
