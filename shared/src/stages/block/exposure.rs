//! What surrounds the concrete, and what that asks of the mix.

use serde::Serialize;

use crate::brief::Brief;
use crate::rules::aci_318_19::exposure as aci;
use crate::rules::en_206_1_2000::exposure::{Exposure, limits};
use crate::stages::ground::Ground;
use crate::stock::Stock;
use crate::units::metre;

use super::age::{characteristic, specified};

/// Frost shallower than this does not reach concrete in earnest, m.
pub const FROST_M: f64 = 0.05;

/// What one part of the block meets.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ExposureAdvice {
    /// Which part.
    pub part: &'static str,
    /// Class, for instance `XC2`.
    pub class: &'static str,
    /// Largest ratio of water to cement; none where the table has none.
    pub water_cement_ratio: Option<f64>,
    /// Least strength class.
    pub strength_class: &'static str,
    /// Least cement, kg to a cubic metre; none where the table asks for none.
    pub cement_kg_m3: Option<f64>,
    /// Least entrained air, per cent; none where none is asked.
    pub air_per_cent: Option<f64>,
    /// Whether the chosen class meets it.
    pub met: bool,
    /// Why.
    pub why: &'static str,
}

/// Most entrained air that any part of the block asks for, per cent; none where none does.
pub fn air_per_cent(advice: &[ExposureAdvice]) -> Option<f64> {
    (advice.iter().filter_map(|row| row.air_per_cent)).reduce(f64::max)
}

/// Advice for the buried part and for what stands out.
pub(super) fn advise(brief: &Brief, ground: &Ground) -> Vec<ExposureAdvice> {
    let frost = metre::get(ground.frost_depth) > FROST_M;
    if brief.stock.value == Stock::Inch {
        return advise_by_aci(brief, frost);
    }
    let out = metre::get(brief.block.upstand.value) > 0.0;
    let mut advice = vec![row(
        brief,
        "in the ground",
        Exposure::Xc2,
        "wet and seldom dry: most footings; it counts where there is steel in it",
    )];
    if out {
        advice.push(row(
            brief,
            "above ground",
            Exposure::Xc4,
            "wet and dry by turns; it counts where there is steel in it",
        ));
    }
    if frost {
        advice.push(row(
            brief,
            "upright faces near the surface",
            Exposure::Xf1,
            "rain and frost, no salt",
        ));
        advice.push(row(
            brief,
            "top face",
            Exposure::Xf3,
            "water stands on it and freezes, no salt",
        ));
    }
    advice
}

/// A class in psi stands in the catalogue as MPa of five digits, a little less than it is.
const ROUNDED_RATIO: f64 = 1.0 - 1e-4;

/// The same by the table that a plant there knows.
fn advise_by_aci(brief: &Brief, frost: bool) -> Vec<ExposureAdvice> {
    let row = |part, exposure, why| {
        let limits = aci::limits(exposure);
        ExposureAdvice {
            part,
            class: limits.name,
            water_cement_ratio: limits.water_cement_ratio,
            strength_class: limits.strength_class,
            cement_kg_m3: None,
            air_per_cent: limits.air_per_cent,
            met: specified(brief.block.concrete.value) >= limits.strength * ROUNDED_RATIO,
            why,
        }
    };
    let mut advice = vec![row(
        "in the ground",
        aci::Exposure::C1,
        "moist, no salt: most footings; it counts where there is steel in it",
    )];
    if frost {
        advice.push(row(
            "upright faces near the surface",
            aci::Exposure::F1,
            "freezing and thawing, seldom soaked",
        ));
        advice.push(row(
            "top face",
            aci::Exposure::F2,
            "freezing and thawing, often wet, no salt",
        ));
    }
    advice
}

fn row(brief: &Brief, part: &'static str, exposure: Exposure, why: &'static str) -> ExposureAdvice {
    let limits = limits(exposure);
    ExposureAdvice {
        part,
        class: limits.name,
        water_cement_ratio: Some(limits.water_cement_ratio),
        strength_class: limits.strength_class,
        cement_kg_m3: Some(crate::units::kilogram_per_cubic_metre::get(limits.cement)),
        air_per_cent: limits.air_per_cent,
        met: characteristic(brief.block.concrete.value) >= limits.strength,
        why,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::design::design;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;
    use crate::site_plan::block::Concrete;

    fn met(concrete: Concrete) -> Vec<(&'static str, bool)> {
        let mut plan = SitePlan::unknown();
        plan.stock = Some(Stock::Inch);
        plan.site.frost_depth_m = Some(0.8);
        plan.block.concrete = Some(concrete);
        let block = design(&resolve(&plan).unwrap(), &NoShelf).block;
        let rows = block.exposure.iter();
        rows.map(|row| (row.class, row.met)).collect()
    }

    /// ACI 318-19 Table 19.3.2.1 (from memory): 2,500 psi for C1, 3,500 for F1, 4,500 for F2.
    #[test]
    fn a_class_meets_the_row_that_asks_for_it() {
        let all = [("C1", true), ("F1", true), ("F2", true)];
        assert_eq!(met(Concrete::Psi4500), all);
        assert_eq!(met(Concrete::Psi4000)[1..], [("F1", true), ("F2", false)]);
        assert_eq!(met(Concrete::Psi3500)[1..], [("F1", true), ("F2", false)]);
        assert_eq!(met(Concrete::Psi3000)[1..], [("F1", false), ("F2", false)]);
    }
}
