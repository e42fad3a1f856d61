//! Layers: soft topsoil round the block's upper part, rock below its base, the width of a lining. Bounds and estimates,
//! held against finite elements in `docs/ground-validation.md`; the plan's figures in low, typical and high ground take them.
//!
//! More stiffness anywhere in the ground makes the block's hold stiffer, and the hold is a concave function of the modulus
//! of any part of it, since the strain energy is the least over all movements of sums that are linear in that modulus. So
//! topsoil of modulus `m G` lies between ground that begins below it (a block shallower by the topsoil), which low ground
//! takes, and even ground, which high ground takes; the straight line between them, `K_low + m (K_even − K_low)`, is
//! itself a lower bound and the estimate. Even ground is a lower bound over rock, too, and close to rock a poor one: [`rock`]
//! says what is taken there. A hole wider than the block is less
//! ground than one as wide, and low ground takes the width that linings have at most.

mod lining;
mod rock;
mod topsoil;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{One, Unit};
use crate::halfspace::{Shape, Shelf, Solved};
use crate::notes::{Notes, Working};
use crate::rules::fhwa_gec5_2017::shear_modulus as waves;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::{self, Group};
use crate::stages::ground_stiffness::Reach;
use crate::units::{Spread, kilonewton_per_cubic_metre, megapascal, metre_per_second};

pub use lining::{MOST_WIDTH_M as MOST_LINING_M, layer as lining};
pub use rock::{FILM_M, Modulus, Rock, SOURCE as ROCK_SOURCE, film, layer as rock};
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
    /// What its line of calculation starts from, where that is more than the shape.
    pub inputs: [Option<Input>; 4],
}

/// An input of a layer's line of calculation: symbol, value, unit.
pub type Input = (&'static str, f64, Unit);

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
            inputs: [None; 4],
        }
    }

    /// The same, with what its line of calculation starts from.
    fn told(self, inputs: [Option<Input>; 4]) -> Self {
        Self { inputs, ..self }
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
pub fn find(
    brief: &Brief,
    ground: &Ground,
    geometry: &Shape,
    reach: &Reach,
    shelf: &dyn Shelf,
) -> Vec<Layer> {
    let site = &brief.site.stated;
    let above = site
        .topsoil_depth_m
        .filter(|depth| *depth > 0.0)
        .and_then(|depth| topsoil(depth, &reach.pure, shelf));
    // Topsoil that was left out of the contact is no lining.
    let lined = above.is_none()
        || geometry.contact_to_m < geometry.depth_m
        || geometry.contact_from_m > site.topsoil_depth_m.unwrap_or(0.0) + 1e-9;
    let wider = if lined { lining(geometry) } else { None };
    [above, below(brief, ground, &reach.solved, shelf), wider]
        .into_iter()
        .flatten()
        .collect()
}

/// Rock below softer ground, or the dirt on ground that is rock itself.
fn below(brief: &Brief, ground: &Ground, solved: &Solved, shelf: &dyn Shelf) -> Option<Layer> {
    let site = &brief.site.stated;
    let washed = brief.block.rock_washed.value;
    let here = Modulus {
        mpa: ground.shear_modulus?.map(megapascal::get),
        poisson_ratio: ground.poisson_ratio,
    };
    if ground.group == Group::Rock {
        return if washed {
            None
        } else {
            film(&in_words(Soil::Silt)?, &here, solved, shelf)
        };
    }
    let rock = Rock {
        depth_m: site.rock_depth_m?,
        washed,
        soil: here,
        rock: in_words(brief.site.rock_below())?,
    };
    self::rock(&rock, solved, shelf)
}

/// What a soil's word says of its stiffness, above the groundwater.
fn in_words(soil: Soil) -> Option<Modulus> {
    let row = soil_table::row(soil);
    let weight = kilonewton_per_cubic_metre::new(row.unit_weight_kn_m3);
    let [low, typical, high] = row.speed_m_s?;
    let speeds = Spread { low, typical, high };
    Some(Modulus {
        mpa: speeds.map(|speed| {
            megapascal::get(waves::shear_modulus(weight, metre_per_second::new(speed)))
        }),
        poisson_ratio: row.poisson_ratio[1],
    })
}

/// What they do, quantity by quantity.
pub fn effects(layers: &[Layer]) -> Vec<LayerEffect> {
    layers.iter().flat_map(Layer::effects).collect()
}

/// A line of calculation for every layer's rocking stiffness and lean.
pub fn note(layers: &[Layer], notes: &mut Notes) {
    for layer in layers {
        let (ids, forms, source) = told(layer.name);
        let rows = [
            ("The rocking stiffness", layer.stiffness[4], layer.inputs),
            (
                "The lean under a weight on the ground",
                layer.lean,
                [None; 4],
            ),
        ];
        let said = ids
            .into_iter()
            .zip(forms)
            .zip(rows)
            .filter(|(_, (_, factor, _))| *factor != Spread::exactly(1.0));
        for ((id, form), (words, factor, inputs)) in said {
            let title = format!("{words} with {}, over that in even ground", layer.name);
            let working = inputs
                .into_iter()
                .flatten()
                .fold(
                    Working::new(id, title, form, source),
                    |working, (symbol, value, unit)| working.with(symbol, value, unit),
                )
                .with("f soft", factor.low, One)
                .with("f stiff", factor.high, One);
            notes.working(working.gives("f", factor.typical, One));
        }
    }
}

type Told = ([&'static str; 2], [&'static str; 2], Source);

fn told(name: &str) -> Told {
    match name {
        topsoil::NAME => (
            [
                "ground_stiffness.topsoil.rocking",
                "ground_stiffness.topsoil.lean",
            ],
            [topsoil::FORM; 2],
            TOPSOIL_SOURCE,
        ),
        rock::NAME => (
            [
                "ground_stiffness.rock.rocking",
                "ground_stiffness.rock.lean",
            ],
            [rock::FORM, rock::LEAN_FORM],
            ROCK_SOURCE,
        ),
        rock::FILM_NAME => (
            [
                "ground_stiffness.film.rocking",
                "ground_stiffness.film.lean",
            ],
            [rock::FILM_FORM; 2],
            ROCK_SOURCE,
        ),
        _ => (
            [
                "ground_stiffness.lining.rocking",
                "ground_stiffness.lining.lean",
            ],
            [lining::FORM; 2],
            lining::SOURCE,
        ),
    }
}
