//! Two layers: soft topsoil round the block's upper part, rock below its base. Bounds and an estimate, not a solution.
//!
//! More stiffness anywhere in the ground makes the block's hold stiffer, and the hold is a concave function of the modulus
//! of any part of it, since the strain energy is the least over all movements of sums that are linear in that modulus. So:
//!
//! - Topsoil of modulus `m G` lies between ground that begins below it (a block shallower by the topsoil) and even ground,
//!   and the straight line between them, `K_low + m (K_even − K_low)`, is itself a lower bound. It is taken as the estimate.
//! - Rock below makes everything stiffer than even ground, which is the lower bound and stays the plan's figure; the
//!   estimate is by the factors that Kausel and Elsabee & Morray gave for a cylinder in a stratum.

use serde::Serialize;

use crate::figure::Unit;
use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::notes::{Notes, Working};
use crate::site_plan::Site;
use crate::source::{Source, Standing};

/// Modulus of topsoil over that of the ground below: rooted, loose, often wet.
pub const TOPSOIL_RATIO: f64 = 1.0 / 3.0;
/// Bounds of topsoil.
pub const TOPSOIL_SOURCE: Source = Source::derived("monotone and concave in the modulus; topsoil taken at a third of the ground's modulus");
/// Factors of a stratum on rock.
pub const ROCK_SOURCE: Source =
    Source::new("Elsabee & Morray", "1977", "factors of a stratum on rigid rock, after Kausel 1974", Standing::FromMemory);

/// What a layer does to one stiffness: factors on that in even ground.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct LayerEffect {
    /// Which layer.
    pub layer: &'static str,
    /// Which stiffness.
    pub quantity: &'static str,
    /// Cannot be less.
    pub least_factor: f64,
    /// Expected.
    pub estimate_factor: f64,
    /// Cannot be more; none where no bound is known.
    pub most_factor: Option<f64>,
}

type Quantity = (&'static str, &'static str, usize);

const TOPSOIL: [Quantity; 3] = [
    ("ground_stiffness.topsoil.vertical", "vertical stiffness", 2),
    ("ground_stiffness.topsoil.horizontal", "horizontal stiffness", 0),
    ("ground_stiffness.topsoil.rocking", "rocking stiffness", 4),
];

/// Effects of the layers that the plan names; none named, none found.
pub fn find(site: &Site, solved: &Solved, shelf: &dyn Shelf, notes: &mut Notes) -> Vec<LayerEffect> {
    let mut effects = Vec::new();
    if let Some(depth_m) = site.topsoil_depth_m.filter(|depth| *depth > 0.0) {
        effects.extend(topsoil(depth_m, solved, shelf, notes));
    }
    if let Some(depth_m) = site.rock_depth_m {
        effects.extend(rock(depth_m, &solved.shape, notes));
    }
    effects
}

fn topsoil(thickness_m: f64, solved: &Solved, shelf: &dyn Shelf, notes: &mut Notes) -> Vec<LayerEffect> {
    let shape = &solved.shape;
    // Where topsoil reaches the base, what is left is a footing on the ground below it.
    let depth_m = (shape.depth_m - thickness_m).max(0.0);
    let contact_from_m = (shape.contact_from_m - thickness_m).max(0.0).min(depth_m);
    let contact_to_m = (shape.contact_to_m - thickness_m).max(contact_from_m).min(depth_m);
    let Ok(below) = halfspace::solved(&Shape { depth_m, contact_from_m, contact_to_m, ..*shape }, shelf) else { return Vec::new() };
    let effect = |(id, quantity, axis): Quantity| {
        let least = below.stiffness_over_g[axis][axis] / solved.stiffness_over_g[axis][axis];
        let estimate = least + TOPSOIL_RATIO * (1.0 - least);
        let title = format!("The {quantity} with topsoil, over that without");
        notes.working(
            Working::new(id, title, "f = f₀ + m (1 − f₀), f₀ = K(block from the topsoil down)/K", TOPSOIL_SOURCE)
                .with("t", thickness_m, Unit::Metre)
                .with("f₀", least, Unit::One)
                .with("m", TOPSOIL_RATIO, Unit::One)
                .gives("f", estimate, Unit::One),
        );
        LayerEffect { layer: "topsoil", quantity, least_factor: least, estimate_factor: estimate, most_factor: Some(1.0) }
    };
    TOPSOIL.map(effect).into()
}

const ROCK: [Quantity; 3] = [
    ("ground_stiffness.rock.vertical", "vertical stiffness", 2),
    ("ground_stiffness.rock.horizontal", "horizontal stiffness", 0),
    ("ground_stiffness.rock.rocking", "rocking stiffness", 4),
];

/// Rock at a depth `h` from the surface, a disc of the base's area, embedment `e`: factors of stratum and embedment.
fn rock(rock_depth_m: f64, shape: &Shape, notes: &mut Notes) -> Vec<LayerEffect> {
    let (h, e) = (rock_depth_m, shape.depth_m);
    if h <= e {
        return Vec::new();
    }
    let r = (shape.length_m * shape.width_m / std::f64::consts::PI).sqrt();
    let factors = [1.0 + 1.28 * r / (h - e), 1.0 + r / (2.0 * (h - e)), 1.0 + r / (6.0 * (h - e))];
    let forms = ["f = 1 + 1.28 R/(H − D)", "f = 1 + R/(2 (H − D))", "f = 1 + R/(6 (H − D))"];
    let rows = ROCK.into_iter().zip(factors).zip(forms);
    rows.map(|(((id, quantity, _), factor), form)| {
        notes.working(
            Working::new(id, format!("The {quantity} with rock below, over that without"), form, ROCK_SOURCE)
                .with("R", r, Unit::Metre)
                .with("H", h, Unit::Metre)
                .with("D", e, Unit::Metre)
                .gives("f", factor, Unit::One),
        );
        LayerEffect { layer: "rock below", quantity, least_factor: 1.0, estimate_factor: factor, most_factor: None }
    })
    .collect()
}
