//! Rock below the base.

use super::Layer;
use crate::halfspace::Shape;
use crate::source::{Source, Standing};
use crate::units::Spread;

/// In words.
pub const NAME: &str = "rock below";
/// Factors of a stratum on rock.
pub const SOURCE: Source = Source::new(
    "Elsabee & Morray",
    "1977",
    "factors of a stratum on rigid rock, after Kausel 1974",
    Standing::SecondHand,
);
/// The estimate.
pub const FORM: &str = "f = 1 + c R/(H − D), R = √(l w/π), c = 1.28 vertical, 1/2 horizontal, 1/6 rocking, 1/20 torsion";
/// Coefficients in the order of the axes.
const COEFFICIENTS: [f64; 6] = [0.5, 0.5, 1.28, 1.0 / 6.0, 1.0 / 6.0, 0.05];
/// How much more than the estimate finite elements found at most.
const MARGIN: f64 = 1.6;
/// So far from the block's side the lean's factor is taken, for every distance: farther off the rock spares more.
const NEAR_M: f64 = 0.25;

/// Rock at a depth below ground, a disc of the base's area; none where the block reaches it.
#[must_use]
pub fn layer(rock_depth_m: f64, shape: &Shape) -> Option<Layer> {
    let below = rock_depth_m - shape.depth_m;
    if below <= 0.0 {
        return None;
    }
    let nearness = (shape.length_m * shape.width_m / std::f64::consts::PI).sqrt() / below;
    let stiffness = COEFFICIENTS.map(|c| Spread {
        low: 1.0,
        typical: 1.0 + c * nearness,
        high: 1.0 + MARGIN * c * nearness,
    });
    // Finite elements: a weight's dish is shallower by exp(−(r/H)²) at a distance r from the axis.
    let near = 0.5 * shape.length_m.min(shape.width_m) + NEAR_M;
    let lean = (-(near / rock_depth_m).powi(2)).exp();
    Some(Layer::with_roots(
        NAME,
        stiffness,
        Spread {
            low: 1.0,
            typical: lean,
            high: lean,
        },
    ))
}
