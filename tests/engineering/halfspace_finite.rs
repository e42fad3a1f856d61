//! The half-space's solver against finite elements: `reference/halfspace_block.py` with scikit-fem, whose values stand in
//! `reference/halfspace_block.json`. Metre cube, ν 0.35, G 1; the box's outer boundary taken to infinity from 20 m and 40 m.

use serde_json::Value;
use stillground::halfspace::{Shape, solve};

fn reference() -> Value {
    serde_json::from_str(include_str!("reference/halfspace_block.json")).unwrap()
}

fn cube(contact_from_m: f64) -> Shape {
    Shape { length_m: 1.0, width_m: 1.0, depth_m: 1.0, contact_from_m, contact_to_m: 1.0, poisson_ratio: 0.35 }
}

/// A value of both boxes taken to a boundary infinitely far.
fn far(case: &Value, path: &str) -> f64 {
    let at = |reach: &str| case[reach].pointer(path).unwrap().as_f64().unwrap();
    2.0 * at("40.0") - at("20.0")
}

/// Turn of the block about y for a newton on the ground, from the finite elements' surface under a unit of each motion.
fn tilt(case: &Value, place: usize) -> f64 {
    let [x, ry] = ["x", "ry"].map(|motion| far(case, &format!("/surface_{motion}/{place}")));
    let [xx, rr, xr] = ["k_x_x", "k_ry_ry", "k_x_ry"].map(|entry| far(case, &format!("/{entry}")));
    (xx * ry - xr * x) / (xx * rr - xr * xr)
}

#[test]
fn stiffness_with_full_half_and_no_contact() {
    let answers = &reference()["uniform"]["answers"];
    for (contact, from, most) in [("full", 0.0, 0.01), ("half", 0.5, 0.03), ("none", 1.0, 0.06)] {
        let k = solve(&cube(from)).unwrap().stiffness_over_g;
        for (entry, found) in [("k_z_z", k[2][2]), ("k_x_x", k[0][0]), ("k_ry_ry", k[4][4])] {
            let expected = far(&answers[contact], &format!("/{entry}"));
            assert!((found / expected - 1.0).abs() < most, "{contact} {entry}: {found} {expected}");
        }
        let coupling = far(&answers[contact], "/k_x_ry");
        // Half as much room again where the mesh of the elements itself is known to be too stiff; the next test refines it.
        let room = if contact == "none" { 0.02 } else { 0.015 };
        assert!((k[0][4] - coupling).abs() < room * (k[0][0] * k[4][4]).sqrt(), "{contact}: {} {coupling}", k[0][4]);
    }
}

// Without side contact the elements' mesh itself is some per cent stiff at the base's edge: finer there, it comes nearer.
#[test]
fn without_contact_a_finer_mesh_comes_nearer() {
    let reference = reference();
    let k = solve(&cube(1.0)).unwrap().stiffness_over_g;
    let (plain, finer) = (&reference["uniform"]["answers"]["none"], &reference["finer"]["answers"]["none"]);
    for (entry, found) in [("k_z_z", k[2][2]), ("k_x_x", k[0][0]), ("k_ry_ry", k[4][4])] {
        let mesh = finer["20.0"][entry].as_f64().unwrap() / plain["20.0"][entry].as_f64().unwrap();
        let expected = mesh * far(plain, &format!("/{entry}"));
        assert!(mesh < 1.0 && (found / expected - 1.0).abs() < 0.03, "{entry}: {found} {expected}");
    }
    let mesh = finer["20.0"]["k_x_ry"].as_f64().unwrap() / plain["20.0"]["k_x_ry"].as_f64().unwrap();
    let coupling = mesh * far(plain, "/k_x_ry");
    assert!((k[0][4] - coupling).abs() < 0.01 * (k[0][0] * k[4][4]).sqrt(), "{} {coupling}", k[0][4]);
}

#[test]
fn a_weight_on_the_ground_tilts_the_block_as_much() {
    let reference = reference();
    let places = reference["uniform"]["places"].as_array().unwrap().clone();
    for (contact, from, most) in [("full", 0.0, 0.03), ("half", 0.5, 0.05), ("none", 1.0, 0.06)] {
        let solved = solve(&cube(from)).unwrap();
        for (at, place) in places.iter().enumerate() {
            let x = place.as_f64().unwrap();
            // Farther out the elements are most of a metre long, and the two boxes differ by their own error more than by
            // the boundary's.
            if x > 1.6 {
                continue;
            }
            let (found, expected) = (solved.under_weight(x, 0.0)[4], tilt(&reference["uniform"]["answers"][contact], at));
            assert!((found / expected - 1.0).abs() < most, "{contact} at {x}: {found} {expected}");
        }
    }
}
