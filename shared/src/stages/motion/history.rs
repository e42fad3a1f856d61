//! The star through time: forces on the block, mode by mode, to the turn of the load in both axes.

use crate::rules::mechanics::oscillator::Oscillator;
use crate::stages::motion::modes::Mode;
use crate::stages::motion::system::Planes;
use crate::units::ARCSEC_PER_RADIAN;

/// Time between samples, s: a heel strike of 20 ms has ten of them.
pub const STEP_S: f64 = 0.002;
/// Modes above this follow any footstep without delay and are taken as steady, Hz.
pub const FASTEST_HZ: f64 = 150.0;

/// Forces on the block about its base's centre: x, y in newtons, about x and about y in newton metres.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Forces {
    /// One sample each step of time.
    pub samples: Vec<[f64; 4]>,
}

impl Forces {
    /// No force for so long.
    #[must_use]
    pub fn at_rest(lasts_s: f64) -> Self {
        Self {
            samples: vec![[0.0; 4]; (lasts_s / STEP_S).ceil().max(1.0) as usize + 1],
        }
    }

    /// Adds a load of so many newtons as a function of time, at a place whose influence for one newton is given.
    pub fn add(&mut self, influence: &[f64; 6], starts_s: f64, trace: &[f64]) {
        let first = (starts_s / STEP_S).round().max(0.0) as usize;
        let one = [influence[0], influence[1], influence[3], influence[4]];
        for (sample, newtons) in self.samples.iter_mut().skip(first).zip(trace) {
            for (sum, per_newton) in sample.iter_mut().zip(one) {
                *sum += per_newton * newtons;
            }
        }
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
    let (mut east, mut north) = (Plane::at_rest(&planes.x), Plane::at_rest(&planes.y));
    // In the north plane a turn towards the north is the opposite of a right-handed turn about x.
    let turns = forces
        .samples
        .iter()
        .map(|[x, y, about_x, about_y]| [east.advance(*x, *about_y), north.advance(*y, -about_x)])
        .collect();
    History { turns }
}

/// The modes of one plane on their way through time.
struct Plane {
    swings: Vec<Swing>,
    /// Turn under a steady force and a steady moment through the modes that follow at once.
    steady: [f64; 2],
}

/// A mode that swings: what force and moment do to it, what it does to the turn, its force a sample ago.
struct Swing {
    base: f64,
    block_turn: f64,
    gain: f64,
    before: f64,
    one: Oscillator,
}

impl Plane {
    fn at_rest(modes: &[Mode]) -> Self {
        let (mut swings, mut steady) = (Vec::with_capacity(modes.len()), [0.0; 2]);
        for mode in modes {
            let gain = ARCSEC_PER_RADIAN * mode.load_turn;
            if mode.omega > FASTEST_HZ * 2.0 * std::f64::consts::PI {
                let flexible = gain / mode.omega.powi(2);
                steady = [
                    steady[0] + flexible * mode.base,
                    steady[1] + flexible * mode.block_turn,
                ];
            } else {
                let one = Oscillator::at_rest(mode.omega, mode.damping_ratio, STEP_S);
                swings.push(Swing {
                    base: mode.base,
                    block_turn: mode.block_turn,
                    gain,
                    before: 0.0,
                    one,
                });
            }
        }
        Self { swings, steady }
    }

    /// The turn after one more step of time.
    fn advance(&mut self, force: f64, moment: f64) -> f64 {
        let mut turn = 0.0;
        for swing in &mut self.swings {
            let now = swing.base * force + swing.block_turn * moment;
            swing.one.advance(swing.before, now);
            swing.before = now;
            turn += swing.gain * swing.one.q;
        }
        turn + (self.steady[0] * force + self.steady[1] * moment)
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
