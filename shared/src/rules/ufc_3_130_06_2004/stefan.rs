//! Depth of frost when all the heat that leaves is the water's latent heat.
//! UFC 3-130-06, 2004, Stefan equation.

use crate::source::Source;
use crate::units::{Length, MassDensity, kilogram_per_cubic_metre, metre};

/// Source of the equation.
pub const SOURCE: Source =
    Source::second_hand("UFC 3-130-06 (TM 5-852-6)", "2004", "Stefan equation");

/// Latent heat of fusion of water, J/kg.
pub const LATENT_HEAT_J_KG: f64 = 334_000.0;
/// Seconds in a day.
const DAY_S: f64 = 86_400.0;

/// Latent heat in a volume of soil, L = 334 kJ/kg × ρd × w, J/m³.
///
/// # Source
/// UFC 3-130-06, 2004, volumetric latent heat of fusion (there 144 γd w/100 Btu/ft³).
///
/// # Valid for
/// All water of the soil freezing; in clay some stays liquid and frost goes a little deeper.
pub fn latent_heat_j_m3(dry_density: MassDensity, water_content_ratio: f64) -> f64 {
    LATENT_HEAT_J_KG * kilogram_per_cubic_metre::get(dry_density) * water_content_ratio
}

/// Depth of frost, X = √(2 k I 86400/L), with the conductivity of frozen soil in W/(m K) and the freezing index of the
/// ground's surface in K d.
///
/// # Source
/// UFC 3-130-06, 2004, Stefan equation, in SI units.
///
/// # Valid for
/// An upper bound: the heat that the warm ground below gives off is left out. `latent_heat_j_m3` above nought.
///
/// # Example
/// ```
/// use stillground::rules::ufc_3_130_06_2004::stefan::{depth, latent_heat_j_m3};
/// use stillground::units::{kilogram_per_cubic_metre, metre};
/// let heat = latent_heat_j_m3(kilogram_per_cubic_metre::new(1600.0), 0.15);
/// assert!((metre::get(depth(1.7, 300.0, heat)) - 1.05).abs() < 0.005);
/// ```
pub fn depth(conductivity_w_mk: f64, surface_index_k_d: f64, latent_heat_j_m3: f64) -> Length {
    metre::new((2.0 * conductivity_w_mk * surface_index_k_d * DAY_S / latent_heat_j_m3).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn five_hundred_degree_days() {
        let heat = latent_heat_j_m3(kilogram_per_cubic_metre::new(1600.0), 0.15);
        assert!((metre::get(depth(1.7, 500.0, heat)) - 1.354).abs() < 0.001);
    }
}
