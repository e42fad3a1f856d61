//! Writes `docs/ground-validation.md`: the half-space's solver against laws, finite elements and published forms.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a command of the repository's own, run by hand")]

use std::fmt::Write as _;
use std::time::Instant;

use serde_json::Value;
use stillground::halfspace::mesh::{self, Fineness, Lines};
use stillground::halfspace::{Shape, Solved, solve, solve::meshes, solve::raw, solve::solve_on};
use stillground::notes::Notes;
use stillground::stages::ground_stiffness::published::{gazetas, pais_kausel};
use stillground::stages::ground_stiffness::stiffening;
use stillground::units::pascal;

const MOST_PATCHES: usize = 140;

fn main() {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/..");
    let reference: Value = serde_json::from_str(include_str!("halfspace_block.json")).unwrap();
    let mut page = include_str!("ground_validation.md").to_owned();
    let tables: [(&str, String); 11] = [
        ("asymmetry", asymmetry()),
        ("convergence", convergence()),
        ("shapes", shapes()),
        ("elements", elements(&reference)),
        ("tilts", tilts(&reference)),
        ("papers", papers()),
        ("partial", partial()),
        ("surface", surface()),
        ("stiffening", stiffening_table(&reference)),
        ("layers", layers(&reference)),
        ("time", time(&reference)),
    ];
    for (name, table) in tables {
        page = page.replace(&format!("{{{{{name}}}}}"), table.trim_end());
    }
    std::fs::write(format!("{root}/docs/ground-validation.md"), page).expect("the docs folder can be written to");
}

fn block(length_m: f64, width_m: f64, depth_m: f64, from: f64, to: f64, poisson_ratio: f64) -> Shape {
    Shape { length_m, width_m, depth_m, contact_from_m: from, contact_to_m: to, poisson_ratio }
}

fn cube(from: f64) -> Shape {
    block(1.0, 1.0, 1.0, from, 1.0, 0.35)
}

const CONTACTS: [(&str, f64); 3] = [("full", 0.0), ("half", 0.5), ("none", 1.0)];

fn table(head: &[&str], rows: impl IntoIterator<Item = Vec<String>>) -> String {
    let mut text = format!("| {} |\n|{}\n", head.join(" | "), "---|".repeat(head.len()));
    for row in rows {
        writeln!(text, "| {} |", row.join(" | ")).unwrap();
    }
    text
}

fn off(found: f64, reference: f64) -> String {
    format!("{:+.1} %", 100.0 * (found / reference - 1.0))
}

fn five(k: &[[f64; 6]; 6]) -> Vec<String> {
    [k[2][2], k[0][0], k[4][4], k[5][5], k[0][4]].map(|value| format!("{value:.3}")).into()
}

fn asymmetry() -> String {
    let row = |(name, from): (&str, f64)| {
        let shape = cube(from);
        let [coarse, fine] = meshes(&shape, MOST_PATCHES).map(|fineness| raw(&shape, fineness).unwrap().asymmetry_ratio);
        vec![name.to_owned(), format!("{coarse:.1e}"), format!("{fine:.1e}")]
    };
    table(&["contact", "coarser mesh", "finer mesh"], CONTACTS.map(row))
}

fn finer(of: Fineness, cells: f64) -> Fineness {
    Fineness { cells, ..of }
}

fn limit(shape: &Shape) -> Solved {
    let [_, fine] = meshes(shape, MOST_PATCHES);
    let even = |cells: f64| Fineness { lines: Lines::Even, ..finer(fine, cells) };
    let mut cells = 12.0;
    while mesh::quarter(shape, even(cells)).len() > 560 {
        cells -= 0.5;
    }
    solve_on(shape, Fineness { lines: Lines::Half, ..even(cells) }, even(cells)).unwrap()
}

fn convergence() -> String {
    let mut rows = Vec::new();
    for (name, from) in CONTACTS {
        let shape = cube(from);
        let [_, fine] = meshes(&shape, MOST_PATCHES);
        for cells in [2.0, 4.0, 6.0, 8.0, 10.0] {
            let raw = raw(&shape, finer(fine, cells)).unwrap();
            let mut row = vec![name.to_owned(), format!("{cells} cells"), raw.patches.len().to_string()];
            row.extend(five(&raw.stiffness));
            rows.push(row);
        }
        for (words, solved) in [("the planner's limit", solve(&shape).unwrap()), ("limit of the finest", limit(&shape))] {
            let mut row = vec![name.to_owned(), words.to_owned(), String::new()];
            row.extend(five(&solved.stiffness_over_g));
            rows.push(row);
        }
    }
    table(&["contact", "mesh", "n", "z", "x", "ry", "rz", "x-ry"], rows)
}

fn shapes() -> String {
    let cases = [(1.5, 1.0, 0.9), (0.6, 0.6, 1.2), (1.5, 1.5, 0.5), (3.0, 1.0, 1.0), (1.0, 1.0, 0.2)];
    let mut rows = Vec::new();
    for (length, width, depth) in cases {
        for (name, from, to) in
            [("full", 0.0, depth), ("lower half", depth / 2.0, depth), ("upper half", 0.0, depth / 2.0), ("none", depth, depth)]
        {
            for nu in [0.0, 0.45] {
                let shape = block(length, width, depth, from, to, nu);
                let (found, fine) = (solve(&shape).unwrap(), limit(&shape));
                let mut row = vec![format!("{length} × {width} × {depth}"), name.to_owned(), nu.to_string()];
                row.extend([2, 0, 1, 3, 4, 5].map(|i| off(found.stiffness_over_g[i][i], fine.stiffness_over_g[i][i])));
                let place = length / 2.0 + 0.5;
                row.push(off(found.under_weight(place, 0.0)[4], fine.under_weight(place, 0.0)[4]));
                rows.push(row);
            }
        }
    }
    table(&["block, m", "contact", "ν", "z", "x", "y", "rx", "ry", "rz", "lean, weight 0.5 m off"], rows)
}

fn far(case: &Value, path: &str) -> f64 {
    let at = |reach: &str| case[reach].pointer(path).unwrap().as_f64().unwrap();
    2.0 * at("40.0") - at("20.0")
}

fn near(case: &Value, path: &str) -> f64 {
    case["20.0"].pointer(path).unwrap().as_f64().unwrap()
}

fn elements(reference: &Value) -> String {
    let mut rows = Vec::new();
    for (name, from) in CONTACTS {
        let k = solve(&cube(from)).unwrap().stiffness_over_g;
        let case = &reference["uniform"]["answers"][name];
        let entries = [("z", "/k_z_z", k[2][2]), ("x", "/k_x_x", k[0][0]), ("ry", "/k_ry_ry", k[4][4]), ("x-ry", "/k_x_ry", k[0][4])];
        for (entry, path, found) in entries {
            let infinite = far(case, path);
            let (at20, at40) = (near(case, path), case["40.0"].pointer(path).unwrap().as_f64().unwrap());
            let mut row: Vec<String> = vec![name.to_owned(), entry.to_owned()];
            row.extend([found, at20, at40, infinite].map(|value| format!("{value:.3}")));
            row.push(off(found, infinite));
            rows.push(row);
            if name == "none" && entry != "x-ry" {
                let finer = infinite * near(&reference["finer"]["answers"][name], path) / at20;
                let words = [name, entry, "", "", "", &format!("finer: {finer:.3}"), &off(found, finer)].map(str::to_owned);
                rows.push(words.into());
            }
        }
    }
    table(&["contact", "entry", "solver", "elements, 20 m", "elements, 40 m", "to infinity", "solver over elements"], rows)
}

fn lean(get: impl Fn(&str) -> f64, place: usize) -> f64 {
    let [x, ry] = ["x", "ry"].map(|motion| get(&format!("/surface_{motion}/{place}")));
    let [xx, rr, xr] = ["/k_x_x", "/k_ry_ry", "/k_x_ry"].map(&get);
    (xx * ry - xr * x) / (xx * rr - xr * xr)
}

fn tilts(reference: &Value) -> String {
    let places = reference["uniform"]["places"].as_array().unwrap();
    let mut rows = Vec::new();
    for (name, from) in CONTACTS {
        let solved = solve(&cube(from)).unwrap();
        for (at, place) in places.iter().enumerate().take(3) {
            let x = place.as_f64().unwrap();
            let (found, expected) = (solved.under_weight(x, 0.0)[4], lean(|path| far(&reference["uniform"]["answers"][name], path), at));
            rows.push(vec![name.to_owned(), format!("{x} m"), format!("{found:.4}"), format!("{expected:.4}"), off(found, expected)]);
        }
    }
    table(&["contact", "x", "solver", "elements", "solver over elements"], rows)
}

fn papers() -> String {
    let mut rows = Vec::new();
    for length in [1.0, 2.0, 3.0] {
        for depth in [0.25, 0.5, 1.0] {
            let shape = block(length, 1.0, depth, 0.0, depth, 0.35);
            let k = solve(&shape).unwrap().stiffness_over_g;
            for (author, form) in [("Pais & Kausel", pais_kausel(&shape, pascal::new(1.0))), ("Gazetas", gazetas(&shape, pascal::new(1.0)))]
            {
                let mut row = vec![format!("{length} : 1"), format!("{}", 2.0 * depth), author.to_owned()];
                row.extend([2, 0, 1, 3, 4, 5].map(|i| off(form[i], k[i][i])));
                rows.push(row);
            }
        }
    }
    table(&["sides", "D/B", "form", "z", "x", "y", "rx", "ry", "rz"], rows)
}

fn partial() -> String {
    let row = |height: f64| {
        let shape = cube(1.0 - height);
        let (k, form) = (solve(&shape).unwrap().stiffness_over_g, gazetas(&shape, pascal::new(1.0)));
        let mut row = vec![format!("lowest {height} m")];
        row.extend([2, 0, 4, 5].map(|i| format!("{:.3} ({})", k[i][i], off(form[i], k[i][i]))));
        row
    };
    table(&["contact", "z, and Gazetas", "x, and Gazetas", "ry, and Gazetas", "rz, and Gazetas"], [1.0, 0.7, 0.5, 0.3, 0.0].map(row))
}

fn surface() -> String {
    let pi = std::f64::consts::PI;
    let (area, turn, twist) = ((1.0 / pi).sqrt(), (4.0 / (12.0 * pi)).powf(0.25), (2.0 / (6.0 * pi)).powf(0.25));
    let row = |nu: f64| {
        let k = solve(&block(1.0, 1.0, 0.0, 0.0, 0.0, nu)).unwrap().stiffness_over_g;
        let discs = [(2, 4.0 * area / (1.0 - nu)), (4, 8.0 * turn.powi(3) / (3.0 * (1.0 - nu))), (5, 16.0 * twist.powi(3) / 3.0)];
        let mut row = vec![nu.to_string()];
        row.extend(discs.map(|(i, disc)| format!("{:.3} ({})", k[i][i], off(k[i][i], disc))));
        row
    };
    table(&["ν", "z, over the disc", "ry, over the disc", "rz, over the disc"], [0.0, 0.2, 0.35, 0.49].map(row))
}

fn stiffening_table(reference: &Value) -> String {
    let mut rows = Vec::new();
    for (name, from) in [("full", 0.0), ("none", 1.0)] {
        let planned = stiffening::find(&cube(from), &mut Notes::default());
        for (path, row) in ["/k_z_z", "/k_x_x", "/k_ry_ry"].into_iter().zip(planned) {
            let [root, even] = ["root", "coarse"].map(|case| far(&reference[case]["answers"][name], path));
            rows.push(vec![name.to_owned(), row.quantity.to_owned(), format!("{:.3}", root / even), format!("{:.3}", row.factor)]);
        }
    }
    table(&["contact", "quantity", "elements", "planner"], rows)
}

fn layers(reference: &Value) -> String {
    let even = &reference["coarse"]["answers"]["full"];
    let over = |case: &str, path: &str| near(&reference[case]["answers"]["full"], path) / near(even, path);
    let (whole, below) = (solve(&cube(0.0)).unwrap(), solve(&block(1.0, 1.0, 0.7, 0.0, 0.7, 0.35)).unwrap());
    let r = (1.0 / std::f64::consts::PI).sqrt();
    let mut rows = Vec::new();
    for (entry, path, axis, rock) in [("z", "/k_z_z", 2, 1.28), ("x", "/k_x_x", 0, 0.5), ("ry", "/k_ry_ry", 4, 1.0 / 6.0)] {
        let least = below.stiffness_over_g[axis][axis] / whole.stiffness_over_g[axis][axis];
        let planned = [
            ("topsoil", format!("{least:.3}"), least + (1.0 - least) / 3.0),
            ("rock_near", "1".into(), 1.0 + rock * r / 0.5),
            ("rock_far", "1".into(), 1.0 + rock * r / 2.0),
        ];
        for (case, bound, estimate) in planned {
            let words = case.replace("rock_near", "rock 0.5 m below").replace("rock_far", "rock 2 m below");
            rows.push(vec![words, entry.to_owned(), format!("{:.3}", over(case, path)), bound, format!("{estimate:.3}")]);
        }
    }
    rows.sort_by_key(|row| row[0].clone());
    table(&["layer", "entry", "elements", "planner's lower bound", "planner's estimate"], rows)
}

fn time(reference: &Value) -> String {
    let row = |(name, from): (&str, f64)| {
        let shape = cube(from);
        let best = (0..20)
            .map(|_| {
                let began = Instant::now();
                solve(&shape).unwrap();
                began.elapsed().as_secs_f64()
            })
            .fold(f64::INFINITY, f64::min);
        let answers = &reference["uniform"]["answers"][name];
        let elements: f64 = ["20.0", "40.0"].iter().map(|reach| answers[reach]["seconds"].as_f64().unwrap()).sum();
        vec![name.to_owned(), format!("{:.1} ms", 1e3 * best), format!("{elements:.0} s"), format!("{:.0}", elements / best)]
    };
    table(&["contact", "solver, a new shape", "finite elements", "ratio"], CONTACTS.map(row))
}
