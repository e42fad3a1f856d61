//! Strengths and modulus of elasticity from the characteristic strength.
//! EN 1992-1-1:2004, Table 3.1.

use crate::source::Source;
use crate::units::{Pressure, megapascal};

/// Where these come from.
pub const SOURCE: Source = Source::second_hand(
    "EN 1992-1-1",
    "2004",
    "Table 3.1, as an open library has it",
);

/// Mean cylinder strength at 28 days, f_cm = f_ck + 8 MPa.
///
/// # Source
/// EN 1992-1-1:2004, Table 3.1.
///
/// # Valid for
/// Classes C12/15 to C90/105.
///
/// # Example
/// ```
/// use stillground::{rules::en_1992_1_1_2004::strength::mean, units::megapascal};
/// assert_eq!(megapascal::get(mean(megapascal::new(25.0))), 33.0);
/// ```
pub fn mean(characteristic: Pressure) -> Pressure {
    characteristic + megapascal::new(8.0)
}

/// Mean tensile strength, f_ctm = 0.30 f_ck^(2/3).
///
/// # Source
/// EN 1992-1-1:2004, Table 3.1.
///
/// # Valid for
/// Classes up to C50/60.
pub fn mean_tensile(characteristic: Pressure) -> Pressure {
    megapascal::new(0.30 * megapascal::get(characteristic).powf(2.0 / 3.0))
}

/// Secant modulus of elasticity, E_cm = 22 000 (f_cm / 10)^0.3 MPa.
///
/// # Source
/// EN 1992-1-1:2004, Table 3.1.
///
/// # Valid for
/// Quartzite aggregate; limestone is a tenth less, basalt a fifth more (3.1.3(2)).
pub fn elastic_modulus(characteristic: Pressure) -> Pressure {
    megapascal::new(22_000.0 * (megapascal::get(mean(characteristic)) / 10.0).powf(0.3))
}

#[cfg(test)]
mod tests {
    use super::*;

    // The table's own printed values for C25/30, C30/37 and C40/50: f_ctm 2.6, 2.9, 3.5 MPa; E_cm 31, 33, 35 GPa.
    #[test]
    fn the_table_is_met() {
        for (class, tensile, modulus) in [(25.0, 2.6, 31.0), (30.0, 2.9, 33.0), (40.0, 3.5, 35.0)] {
            let class = megapascal::new(class);
            assert!((megapascal::get(mean_tensile(class)) - tensile).abs() < 0.05);
            assert!((megapascal::get(elastic_modulus(class)) / 1000.0 - modulus).abs() < 0.5);
        }
    }
}
