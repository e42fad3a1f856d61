//! The star through time: forces on the block, mode by mode, to the turn of the load in both axes.

use std::sync::Arc;

use crate::rules::lamb_1904::slope;
use crate::rules::mechanics::oscillator::Oscillator;
use crate::stages::motion::system::Planes;
use crate::units::ARCSEC_PER_RADIAN;

/// Time between samples, s: a heel strike of 20 ms has ten of them.
pub const STEP_S: f64 = 0.002;
/// Modes above this follow any footstep without delay and are taken as steady, Hz.
pub const FASTEST_HZ: f64 = 150.0;
pub(super) const FASTEST: f64 = FASTEST_HZ * 2.0 * std::f64::consts::PI;

/// Forces on the block about its base's centre: along x and y, and the moments about x and y.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Forces {
    /// One sample each step of time of every component.
    samples: [Vec<f64>; 4],
    /// What comes as a wave where a mode is quick and the place far.
    waves: Vec<Wave>,
}

/// A load that comes and goes on the ground: what it makes a mode swing is by as much more as the ground tilts more at that
/// mode's frequency than at rest; what follows it slowly is not.
#[derive(Debug, Clone, PartialEq)]
struct Wave {
    influence: [f64; 4],
    first: usize,
    trace: Trace,
    place: Place,
}

/// A load through time, a sample each step.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// The whole of it.
    pub whole: Arc<[f64]>,
    /// Of that what is slow enough for the ground to follow as if at rest.
    pub slow: Arc<[f64]>,
}

/// How far off a quick load is, and how quick it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// Distance from the block's middle.
    pub distance_m: f64,
    /// Time of its blow, a half sine: from three quarters over it on little more than half of its spectrum is
    /// left, and a mode follows it more than it swings.
    pub blow_s: f64,
}

impl Place {
    /// How many times as far as a load at rest it tilts the ground for a mode of this circular frequency.
    pub fn wave_ratio(&self, omega: f64, shear_speed_m_s: Option<f64>) -> f64 {
        let omega = omega.min(0.75 * 2.0 * std::f64::consts::PI / self.blow_s);
        shear_speed_m_s.map_or(1.0, |speed| slope::ratio(omega * self.distance_m / speed))
    }
}

impl Forces {
    /// No force for so long.
    pub fn at_rest(lasts_s: f64) -> Self {
        let count = (lasts_s / STEP_S).ceil().max(1.0) as usize + 1;
        Self {
            samples: std::array::from_fn(|_| vec![0.0; count]),
            waves: Vec::new(),
        }
    }

    /// Adds a load as a function of time, at a place whose influence for one newton is given.
    pub fn add(&mut self, influence: &[f64; 6], starts_s: f64, trace: &[f64]) {
        let first = sample(starts_s);
        for (samples, per_newton) in self.samples.iter_mut().zip(of_block(influence)) {
            if per_newton != 0.0 {
                add(samples, first, trace, per_newton);
            }
        }
    }

    /// Adds one that comes as a wave where it is quick and far, in the same way.
    pub fn add_wave(&mut self, influence: &[f64; 6], starts_s: f64, trace: &Trace, place: Place) {
        self.waves.push(Wave {
            influence: of_block(influence),
            first: sample(starts_s),
            trace: trace.clone(),
            place,
        });
    }
}

fn sample(at_s: f64) -> usize {
    (at_s / STEP_S).round().max(0.0) as usize
}

fn of_block(influence: &[f64; 6]) -> [f64; 4] {
    [influence[0], influence[1], influence[3], influence[4]]
}

/// Adds a trace so many times to what comes from a sample on.
fn add(samples: &mut [f64], first: usize, trace: &[f64], factor: f64) {
    for (sum, value) in samples.iter_mut().skip(first).zip(trace) {
        *sum += factor * value;
    }
}

/// Turn of the load in arcsec: towards the east and towards the north.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    /// One sample each step of time.
    pub turns: Vec<[f64; 2]>,
    /// The step of time, s.
    pub step_s: f64,
}

impl Default for History {
    fn default() -> Self {
        Self::of(Vec::new())
    }
}

/// Runs the forces through the modes.
pub fn run(planes: &Planes, forces: &Forces) -> History {
    let count = forces.samples[0].len();
    let mut turns = vec![[0.0; 2]; count];
    let mut pushes = vec![0.0; count];
    for (plane, modes) in planes.both().into_iter().enumerate() {
        // What goes with the forces at once.
        let mut at_rest = vec![0.0; count];
        let mut steady = Grip {
            base: 0.0,
            turn: 0.0,
            omega: planes.first_omega(),
        };
        for mode in modes {
            let gain = ARCSEC_PER_RADIAN * mode.load_turn;
            if mode.omega > FASTEST {
                let flexible = gain / mode.omega.powi(2);
                steady.base += flexible * mode.base;
                steady.turn += flexible * mode.block_turn;
                continue;
            }
            let grip = Grip {
                base: mode.base,
                turn: mode.block_turn,
                omega: mode.omega,
            };
            pushes.fill(0.0);
            grip.push(plane, planes, forces, &mut pushes);
            let mut one = Oscillator::at_rest(mode.omega, mode.damping_ratio, STEP_S);
            let mut before = 0.0;
            for (turn, &now) in turns.iter_mut().zip(&pushes) {
                one.advance(before, now);
                before = now;
                turn[plane] += gain * one.q;
            }
            grip.lag(
                plane,
                planes,
                forces,
                gain / mode.omega.powi(2),
                &mut at_rest,
            );
        }
        steady.push(plane, planes, forces, &mut at_rest);
        steady.lag(plane, planes, forces, 1.0, &mut at_rest);
        for (turn, now) in turns.iter_mut().zip(&at_rest) {
            turn[plane] += now;
        }
    }
    History::of(turns)
}

/// What force and moment on the block do to a mode, or to the turn through all modes that follow at once.
struct Grip {
    base: f64,
    turn: f64,
    /// Frequency by which a wave counts: of those that follow at once the pier's first, which is nearer to the load's own.
    omega: f64,
}

impl Grip {
    /// Adds what the forces do at each sample in a plane: 0 is that of east and west, 1 that of north and south.
    fn push(&self, plane: usize, planes: &Planes, forces: &Forces, pushes: &mut [f64]) {
        // In the north plane a turn towards the north is the opposite of a right-handed turn about x.
        let ([force, moment], turn) = if plane == 0 {
            ([0, 3], self.turn)
        } else {
            ([1, 2], -self.turn)
        };
        let both = forces.samples[force].iter().zip(&forces.samples[moment]);
        for (push, (force, moment)) in pushes.iter_mut().zip(both) {
            *push += self.base * force + turn * moment;
        }
        for wave in &forces.waves {
            let (work, ratio) = self.feels(plane, planes, wave);
            add(pushes, wave.first, &wave.trace.whole, work * ratio);
        }
    }

    /// Takes back what a wave's slow part was counted too much: the ground follows it as if at rest.
    fn lag(
        &self,
        plane: usize,
        planes: &Planes,
        forces: &Forces,
        flexible: f64,
        turns: &mut [f64],
    ) {
        for wave in &forces.waves {
            let (work, ratio) = self.feels(plane, planes, wave);
            let more = flexible * work * (ratio - 1.0);
            add(turns, wave.first, &wave.trace.slow, -more);
        }
    }

    /// Work of a wave's newton, and how many times as far it tilts the ground as one at rest.
    fn feels(&self, plane: usize, planes: &Planes, wave: &Wave) -> (f64, f64) {
        let [x, y, about_x, about_y] = wave.influence;
        let work = if plane == 0 {
            self.base * x + self.turn * about_y
        } else {
            self.base * y - self.turn * about_x
        };
        (
            work,
            wave.place.wave_ratio(self.omega, planes.shear_speed_m_s),
        )
    }
}

impl History {
    /// One of samples [`STEP_S`] apart.
    pub const fn of(turns: Vec<[f64; 2]>) -> Self {
        Self {
            turns,
            step_s: STEP_S,
        }
    }

    /// Largest distance from rest.
    pub fn peak_arcsec(&self) -> f64 {
        let larger = |most: &mut f64, [x, y]: &[f64; 2]| *most = most.max(x * x + y * y);
        let most = in_lanes(&self.turns, 0.0, larger);
        most.into_iter().fold(0.0, f64::max).sqrt()
    }

    /// Root mean square of the distance from the mean place.
    pub fn rms_arcsec(&self) -> f64 {
        // From the first place on, so that a star that stays is told to stay.
        let [first_x, first_y] = self.turns.first().copied().unwrap_or_default();
        let lanes = in_lanes(&self.turns, [0.0; 3], |sums, [x, y]| {
            let [x, y] = [x - first_x, y - first_y];
            *sums = [sums[0] + x, sums[1] + y, sums[2] + (x * x + y * y)];
        });
        let count = self.turns.len().max(1) as f64;
        let [x, y, squares] =
            [0, 1, 2].map(|sum| lanes.iter().map(|lane| lane[sum]).sum::<f64>() / count);
        (squares - x * x - y * y).max(0.0).sqrt()
    }

    /// The same with a second one on top that comes so much later: what two people do who walk one after the other.
    pub fn with_follower(&self, later_s: f64) -> Self {
        let later = (later_s / self.step_s).round().max(0.0) as usize;
        let mut turns = Vec::with_capacity(self.turns.len() + later);
        turns.extend_from_slice(&self.turns);
        turns.resize(self.turns.len() + later, [0.0; 2]);
        for (sum, [x, y]) in turns[later..].iter_mut().zip(&self.turns) {
            *sum = [sum[0] + x, sum[1] + y];
        }
        Self { turns, ..*self }
    }

    /// The same after a guider that takes out, in each interval, the mean place of the interval before.
    pub fn guided(&self, interval_s: f64) -> Self {
        self.guided_until(interval_s, 0)
    }

    /// The same for so many samples at least, the star being at rest after those that there are.
    pub fn guided_until(&self, interval_s: f64, count: usize) -> Self {
        let length = ((interval_s / self.step_s).round() as usize).max(1);
        let count = count.max(self.turns.len());
        let mut turns = Vec::with_capacity(count);
        turns.extend_from_slice(&self.turns);
        turns.resize(count, [0.0; 2]);
        let mut known = [0.0; 2];
        for chunk in turns.chunks_mut(length) {
            let here = mean(chunk);
            for [x, y] in chunk {
                (*x, *y) = (*x - known[0], *y - known[1]);
            }
            known = here;
        }
        Self { turns, ..*self }
    }

    /// The same with one sample of so many.
    pub fn each(&self, so_many: usize) -> Self {
        let so_many = so_many.max(1);
        Self {
            turns: self.turns.iter().step_by(so_many).copied().collect(),
            step_s: self.step_s * so_many as f64,
        }
    }

    /// The same with samples [`STEP_S`] apart, the new ones by a cubic through the two on either side.
    pub fn fine(&self) -> Self {
        let at = |i: usize| self.turns.get(i).copied().unwrap_or([0.0; 2]);
        let parts = (self.step_s / STEP_S).round().max(1.0) as usize;
        if parts == 1 {
            return self.clone();
        }
        let weights: Vec<[f64; 4]> = (0..parts)
            .map(|part| cubic(part as f64 / parts as f64))
            .collect();
        let all = (0..self.turns.len()).flat_map(|i| {
            let around = [at(i.saturating_sub(1)), at(i), at(i + 1), at(i + 2)];
            weights.iter().map(move |weights| {
                [0, 1].map(|axis| {
                    let both = around.iter().zip(weights);
                    both.map(|(turn, weight)| turn[axis] * weight).sum()
                })
            })
        });
        Self::of(all.collect())
    }
}

/// What each of four places one apart counts at a share of the way from the second to the third (Lagrange's cubic).
fn cubic(t: f64) -> [f64; 4] {
    [
        -t * (t - 1.0) * (t - 2.0) / 6.0,
        (t + 1.0) * (t - 1.0) * (t - 2.0) / 2.0,
        -(t + 1.0) * t * (t - 2.0) / 2.0,
        (t + 1.0) * t * (t - 1.0) / 6.0,
    ]
}

/// Results that are found beside each other, so that none waits for the one before it.
const LANES: usize = 4;

/// Takes places into a few results in turn, to be put together by whoever asks.
fn in_lanes<T: Copy>(
    turns: &[[f64; 2]],
    start: T,
    mut take: impl FnMut(&mut T, &[f64; 2]),
) -> [T; LANES] {
    let mut lanes = [start; LANES];
    let (whole, rest) = turns.as_chunks::<LANES>();
    for some in whole {
        for (lane, turn) in lanes.iter_mut().zip(some) {
            take(lane, turn);
        }
    }
    for (lane, turn) in lanes.iter_mut().zip(rest) {
        take(lane, turn);
    }
    lanes
}

/// Mean place.
pub(super) fn mean(turns: &[[f64; 2]]) -> [f64; 2] {
    let [x, y] = turns.iter().fold([0.0; 2], |[a, b], [x, y]| [a + x, b + y]);
    let count = turns.len().max(1) as f64;
    [x / count, y / count]
}

#[cfg(test)]
mod tests;
