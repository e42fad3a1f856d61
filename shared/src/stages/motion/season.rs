//! Seasons: ground that swells, shrinks and freezes leans the block a little, and the polar axis with it.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Arcminute, Unit};
use crate::notes::{Notes, Working};
use crate::rules::image_motion::polar;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::units::metre;

/// Where the movements come from.
pub const SOURCE: Source = Source::judgement(
    "difference across a metre in a year by kind of soil; published piers moved by 4 to 15 arcsec in a season",
);

/// Lean in a year.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Season {
    /// Difference of movement between two sides of the block in a year.
    pub difference_mm: f64,
    /// Lean of the polar axis in a year.
    pub arcmin_per_year: f64,
    /// Drift in declination that such an error makes.
    pub drift_arcsec_per_min: f64,
}

/// Movement of one side against the other over a metre in a year, mm; none where nobody can presume it.
fn difference_mm(soil: Soil) -> Option<f64> {
    match soil {
        Soil::Rock => Some(0.0),
        Soil::WeatheredRock | Soil::Gravel | Soil::DenseSand => Some(0.02),
        Soil::MediumSand | Soil::HardClay => Some(0.05),
        Soil::LooseSand | Soil::StiffClay => Some(0.1),
        Soil::FirmClay | Soil::Silt => Some(0.2),
        Soil::SoftClay => Some(0.4),
        Soil::MadeGround | Soil::Peat | Soil::ShrinkingClay => None,
    }
}

/// Finds the lean in a year; none where the ground cannot be presumed.
pub fn find(brief: &Brief, ground: &Ground, block: &Block, notes: &mut Notes) -> Option<Season> {
    let base = metre::get(block.length.min(block.width));
    // A base in the ground that freezes moves with the frost; one below it hardly.
    let shallow = if block.depth < ground.frost_depth {
        2.0
    } else {
        1.0
    };
    let difference = difference_mm(brief.site.soil.value)? * shallow * base.min(1.0);
    let lean = polar::lean_arcsec(difference / 1e3, base) / 60.0;
    let season = Season {
        difference_mm: difference,
        arcmin_per_year: lean,
        drift_arcsec_per_min: polar::drift_arcsec_per_min(lean),
    };
    notes.working(
        Working::new(
            "motion.season",
            "Lean of the polar axis in a year",
            "θ = Δ/b",
            SOURCE,
        )
        .with("Δ", difference, Unit::Millimetre)
        .with("b", base, Unit::Metre)
        .gives("θ", lean, Arcminute),
    );
    Some(season)
}
