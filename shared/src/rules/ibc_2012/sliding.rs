//! Presumed friction or adhesion of the ground on the underside of a footing.
//! International Building Code 2012, Table 1806.2.

use crate::source::Source;
use crate::units::{Pressure, kilopascal};

/// Where this comes from.
pub const SOURCE: Source =
    Source::second_hand("IBC", "2012", "Table 1806.2, lateral sliding resistance");

/// What resists sliding on the base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BaseResistance {
    /// A share of the dead load.
    Friction {
        /// The share.
        ratio: f64,
    },
    /// A pressure on the area, at most half the dead load.
    Adhesion {
        /// The pressure.
        pressure: Pressure,
    },
}

/// Sedimentary and foliated rock.
pub const SEDIMENTARY_ROCK: BaseResistance = BaseResistance::Friction { ratio: 0.35 };
/// Sandy gravel and gravel.
pub const GRAVEL: BaseResistance = BaseResistance::Friction { ratio: 0.35 };
/// Sand, silty or clayey.
pub const SAND: BaseResistance = BaseResistance::Friction { ratio: 0.25 };

/// Clay and silt: 130 psf of adhesion.
///
/// # Source
/// IBC 2012, Table 1806.2, class 5; 1 psf = 47.88 Pa.
///
/// # Valid for
/// Inorganic clay and silt; not mud, peat, organic soil or unprepared fill.
///
/// # Example
/// ```
/// use stillground::rules::ibc_2012::sliding::{BaseResistance, clay};
/// assert!(matches!(clay(), BaseResistance::Adhesion { .. }));
/// ```
pub fn clay() -> BaseResistance {
    BaseResistance::Adhesion {
        pressure: kilopascal::new(130.0 * 0.047_880_26),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn psf_become_kilopascals() {
        let BaseResistance::Adhesion { pressure } = clay() else {
            panic!("clay adheres")
        };
        assert!((kilopascal::get(pressure) - 6.22).abs() < 0.01);
    }
}
