//! Ground that is not even, and holes wider than the block: the planner's factors against finite elements.

use stillground::halfspace::{NoShelf, Shape, solve};
use stillground::notes::Notes;
use stillground::stages::ground_stiffness::layers::{self, Layer, Modulus, Rock};
use stillground::stages::ground_stiffness::stiffening as depth;
use stillground::units::Spread;

use super::{off, table};
use crate::elements::{Asked, Case, Reference};

/// Modulus of the elements' rock over that of the soil.
const ROCK_RATIO: f64 = 50.0;

/// Entries that the tables of layers have, with their names.
const ENTRIES: [(&str, usize); 4] = [("z", 2), ("x", 0), ("ry", 4), ("rz", 5)];

/// A layered case, the same block in even ground, and the layer as the plan would name it.
pub struct Layered {
    /// Case.
    pub name: &'static str,
    /// In words.
    pub words: &'static str,
    /// Case in even ground.
    pub even: &'static str,
    /// Contacts solved.
    pub contacts: &'static [&'static str],
    /// Thickness of topsoil.
    pub topsoil_m: Option<f64>,
    /// Depth of rock.
    pub rock_m: Option<f64>,
}

const ALL: &[&str] = &["full", "half", "none"];
const ENDS: &[&str] = &["full", "none"];

/// Every layered case.
pub const LAYERED: [Layered; 5] = [
    Layered {
        name: "topsoil 0.3 m",
        words: "topsoil 0.3 m round a metre cube",
        even: "cube 1, 0.35",
        contacts: ALL,
        topsoil_m: Some(0.3),
        rock_m: None,
    },
    Layered {
        name: "topsoil 0.2 m, long",
        words: "topsoil 0.2 m round 1.2 × 0.8 × 1 m, ν 0.45",
        even: "long, 0.45",
        contacts: ENDS,
        topsoil_m: Some(0.2),
        rock_m: None,
    },
    Layered {
        name: "rock 0.5 m",
        words: "rock 0.5 m below a metre cube",
        even: "cube 1, 0.35",
        contacts: ALL,
        topsoil_m: None,
        rock_m: Some(1.5),
    },
    Layered {
        name: "rock 2 m",
        words: "rock 2 m below a metre cube",
        even: "cube 1, 0.35",
        contacts: ENDS,
        topsoil_m: None,
        rock_m: Some(3.0),
    },
    Layered {
        name: "rock 1 m, long",
        words: "rock 1 m below 1.2 × 0.8 × 1 m, ν 0.45",
        even: "long, 0.45",
        contacts: ENDS,
        topsoil_m: None,
        rock_m: Some(2.0),
    },
];

impl Layered {
    /// What the planner makes of it.
    #[must_use]
    pub fn planned(&self, even: &Case, contact: &str) -> Option<Layer> {
        let solved = solve(&even.shape(contact))?;
        let topsoil = self
            .topsoil_m
            .and_then(|depth| layers::topsoil(depth, &solved, &NoShelf));
        topsoil.or_else(|| {
            self.rock_m
                .and_then(|depth| layers::rock(&below(depth, &solved.shape), &solved, &NoShelf))
        })
    }
}

/// The elements' rock: fifty times the soil's modulus, its Poisson's ratio the same.
fn below(depth_m: f64, shape: &Shape) -> Rock {
    let modulus = |mpa: f64| Modulus {
        mpa: Spread::exactly(mpa),
        poisson_ratio: shape.poisson_ratio,
    };
    Rock {
        depth_m,
        washed: false,
        soil: modulus(1.0),
        rock: modulus(ROCK_RATIO),
    }
}

/// A row for each case and contact that the planner has an answer to, its cells found by `cells`.
fn layered(
    reference: &Reference,
    cells: impl Fn(&Case, &Case, &str, &Layer) -> Vec<String>,
) -> Vec<Vec<String>> {
    let mut rows = Vec::new();
    for ground in &LAYERED {
        let (case, even) = (reference.case(ground.name), reference.case(ground.even));
        for contact in ground.contacts {
            let Some(planned) = ground.planned(&even, contact) else {
                continue;
            };
            let mut row = vec![ground.words.to_owned(), (*contact).to_owned()];
            row.extend(cells(&case, &even, contact, &planned));
            rows.push(row);
        }
    }
    rows
}

/// Stiffness over layered ground over that over even ground, between the planner's factors.
#[must_use]
pub fn layers(reference: &Reference) -> String {
    let rows = layered(reference, |case, even, contact, planned| {
        let entry = |(_, axis)| {
            let asked = Asked::Entry(axis, axis);
            let found = case.same_mesh(contact, asked) / even.same_mesh(contact, asked);
            let factor = planned.stiffness[axis];
            format!(
                "{found:.3} in {:.3}…{:.3}…{:.3}",
                factor.low, factor.typical, factor.high
            )
        };
        ENTRIES.map(entry).to_vec()
    });
    table(&["layer", "contact", "z", "x", "ry", "rz"], rows)
}

/// The same of leans under a weight.
#[must_use]
pub fn leans(reference: &Reference) -> String {
    let rows = layered(reference, |case, even, contact, planned| {
        let lean = |at| {
            let asked = Asked::Lean(at);
            format!(
                "{:.2}",
                case.same_mesh(contact, asked) / even.same_mesh(contact, asked)
            )
        };
        let planner = format!(
            "{:.2}…{:.2}…{:.2}",
            planned.lean.high, planned.lean.typical, planned.lean.low
        );
        (0..even.places().len())
            .map(lean)
            .chain([planner])
            .collect()
    });
    table(
        &[
            "layer",
            "contact",
            "at 0.75 m",
            "1 m",
            "1.25 m",
            "1.5 m",
            "2 m",
            "planner",
        ],
        rows,
    )
}

/// Holes wider than the block: case, words, the same block in a hole that fits, its contact.
pub const LININGS: [(&str, &str, &str, &str); 4] = [
    (
        "lining 50 mm, full",
        "metre cube, 50 mm to the base",
        "cube 1, 0.35",
        "none",
    ),
    (
        "lining 25 mm, full",
        "metre cube, 25 mm to the base",
        "cube 1, 0.35",
        "none",
    ),
    (
        "lining 50 mm, half",
        "metre cube, 50 mm to half its depth",
        "cube 1, 0.35",
        "half",
    ),
    (
        "lining 50 mm, long",
        "1.2 × 0.8 × 1 m, ν 0.45, 50 mm to the base",
        "long, 0.45",
        "none",
    ),
];

/// What a hole wider than the block costs.
#[must_use]
pub fn lining(reference: &Reference) -> String {
    let row = |(name, words, even, contact): (&str, &str, &str, &str)| {
        let (case, even) = (reference.case(name), reference.case(even));
        let planned = layers::lining(&even.shape(contact));
        let mut row = vec![words.to_owned()];
        row.extend(ENTRIES.map(|(_, axis)| {
            let asked = Asked::Entry(axis, axis);
            let found = case.same_box(contact, asked) / even.same_box(contact, asked);
            format!(
                "{found:.3} ({:.3})",
                planned.map_or(1.0, |layer| layer.stiffness[axis].low)
            )
        }));
        let lean = case.same_box(contact, Asked::Lean(1)) / even.same_box(contact, Asked::Lean(1));
        row.push(format!(
            "{lean:.2} ({:.2})",
            planned.map_or(1.0, |layer| layer.lean.low)
        ));
        row
    };
    table(
        &["block and lining", "z", "x", "ry", "rz", "lean, 1 m"],
        LININGS.map(row),
    )
}

/// Modulus with the root of depth.
#[must_use]
pub fn stiffening(reference: &Reference) -> String {
    let mut rows = Vec::new();
    for (name, even, words, contacts) in [
        ("root", "even, thin", "1 × 1 × 1 m, ν 0.35", ALL),
        (
            "root, long",
            "even, thin, long",
            "1.2 × 0.8 × 1 m, ν 0.45",
            ENDS,
        ),
    ] {
        let (root, even) = (reference.case(name), reference.case(even));
        for contact in contacts {
            let planned = depth::find(&even.shape(contact), &mut Notes::default());
            let mut row = vec![words.to_owned(), (*contact).to_owned()];
            for (axis, stated) in [2, 0, 4].into_iter().zip(&planned) {
                let asked = Asked::Entry(axis, axis);
                let found = root.same_mesh(contact, asked) / even.same_mesh(contact, asked);
                row.push(format!(
                    "{found:.3} ({:.2} m, {})",
                    stated.depth_m,
                    off(stated.factor, found)
                ));
            }
            rows.push(row);
        }
    }
    table(&["block", "contact", "z", "x", "ry"], rows)
}
