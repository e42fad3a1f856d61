//! The hole in the floor: round the pier where the floor passes over the block, else round the block.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Millimetre, Unit};
use crate::notes::{Notes, Working};
use crate::site_plan::floor::FloorKind;
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::pier::Pier;
use crate::units::{Length, metre, millimetre};

/// Depth of a deck from its boards' upper face to its joists' underside.
pub const DECK_DEPTH_M: f64 = 0.18;
/// Least clearance between the floor's underside and the block's top.
pub const OVER_BLOCK_M: f64 = 0.02;

/// What the hole goes round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Round {
    /// The column, or its base plate where the floor lies no higher.
    Pier,
    /// The whole block, whose top is not below the floor.
    Block,
}

/// The hole.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Opening {
    /// What it goes round.
    pub round: Round,
    /// Its length along x.
    #[serde(rename = "length_m", with = "metre")]
    pub length: Length,
    /// Its width along y.
    #[serde(rename = "width_m", with = "metre")]
    pub width: Length,
    /// Whether it is a circle of that diameter.
    pub is_circle: bool,
}

/// Underside of the floor above ground level; none for bare ground.
pub fn underside(brief: &Brief) -> Option<Length> {
    match brief.floor.kind.value {
        FloorKind::Ground => None,
        FloorKind::Slab => Some(brief.floor.level.value - brief.floor.slab_thickness.value),
        FloorKind::Deck => Some(brief.floor.level.value - metre::new(DECK_DEPTH_M)),
    }
}

/// Finds the hole and writes its line; none for bare ground.
pub fn opening(brief: &Brief, block: &Block, pier: &Pier, notes: &mut Notes) -> Option<Opening> {
    let found = hole(brief, block, pier)?;
    let gap = millimetre::get(brief.floor.gap.value);
    let inside = millimetre::get(found.length) - 2.0 * gap;
    notes.working(
        Working::new(
            "floor.opening",
            "Floor opening, along x",
            "a = a₀ + 2 g",
            Source::derived("gap on both sides"),
        )
        .with("a₀", inside, Unit::Millimetre)
        .with("g", gap, Unit::Millimetre)
        .gives("a", found.length, Millimetre),
    );
    Some(found)
}

/// Round the block where the floor's underside is not above it, else round the plate or the column.
fn hole(brief: &Brief, block: &Block, pier: &Pier) -> Option<Opening> {
    let gap = brief.floor.gap.value * 2.0;
    let underside = underside(brief)?;
    if underside < block.upstand + metre::new(OVER_BLOCK_M) {
        return Some(Opening {
            round: Round::Block,
            length: block.length + gap,
            width: block.width + gap,
            is_circle: false,
        });
    }
    let plate_top = block.upstand + pier.gap + pier.plate_thickness;
    if underside < plate_top {
        let side = pier.plate_side + gap;
        return Some(Opening {
            round: Round::Pier,
            length: side,
            width: side,
            is_circle: false,
        });
    }
    let diameter = pier.outside_diameter + gap;
    Some(Opening {
        round: Round::Pier,
        length: diameter,
        width: diameter,
        is_circle: true,
    })
}
