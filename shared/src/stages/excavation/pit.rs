//! The pit's shape: bottom, top, volume, and what its depth calls for.

use crate::figure::{CubicMetre, Metre, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::osha_1926_p_1989::{distances, slopes};
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::room::Room;
use crate::units::{Area, Length, Volume, metre};

/// The pit's shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pit {
    /// Length and width at the bottom.
    pub bottom: [Length; 2],
    /// Length and width at ground level.
    pub top: [Length; 2],
    /// Depth.
    pub depth: Length,
    /// Slope of the sides, degrees from level.
    pub slope_deg: f64,
    /// Volume in the ground.
    pub volume: Volume,
    /// Whether a ladder or ramp is needed.
    pub way_out: bool,
    /// Whether the sides need a protective system before anyone enters.
    pub protection: bool,
    /// Whether water has to be kept out.
    pub dewatering: bool,
}

/// Finds the pit's shape.
pub fn pit(room: &Room, block: &Block, ground: &Ground, notes: &mut Notes) -> Pit {
    let depth = block.depth;
    let bottom = [block.length, block.width].map(|side| side + room.working_space * 2.0);
    let top = bottom.map(|side| side + depth * (2.0 * room.run_over_rise_ratio));
    let volume = frustum(bottom, top, depth);
    explain(room, bottom, top, depth, volume, notes);
    Pit {
        bottom,
        top,
        depth,
        slope_deg: 1f64.atan2(room.run_over_rise_ratio).to_degrees(),
        volume,
        way_out: depth >= distances::way_out_from(),
        protection: room.against_ground
            && !ground.is_stable_rock()
            && depth >= distances::protection_from(),
        dewatering: ground.groundwater_depth.is_some_and(|water| water < depth),
    }
}

/// Volume between two level rectangles with straight slopes between them, (A₁ + 4 A_m + A₂) h/6.
///
/// # Source
/// Derived: Simpson's rule, exact for it since the section is a quadratic of the depth.
pub fn frustum(bottom: [Length; 2], top: [Length; 2], depth: Length) -> Volume {
    let area = |side: [Length; 2]| -> Area { side[0] * side[1] };
    let middle = [(bottom[0] + top[0]) * 0.5, (bottom[1] + top[1]) * 0.5];
    (area(bottom) + area(middle) * 4.0 + area(top)) * depth / 6.0
}

fn explain(
    room: &Room,
    bottom: [Length; 2],
    top: [Length; 2],
    depth: Length,
    volume: Volume,
    notes: &mut Notes,
) {
    let [bottom_x, bottom_y, top_x, top_y] = [bottom[0], bottom[1], top[0], top[1]].map(metre::get);
    for (id, title, bottom, top) in [
        (
            "excavation.length",
            "Length of the pit at ground level",
            bottom_x,
            top_x,
        ),
        (
            "excavation.width",
            "Width of the pit at ground level",
            bottom_y,
            top_y,
        ),
    ] {
        notes.working(
            Working::new(
                id,
                title,
                "L = L_b + 2 s h, L_b = block + 2 w",
                slopes::SOURCE,
            )
            .with("L_b", bottom, Unit::Metre)
            .with("w", room.working_space, Metre)
            .with("s", room.run_over_rise_ratio, One)
            .with("h", depth, Metre)
            .gives("L", top, Unit::Metre),
        );
    }
    let source = Source::derived("the pit is as deep as the block");
    notes.working(
        Working::new(
            "excavation.depth",
            "Depth of the pit",
            "h = depth of the block",
            source,
        )
        .gives("h", depth, Metre),
    );
    notes.working(
        Working::new(
            "excavation.volume",
            "Volume of the pit in the ground",
            "V = (L_b W_b + (L_b + L)(W_b + W) + L W) h / 6",
            Source::derived("volume between two level rectangles"),
        )
        .with("L_b", bottom_x, Unit::Metre)
        .with("W_b", bottom_y, Unit::Metre)
        .with("L", top_x, Unit::Metre)
        .with("W", top_y, Unit::Metre)
        .with("h", depth, Metre)
        .gives("V", volume, CubicMetre),
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::cubic_metre;

    #[test]
    fn a_battered_pit_holds_more_than_its_mean_section() {
        let square = |side: f64| [metre::new(side), metre::new(side)];
        // A pyramid of side 2 and height 3 holds 4 m³; a box of 1 × 1 × 1 one.
        assert!(
            (cubic_metre::get(frustum(square(0.0), square(2.0), metre::new(3.0))) - 4.0).abs()
                < 1e-12
        );
        assert!(
            (cubic_metre::get(frustum(square(1.0), square(1.0), metre::new(1.0))) - 1.0).abs()
                < 1e-12
        );
    }
}
