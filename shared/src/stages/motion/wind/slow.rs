//! The slow part of the flutter: what a pier follows without swinging.

use crate::brief::Brief;
use crate::stages::pier::Pier;
use crate::units::{Length, metre_per_second};

/// The wind as far as it is known before anything swings in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlowPart {
    /// Mean force on telescope and mount.
    pub telescope_n: f64,
    /// Mean force on the column, at its middle.
    pub column_n: f64,
    /// Flutter that is left of the slow part, root mean square, over the turn under those forces.
    pub per_turn_ratio: f64,
}

/// The part of the flutter that the pier follows without swinging: the least that a plan of this column has.
pub fn slow_part(brief: &Brief, pier: &Pier, foot_above_ground: Length) -> SlowPart {
    let air = super::air(brief, pier, foot_above_ground, brief.load.enclosure.value);
    let blows = metre_per_second::get(air.speed) > 0.0;
    SlowPart {
        telescope_n: air.telescope_n,
        column_n: air.column_n,
        per_turn_ratio: if blows {
            2.0 * air.intensity * air.guided.background_ratio.max(0.0).sqrt()
        } else {
            0.0
        },
    }
}
