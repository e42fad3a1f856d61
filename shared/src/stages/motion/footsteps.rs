//! A walk through the modes, foot by foot.
//!
//! Every foot treads alike, so that what one footfall makes of a mode is found once at a pace; each foot adds it as often as
//! its work on the mode says. Once a foot is up the mode swings freely, and the free swings of all feet are one swing. It is the
//! same as following the whole force sample by sample ([`history::run`]), and takes a fraction of the time.

mod swinging;

use crate::stages::motion::footfall::Strength;
use crate::stages::motion::history::{FASTEST, History, STEP_S};
use crate::stages::motion::modes::Mode;
use crate::stages::motion::steps::{AFTER_S, Influences, Pace, Trodden};
use crate::stages::motion::system::Planes;
use crate::units::ARCSEC_PER_RADIAN;

use swinging::{Forced, Parts, Swinging};

#[cfg(doc)]
use crate::stages::motion::history;

/// How finely a walk is followed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Detail {
    /// Samples of a history for one that is followed.
    every: usize,
    /// The slowest modes of each plane that swing; quicker ones go with each foot at once.
    swinging: usize,
}

impl Detail {
    /// Every sample, every mode.
    pub const WHOLE: Self = Self {
        every: 1,
        swinging: usize::MAX,
    };
    /// Every second sample and the three slowest modes of each plane, for looking at many paces. Without the third, at some 50 Hz
    /// and so within reach of a heel, a peak comes out a tenth to a fifth too large.
    pub const COARSE: Self = Self {
        every: 2,
        swinging: 3,
    };

    fn step_s(self) -> f64 {
        STEP_S * self.every as f64
    }
}

/// A walk at a pace: when each foot falls, and with what.
pub struct Steps {
    /// First sample of each foot.
    starts: Vec<usize>,
    /// On the ground, and below a deck that swings.
    kinds: Vec<Parts>,
    /// Which of these each foot has.
    kind: Vec<usize>,
    /// Samples in all.
    count: usize,
    /// Time until the last foot is up, s.
    pub lasts_s: f64,
}

impl Steps {
    /// The walk at a pace.
    pub fn at(trodden: &Trodden, pace: Pace, detail: Detail) -> Self {
        let plain = trodden.footfall(pace.hertz, Strength::Mean);
        let times = trodden.times_s(pace);
        let lasts_s = times.last().copied().unwrap_or_default() + plain.slow.len() as f64 * STEP_S;
        let below = trodden.below_deck(&plain);
        let kind = (0..trodden.count())
            .map(|foot| usize::from(below.is_some() && trodden.on_deck(foot)))
            .collect();
        let all = [Some(plain), below].into_iter().flatten();
        let kinds = all.map(|mut footfall| {
            trodden.weigh(&mut footfall);
            Parts::of(&footfall, detail)
        });
        let step_s = detail.step_s();
        Self {
            starts: times
                .iter()
                .map(|at| (at / step_s).round() as usize)
                .collect(),
            kinds: kinds.collect(),
            kind,
            count: ((lasts_s + AFTER_S) / step_s).ceil() as usize + 1,
            lasts_s,
        }
    }
}

/// The modes of one ground, with what each foot does to them: the same at every pace.
pub struct Held<'a> {
    detail: Detail,
    planes: [Plane<'a>; 2],
}

/// One upright plane.
struct Plane<'a> {
    swinging: Vec<Swinging<'a>>,
    feet: Vec<Foot>,
}

/// What a newton of a foot does in a plane: downward, along its way and outward on each mode that swings, and what goes with
/// the parts of the footfall at once, arcsec.
struct Foot {
    swings: Vec<[f64; 3]>,
    at_once: [f64; 4],
    pushes: bool,
}

impl<'a> Held<'a> {
    /// Takes them for the feet of a walk.
    pub fn by(planes: &'a Planes, trodden: &Trodden, detail: Detail) -> Self {
        let plane = |plane| Plane::new(planes, plane, trodden, detail);
        Self {
            detail,
            planes: [plane(0), plane(1)],
        }
    }

    /// The lean through time under a walk, which must be as fine.
    pub fn follow(&self, steps: &Steps) -> History {
        let [east, north] = &self.planes;
        let ways = [east, north].map(|plane| plane.follow(steps));
        let [east, north] = &ways;
        History {
            turns: east.iter().zip(north).map(|(x, y)| [*x, *y]).collect(),
            step_s: self.detail.step_s(),
        }
    }
}

impl<'a> Plane<'a> {
    fn new(planes: &'a Planes, plane: usize, trodden: &Trodden, detail: Detail) -> Self {
        let modes = planes.both()[plane];
        let slow = modes.iter().filter(|mode| mode.omega <= FASTEST).count();
        let (swinging, following) = modes.split_at(slow.min(detail.swinging));
        let first = planes.first_omega();
        let foot = |foot: usize| {
            let influences = trodden.influences(foot);
            let mut at_once = [0.0; 4];
            let swings = swinging.iter().map(|mode| {
                let wave = trodden.wave_ratio(planes, mode.omega, foot);
                let [down, along, outward] = works(mode, plane, &influences);
                // The ground follows the slow part as if at rest.
                at_once[0] -= gain(mode) / mode.omega.powi(2) * down * (wave - 1.0);
                [wave * down, along, outward].map(|work| gain(mode) * work)
            });
            let swings = swings.collect();
            let wave = trodden.wave_ratio(planes, first, foot);
            for mode in following {
                let flexible = gain(mode) / mode.omega.powi(2);
                let [down, along, outward] = works(mode, plane, &influences).map(|w| flexible * w);
                for (sum, one) in at_once.iter_mut().zip([down, wave * down, along, outward]) {
                    *sum += one;
                }
            }
            Foot {
                swings,
                at_once,
                pushes: influences.push,
            }
        };
        Self {
            feet: (0..trodden.count()).map(foot).collect(),
            swinging: swinging
                .iter()
                .map(|mode| Swinging::new(mode, detail))
                .collect(),
        }
    }

    fn follow(&self, steps: &Steps) -> Vec<f64> {
        let mut turns = vec![0.0; steps.count];
        for (number, parts) in steps.kinds.iter().enumerate() {
            let forced: Vec<[Forced; 3]> =
                self.swinging.iter().map(|mode| mode.under(parts)).collect();
            let mut states = vec![[0.0; 2]; self.swinging.len()];
            let mut free_from = 0;
            for foot in (0..self.feet.len()).filter(|foot| steps.kind[*foot] == number) {
                let start = steps.starts[foot];
                self.feet[foot].tread(&mut turns, start, parts, &forced);
                let up = start + parts.len();
                self.ring(&mut turns, free_from, up, &mut states);
                for (place, state) in states.iter_mut().enumerate() {
                    let left = self.feet[foot].leaves(place, &forced[place]);
                    *state = [state[0] + left[0], state[1] + left[1]];
                }
                free_from = up;
            }
            self.ring(&mut turns, free_from, steps.count, &mut states);
        }
        turns
    }

    /// Adds the free swing of all feet that have left the ground from one sample to another, and takes the states there.
    fn ring(&self, turns: &mut [f64], from: usize, to: usize, states: &mut [[f64; 2]]) {
        let kept = |mode: &Swinging| mode.from_place[0].len() - 1;
        let longest = self.swinging.iter().map(kept).min().unwrap_or(to);
        let mut at = from;
        while at < to {
            let count = (to - at).min(longest);
            let seen = turns.get_mut(at..).unwrap_or_default();
            let seen = seen.split_at_mut(count.min(seen.len())).0;
            let free = self.swinging.iter().zip(states.iter());
            let free = free.flat_map(|(mode, [q, v])| {
                [(&mode.from_place[0][..], *q), (&mode.from_speed[0][..], *v)]
            });
            add_all(seen, free);
            for (mode, state) in self.swinging.iter().zip(states.iter_mut()) {
                *state = mode.after(count, *state);
            }
            at += count;
        }
    }
}

impl Foot {
    /// Adds its turn while it is down.
    fn tread(&self, turns: &mut [f64], start: usize, parts: &Parts, forced: &[[Forced; 3]]) {
        let turns = turns.get_mut(start..).unwrap_or_default();
        let [slow, quick, along, outward] = self.at_once;
        let swing = |way: usize| {
            let both = self.swings.iter().zip(forced);
            both.map(move |(swing, forced)| (forced[way].turns.as_slice(), swing[way]))
        };
        let down = [
            (parts.slow.as_slice(), slow),
            (parts.quick.as_slice(), quick),
        ];
        add_all(turns, down.into_iter().chain(swing(0)));
        if self.pushes {
            let sideways = [
                (parts.along.as_slice(), along),
                (parts.outward.as_slice(), outward),
            ];
            add_all(turns, sideways.into_iter().chain(swing(1)).chain(swing(2)));
        }
    }

    /// Displacement and speed that a mode has by it as it leaves the ground.
    fn leaves(&self, mode: usize, forced: &[Forced; 3]) -> [f64; 2] {
        let ways = self.swings[mode].iter().zip(forced);
        ways.fold([0.0; 2], |[q, v], (times, one)| {
            [q + times * one.end[0], v + times * one.end[1]]
        })
    }
}

fn gain(mode: &Mode) -> f64 {
    ARCSEC_PER_RADIAN * mode.load_turn
}

/// Work of a newton downward, along the way and outward on a mode: 0 is the plane of east and west, 1 that of north and south.
fn works(mode: &Mode, plane: usize, influences: &Influences) -> [f64; 3] {
    let work = |load: &[f64; 6]| {
        if plane == 0 {
            mode.base * load[0] + mode.block_turn * load[4]
        } else {
            // In the north plane a turn towards the north is the opposite of a right-handed turn about x.
            mode.base * load[1] - mode.block_turn * load[3]
        }
    };
    [&influences.down, &influences.along, &influences.outward].map(work)
}

/// Adds traces, each so many times: four in one go over the sum, which is otherwise fetched and stored for each.
fn add_all<'t>(turns: &mut [f64], traces: impl Iterator<Item = (&'t [f64], f64)>) {
    let mut traces = traces.fuse();
    let mut next = || traces.next();
    loop {
        match [next(), next(), next(), next()] {
            [None, ..] => return,
            [
                Some((a, by_a)),
                Some((b, by_b)),
                Some((c, by_c)),
                Some((d, by_d)),
            ] => {
                for ((((sum, a), b), c), d) in turns.iter_mut().zip(a).zip(b).zip(c).zip(d) {
                    *sum += by_a * a + by_b * b + by_c * c + by_d * d;
                }
            }
            few => {
                for (trace, factor) in few.into_iter().flatten() {
                    for (sum, value) in turns.iter_mut().zip(trace) {
                        *sum += factor * value;
                    }
                }
            }
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests;
