//! One damped oscillator stepped exactly through a force that runs straight between samples.
//!
//! Nigam & Jennings 1969, Bulletin of the Seismological Society of America 59(2), the closed solution of one step.

use crate::source::{Source, Standing};

/// Where it comes from.
pub const SOURCE: Source =
    Source::new("Nigam & Jennings, Bull. Seism. Soc. Am. 59(2)", "1969", "closed solution of a step", Standing::FromMemory);

/// An oscillator q̈ + 2ζω q̇ + ω² q = p and its state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oscillator {
    omega: f64,
    zeta: f64,
    damped: f64,
    step: f64,
    decay: f64,
    cos: f64,
    sin: f64,
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
    #[must_use]
    pub fn at_rest(omega: f64, damping_ratio: f64, step_s: f64) -> Self {
        let damped = omega * (1.0 - damping_ratio * damping_ratio).sqrt();
        let (sin, cos) = (damped * step_s).sin_cos();
        let decay = (-damping_ratio * omega * step_s).exp();
        Self { omega, zeta: damping_ratio, damped, step: step_s, decay, cos, sin, q: 0.0, v: 0.0 }
    }

    /// One step under a force per unit mass that runs from `from` to `to`.
    pub fn advance(&mut self, from: f64, to: f64) {
        let square = self.omega * self.omega;
        let slope = (to - from) / (self.step * square);
        let level = from / square - 2.0 * self.zeta * slope / self.omega;
        let a = self.q - level;
        let b = (self.v - slope + self.zeta * self.omega * a) / self.damped;
        let swing = self.decay * (a * self.cos + b * self.sin);
        let rate = self.decay * self.damped * (b * self.cos - a * self.sin);
        self.q = level + slope * self.step + swing;
        self.v = slope + rate - self.zeta * self.omega * swing;
    }
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
        let mut one = Oscillator { v: 2.0, ..Oscillator::at_rest(25.0, 0.0, 0.013) };
        for _ in 0..10_000 {
            one.advance(0.0, 0.0);
        }
        let energy = one.v * one.v + (25.0 * one.q).powi(2);
        assert!((energy - 4.0).abs() < 1e-9, "{energy}");
    }
}
