//! Chance with a fixed seed, the normal distribution, and points that fill a space evenly.

use std::f64::consts::TAU;

/// A permuted congruential generator: the same plan prints the same digits.
///
/// # Source
/// M. E. O'Neill (2014), PCG-XSH-RR (from memory).
#[derive(Debug, Clone)]
pub struct Chance(u64);

impl Chance {
    /// Begins anew.
    pub fn new(seed: u64) -> Self {
        let mut chance = Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x853c_49e6_748f_ea9b);
        let _ = chance.next();
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

    /// Of a normal distribution.
    pub fn normal(&mut self) -> f64 {
        (-2.0 * self.even().ln()).sqrt() * (TAU * self.even()).cos()
    }
}

/// Share of a normal distribution below so many standard deviations; to 1e-7.
///
/// # Source
/// Abramowitz and Stegun, 7.1.26 (from memory).
pub fn below(z: f64) -> f64 {
    let x = z.abs() / std::f64::consts::SQRT_2;
    let t = 1.0 / (1.0 + 0.327_591_1 * x);
    let series = t
        * (0.254_829_592
            + t * (-0.284_496_736
                + t * (1.421_413_741 + t * (-1.453_152_027 + t * 1.061_405_429))));
    let beyond = 0.5 * series * (-x * x).exp();
    if z > 0.0 { 1.0 - beyond } else { beyond }
}

/// The standard deviations below which this share lies.
pub fn normal_at(share: f64) -> f64 {
    let share = share.clamp(1e-9, 1.0 - 1e-9);
    let (mut low, mut high) = (-6.5, 6.5);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if below(middle) < share {
            low = middle
        } else {
            high = middle
        }
    }
    0.5 * (low + high)
}

/// A point of a sequence that fills the unit cube evenly: multiples of powers of the generalised golden ratio.
///
/// # Source
/// Additive recurrence with the root of x^(d+1) = x + 1 (from memory).
pub fn evenly<const N: usize>(place: usize) -> [f64; N] {
    let mut ratio = 1.5_f64;
    for _ in 0..60 {
        ratio = (1.0 + ratio).powf(1.0 / (N as f64 + 1.0));
    }
    std::array::from_fn(|k| {
        (0.5 + (place as f64 + 1.0) * ratio.powi(-(k as i32 + 1)))
            .fract()
            .clamp(1e-6, 1.0 - 1e-6)
    })
}

/// Logarithm of Student's density with five degrees of freedom, but for a constant; the scale is one.
pub fn ln_student(z: f64) -> f64 {
    -3.0 * (z * z / 5.0).ln_1p()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Common tables: 0.95 at 1.6449, 0.99865 at 3.
    #[test]
    fn the_normal_distribution_is_that_of_the_tables() {
        assert!((below(1.644_853_6) - 0.95).abs() < 1e-6);
        assert!((below(3.0) - 0.998_650_1).abs() < 1e-6);
        assert!((normal_at(0.05) + 1.644_853_6).abs() < 1e-4);
    }

    #[test]
    fn points_fill_the_cube_evenly() {
        let count = 2000;
        let mean: [f64; 8] = (0..count).fold([0.0; 8], |sum, i| {
            let point = evenly::<8>(i);
            std::array::from_fn(|k| sum[k] + point[k] / f64::from(count as u32))
        });
        assert!(mean.iter().all(|m| (m - 0.5).abs() < 0.01), "{mean:?}");
    }
}
