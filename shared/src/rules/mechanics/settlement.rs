//! Settlement of a square base on elastic ground.

use crate::source::Source;
use crate::units::{Length, Pressure, kilopascal, metre};

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory(
    "Timoshenko and Goodier, Theory of Elasticity",
    "",
    "mean settlement of a rigid square, 0.88 q B (1 − ν²)/E",
);

/// Share of the shear modulus at small strains that is left under a lasting load.
pub const LASTING_RATIO: f64 = 0.3;

/// Settlement w = 0.88 q B (1 − ν²)/E with E = 2 (1 + ν) 0.3 G₀; nought where the base lifts.
///
/// # Source
/// Mechanics of an elastic half-space; that three tenths of the modulus at small strains are left is judgement.
///
/// # Valid for
/// A square of side `side`, even ground, loads far below the ground's strength.
pub fn settlement(net: Pressure, side: Length, modulus: Pressure, poisson_ratio: f64) -> Length {
    let young = 2.0 * (1.0 + poisson_ratio) * LASTING_RATIO * kilopascal::get(modulus);
    let settled =
        0.88 * kilopascal::get(net).max(0.0) * metre::get(side) * (1.0 - poisson_ratio.powi(2))
            / young;
    metre::new(settled)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::megapascal;

    /// Computed apart: 25 kPa on a metre, ν 0.35, G₀ 15, 30 and 60 MPa: 1.59, 0.79 and 0.40 mm.
    #[test]
    fn a_metre_at_25_kilopascals() {
        for (modulus, wanted) in [(15.0, 1.59), (30.0, 0.79), (60.0, 0.40)] {
            let found = settlement(
                kilopascal::new(25.0),
                metre::new(1.0),
                megapascal::new(modulus),
                0.35,
            );
            assert!(
                (1000.0 * metre::get(found) - wanted).abs() < 6e-3,
                "{found:?}"
            );
        }
    }
}
