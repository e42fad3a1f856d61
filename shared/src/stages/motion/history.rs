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
const FASTEST: f64 = FASTEST_HZ * 2.0 * std::f64::consts::PI;

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
    #[must_use]
    pub fn wave_ratio(&self, omega: f64, shear_speed_m_s: Option<f64>) -> f64 {
        let omega = omega.min(0.75 * 2.0 * std::f64::consts::PI / self.blow_s);
        shear_speed_m_s.map_or(1.0, |speed| slope::ratio(omega * self.distance_m / speed))
    }
}

impl Forces {
    /// No force for so long.
    #[must_use]
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
#[derive(Debug, Clone, Default, PartialEq)]
pub struct History {
    /// One sample each step of time.
    pub turns: Vec<[f64; 2]>,
}

/// Runs the forces through the modes.
#[must_use]
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
    History { turns }
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
    /// Largest distance from rest.
    #[must_use]
    pub fn peak_arcsec(&self) -> f64 {
        self.turns
            .iter()
            .map(|[x, y]| x * x + y * y)
            .fold(0.0, f64::max)
            .sqrt()
    }

    /// Root mean square of the distance from the mean place.
    #[must_use]
    pub fn rms_arcsec(&self) -> f64 {
        let count = self.turns.len().max(1) as f64;
        let [x, y] = self
            .turns
            .iter()
            .fold([0.0; 2], |[a, b], [x, y]| [a + x / count, b + y / count]);
        (self
            .turns
            .iter()
            .map(|[a, b]| (a - x).powi(2) + (b - y).powi(2))
            .sum::<f64>()
            / count)
            .sqrt()
    }

    /// The same with a second one on top that comes so much later: what two people do who walk one after the other.
    #[must_use]
    pub fn with_follower(&self, later_s: f64) -> Self {
        let later = (later_s / STEP_S).round().max(0.0) as usize;
        let at = |i: usize| self.turns.get(i).copied().unwrap_or([0.0; 2]);
        let both = |i: usize| {
            let (first, second) = (at(i), i.checked_sub(later).map_or([0.0; 2], at));
            [first[0] + second[0], first[1] + second[1]]
        };
        Self {
            turns: (0..self.turns.len() + later).map(both).collect(),
        }
    }

    /// The same after a guider that takes out, in each interval, the mean place of the interval before.
    #[must_use]
    pub fn guided(&self, interval_s: f64) -> Self {
        let length = ((interval_s / STEP_S).round() as usize).max(1);
        let mut known = [0.0; 2];
        let mut turns = Vec::with_capacity(self.turns.len());
        for chunk in self.turns.chunks(length) {
            let count = chunk.len() as f64;
            let mean = chunk
                .iter()
                .fold([0.0; 2], |[a, b], [x, y]| [a + x / count, b + y / count]);
            turns.extend(chunk.iter().map(|[x, y]| [x - known[0], y - known[1]]));
            known = mean;
        }
        Self { turns }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stages::motion::modes::Mode;
    use crate::stages::motion::people::steady;

    fn mode(hertz: f64, turn: f64) -> Mode {
        Mode {
            omega: 2.0 * std::f64::consts::PI * hertz,
            damping_ratio: 0.05,
            base: 0.01,
            block_turn: turn,
            top_turn: turn,
            load_turn: turn,
            load_move: 0.0,
            middle_move: 0.0,
            shares: [1.0, 0.0, 0.0, 0.0],
            ground_dynamic_ratio: 1.0,
            shape: Vec::new(),
        }
    }

    fn planes() -> Planes {
        Planes {
            x: vec![mode(18.0, 0.02), mode(400.0, 0.03)],
            y: vec![mode(25.0, 0.02)],
            shear_speed_m_s: None,
        }
    }

    #[test]
    fn a_load_that_stays_ends_at_the_steady_turn() {
        let load = [30.0, -20.0, 0.0, 500.0, 400.0, 0.0];
        let mut forces = Forces::at_rest(4.0);
        forces.add(&load, 0.0, &vec![1.0; 3000]);
        let end = *run(&planes(), &forces).turns.last().unwrap();
        let expected = steady(&planes(), &load);
        assert!(
            (end[0] / expected[0] - 1.0).abs() < 1e-9 && (end[1] / expected[1] - 1.0).abs() < 1e-9,
            "{end:?} {expected:?}"
        );
    }

    /// By hand: at rest nothing is a wave; at 20 Hz and 2 m in ground of 150 m/s the phase is 1.676, the ratio of the table
    /// 2.262; a blow of 0.075 s has little at 20 Hz, and goes as at 10 Hz (phase 0.838, 1.431).
    #[test]
    fn a_quick_load_comes_as_a_wave_by_what_the_mode_and_the_blow_are() {
        let at = |hertz: f64, blow_s: f64, speed| {
            let omega = 2.0 * std::f64::consts::PI * hertz;
            Place {
                distance_m: 2.0,
                blow_s,
            }
            .wave_ratio(omega, speed)
        };
        assert!((at(20.0, 0.01, Some(150.0)) - 2.262).abs() < 2e-3);
        assert!((at(20.0, 0.075, Some(150.0)) - 1.431).abs() < 2e-3);
        assert_eq!(
            (at(20.0, 0.01, None), at(0.0, 0.01, Some(150.0))),
            (1.0, 1.0)
        );
    }

    #[test]
    fn a_guider_takes_out_what_stays() {
        let history = History {
            turns: vec![[1.0, -2.0]; 5000],
        };
        let guided = history.guided(2.0);
        assert!(guided.turns[4000].iter().all(|turn| turn.abs() < 1e-12));
        assert_eq!(guided.turns[500], [1.0, -2.0]);
        assert!(history.rms_arcsec() < 1e-12);
    }
}
