//! Groundwater: what it does to the stress at the depth that stands for the block.

use crate::stages::ground::soil_table::SoilRow;
use crate::units::{Length, Pressure, kilopascal, metre};

/// Unit weight of water, kN/m³: 1000 kg/m³ times the conventional acceleration of free fall.
pub const WATER_KN_M3: f64 = 9.806_65;
/// Depth for which the table of soils holds, and that stands for the block.
pub const REFERENCE_DEPTH_M: f64 = 1.0;

/// Stress in the ground at the reference depth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// Whether water stands above the reference depth.
    pub wet: bool,
    /// Share of the reference depth that is below the water, 0 to 1.
    pub wet_ratio: f64,
    /// Vertical effective stress.
    pub stress: Pressure,
    /// The same if there were no water.
    pub dry_stress: Pressure,
}

impl Water {
    /// A property of the ground over the reference depth: its value above the water and below it, each by its share.
    #[must_use]
    pub fn mean(&self, moist: f64, wet: f64) -> f64 {
        if self.wet { moist + (wet - moist) * self.wet_ratio } else { moist }
    }
}

/// Finds the stress at the reference depth; moist ground above the water, buoyant ground below it.
///
/// # Source
/// Derived: σ' = γ z_w + (γ_sat − γ_w)(z − z_w).
///
/// # Valid for
/// Unit weights above that of water, or peat, where a hundredth of the dry stress is left at least.
#[must_use]
pub fn water(row: &SoilRow, groundwater: Option<Length>) -> Water {
    let above = groundwater.map_or(REFERENCE_DEPTH_M, |depth| metre::get(depth).min(REFERENCE_DEPTH_M));
    let below = REFERENCE_DEPTH_M - above;
    let dry = row.unit_weight_kn_m3 * REFERENCE_DEPTH_M;
    let stress = (row.unit_weight_kn_m3 * above + (row.wet_unit_weight_kn_m3 - WATER_KN_M3) * below).clamp(0.01 * dry, dry);
    Water { wet: below > 0.0, wet_ratio: below / REFERENCE_DEPTH_M, stress: kilopascal::new(stress), dry_stress: kilopascal::new(dry) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::site::Soil;
    use crate::stages::ground::soil_table::row;

    #[test]
    fn water_at_the_surface_halves_the_stress_in_sand() {
        let found = water(&row(Soil::MediumSand), Some(metre::new(0.0)));
        // 19.5 − 9.80665 = 9.69 kPa against 18.
        assert!((kilopascal::get(found.stress) - 9.693_35).abs() < 1e-9 && found.wet);
        assert!(!water(&row(Soil::MediumSand), Some(metre::new(1.0))).wet);
    }
}
