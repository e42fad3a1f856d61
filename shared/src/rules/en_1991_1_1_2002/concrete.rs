//! Weight of concrete.
//! EN 1991-1-1:2002, Table A.1.

use crate::units::{MassDensity, kilogram_per_cubic_metre};

/// Mass of a cubic metre of hardened concrete, 2400 kg, taken on the light side: weight is what holds a pier down.
///
/// # Source
/// EN 1991-1-1:2002, Table A.1: concrete of normal weight 24 kN/m³, which is 2447 kg/m³. From memory.
///
/// # Valid for
/// Plain concrete with ordinary aggregate.
///
/// # Example
/// ```
/// use stillground::{rules::en_1991_1_1_2002::concrete::density, units::kilogram_per_cubic_metre};
/// assert_eq!(kilogram_per_cubic_metre::get(density()), 2400.0);
/// ```
pub fn density() -> MassDensity {
    kilogram_per_cubic_metre::new(2400.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::STANDARD_GRAVITY_M_S2;

    // The table's 24 kN/m³.
    #[test]
    fn it_is_lighter_than_the_table_by_less_than_a_fortieth() {
        let table = 24_000.0 / STANDARD_GRAVITY_M_S2;
        let ratio = kilogram_per_cubic_metre::get(density()) / table;
        assert!((0.975..1.0).contains(&ratio), "{ratio}");
    }
}
