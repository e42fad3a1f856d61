//! The solver against published forms and exact values.

use stillground::halfspace::{Shape, solve};
use stillground::stages::ground_stiffness::published::{gazetas, pais_kausel};
use stillground::units::pascal;

use super::{block, cube, off, table};
use crate::elements::Reference;

fn stiffness(shape: &Shape) -> [[f64; 6]; 6] {
    solve(shape).map_or([[f64::NAN; 6]; 6], |solved| solved.stiffness_over_g)
}

/// Pais & Kausel and Gazetas, over sides and embedment.
#[must_use]
pub fn papers(_: &Reference) -> String {
    let mut rows = Vec::new();
    for length in [1.0, 2.0, 3.0] {
        for depth in [0.25, 0.5, 1.0] {
            let shape = block(length, 1.0, depth, 0.0, depth, 0.35);
            let (k, g) = (stiffness(&shape), pascal::new(1.0));
            for (author, form) in [
                ("Pais & Kausel", pais_kausel(&shape, g)),
                ("Gazetas", gazetas(&shape, g)),
            ] {
                let mut row = vec![
                    format!("{length} : 1"),
                    format!("{}", 2.0 * depth),
                    author.to_owned(),
                ];
                row.extend([2, 0, 1, 3, 4, 5].map(|i| off(form[i], k[i][i])));
                rows.push(row);
            }
        }
    }
    table(
        &["sides", "D/B", "form", "z", "x", "y", "rx", "ry", "rz"],
        rows,
    )
}

/// Gazetas with less and less contact.
#[must_use]
pub fn partial(_: &Reference) -> String {
    let row = |height: f64| {
        let shape = cube(1.0 - height);
        let (k, form) = (stiffness(&shape), gazetas(&shape, pascal::new(1.0)));
        let mut row = vec![format!("lowest {height} m")];
        row.extend([2, 0, 4, 5].map(|i| format!("{:.3} ({})", k[i][i], off(form[i], k[i][i]))));
        row
    };
    table(
        &[
            "contact",
            "z, and Gazetas",
            "x, and Gazetas",
            "ry, and Gazetas",
            "rz, and Gazetas",
        ],
        [1.0, 0.7, 0.5, 0.3, 0.0].map(row),
    )
}

/// A bonded square of half-side one at ν 1/3, as another program of boundary elements found it with the surface's own
/// kernels: x, z, about y, about z.
pub const WELDED_SQUARE: [(&str, usize, f64); 4] = [
    ("z", 2, 7.0570),
    ("x", 0, 5.5860),
    ("ry", 4, 6.4572),
    ("rz", 5, 8.5883),
];

/// A square on the surface.
#[must_use]
pub fn surface(_: &Reference) -> String {
    let shape = block(2.0, 2.0, 0.0, 0.0, 0.0, 1.0 / 3.0);
    let (k, g) = (stiffness(&shape), pascal::new(1.0));
    let (pais, gazetas) = (pais_kausel(&shape, g), gazetas(&shape, g));
    let row = |(entry, i, welded): (&str, usize, f64)| {
        vec![
            entry.to_owned(),
            format!("{:.3}", k[i][i]),
            format!("{welded:.3} ({})", off(k[i][i], welded)),
            off(pais[i], k[i][i]),
            off(gazetas[i], k[i][i]),
        ]
    };
    let head = [
        "entry",
        "solver",
        "other program, and solver over it",
        "Pais & Kausel over solver",
        "Gazetas over solver",
    ];
    table(&head, WELDED_SQUARE.map(row))
}

/// Torsion of an embedded cylinder over `G a³`, by its depth over its radius.
pub const CYLINDER: [[f64; 2]; 4] = [[0.0, 5.33], [0.5, 13.23], [1.0, 19.89], [2.0, 32.75]];

/// Torsional stiffness of a cylinder of a radius and depth, between the published depths, over G.
#[must_use]
pub fn cylinder_torsion(radius: f64, depth: f64) -> f64 {
    let asked = depth / radius;
    let pair = CYLINDER.windows(2).find(|pair| asked <= pair[1][0]);
    let between = |pair: &[[f64; 2]]| {
        let [[a, low], [b, high]] = [pair[0], pair[1]];
        low + (high - low) * (asked - a) / (b - a)
    };
    pair.map_or(f64::NAN, between) * radius.powi(3)
}

/// A block turns as stiffly as some cylinder between the one within it and the one round it.
#[must_use]
pub fn cylinder(_: &Reference) -> String {
    let row = |depth: f64| {
        let found = stiffness(&block(2.0, 2.0, depth, 0.0, depth, 0.25))[5][5];
        let inside = cylinder_torsion(1.0, depth);
        let round = cylinder_torsion(std::f64::consts::SQRT_2, depth);
        // The same second moment of the base about the axis.
        let same = cylinder_torsion((16.0 / (3.0 * std::f64::consts::PI)).powf(0.25), depth);
        let mut row = vec![depth.to_string()];
        row.extend([inside, found, round].map(|value| format!("{value:.1}")));
        row.push(format!("{same:.1} ({})", off(found, same)));
        row
    };
    let head = [
        "depth over half-side",
        "cylinder inside",
        "solver's square",
        "cylinder round it",
        "cylinder of the same polar moment, solver over it",
    ];
    table(&head, [0.0, 0.5, 1.0, 2.0].map(row))
}
