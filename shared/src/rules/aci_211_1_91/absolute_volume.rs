//! Aggregate that fills a cubic metre beside cement, water and air.
//! ACI 211.1-91, 6.3.7.2, absolute volume basis.

use crate::source::Source;
use crate::units::{MassDensity, kilogram_per_cubic_metre};

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory("ACI 211.1", "91", "6.3.7.2, absolute volume");

/// Density of cement grains, kg/m³.
pub const CEMENT_DENSITY: f64 = 3150.0;
/// Density of water, kg/m³.
pub const WATER_DENSITY: f64 = 1000.0;

/// Mass of aggregate in a cubic metre of concrete, ρ_a (1 − C/ρ_c − W/ρ_w − a).
///
/// # Source
/// ACI 211.1-91, 6.3.7.2.
///
/// # Valid for
/// Surface-dry aggregate; damp sand brings its own water, which is taken off the mixing water.
///
/// # Example
/// ```
/// use stillground::{rules::aci_211_1_91::absolute_volume::aggregate, units::kilogram_per_cubic_metre as kg};
/// let mass = aggregate(kg::new(336.0), kg::new(185.0), 0.0, kg::new(2650.0));
/// assert!((kg::get(mass) - 1877.0).abs() < 1.0);
/// ```
pub fn aggregate(
    cement: MassDensity,
    water: MassDensity,
    air_ratio: f64,
    grain: MassDensity,
) -> MassDensity {
    let taken = kilogram_per_cubic_metre::get(cement) / CEMENT_DENSITY
        + kilogram_per_cubic_metre::get(water) / WATER_DENSITY
        + air_ratio;
    grain * (1.0 - taken).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    // A mix of 336 kg cement, 185 kg water, 714 + 1165 kg aggregate of 2650 kg/m³ fills 1.0007 m³.
    #[test]
    fn a_usual_mix_fills_a_cubic_metre() {
        let kg = kilogram_per_cubic_metre::new;
        let mass = kilogram_per_cubic_metre::get(aggregate(kg(336.0), kg(185.0), 0.0, kg(2650.0)));
        assert!((mass - (714.0 + 1165.0)).abs() < 3.0, "{mass}");
    }
}
