//! The width of a lining: its hole is wider than the block, where the solver puts the free wall at the block's side.

use super::Layer;
use crate::halfspace::Shape;
use crate::source::{Source, Standing};
use crate::units::Spread;

/// In words.
pub const NAME: &str = "a lining's width";
/// Linings of foam and gaps left by formwork are 25 to 50 mm wide; this is the most.
pub const MOST_WIDTH_M: f64 = 0.05;
/// Where it comes from.
pub const SOURCE: Source = Source::new(
    "Finite elements of blocks in wider holes",
    "",
    "linings of 25 and 50 mm; docs/ground-validation.md",
    Standing::Derived,
);
/// What low ground takes.
pub const FORM: &str = "f = 1 − s c (w/B)^(2/3), w = 50 mm, B half the shorter side, s = 1 to the base, less above contact; typical and stiff ground: no width";
/// Coefficients where the sides are free to the base, in the order of the axes.
const TO_BASE: [f64; 6] = [0.5, 0.5, 0.38, 0.65, 0.65, 0.78];

/// Share of them where the block is held below its lining, times the part of its depth that is lined.
const ABOVE_CONTACT: f64 = 0.9;

/// A lining as wide as they come, where the sides are not held all the way; none where they are, or where there are none.
pub fn layer(shape: &Shape) -> Option<Layer> {
    let (above, below) = (shape.contact_from_m, shape.depth_m - shape.contact_to_m);
    let reach = if below > 0.0 || above >= shape.depth_m {
        1.0
    } else {
        ABOVE_CONTACT * above / shape.depth_m
    };
    if reach <= 0.0 {
        return None;
    }
    // The stress that a wider hole spares stands at the base's edge with the power −2/3 of the distance.
    let width = (2.0 * MOST_WIDTH_M / shape.length_m.min(shape.width_m))
        .min(1.0)
        .powf(2.0 / 3.0);
    let stiffness = TO_BASE.map(|c| Spread {
        low: 1.0 - reach * c * width,
        typical: 1.0,
        high: 1.0,
    });
    // A weight beside a wider hole leans the block no more: the block is softer, and the ground about it as well.
    Some(Layer::with_roots(NAME, stiffness, Spread::exactly(1.0)))
}
