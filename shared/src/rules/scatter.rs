//! Scatter: what the unfavourable twentieth makes of an uncertain factor.

use crate::source::Source;

/// Source of the sums.
pub const SOURCE: Source = Source::derived(
    "the logarithm of a product is a sum, and variances of independent terms add; worst is the unfavourable twentieth",
);

/// Standard deviations between the middle and the twentieth part at either end of a normal distribution.
pub const TWENTIETH: f64 = 1.645;

/// Ratio of the unfavourable twentieth to the middle: `exp(1.645 s)`.
///
/// # Source
/// Elementary statistics of the lognormal distribution.
///
/// # Valid for
/// A factor whose logarithm is about normal.
pub fn worst_ratio(sd_ln: f64) -> f64 {
    (TWENTIETH * sd_ln).exp()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!(
            (found / expected - 1.0).abs() < within,
            "{found} {expected}"
        );
    }

    // Engineering basis, section 2, computed apart: contact 0.22, Poisson 0.08, model 0.10 with the speed's 0.30, 0.25, 0.12.
    #[test]
    fn a_speeds_scatter_counts_twice_and_the_others_beside_it() {
        for (sd, worst) in [(0.652, 2.92), (0.561, 2.52), (0.350, 1.78)] {
            near(worst_ratio(sd), worst, 3e-3);
        }
    }

    // Engineering basis, section 1, computed apart: the 95 % factor on the speed and on the modulus.
    #[test]
    fn a_speed_and_its_modulus() {
        for (sd, speed, modulus) in [
            (0.12, 1.22, 1.48),
            (0.18, 1.35, 1.81),
            (0.25, 1.51, 2.28),
            (0.30, 1.64, 2.68),
        ] {
            near(worst_ratio(sd), speed, 5e-3);
            near(worst_ratio(2.0 * sd), modulus, 5e-3);
        }
    }
}
