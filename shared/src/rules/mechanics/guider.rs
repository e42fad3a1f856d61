//! What a guider leaves of a movement, and what one exposure sees of it.
//!
//! Mechanics: a guider takes out, in each interval, the mean place of the interval before; an exposure is centred on its own
//! mean place.

use std::f64::consts::PI;

use crate::source::Source;

/// Where it comes from.
pub const SOURCE: Source =
    Source::derived("a guider that takes out the mean place of the interval before");

/// sin πx/πx.
fn sinc(x: f64) -> f64 {
    if x.abs() < 1e-9 {
        1.0
    } else {
        (PI * x).sin() / (PI * x)
    }
}

/// Square of what a guider leaves of a swing, by cycles in one of its intervals: 1 + s² − 2 s² cos 2πfT, s = sinc fT.
///
/// A mean's own square is s² of the swing's, and the means of two intervals in a row are a whole interval apart in phase.
///
/// # Source
/// Mechanics, as above.
/// # Valid for
/// A guider that measures without error and corrects at once.
pub fn left_ratio(cycles: f64) -> f64 {
    let mean = sinc(cycles).powi(2);
    1.0 + mean - 2.0 * mean * (2.0 * PI * cycles).cos()
}

/// Square of what one exposure sees of a swing, by cycles in it: 1 − sinc² fT.
///
/// # Source
/// Mechanics: variance about the exposure's own mean place, over all phases.
/// # Valid for
/// Any exposure.
pub fn seen_ratio(cycles: f64) -> f64 {
    1.0 - sinc(cycles).powi(2)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against samples: a swing, in each of many intervals less the mean of the one before.
    #[test]
    fn the_guider_of_the_formula_is_the_one_that_works_on_samples() {
        for cycles in [0.05, 0.2, 0.37, 0.8, 1.3] {
            let (n, intervals) = (2000, 4000);
            let (mut before, mut sum) = (0.0, 0.0);
            for interval in 0..intervals {
                let at = |i: usize| {
                    // Intervals begin at every phase alike: the golden ratio spreads them.
                    let phase = f64::from(interval / 2) * 0.618_033_988_75;
                    let turns = cycles * (f64::from(interval % 2) + i as f64 / f64::from(n));
                    (2.0 * PI * (turns + phase)).sin()
                };
                let mean = (0..n as usize).map(at).sum::<f64>() / f64::from(n);
                if interval % 2 == 1 {
                    sum += (0..n as usize)
                        .map(|i| (at(i) - before).powi(2))
                        .sum::<f64>()
                        / f64::from(n);
                }
                before = mean;
            }
            // A swing's own mean square is a half.
            let found = 2.0 * sum / f64::from(intervals / 2);
            assert!(
                (found / left_ratio(cycles) - 1.0).abs() < 0.01,
                "{cycles}: {found}"
            );
        }
    }

    #[test]
    fn slow_movements_are_taken_out_and_quick_ones_left() {
        assert!(left_ratio(1e-4) < 1e-6 && (left_ratio(20.5) - 1.0).abs() < 1e-3);
        assert!(seen_ratio(1e-4) < 1e-6 && (seen_ratio(0.5) - 0.5947).abs() < 1e-4);
    }
}
