//! Ground stiffness: how the ground holds the block, about the centre of its base.

pub mod contact;
pub mod doubt;
pub mod layers;
pub mod published;
pub mod stiffening;
pub mod uneven;
mod workings;

use std::sync::Arc;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Unit, Units};
use crate::halfspace::{self, Shape, Shelf, Solved};
use crate::notes::{Check, Found, Notes};
use crate::source::{Source, Standing};
use crate::stages::block::Block;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::contact::{Case, SideContact};
use crate::stages::ground_stiffness::doubt::{Causes, Doubt};
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
    /// At worst: the unfavourable twentieth of all that is uncertain.
    pub low: Stiffness,
    /// At best: the other twentieth.
    pub high: Stiffness,
    /// How much of a perfect grip of the sides is counted on.
    pub side_contact: Option<SideContact>,
    /// What the range is made of.
    pub doubt: Option<Doubt>,
    /// How far ground that stiffens with depth strays from these figures.
    pub stiffening: Vec<stiffening::Stiffening>,
    /// What topsoil, rock and the width of a lining do, where the plan names them; the figures above have it in them.
    pub layers: Vec<layers::LayerEffect>,
    /// The solution over G with the middle contact, for every question about influence; none where the ground or the shape has none.
    #[serde(skip)]
    pub solved: Option<Arc<Solved>>,
    /// The solution of the middle contact's shape as it was before part of its grip was taken off: what a shelf keeps.
    #[serde(skip)]
    pub pure: Option<Arc<Solved>>,
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
    #[serde(rename = "vertical_n_per_m", with = "newton_per_metre::option")]
    pub vertical: Option<LinearStiffness>,
    /// Horizontal along x.
    #[serde(rename = "horizontal_x_n_per_m", with = "newton_per_metre::option")]
    pub horizontal_x: Option<LinearStiffness>,
    /// Horizontal along y.
    #[serde(rename = "horizontal_y_n_per_m", with = "newton_per_metre::option")]
    pub horizontal_y: Option<LinearStiffness>,
    /// Rocking about x.
    #[serde(
        rename = "rocking_x_n_m_per_rad",
        with = "newton_metre_per_radian::option"
    )]
    pub rocking_x: Option<RotationalStiffness>,
    /// Rocking about y: the motion in the x–z plane.
    #[serde(
        rename = "rocking_y_n_m_per_rad",
        with = "newton_metre_per_radian::option"
    )]
    pub rocking_y: Option<RotationalStiffness>,
    /// Torsion about z.
    #[serde(
        rename = "torsion_n_m_per_rad",
        with = "newton_metre_per_radian::option"
    )]
    pub torsion: Option<RotationalStiffness>,
    /// Force along x for a turn about y.
    #[serde(rename = "coupling_x_ry_n_per_rad", with = "newton_per_radian::option")]
    pub coupling_x_ry: Option<CouplingStiffness>,
    /// Force along y for a turn about x; negative, since a right-handed turn about x carries the upper soil towards −y.
    #[serde(rename = "coupling_y_rx_n_per_rad", with = "newton_per_radian::option")]
    pub coupling_y_rx: Option<CouplingStiffness>,
}

/// A stiffness of which nothing can be said, and the check that says why.
fn unknown(mut notes: Notes, why: impl Into<String>) -> Found<GroundStiffness> {
    notes.check(Check::unknown(
        SHAPE_CHECK,
        SHAPE_TITLE,
        Unit::One,
        SOURCE,
        why,
    ));
    Found {
        value: GroundStiffness::unknown(),
        notes,
    }
}

/// Finds the ground's stiffness.
pub fn stage(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    shelf: &dyn Shelf,
) -> Found<GroundStiffness> {
    let geometry = shape(ground, block);
    let case = contact::of(brief, ground, block);
    let mut notes = Notes::default();
    let Some(g) = ground.shear_modulus else {
        return unknown(
            notes,
            "The stiffness of this ground cannot be presumed; a ground engineer has to say what it is, or a measured speed of shear waves.",
        );
    };
    let solved = match halfspace::solved(&contact::middle(&case, &geometry), shelf) {
        Ok(solved) => solved,
        Err(problem) => {
            let why = format!("The block's stiffness in the ground could not be found: {problem}.");
            return unknown(notes, why);
        }
    };
    let reach = Reach::of(solved, &case);
    let contact = contact::range(&case, &geometry, &reach);
    let layers = layers::find(brief, ground, &geometry, &reach, shelf);
    let causes = Causes {
        layers: &layers,
        modulus: g,
        contact: contact.as_ref(),
        poisson_stated: brief.site.stated.poisson_ratio.is_some(),
    };
    let (doubt, uneven) = (causes.doubt(), causes.factors());
    workings::note(brief, &reach.solved, g, &uneven, &mut notes);
    workings::note_contact(brief, contact.as_ref(), &doubt, &mut notes);
    compare(&geometry, &reach, g.typical, brief.units, &mut notes);
    layers::note(&layers, &mut notes);
    let (stiffening, layers) = (
        stiffening::find(&reach.pure.shape, &mut notes),
        layers::effects(&layers),
    );
    Found {
        value: GroundStiffness {
            stiffening,
            layers,
            side_contact: contact,
            doubt: Some(doubt),
            ..GroundStiffness::of(reach, g, uneven)
        },
        notes,
    }
}

/// The published forms beside what was solved: where the sides may be held from the surface to the base, that with all of it
/// bonded, as the forms have it.
fn compare(geometry: &Shape, reach: &Reach, g: Pressure, units: Units, notes: &mut Notes) {
    let whole = geometry.contact_from_m <= 0.0 && geometry.contact_to_m >= geometry.depth_m;
    let bonded = whole
        .then(|| reach.pure.linings())
        .flatten()
        .map(|linings| &*linings.bonded);
    let solved = bonded.unwrap_or(&reach.pure);
    published::note(&solved.shape, g, &six(solved, g), units, notes);
}

/// The middle contact's shape, solved, and the same with what is left of its grip.
#[derive(Debug, Clone)]
pub struct Reach {
    /// Bonded below the depth that is lost.
    pub pure: Arc<Solved>,
    /// Held in part.
    pub solved: Arc<Solved>,
}

impl Reach {
    /// With the middle quality of a case.
    pub fn of(pure: Arc<Solved>, case: &Case) -> Self {
        let shape = &pure.shape;
        let held = shape.contact_from_m < shape.contact_to_m;
        let solved = (held && case.quality.typical < 1.0)
            .then(|| pure.held_in_part(case.quality.typical))
            .flatten()
            .unwrap_or_else(|| Arc::clone(&pure));
        Self { pure, solved }
    }
}

const SHAPE_CHECK: &str = "ground_stiffness.solved";
const SHAPE_TITLE: &str = "Can the ground's hold on the block be calculated?";

/// The block and its contact, as the half-space sees them.
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

    fn of(reach: Reach, g: Spread<Pressure>, uneven: Spread<Factors>) -> Self {
        let Reach { pure, solved } = reach;
        Self {
            about: Self::ABOUT,
            typical: Stiffness::of(&solved, g.typical, &uneven.typical),
            low: Stiffness::of(&solved, g.low, &uneven.low),
            high: Stiffness::of(&solved, g.high, &uneven.high),
            stiffening: Vec::new(),
            layers: Vec::new(),
            side_contact: None,
            doubt: None,
            pure: Some(pure),
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
            side_contact: None,
            doubt: None,
            pure: None,
            solved: None,
            shear_modulus: None,
            uneven: Spread::exactly(Factors::EVEN),
        }
    }
}
