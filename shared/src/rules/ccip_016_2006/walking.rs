//! Harmonics and effective impulse of walking.
//!
//! CCIP-016, 2006: Table 4.3 and section 4.4.

use crate::source::Source;
use crate::units::{Frequency, hertz};

/// Where the harmonics come from.
pub const SOURCE: Source = Source::from_memory("CCIP-016", "2006", "Table 4.3");

/// Weight of the walker that the impulses are for, N.
pub const WALKER_N: f64 = 746.0;

/// Where the impulses come from.
pub const IMPULSE_SOURCE: Source =
    Source::second_hand("CCIP-016", "2006", "section 4.4, effective impulse");

/// Effective impulse of one step in N s, I = 42 f_w^1.43/f_n^1.3: the mean of the people measured.
///
/// # Source
/// CCIP-016, section 4.4; the constant also in a draft of EN 1995-1-1, (9.12), read in code that cites it.
/// # Valid for
/// Modes above some 10 Hz, a walker of 76 kg.
pub fn mean_impulse_n_s(pace: Frequency, mode: Frequency) -> f64 {
    42.0 / 54.0 * impulse_n_s(pace, mode)
}

/// Effective impulse of one step in N s, I = 54 f_w^1.43/f_n^1.3: the design value.
///
/// # Source
/// CCIP-016, section 4.4, design value (mean 42).
/// # Valid for
/// Modes above some 10 Hz, a walker of 76 kg.
pub fn impulse_n_s(pace: Frequency, mode: Frequency) -> f64 {
    54.0 * hertz::get(pace).powf(1.43) / hertz::get(mode).powf(1.3)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed: 6.27 N s at 10 Hz and 1.8 Hz.
    #[test]
    fn the_impulse_at_a_common_pace() {
        let pace = hertz::new(1.8);
        assert!((impulse_n_s(pace, hertz::new(10.0)) - 6.27).abs() < 0.02);
    }

    /// Basis, second-hand: 4.88, 2.88, 1.98, 0.80 N s at 10, 15, 20, 40 Hz.
    #[test]
    fn means_lie_below_the_design_values() {
        let pace = hertz::new(1.8);
        for (mode, expected) in [(10.0, 4.88), (15.0, 2.88), (20.0, 1.98), (40.0, 0.80)] {
            assert!((mean_impulse_n_s(pace, hertz::new(mode)) - expected).abs() < 0.01);
        }
    }
}
