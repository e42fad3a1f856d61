//! Partial factors.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{Pressure, megapascal};

/// Partial factors of the steel.
pub const STEEL: Source = clause("Table 4.1", Standing::SecondHand);
/// Partial factors of concrete failures.
pub const CONCRETE: Source = clause("Table 4.1 and 4.4.3.1", Standing::SecondHand);

/// Steel in tension: γ_Ms = 1.2 f_uk/f_yk, at least 1.4.
///
/// # Source
/// EN 1992-4:2018, Table 4.1.
pub fn steel_tension_factor(ultimate: Pressure, yield_strength: Pressure) -> f64 {
    (1.2 * megapascal::get(ultimate) / megapascal::get(yield_strength)).max(1.4)
}

/// Steel in shear: γ_Ms = f_uk/f_yk, at least 1.25, where f_uk ≤ 800 MPa and f_yk/f_uk ≤ 0.8; else 1.5.
///
/// # Source
/// EN 1992-4:2018, Table 4.1.
pub fn steel_shear_factor(ultimate: Pressure, yield_strength: Pressure) -> f64 {
    let (ultimate, yield_strength) = (megapascal::get(ultimate), megapascal::get(yield_strength));
    if ultimate <= 800.0 && yield_strength / ultimate <= 0.8 {
        (ultimate / yield_strength).max(1.25)
    } else {
        1.5
    }
}

/// Concrete: γ_Mc = γ_c γ_inst with γ_c = 1.5; in shear γ_inst is 1.0.
///
/// # Source
/// EN 1992-4:2018, Table 4.1: the same for cone, bond, splitting.
pub fn concrete_factor(installation_factor: f64) -> f64 {
    1.5 * installation_factor
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An assessment's table prints 1.5 for 8.8 and 1.87 for A4-70 in tension.
    #[test]
    fn factors_of_the_common_classes() {
        let mpa = megapascal::new;
        assert!((steel_tension_factor(mpa(800.0), mpa(640.0)) - 1.5).abs() < 1e-9);
        assert!((steel_tension_factor(mpa(700.0), mpa(450.0)) - 1.87).abs() < 0.005);
        assert!((steel_shear_factor(mpa(700.0), mpa(450.0)) - 1.56).abs() < 0.005);
        assert!((steel_shear_factor(mpa(1000.0), mpa(900.0)) - 1.5).abs() < 1e-9);
        assert!((concrete_factor(1.2) - 1.8).abs() < 1e-9);
    }
}
