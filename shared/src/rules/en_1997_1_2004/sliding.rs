//! Sliding of a base.
//! EN 1997-1:2004, 6.5.3; the figures of friction and adhesion are those of a building code's table.

use crate::source::Source;
use crate::units::{Area, Force, Pressure};

/// Where the form comes from.
pub const SOURCE: Source = Source::from_memory("EN 1997-1", "2004", "6.5.3");

/// Resistance of a base to sliding: friction on the weight, or adhesion on the area, at most half the weight.
///
/// # Source
/// EN 1997-1:2004, 6.5.3; the limit of half the dead load on adhesion is that of IBC 2012, 1806.3.2.
///
/// # Valid for
/// A level base; the ground in front of the block is left out.
///
/// # Example
/// ```
/// use stillground::{rules::{en_1997_1_2004::sliding::resistance, ibc_2012::sliding::BaseResistance}, units::{kilonewton, square_metre}};
/// let force = resistance(kilonewton::new(24.0), square_metre::new(1.0), BaseResistance::Friction { ratio: 0.25 });
/// assert_eq!(kilonewton::get(force), 6.0);
/// ```
pub fn resistance(
    weight: Force,
    area: Area,
    base: crate::rules::ibc_2012::sliding::BaseResistance,
) -> Force {
    use crate::rules::ibc_2012::sliding::BaseResistance;
    match base {
        BaseResistance::Friction { ratio } => weight * ratio,
        BaseResistance::Adhesion { pressure } => {
            let held: Force = held(pressure, area);
            if held < weight * 0.5 {
                held
            } else {
                weight * 0.5
            }
        }
    }
}

fn held(pressure: Pressure, area: Area) -> Force {
    pressure * area
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::ibc_2012::sliding::BaseResistance;
    use crate::units::{kilonewton, kilopascal, square_metre};

    #[test]
    fn adhesion_is_limited_by_half_the_weight() {
        let base = BaseResistance::Adhesion {
            pressure: kilopascal::new(6.2),
        };
        assert!(
            (kilonewton::get(resistance(
                kilonewton::new(24.0),
                square_metre::new(1.0),
                base
            )) - 6.2)
                .abs()
                < 1e-9
        );
        assert!(
            (kilonewton::get(resistance(
                kilonewton::new(8.0),
                square_metre::new(1.0),
                base
            )) - 4.0)
                .abs()
                < 1e-9
        );
    }
}
