//! Ground stiffness: how the ground holds the block, about the centre of its base.

pub mod layers;
pub mod published;
pub mod stiffening;
pub mod uneven;
mod workings;

use std::sync::Arc;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::Unit;
use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::notes::{Check, Found, Notes};
use crate::source::{Source, Standing};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::units::{
    CouplingStiffness, LinearStiffness, Pressure, RotationalStiffness, Spread, metre,
    newton_metre_per_radian, newton_per_metre, newton_per_radian, pascal,
};

/// The solver.
pub const SOURCE: Source = Source::new(
    "Rigid block in an elastic half-space",
    "",
    "boundary elements with Mindlin's kernels of 1936; docs/ground-validation.md",
    Standing::Derived,
);

/// Stiffness about the base's centre, in typical ground; none of it where the ground is not known. Right-handed, x east, y
/// north, z up: a turn about y by a positive angle carries the top towards +x.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GroundStiffness {
    /// Point about which the stiffness is given.
    pub about: &'static str,
    /// In typical ground.
    #[serde(flatten)]
    pub typical: Stiffness,
    /// In the softest ground thought likely.
    pub low: Stiffness,
    /// In the stiffest.
    pub high: Stiffness,
    /// How far ground that stiffens with depth strays from these figures.
    pub stiffening: Vec<stiffening::Stiffening>,
    /// What topsoil, rock and the width of a lining do, where the plan names them; the figures above have it in them.
    pub layers: Vec<layers::LayerEffect>,
    /// The shape's solution over G, for every question about influence; none where the ground or the shape has none.
    #[serde(skip)]
    pub solved: Option<Arc<Solved>>,
    /// The shear modulus that it goes with.
    #[serde(skip)]
    pub shear_modulus: Option<Spread<Pressure>>,
    /// What all layers together make of the solution.
    #[serde(skip)]
    pub uneven: Spread<Factors>,
}

/// Stiffness in ground of one modulus.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stiffness {
    /// Vertical.
    #[serde(
        rename = "vertical_n_per_m",
        serialize_with = "newton_per_metre::option::serialize"
    )]
    pub vertical: Option<LinearStiffness>,
    /// Horizontal along x.
    #[serde(
        rename = "horizontal_x_n_per_m",
        serialize_with = "newton_per_metre::option::serialize"
    )]
    pub horizontal_x: Option<LinearStiffness>,
    /// Horizontal along y.
    #[serde(
        rename = "horizontal_y_n_per_m",
        serialize_with = "newton_per_metre::option::serialize"
    )]
    pub horizontal_y: Option<LinearStiffness>,
    /// Rocking about x.
    #[serde(
        rename = "rocking_x_n_m_per_rad",
        serialize_with = "newton_metre_per_radian::option::serialize"
    )]
    pub rocking_x: Option<RotationalStiffness>,
    /// Rocking about y: the motion in the x–z plane.
    #[serde(
        rename = "rocking_y_n_m_per_rad",
        serialize_with = "newton_metre_per_radian::option::serialize"
    )]
    pub rocking_y: Option<RotationalStiffness>,
    /// Torsion about z.
    #[serde(
        rename = "torsion_n_m_per_rad",
        serialize_with = "newton_metre_per_radian::option::serialize"
    )]
    pub torsion: Option<RotationalStiffness>,
    /// Force along x for a turn about y.
    #[serde(
        rename = "coupling_x_ry_n_per_rad",
        serialize_with = "newton_per_radian::option::serialize"
    )]
    pub coupling_x_ry: Option<CouplingStiffness>,
    /// Force along y for a turn about x; negative, since a right-handed turn about x carries the upper soil towards −y.
    #[serde(
        rename = "coupling_y_rx_n_per_rad",
        serialize_with = "newton_per_radian::option::serialize"
    )]
    pub coupling_y_rx: Option<CouplingStiffness>,
}

/// Finds the ground's stiffness.
#[must_use]
pub fn stage(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    shelf: &dyn Shelf,
) -> Found<GroundStiffness> {
    let shape = shape(ground, block);
    let mut notes = Notes::default();
    let Some(g) = ground.shear_modulus else {
        let why = "The stiffness of this ground cannot be presumed; a ground engineer has to say what it is, or a measured speed of shear waves.";
        notes.check(Check::unknown(
            SHAPE_CHECK,
            SHAPE_TITLE,
            Unit::One,
            SOURCE,
            why,
        ));
        return Found {
            value: GroundStiffness::unknown(),
            notes,
        };
    };
    let solved = match halfspace::solved(&shape, shelf) {
        Ok(solved) => solved,
        Err(problem) => {
            let why = format!("The block's stiffness in the ground could not be found: {problem}.");
            notes.check(Check::unknown(
                SHAPE_CHECK,
                SHAPE_TITLE,
                Unit::One,
                SOURCE,
                why,
            ));
            return Found {
                value: GroundStiffness::unknown(),
                notes,
            };
        }
    };
    let layers = layers::find(brief, ground, &solved, shelf);
    let uneven = uneven::together(&layers);
    workings::note(brief, &solved, g, &uneven, &mut notes);
    published::note(&shape, g.typical, &six(&solved, g.typical), &mut notes);
    layers::note(&layers, &mut notes);
    let (stiffening, layers) = (
        stiffening::find(&shape, &mut notes),
        layers::effects(&layers),
    );
    Found {
        value: GroundStiffness {
            stiffening,
            layers,
            ..GroundStiffness::of(solved, g, uneven)
        },
        notes,
    }
}

const SHAPE_CHECK: &str = "ground_stiffness.solved";
const SHAPE_TITLE: &str = "Can the ground's hold on the block be calculated?";

/// The block and its contact, as the half-space sees them.
#[must_use]
pub fn shape(ground: &Ground, block: &Block) -> Shape {
    Shape {
        length_m: metre::get(block.length),
        width_m: metre::get(block.width),
        depth_m: metre::get(block.depth),
        contact_from_m: metre::get(block.side_contact_from),
        contact_to_m: metre::get(block.side_contact_to),
        poisson_ratio: ground.poisson_ratio,
    }
}

/// The six stiffnesses on the diagonal.
fn six(solved: &Solved, g: Pressure) -> published::Six {
    std::array::from_fn(|axis| solved.stiffness_over_g[axis][axis] * pascal::get(g))
}

impl Stiffness {
    const UNKNOWN: Self = Self {
        vertical: None,
        horizontal_x: None,
        horizontal_y: None,
        rocking_x: None,
        rocking_y: None,
        torsion: None,
        coupling_x_ry: None,
        coupling_y_rx: None,
    };

    /// In ground of this modulus.
    #[must_use]
    pub fn of(solved: &Solved, g: Pressure, factors: &Factors) -> Self {
        let at = |row: usize, column: usize| {
            solved.stiffness_over_g[row][column] * pascal::get(g) * factors.entry_ratio(row, column)
        };
        Self {
            vertical: Some(newton_per_metre::new(at(2, 2))),
            horizontal_x: Some(newton_per_metre::new(at(0, 0))),
            horizontal_y: Some(newton_per_metre::new(at(1, 1))),
            rocking_x: Some(newton_metre_per_radian::new(at(3, 3))),
            rocking_y: Some(newton_metre_per_radian::new(at(4, 4))),
            torsion: Some(newton_metre_per_radian::new(at(5, 5))),
            coupling_x_ry: Some(newton_per_radian::new(at(0, 4))),
            coupling_y_rx: Some(newton_per_radian::new(at(1, 3))),
        }
    }
}

impl GroundStiffness {
    const ABOUT: &str = "base centre";

    fn of(solved: Arc<Solved>, g: Spread<Pressure>, uneven: Spread<Factors>) -> Self {
        Self {
            about: Self::ABOUT,
            typical: Stiffness::of(&solved, g.typical, &uneven.typical),
            low: Stiffness::of(&solved, g.low, &uneven.low),
            high: Stiffness::of(&solved, g.high, &uneven.high),
            stiffening: Vec::new(),
            layers: Vec::new(),
            solved: Some(solved),
            shear_modulus: Some(g),
            uneven,
        }
    }

    fn unknown() -> Self {
        let unknown = Stiffness::UNKNOWN;
        Self {
            about: Self::ABOUT,
            typical: unknown,
            low: unknown,
            high: unknown,
            stiffening: Vec::new(),
            layers: Vec::new(),
            solved: None,
            shear_modulus: None,
            uneven: Spread::exactly(Factors::EVEN),
        }
    }
}
