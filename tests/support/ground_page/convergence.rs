//! The solver against itself on finer meshes.

use stillground::halfspace::mesh::{self, Fineness, Lines};
use stillground::halfspace::{
    Shape, Solved, solve, solve::meshes as planned, solve::raw, solve::solve_on,
};

use super::{MOST_PATCHES, block, cube, off, table};
use crate::elements::Reference;

const CONTACTS: [(&str, f64); 3] = [("full", 0.0), ("half", 0.5), ("none", 1.0)];
/// Most patches of a quarter that this page can afford.
const FINEST: usize = 560;

/// How far the matrix is from symmetric before it is averaged.
#[must_use]
pub fn asymmetry(_: &Reference) -> String {
    let row = |(name, from): (&str, f64)| {
        let shape = cube(from);
        let ratio = |fineness| raw(&shape, fineness).map_or(f64::NAN, |raw| raw.asymmetry_ratio);
        let [coarse, fine] = planned(&shape, MOST_PATCHES).map(ratio);
        // Full contact is symmetric by construction: what is left is rounding, and not the same on every machine.
        let say = |ratio: f64| {
            if ratio < 1e-12 {
                "below 10⁻¹²".to_owned()
            } else {
                format!("{ratio:.1e}")
            }
        };
        vec![name.to_owned(), say(coarse), say(fine)]
    };
    table(
        &["contact", "coarser mesh", "finer mesh"],
        CONTACTS.map(row),
    )
}

fn finer(of: Fineness, cells: f64) -> Fineness {
    Fineness { cells, ..of }
}

fn limit(shape: &Shape) -> Option<Solved> {
    let [_, fine] = planned(shape, MOST_PATCHES);
    let even = |cells: f64| Fineness {
        lines: Lines::Even,
        ..finer(fine, cells)
    };
    let mut cells = 12.0;
    while mesh::quarter(shape, even(cells)).len() > FINEST {
        cells -= 0.5;
    }
    solve_on(
        shape,
        Fineness {
            lines: Lines::Half,
            ..even(cells)
        },
        even(cells),
    )
}

fn five(k: &[[f64; 6]; 6]) -> Vec<String> {
    [k[2][2], k[0][0], k[4][4], k[5][5], k[0][4]]
        .map(|value| format!("{value:.3}"))
        .into()
}

/// The metre cube on finer and finer meshes.
#[must_use]
pub fn meshes(_: &Reference) -> String {
    let mut rows = Vec::new();
    for (name, from) in CONTACTS {
        let shape = cube(from);
        let [_, fine] = planned(&shape, MOST_PATCHES);
        for cells in [2.0, 4.0, 6.0, 8.0, 10.0] {
            let Some(raw) = raw(&shape, finer(fine, cells)) else {
                continue;
            };
            let mut row = vec![
                name.to_owned(),
                format!("{cells} cells"),
                raw.patches.len().to_string(),
            ];
            row.extend(five(&raw.stiffness));
            rows.push(row);
        }
        for (words, solved) in [
            ("the planner's limit", solve(&shape)),
            ("limit of the finest", limit(&shape)),
        ] {
            let Some(solved) = solved else { continue };
            let mut row = vec![name.to_owned(), words.to_owned(), String::new()];
            row.extend(five(&solved.stiffness_over_g));
            rows.push(row);
        }
    }
    table(
        &["contact", "mesh", "n", "z", "x", "ry", "rz", "x-ry"],
        rows,
    )
}

/// Other shapes.
#[must_use]
pub fn shapes(_: &Reference) -> String {
    let cases = [
        (1.5, 1.0, 0.9),
        (0.6, 0.6, 1.2),
        (1.5, 1.5, 0.5),
        (3.0, 1.0, 1.0),
        (1.0, 1.0, 0.2),
    ];
    let mut rows = Vec::new();
    for (length, width, depth) in cases {
        for (name, from, to) in [
            ("full", 0.0, depth),
            ("lower half", depth / 2.0, depth),
            ("upper half", 0.0, depth / 2.0),
            ("none", depth, depth),
        ] {
            for nu in [0.0, 0.45] {
                let shape = block(length, width, depth, from, to, nu);
                let Some((found, fine)) = solve(&shape).zip(limit(&shape)) else {
                    continue;
                };
                let mut row = vec![
                    format!("{length} × {width} × {depth}"),
                    name.to_owned(),
                    nu.to_string(),
                ];
                row.extend(
                    [2, 0, 1, 3, 4, 5]
                        .map(|i| off(found.stiffness_over_g[i][i], fine.stiffness_over_g[i][i])),
                );
                let place = length / 2.0 + 0.5;
                row.push(off(
                    found.under_weight(place, 0.0)[4],
                    fine.under_weight(place, 0.0)[4],
                ));
                rows.push(row);
            }
        }
    }
    table(
        &[
            "block, m",
            "contact",
            "ν",
            "z",
            "x",
            "y",
            "rx",
            "ry",
            "rz",
            "lean, weight 0.5 m off",
        ],
        rows,
    )
}
