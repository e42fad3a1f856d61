//! Properties of a circular hollow section.
//!
//! EN 10210-2:2006, Annex B: the formulas behind the tables; EN 10219-2 has the same for cold formed tube.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{
    Area, Length, LinearMassDensity, SecondMoment, SectionModulus, cubic_millimetre,
    kilogram_per_metre, millimetre, millimetre_to_the_fourth, square_millimetre,
};

/// Where the formulas come from.
pub const SOURCE: Source = Source::second_hand("EN 10210-2", "2006", "Annex B");
/// Density of steel, kg/m³: the tables' 0.785 kg/dm³ times ten.
pub const STEEL_KG_M3: f64 = 7850.0;

/// Cross-sectional area, A = π (D² − d²)/4.
///
/// # Source
/// EN 10210-2:2006, Annex B.
/// # Valid for
/// A wall thinner than half the diameter.
pub fn area(outside: Length, wall: Length) -> Area {
    let (big, small) = diameters(outside, wall);
    square_millimetre::new(PI * (big.powi(2) - small.powi(2)) / 4.0)
}

/// Second moment of area, I = π (D⁴ − d⁴)/64.
///
/// # Source
/// EN 10210-2:2006, Annex B.
/// # Valid for
/// A wall thinner than half the diameter.
pub fn second_moment(outside: Length, wall: Length) -> SecondMoment {
    let (big, small) = diameters(outside, wall);
    millimetre_to_the_fourth::new(PI * (big.powi(4) - small.powi(4)) / 64.0)
}

/// Elastic section modulus, W_el = 2 I/D.
///
/// # Source
/// EN 10210-2:2006, Annex B.
/// # Valid for
/// A wall thinner than half the diameter.
pub fn elastic_modulus(outside: Length, wall: Length) -> SectionModulus {
    let inertia = millimetre_to_the_fourth::get(second_moment(outside, wall));
    cubic_millimetre::new(2.0 * inertia / millimetre::get(outside))
}

/// Mass of a metre of tube.
///
/// # Source
/// EN 10210-2:2006, Annex B: M = 0.785 A, with A in cm².
/// # Valid for
/// Unalloyed and fine grain steel.
pub fn mass_per_length(outside: Length, wall: Length) -> LinearMassDensity {
    kilogram_per_metre::new(STEEL_KG_M3 * square_millimetre::get(area(outside, wall)) * 1e-6)
}

fn diameters(outside: Length, wall: Length) -> (f64, f64) {
    let big = millimetre::get(outside);
    (big, (big - 2.0 * millimetre::get(wall)).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// CHS 219.1 × 8.0 as tabulated: 53.1 cm², 2960 cm⁴, 270 cm³, 41.6 kg/m.
    #[test]
    fn a_common_tube_has_its_tabulated_properties() {
        let (d, t) = (millimetre::new(219.1), millimetre::new(8.0));
        assert!((square_millimetre::get(area(d, t)) - 5306.0).abs() < 5.0);
        assert!((millimetre_to_the_fourth::get(second_moment(d, t)) - 29.60e6).abs() < 0.05e6);
        assert!((cubic_millimetre::get(elastic_modulus(d, t)) - 270.0e3).abs() < 0.5e3);
        assert!((kilogram_per_metre::get(mass_per_length(d, t)) - 41.6).abs() < 0.1);
    }
}
