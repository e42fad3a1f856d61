//! Groundwater and depth: the stress at the depth that stands for the block.

use crate::brief::Brief;
use crate::stages::ground::soil_table::SoilRow;
use crate::units::{Length, Pressure, kilopascal, metre};

/// Unit weight of water, kN/m³: 1000 kg/m³ times the conventional acceleration of free fall.
pub const WATER_KN_M3: f64 = 9.806_65;
/// Depth for which the table of soils holds, and that stands for a block of the usual depth.
pub const REFERENCE_DEPTH_M: f64 = 1.0;
/// Shallower than this no block is reckoned: the stress would be that of the loose surface.
const LEAST_DEPTH_M: f64 = 0.3;

/// Stress in the ground at the depth that stands for the block.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// The depth that stands for the block: a metre, or that of a pit that cannot go so deep.
    pub depth: Length,
    /// Whether water stands above that depth.
    pub wet: bool,
    /// Share of that depth that is below the water, 0 to 1.
    pub wet_ratio: f64,
    /// Vertical effective stress there.
    pub stress: Pressure,
    /// The stress for which the table of soils holds: at a metre, without water.
    pub table_stress: Pressure,
}

impl Water {
    /// A property of the ground down to that depth: its value above the water and below it, each by its share.
    pub fn mean(&self, moist: f64, wet: f64) -> f64 {
        if self.wet {
            moist + (wet - moist) * self.wet_ratio
        } else {
            moist
        }
    }
}

/// Depth that stands for the block: the stated block's or the pit's, down to rock, at most a metre.
pub fn depth(brief: &Brief) -> Length {
    let pit = brief.excavation.max_depth.value;
    let pit = brief
        .site
        .stated
        .rock_depth_m
        .map_or(pit, |rock| pit.min(metre::new(rock)));
    let deepest = brief.block.depth.unwrap_or(pit);
    deepest
        .min(metre::new(REFERENCE_DEPTH_M))
        .max(metre::new(LEAST_DEPTH_M))
}

/// Finds the stress at a depth; moist ground above the water, buoyant ground below it.
///
/// # Source
/// Derived: σ' = γ z_w + (γ_sat − γ_w)(z − z_w).
///
/// # Valid for
/// Depths above nought and unit weights above that of water; of peat, a hundredth of the dry stress is left at least.
pub fn water(row: &SoilRow, groundwater: Option<Length>, depth: Length) -> Water {
    let z = metre::get(depth);
    let above = groundwater.map_or(z, |level| metre::get(level).min(z));
    let below = z - above;
    let dry = row.unit_weight_kn_m3 * z;
    let stress = (row.unit_weight_kn_m3 * above
        + (row.wet_unit_weight_kn_m3 - WATER_KN_M3) * below)
        .clamp(0.01 * dry, dry);
    Water {
        depth,
        wet: below > 0.0,
        wet_ratio: below / z,
        stress: kilopascal::new(stress),
        table_stress: kilopascal::new(row.unit_weight_kn_m3 * REFERENCE_DEPTH_M),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::site::Soil;
    use crate::stages::ground::soil_table::row;

    #[test]
    fn water_at_the_surface_halves_the_stress_in_sand() {
        let found = water(
            &row(Soil::MediumSand),
            Some(metre::new(0.0)),
            metre::new(1.0),
        );
        // 19.5 − 9.80665 = 9.69 kPa against 18.
        assert!((kilopascal::get(found.stress) - 9.693_35).abs() < 1e-9 && found.wet);
        assert!(
            !water(
                &row(Soil::MediumSand),
                Some(metre::new(1.0)),
                metre::new(1.0)
            )
            .wet
        );
    }

    #[test]
    fn half_as_deep_is_half_the_stress() {
        let found = water(&row(Soil::MediumSand), None, metre::new(0.5));
        assert!(
            (kilopascal::get(found.stress) - 9.0).abs() < 1e-12
                && (kilopascal::get(found.table_stress) - 18.0).abs() < 1e-12
        );
    }
}
