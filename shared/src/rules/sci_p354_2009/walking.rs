//! Harmonics and impulse of walking.
//!
//! SCI P354, 2009 revision: Table 3.1 and the impulsive force of equation 18.

use crate::source::{Source, Standing};
use crate::units::{Force, Frequency, hertz, newton};

/// Where the harmonics come from.
pub const SOURCE: Source = Source::new("SCI P354", "2009", "Table 3.1", Standing::SecondHand);
/// Where the impulse comes from.
pub const IMPULSE_SOURCE: Source =
    Source::new("SCI P354", "2009", "equation 18", Standing::SecondHand);
/// Static weight of the walker of the table, N.
pub const WALKER_N: f64 = 746.0;

/// Design value of the Fourier coefficient of a harmonic, force over weight.
///
/// # Source
/// SCI P354, Table 3.1: 0.436(f − 0.95), 0.006(2f + 12.3), 0.007(3f + 5.2), 0.007(4f + 2.0).
/// # Valid for
/// Paces of 1.8 to 2.2 Hz, harmonics 1 to 4; nought for others.
#[must_use]
pub fn harmonic_ratio(harmonic: u8, pace: Frequency) -> f64 {
    let f = hertz::get(pace);
    match harmonic {
        1 => 0.436 * (f - 0.95),
        2 => 0.006 * (2.0 * f + 12.3),
        3 => 0.007 * (3.0 * f + 5.2),
        4 => 0.007 * (4.0 * f + 2.0),
        _ => 0.0,
    }
}

/// Impulse of one step on a floor whose mode is above the fourth harmonic, in N s:
/// F_I = 60 (f_p^1.43/f_n^1.3)(Q/700 N).
///
/// # Source
/// SCI P354, equation 18.
/// # Valid for
/// Modes above some 8 to 10 Hz.
#[must_use]
pub fn impulse_n_s(pace: Frequency, mode: Frequency, weight: Force) -> f64 {
    60.0 * hertz::get(pace).powf(1.43) / hertz::get(mode).powf(1.3) * newton::get(weight) / 700.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Basis, computed from the table: 0.371, 0.095, 0.074, 0.064 at 1.8 Hz; 7.43 N s at 10 Hz for 746 N.
    #[test]
    fn harmonics_and_impulse_at_a_common_pace() {
        let pace = hertz::new(1.8);
        for (n, expected) in [(1, 0.371), (2, 0.095), (3, 0.074), (4, 0.064)] {
            assert!((harmonic_ratio(n, pace) - expected).abs() < 0.001, "{n}");
        }
        assert!((impulse_n_s(pace, hertz::new(10.0), newton::new(746.0)) - 7.43).abs() < 0.01);
    }
}
