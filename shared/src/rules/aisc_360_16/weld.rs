//! Fillet weld.

use crate::source::Source;
use crate::units::{Length, LinearStiffness, Pressure, megapascal, millimetre, newton_per_metre};

/// Strength of a fillet weld.
pub const STRENGTH: Source = Source::from_memory("ANSI/AISC 360", "16", "J2.4 and Table J2.5");
/// Strength of the usual electrode, 70 ksi.
pub const ELECTRODE_MPA: f64 = 482.6;

/// Design strength of a metre of fillet, φ 0.6 F_EXX 0.707 w, φ = 0.75.
///
/// # Source
/// ANSI/AISC 360-16, eq. (J2-3) and Table J2.5, without the rise for loads across the weld.
pub fn resistance(electrode: Pressure, leg: Length) -> LinearStiffness {
    newton_per_metre::new(
        1000.0 * 0.75 * 0.6 * megapascal::get(electrode) * millimetre::get(leg)
            / std::f64::consts::SQRT_2,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The trade's figure: 1.392 kip an inch for each sixteenth of leg with 70 ksi electrodes.
    #[test]
    fn a_sixteenth_carries_1_392_kip_an_inch() {
        let found = newton_per_metre::get(resistance(
            megapascal::new(ELECTRODE_MPA),
            millimetre::new(25.4 / 16.0),
        ));
        assert!(
            (found * 0.0254 / 4448.2216 - 1.392).abs() < 0.002,
            "{found}"
        );
    }
}
