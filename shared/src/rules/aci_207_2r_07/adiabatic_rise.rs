//! How warm concrete would get if it lost no heat.
//! ACI 207.2R-07, chapter 2 (adiabatic temperature rise).

use crate::source::Source;
use crate::units::{MassDensity, kilogram_per_cubic_metre};

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory("ACI 207.2R", "07", "adiabatic temperature rise");

/// Heat that a usual Portland cement gives in its first days, kJ/kg.
pub const CEMENT_HEAT_KJ_KG: f64 = 330.0;
/// Specific heat of concrete, kJ/(kg K).
pub const SPECIFIC_HEAT_KJ_KG_K: f64 = 1.0;

/// Rise of temperature without loss, ΔT = C Q / (ρ c), in K.
///
/// # Source
/// Balance of heat, ACI 207.2R-07.
///
/// # Valid for
/// An upper bound: a block of a metre keeps a half to three quarters of it at its middle.
///
/// # Example
/// ```
/// use stillground::{rules::aci_207_2r_07::adiabatic_rise::rise_k, units::kilogram_per_cubic_metre as kg};
/// assert!((rise_k(kg::new(336.0), kg::new(2400.0)) - 46.2).abs() < 0.1);
/// ```
pub fn rise_k(cement: MassDensity, concrete: MassDensity) -> f64 {
    kilogram_per_cubic_metre::get(cement) * CEMENT_HEAT_KJ_KG
        / (kilogram_per_cubic_metre::get(concrete) * SPECIFIC_HEAT_KJ_KG_K)
}

#[cfg(test)]
mod tests {
    use super::*;

    // The trade's rule: 10 to 14 K for each 100 kg of cement in a cubic metre.
    #[test]
    fn a_hundred_kilograms_of_cement_warm_it_by_a_dozen_kelvin() {
        let rise = rise_k(
            kilogram_per_cubic_metre::new(100.0),
            kilogram_per_cubic_metre::new(2400.0),
        );
        assert!((10.0..=14.0).contains(&rise), "{rise}");
    }
}
