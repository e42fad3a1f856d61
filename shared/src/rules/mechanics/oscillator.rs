//! One damped oscillator stepped exactly through a force that runs straight between samples.
//!
//! Nigam & Jennings 1969, Bulletin of the Seismological Society of America 59(2), the closed solution of one step.

use crate::source::Source;

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory(
    "Nigam & Jennings, Bull. Seism. Soc. Am. 59(2)",
    "1969",
    "closed solution of a step",
);

/// An oscillator q̈ + 2ζω q̇ + ω² q = p and its state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oscillator {
    /// What the next displacement takes of this one, of the velocity, of the force before and of the force after.
    to_q: [f64; 4],
    /// The same for the next velocity.
    to_v: [f64; 4],
    /// Displacement.
    pub q: f64,
    /// Velocity.
    pub v: f64,
}

impl Oscillator {
    /// At rest. The damping ratio must be below 1.
    ///
    /// # Source
    /// Nigam & Jennings 1969.
    /// # Valid for
    /// ω > 0, 0 ≤ ζ < 1; exact at any step for a force that is straight between samples.
    pub fn at_rest(omega: f64, damping_ratio: f64, step_s: f64) -> Self {
        // A step is linear in state and force, so that four unit steps say all of it.
        let units = [
            [1.0, 0.0, 0.0, 0.0],
            [0.0, 1.0, 0.0, 0.0],
            [0.0, 0.0, 1.0, 0.0],
            [0.0, 0.0, 0.0, 1.0],
        ];
        let steps = units.map(|unit| step(omega, damping_ratio, step_s, unit));
        Self {
            to_q: steps.map(|[q, _]| q),
            to_v: steps.map(|[_, v]| v),
            q: 0.0,
            v: 0.0,
        }
    }

    /// One step under a force per unit mass that runs from `from` to `to`.
    ///
    /// # Source
    /// Nigam & Jennings 1969.
    pub fn advance(&mut self, from: f64, to: f64) {
        let sum = |[q, v, a, b]: [f64; 4]| (q * self.q + v * self.v) + (a * from + b * to);
        (self.q, self.v) = (sum(self.to_q), sum(self.to_v));
    }
}

/// Displacement and velocity after one step from a displacement, a velocity, and a force that runs straight.
fn step(omega: f64, zeta: f64, step: f64, [q, v, from, to]: [f64; 4]) -> [f64; 2] {
    let damped = omega * (1.0 - zeta * zeta).sqrt();
    let (sin, cos) = (damped * step).sin_cos();
    let decay = (-zeta * omega * step).exp();
    let square = omega * omega;
    let slope = (to - from) / (step * square);
    let level = from / square - 2.0 * zeta * slope / omega;
    let a = q - level;
    let b = (v - slope + zeta * omega * a) / damped;
    let swing = decay * (a * cos + b * sin);
    let rate = decay * damped * (b * cos - a * sin);
    [
        level + slope * step + swing,
        slope + rate - zeta * omega * swing,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_steady_force_ends_at_the_static_displacement() {
        let mut one = Oscillator::at_rest(30.0, 0.05, 0.01);
        for _ in 0..2000 {
            one.advance(9.0, 9.0);
        }
        assert!((one.q - 9.0 / 900.0).abs() < 1e-12);
    }

    /// Undamped: a free swing keeps its energy to the last digits, whatever the step.
    #[test]
    fn a_free_swing_keeps_its_energy() {
        let mut one = Oscillator {
            v: 2.0,
            ..Oscillator::at_rest(25.0, 0.0, 0.013)
        };
        for _ in 0..10_000 {
            one.advance(0.0, 0.0);
        }
        let energy = one.v * one.v + (25.0 * one.q).powi(2);
        assert!((energy - 4.0).abs() < 1e-9, "{energy}");
    }
}
