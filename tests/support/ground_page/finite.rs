//! The solver against finite elements.

use stillground::halfspace::solve;

use super::{CONTACTS, off, table};
use crate::elements::{Asked, Reference};

/// Cases in the same ground everywhere, with their words.
pub const CASES: [(&str, &str); 5] = [
    ("cube 1, 0.35", "1 × 1 × 1 m, ν 0.35"),
    ("cube 0.8, 0.25", "0.8 × 0.8 × 0.8 m, ν 0.25"),
    ("cube 0.8, 0.45", "0.8 × 0.8 × 0.8 m, ν 0.45"),
    ("long, 0.25", "1.2 × 0.8 × 1 m, ν 0.25"),
    ("long, 0.45", "1.2 × 0.8 × 1 m, ν 0.45"),
];
/// Entries of the stiffness, with their names.
const ENTRIES: [(&str, usize, usize); 8] = [
    ("z", 2, 2),
    ("x", 0, 0),
    ("y", 1, 1),
    ("rx", 3, 3),
    ("ry", 4, 4),
    ("rz", 5, 5),
    ("x-ry", 0, 4),
    ("y-rx", 1, 3),
];

/// Solver and elements at their limit, entry by entry. A square block has no entries of its own along y.
pub fn elements(reference: &Reference) -> String {
    let mut rows = Vec::new();
    for (name, words) in CASES {
        let case = reference.case(name);
        for contact in case.contacts() {
            let shape = case.shape(contact);
            let Some(solved) = solve(&shape) else {
                continue;
            };
            let mut row = vec![words.to_owned(), contact.to_owned()];
            for (entry, i, j) in ENTRIES {
                let found = solved.stiffness_over_g[i][j];
                row.push(
                    if square(&shape) && (entry.starts_with('y') || entry == "rx") {
                        String::new()
                    } else {
                        let limit = case.figure(contact, Asked::Entry(i, j)).limit;
                        format!("{limit:.3} ({})", off(found, limit))
                    },
                );
            }
            rows.push(row);
        }
    }
    let mut head = vec!["block", "contact"];
    head.extend(ENTRIES.map(|(entry, ..)| entry));
    table(&head, rows)
}

fn square(shape: &stillground::halfspace::Shape) -> bool {
    (shape.length_m - shape.width_m).abs() < 1e-9
}

/// The way to the limit, for the entries that have farthest to go.
pub fn meshes(reference: &Reference) -> String {
    let case = reference.case("cube 1, 0.35");
    let mut rows = Vec::new();
    for contact in CONTACTS {
        for (entry, i, j) in [ENTRIES[0], ENTRIES[1], ENTRIES[4], ENTRIES[5]] {
            let figure = case.figure(contact, Asked::Entry(i, j));
            let mut row = vec![contact.to_owned(), entry.to_owned()];
            row.extend(
                [figure.near, figure.far, figure.finest, figure.limit]
                    .map(|value| format!("{value:.3}")),
            );
            rows.push(row);
        }
    }
    let head = [
        "contact",
        "entry",
        "4 cells, 13 m",
        "4 cells, 47 m",
        "finest cells, no boundary",
        "limit",
    ];
    table(&head, rows)
}

/// Lean about y for a newton on the ground.
pub fn leans(reference: &Reference) -> String {
    let mut rows = Vec::new();
    for (name, words) in CASES {
        let case = reference.case(name);
        for contact in case.contacts() {
            let Some(solved) = solve(&case.shape(contact)) else {
                continue;
            };
            let mut row = vec![words.to_owned(), contact.to_owned()];
            for (at, place) in case.places().into_iter().enumerate() {
                let limit = case.figure(contact, Asked::Lean(at)).limit;
                row.push(format!(
                    "{limit:.4} ({})",
                    off(solved.under_weight(place, 0.0)[4], limit)
                ));
            }
            rows.push(row);
        }
    }
    table(
        &[
            "block",
            "contact",
            "at 0.75 m",
            "1 m",
            "1.25 m",
            "1.5 m",
            "2 m",
        ],
        rows,
    )
}
