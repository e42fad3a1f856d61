//! Layers: soft topsoil round the block's upper part, rock below its base, the width of a lining. Bounds and estimates,
//! held against finite elements in `docs/ground-validation.md`; the plan's figures in low, typical and high ground take them.
//!
//! More stiffness anywhere in the ground makes the block's hold stiffer, and the hold is a concave function of the modulus
//! of any part of it, since the strain energy is the least over all movements of sums that are linear in that modulus. So
//! topsoil of modulus `m G` lies between ground that begins below it (a block shallower by the topsoil), which low ground
//! takes, and even ground, which high ground takes; the straight line between them, `K_low + m (K_even − K_low)`, is
//! itself a lower bound and the estimate. Even ground is the lower bound over rock. A hole wider than the block is less
//! ground than one as wide, and low ground takes the width that linings have at most.

mod lining;
mod rock;
mod topsoil;

use serde::Serialize;

use crate::figure::Unit;
use crate::halfspace::{Shelf, Solved};
use crate::notes::{Notes, Working};
use crate::site_plan::Site;
use crate::source::Source;
use crate::units::Spread;

pub use lining::{MOST_WIDTH_M as MOST_LINING_M, layer as lining};
pub use rock::{SOURCE as ROCK_SOURCE, layer as rock};
pub use topsoil::{MODULUS_RATIO as TOPSOIL_RATIO, SOURCE as TOPSOIL_SOURCE, layer as topsoil};

/// What a layer does to each stiffness, in the order of the axes, and to the lean under a weight on the ground: factors on
/// even ground, for the softest ground thought likely, typical ground and the stiffest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// In words.
    pub name: &'static str,
    /// On the diagonal of the stiffness.
    pub stiffness: [Spread<f64>; 6],
    /// On the coupling of x with the turn about y, and of y with the turn about x.
    pub coupling: [Spread<f64>; 2],
    /// On the lean.
    pub lean: Spread<f64>,
}

/// One factor of a layer, as the design says it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct LayerEffect {
    /// Which layer.
    pub layer: &'static str,
    /// On what.
    pub quantity: &'static str,
    /// In low ground.
    pub low_factor: f64,
    /// In typical ground: expected.
    pub estimate_factor: f64,
    /// In high ground.
    pub high_factor: f64,
}

const QUANTITIES: [&str; 6] = [
    "horizontal stiffness along x",
    "horizontal stiffness along y",
    "vertical stiffness",
    "rocking stiffness about x",
    "rocking stiffness about y",
    "torsional stiffness",
];
const LEAN: &str = "lean under a weight on the ground";

impl Layer {
    /// A layer whose couplings go with the roots of what they couple, so that the matrix stays positive.
    fn with_roots(name: &'static str, stiffness: [Spread<f64>; 6], lean: Spread<f64>) -> Self {
        let root = |i: usize, j: usize| {
            let [a, b] = [stiffness[i], stiffness[j]];
            Spread {
                low: (a.low * b.low).sqrt(),
                typical: (a.typical * b.typical).sqrt(),
                high: (a.high * b.high).sqrt(),
            }
        };
        Self {
            name,
            stiffness,
            coupling: [root(0, 4), root(1, 3)],
            lean,
        }
    }

    /// Each of its factors that is not one.
    fn effects(&self) -> impl Iterator<Item = LayerEffect> + '_ {
        let rows = QUANTITIES
            .into_iter()
            .zip(self.stiffness)
            .chain([(LEAN, self.lean)]);
        rows.filter(|(_, factor)| *factor != Spread::exactly(1.0))
            .map(|(quantity, factor)| LayerEffect {
                layer: self.name,
                quantity,
                low_factor: factor.low,
                estimate_factor: factor.typical,
                high_factor: factor.high,
            })
    }
}

/// The layers that the plan names, and the lining where the sides are not held all the way.
pub fn find(site: &Site, solved: &Solved, shelf: &dyn Shelf) -> Vec<Layer> {
    let shape = &solved.shape;
    let above = site
        .topsoil_depth_m
        .filter(|depth| *depth > 0.0)
        .and_then(|depth| topsoil(depth, solved, shelf));
    let below = site.rock_depth_m.and_then(|depth| rock(depth, shape));
    // Topsoil that was left out of the contact is no lining.
    let lined = above.is_none()
        || shape.contact_to_m < shape.depth_m
        || shape.contact_from_m > site.topsoil_depth_m.unwrap_or(0.0) + 1e-9;
    let wider = if lined { lining(shape) } else { None };
    [above, below, wider].into_iter().flatten().collect()
}

/// What they do, quantity by quantity.
pub fn effects(layers: &[Layer]) -> Vec<LayerEffect> {
    layers.iter().flat_map(Layer::effects).collect()
}

/// A line of calculation for every layer's rocking stiffness and lean.
pub fn note(layers: &[Layer], notes: &mut Notes) {
    for layer in layers {
        let (ids, form, source) = told(layer.name);
        let rows = [
            ("The rocking stiffness", layer.stiffness[4]),
            ("The lean under a weight on the ground", layer.lean),
        ];
        let said = ids
            .into_iter()
            .zip(rows)
            .filter(|(_, (_, factor))| *factor != Spread::exactly(1.0));
        for (id, (words, factor)) in said {
            let title = format!("{words} with {}, over that in even ground", layer.name);
            notes.working(
                Working::new(id, title, form, source)
                    .with("f soft", factor.low, Unit::One)
                    .with("f stiff", factor.high, Unit::One)
                    .gives("f", factor.typical, Unit::One),
            );
        }
    }
}

type Told = ([&'static str; 2], &'static str, Source);

fn told(name: &str) -> Told {
    match name {
        topsoil::NAME => (
            [
                "ground_stiffness.topsoil.rocking",
                "ground_stiffness.topsoil.lean",
            ],
            topsoil::FORM,
            TOPSOIL_SOURCE,
        ),
        rock::NAME => (
            [
                "ground_stiffness.rock.rocking",
                "ground_stiffness.rock.lean",
            ],
            rock::FORM,
            ROCK_SOURCE,
        ),
        _ => (
            [
                "ground_stiffness.lining.rocking",
                "ground_stiffness.lining.lean",
            ],
            lining::FORM,
            lining::SOURCE,
        ),
    }
}
