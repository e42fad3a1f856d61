//! Soft topsoil over the ground that holds the block.

use super::Layer;
use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::source::Source;
use crate::units::Spread;

/// In words.
pub const NAME: &str = "topsoil";
/// Modulus of topsoil over that of the ground below: rooted, loose, often wet.
pub const MODULUS_RATIO: f64 = 1.0 / 3.0;
/// Bounds.
pub const SOURCE: Source = Source::derived(
    "monotone and concave in the modulus; topsoil taken at a third of the ground's modulus",
);
/// The estimate.
pub const FORM: &str = "f = f₀ + m (1 − f₀), f₀ = K(block from the topsoil down)/K, m = 1/3";
/// A weight near by stands in a softer dish; finite elements give up to an eighth more lean near by, and none farther off.
const MOST_LEAN: f64 = 1.15;

/// Topsoil so thick; none where the block below it cannot be solved.
pub fn layer(thickness_m: f64, solved: &Solved, shelf: &dyn Shelf) -> Option<Layer> {
    let shape = &solved.shape;
    if thickness_m >= shape.depth_m && shape.depth_m > 0.0 {
        // The base itself stands in topsoil: no less than ground of its modulus everywhere.
        let (least, most) = (MODULUS_RATIO, 1.0 / MODULUS_RATIO);
        let stiffness = [Spread {
            low: least,
            typical: least,
            high: 1.0,
        }; 6];
        return Some(Layer::with_roots(
            NAME,
            stiffness,
            Spread {
                low: most,
                typical: most,
                high: 1.0,
            },
        ));
    }
    let depth_m = (shape.depth_m - thickness_m).max(0.0);
    let contact_from_m = (shape.contact_from_m - thickness_m).max(0.0).min(depth_m);
    let contact_to_m = (shape.contact_to_m - thickness_m)
        .max(contact_from_m)
        .min(depth_m);
    let below = halfspace::solved(
        &Shape {
            depth_m,
            contact_from_m,
            contact_to_m,
            ..*shape
        },
        shelf,
    )
    .ok()?;
    let between = |i: usize, j: usize| {
        let (here, there) = (solved.stiffness_over_g[i][j], below.stiffness_over_g[i][j]);
        let least = if here == 0.0 { 1.0 } else { there / here };
        // With free walls, less ground round them can hold the base no better; the solver's own error may say otherwise.
        let least = if i == j { least.min(1.0) } else { least };
        Spread {
            low: least,
            typical: least + MODULUS_RATIO * (1.0 - least),
            high: 1.0,
        }
    };
    let stiffness = std::array::from_fn(|axis| between(axis, axis));
    let lean = Spread {
        low: MOST_LEAN,
        typical: 1.0,
        high: 1.0,
    };
    Some(Layer {
        name: NAME,
        stiffness,
        coupling: [between(0, 4), between(1, 3)],
        lean,
        inputs: [None; 4],
    })
}
