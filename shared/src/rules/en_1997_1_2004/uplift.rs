//! Uplift of a block by groundwater.
//! EN 1997-1:2004, 2.4.7.4 (UPL) and Table A.15.

use crate::source::Source;
use crate::units::{Area, Force, Length, UnitWeight, kilonewton_per_cubic_metre, metre};

/// Where this comes from.
pub const SOURCE: Source = Source::second_hand("EN 1997-1", "2004", "2.4.7.4 and Table A.15 (UPL)");

/// Factor on the weight that holds a block down, γ_G;stb.
pub const STABILISING_FACTOR: f64 = 0.9;
/// Factor on the water's lift, γ_G;dst.
pub const DESTABILISING_FACTOR: f64 = 1.0;

/// Unit weight of water, 9.81 kN/m³.
///
/// # Source
/// Common practice: a cubic metre of fresh water under standard gravity.
///
/// # Valid for
/// Fresh water.
pub fn water() -> UnitWeight {
    kilonewton_per_cubic_metre::new(9.81)
}

/// Lift of the water on the part of a block below its level, U = γ_w A h.
///
/// # Source
/// Archimedes; EN 1997-1:2004, 2.4.7.4.
///
/// # Valid for
/// Still water; a block above the water has no lift.
///
/// # Example
/// ```
/// use stillground::{rules::en_1997_1_2004::uplift::lift, units::{kilonewton, metre, square_metre}};
/// let lift = lift(square_metre::new(1.0), metre::new(1.0), metre::new(0.0));
/// assert!((kilonewton::get(lift) - 9.81).abs() < 1e-9);
/// ```
pub fn lift(plan: Area, base_depth: Length, water_depth: Length) -> Force {
    let wet = if base_depth > water_depth {
        base_depth - water_depth
    } else {
        metre::new(0.0)
    };
    water() * (plan * wet) * DESTABILISING_FACTOR
}

/// What holds it down, γ_G;stb times its weight.
///
/// # Source
/// EN 1997-1:2004, Table A.15.
///
/// # Valid for
/// Permanent weight only; friction on the sides is left out.
pub fn holding(weight: Force) -> Force {
    weight * STABILISING_FACTOR
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, square_metre};

    #[test]
    fn a_metre_cube_under_water_stays_down() {
        let lift = kilonewton::get(lift(
            square_metre::new(1.0),
            metre::new(1.0),
            metre::new(0.0),
        ));
        let holding = kilonewton::get(holding(kilonewton::new(24.0)));
        assert!((lift - 9.81).abs() < 1e-9 && (holding - 21.6).abs() < 1e-9);
    }

    #[test]
    fn dry_ground_lifts_nothing() {
        assert_eq!(
            kilonewton::get(super::lift(
                square_metre::new(1.0),
                metre::new(0.5),
                metre::new(0.8)
            )),
            0.0
        );
    }
}
