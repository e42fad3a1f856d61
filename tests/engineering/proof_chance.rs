//! Chance with a seed, for made-up measurements.

use std::f64::consts::TAU;

/// A permuted congruential generator (M. E. O'Neill 2014, PCG-XSH-RR, from memory).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        let mut chance = Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x853c_49e6_748f_ea9b);
        chance.next();
        chance
    }

    fn next(&mut self) -> u32 {
        let old = self.0;
        self.0 = old
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((old >> 18) ^ old) >> 27) as u32;
        mixed.rotate_right((old >> 59) as u32)
    }

    /// Between nought and one.
    pub fn even(&mut self) -> f64 {
        (f64::from(self.next()) + 0.5) / 4_294_967_296.0
    }

    /// A whole number below.
    pub fn below(&mut self, most: usize) -> usize {
        ((self.even() * most as f64) as usize).min(most - 1)
    }

    /// Of a normal distribution.
    pub fn normal(&mut self) -> f64 {
        (-2.0 * self.even().ln()).sqrt() * (TAU * self.even()).cos()
    }
}
