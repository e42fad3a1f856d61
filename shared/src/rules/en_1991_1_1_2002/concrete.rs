//! Weight of concrete.
//! EN 1991-1-1:2002, Table A.1.

use crate::source::Source;
use crate::units::{MassDensity, kilogram_per_cubic_metre};

/// Where this comes from.
pub const SOURCE: Source = Source::common_practice("2300 to 2400 kg to the cubic metre");

/// Mass of a cubic metre of hardened concrete, 2400 kg, taken on the light side: weight is what holds a pier down.
///
/// # Source
/// Common practice; EN 1991-1-1:2002, Table A.1, has 24 kN/m³ for concrete of normal weight, which is 2447 kg/m³ (from memory).
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
