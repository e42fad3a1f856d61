//! Ground that stiffens with depth: at which depth a quantity feels the modulus, and what that makes of it.
//!
//! Grains press on each other harder with depth, and the small-strain modulus goes with about the root of that pressure
//! (Hardin & Black). The plan's modulus is the one at about a metre. For a metre cube in ground of `G = G₁ √(z/1 m)` finite
//! elements (`tests/engineering/reference/halfspace_block.py`, case "root") give each stiffness as that of even ground with the
//! modulus at one depth; with full contact 1.6, 1.0 and 0.55 m for vertical, horizontal and rocking, without contact 1.7,
//! 1.2 and 1.1 m, and for a footstep at r about 1.3 r. Lengths follow base and half-width. Nothing is changed by it: the
//! figures of the plan are for even ground, and this is how far ground of that kind strays from them.

use serde::Serialize;

use crate::figure::{One, Unit};
use crate::halfspace::Shape;
use crate::notes::{Notes, Working};
use crate::source::{Source, Standing};

/// Where the depths come from.
pub const SOURCE: Source = Source::new(
    "Finite elements of a metre cube",
    "",
    "modulus with the root of depth; docs/ground-validation.md, within about 5 % for that cube, judgement for others",
    Standing::Derived,
);
/// Depth for which the plan's modulus is.
const STATED_AT_M: f64 = 1.0;
/// Depth of a footstep's modulus over its distance.
const STEP_RATIO: f64 = 1.3;

/// One quantity in ground that stiffens with depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stiffening {
    /// Which.
    pub quantity: &'static str,
    /// Depth at which it feels the modulus.
    pub depth_m: f64,
    /// Times the figure for even ground: stiffness, or for a footstep the tilt.
    pub factor: f64,
}

/// The quantities with their depths, and a line of calculation for each.
pub fn find(shape: &Shape, notes: &mut Notes) -> Vec<Stiffening> {
    let half_width = 0.5 * shape.length_m.min(shape.width_m);
    let held = if shape.depth_m > 0.0 {
        (shape.contact_to_m - shape.contact_from_m) / shape.depth_m
    } else {
        0.0
    };
    let between = |bonded: f64, free: f64| held * bonded + (1.0 - held) * free;
    let (d, b) = (shape.depth_m, half_width);
    let quantities = [
        (
            "ground_stiffness.stiffening.vertical",
            "vertical stiffness",
            between(d + 1.24 * b, d + 1.44 * b),
            false,
        ),
        (
            "ground_stiffness.stiffening.horizontal",
            "horizontal stiffness",
            between(d, d + 0.5 * b),
            false,
        ),
        (
            "ground_stiffness.stiffening.rocking",
            "rocking stiffness",
            between(0.55 * d, d + 0.27 * b),
            false,
        ),
        (
            "ground_stiffness.stiffening.step",
            "tilt from a footstep a long step from the block's side",
            STEP_RATIO * (1.0 + b),
            true,
        ),
    ];
    quantities
        .into_iter()
        .filter(|row| row.2 > 0.0)
        .map(|row| note(row, notes))
        .collect()
}

fn note(
    (id, quantity, depth_m, tilt): (&'static str, &'static str, f64, bool),
    notes: &mut Notes,
) -> Stiffening {
    let root = (depth_m / STATED_AT_M).sqrt();
    let factor = if tilt { 1.0 / root } else { root };
    let title = format!(
        "The {quantity} if the ground stiffens with the root of depth, over that in even ground"
    );
    let formula = if tilt {
        "f = √(1 m/z)"
    } else {
        "f = √(z/1 m)"
    };
    notes.working(
        Working::new(id, title, formula, SOURCE)
            .with("z", depth_m, Unit::Metre)
            .gives("f", factor, One),
    );
    Stiffening {
        quantity,
        depth_m,
        factor,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Finite elements of the metre cube, case "root" over case "coarse": 1.274, 1.009, 0.740 with full contact and 1.311,
    // 1.115, 1.065 without.
    #[test]
    fn the_metre_cube_is_as_the_elements_found() {
        for (to, expected) in [(1.0, [1.274, 1.009, 0.740]), (0.0, [1.311, 1.115, 1.065])] {
            let shape = Shape {
                length_m: 1.0,
                width_m: 1.0,
                depth_m: 1.0,
                contact_from_m: 0.0,
                contact_to_m: to,
                poisson_ratio: 0.35,
            };
            for (row, expected) in find(&shape, &mut Notes::default())
                .into_iter()
                .zip(expected)
            {
                assert!(
                    (row.factor / expected - 1.0).abs() < 0.02,
                    "{}: {} {expected}",
                    row.quantity,
                    row.factor
                );
            }
        }
    }
}
