//! Design values of steel's properties.
//!
//! EN 1993-1-1:2005, 3.2.6 and Table 3.1.

use crate::source::Source;
use crate::units::{Length, Pressure, megapascal, millimetre};

/// Where the constants come from.
pub const SOURCE: Source = Source::from_memory("EN 1993-1-1", "2005", "3.2.6");
/// Modulus of elasticity, MPa.
pub const E_MPA: f64 = 210_000.0;
/// Poisson's ratio.
pub const POISSON_RATIO: f64 = 0.3;
/// Expansion for a kelvin.
pub const EXPANSION_PER_K: f64 = 12e-6;

/// Shear modulus, G = E/[2(1 + ν)].
///
/// # Source
/// EN 1993-1-1:2005, 3.2.6(1).
/// # Valid for
/// Structural steel.
pub fn shear_modulus() -> Pressure {
    megapascal::new(E_MPA / (2.0 * (1.0 + POISSON_RATIO)))
}

/// Yield strength of a grade by thickness: the nominal one to 40 mm, 20 MPa less to 80 mm.
///
/// # Source
/// EN 1993-1-1:2005, Table 3.1 (S235 235/215, S275 275/255, S355 355/335 MPa).
/// # Valid for
/// EN 10025-2 and EN 10210-1 grades S235, S275, S355 up to 80 mm.
pub fn yield_strength(nominal: Pressure, thickness: Length) -> Pressure {
    if millimetre::get(thickness) <= 40.0 {
        nominal
    } else {
        nominal - megapascal::new(20.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steel_is_as_stiff_as_the_code_says() {
        assert!((megapascal::get(shear_modulus()) - 81_000.0).abs() < 300.0);
    }
}
