//! Harmonics and effective impulse of walking.
//!
//! CCIP-016, 2006: Table 4.3 and section 4.4.

use crate::source::{Source, Standing};
use crate::units::{Frequency, hertz};

/// Where the harmonics come from.
pub const SOURCE: Source = Source::new("CCIP-016", "2006", "Table 4.3", Standing::FromMemory);

/// Weight of the walker that the impulses are for, N.
pub const WALKER_N: f64 = 746.0;

/// Design value of the Fourier coefficient of a harmonic, force over weight.
///
/// # Source
/// CCIP-016, Table 4.3: 0.41(f − 0.95) up to 0.56, 0.069 + 0.0056·2f, 0.033 + 0.0064·3f, 0.013 + 0.0065·4f.
/// # Valid for
/// Paces of 1 to 2.8 Hz, harmonics 1 to 4; nought for others.
#[must_use]
pub fn harmonic_ratio(harmonic: u8, pace: Frequency) -> f64 {
    let f = hertz::get(pace);
    match harmonic {
        1 => (0.41 * (f - 0.95)).clamp(0.0, 0.56),
        2 => 0.069 + 0.0056 * 2.0 * f,
        3 => 0.033 + 0.0064 * 3.0 * f,
        4 => 0.013 + 0.0065 * 4.0 * f,
        _ => 0.0,
    }
}

/// Mean of the people measured of the Fourier coefficient of a harmonic, force over weight.
///
/// # Source
/// CCIP-016, Table 4.3: 0.37(f − 0.95) up to 0.50, 0.054 + 0.0044·2f, 0.026 + 0.0050·3f, 0.010 + 0.0051·4f.
/// # Valid for
/// Paces of 1 to 2.8 Hz, harmonics 1 to 4; nought for others.
#[must_use]
pub fn mean_harmonic_ratio(harmonic: u8, pace: Frequency) -> f64 {
    let f = hertz::get(pace);
    match harmonic {
        1 => (0.37 * (f - 0.95)).clamp(0.0, 0.50),
        2 => 0.054 + 0.0044 * 2.0 * f,
        3 => 0.026 + 0.0050 * 3.0 * f,
        4 => 0.010 + 0.0051 * 4.0 * f,
        _ => 0.0,
    }
}

/// Where the impulses come from.
pub const IMPULSE_SOURCE: Source = Source::new(
    "CCIP-016",
    "2006",
    "section 4.4, effective impulse",
    Standing::SecondHand,
);

/// Effective impulse of one step in N s, I = 42 f_w^1.43/f_n^1.3: the mean of the people measured.
///
/// # Source
/// CCIP-016, section 4.4; the constant also in a draft of EN 1995-1-1, (9.12), read in code that cites it.
/// # Valid for
/// Modes above some 10 Hz, a walker of 76 kg.
#[must_use]
pub fn mean_impulse_n_s(pace: Frequency, mode: Frequency) -> f64 {
    42.0 / 54.0 * impulse_n_s(pace, mode)
}

/// Effective impulse of one step in N s, I = 54 f_w^1.43/f_n^1.3: the design value.
///
/// # Source
/// CCIP-016, section 4.4, design value (mean 42).
/// # Valid for
/// Modes above some 10 Hz, a walker of 76 kg.
#[must_use]
pub fn impulse_n_s(pace: Frequency, mode: Frequency) -> f64 {
    54.0 * hertz::get(pace).powf(1.43) / hertz::get(mode).powf(1.3)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed: 0.349, 0.089, 0.068, 0.060 at 1.8 Hz; 6.27 N s at 10 Hz.
    #[test]
    fn harmonics_and_impulse_at_a_common_pace() {
        let pace = hertz::new(1.8);
        for (n, expected) in [(1, 0.349), (2, 0.089), (3, 0.068), (4, 0.060)] {
            assert!((harmonic_ratio(n, pace) - expected).abs() < 0.001, "{n}");
        }
        // The basis prints 6.27 for 10 Hz.
        assert!((impulse_n_s(pace, hertz::new(10.0)) - 6.27).abs() < 0.02);
    }

    /// Basis, second-hand: 4.88, 2.88, 1.98, 0.80 N s at 10, 15, 20, 40 Hz; the mean fourth harmonic from memory: 0.047.
    #[test]
    fn means_lie_below_the_design_values() {
        let pace = hertz::new(1.8);
        for (mode, expected) in [(10.0, 4.88), (15.0, 2.88), (20.0, 1.98), (40.0, 0.80)] {
            assert!((mean_impulse_n_s(pace, hertz::new(mode)) - expected).abs() < 0.01);
        }
        assert!((mean_harmonic_ratio(4, pace) - 0.047).abs() < 0.0005);
        assert!((1..=4).all(|n| mean_harmonic_ratio(n, pace) < harmonic_ratio(n, pace)));
    }
}
