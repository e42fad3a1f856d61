//! Small-strain shear modulus from the speed of shear waves.
//! FHWA GEC-5, 2017, section 8.1.

use crate::source::Source;
use crate::units::{
    MassDensity, Pressure, STANDARD_GRAVITY_M_S2, UnitWeight, Velocity, gravity,
    kilogram_per_cubic_metre, metre_per_second,
};

/// Source of both formulas.
pub const SOURCE: Source = Source::second_hand("FHWA GEC-5", "2017", "section 8.1, Gmax = ρ Vs²");

/// Density of a ground of a unit weight, ρ = γ/g.
///
/// # Source
/// FHWA GEC-5, 2017, section 8.1; g is the conventional 9.80665 m/s² of ISO 80000-3.
///
/// # Valid for
/// Any unit weight; it is the total one, water in the pores with it.
pub fn density(unit_weight: UnitWeight) -> MassDensity {
    kilogram_per_cubic_metre::new(unit_weight.value / STANDARD_GRAVITY_M_S2)
}

/// Shear modulus at strains below 10⁻⁵, G = ρ Vs².
///
/// # Source
/// FHWA GEC-5, 2017, section 8.1.
///
/// # Valid for
/// Strains of what moves a pier by an arcsecond (10⁻⁷ to 10⁻⁶); settlement under lasting load is softer.
///
/// # Example
/// ```
/// use stillground::rules::fhwa_gec5_2017::shear_modulus::shear_modulus;
/// use stillground::units::{kilonewton_per_cubic_metre, megapascal, metre_per_second};
/// let g = shear_modulus(kilonewton_per_cubic_metre::new(18.0), metre_per_second::new(130.0));
/// assert!((megapascal::get(g) - 31.02).abs() < 0.01);
/// ```
pub fn shear_modulus(unit_weight: UnitWeight, speed: Velocity) -> Pressure {
    density(unit_weight) * speed * speed
}

/// Speed of shear waves in a ground of a shear modulus, the same formula solved for Vs.
///
/// # Source
/// FHWA GEC-5, 2017, section 8.1.
///
/// # Valid for
/// A unit weight above nought.
pub fn shear_wave_speed(unit_weight: UnitWeight, modulus: Pressure) -> Velocity {
    metre_per_second::new((modulus.value * gravity().value / unit_weight.value).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton_per_cubic_metre;

    #[test]
    fn there_and_back() {
        let (weight, speed) = (
            kilonewton_per_cubic_metre::new(18.0),
            metre_per_second::new(130.0),
        );
        let back = shear_wave_speed(weight, shear_modulus(weight, speed));
        assert!((metre_per_second::get(back) - 130.0).abs() < 1e-9);
    }
}
