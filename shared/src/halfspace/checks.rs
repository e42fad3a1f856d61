//! Checks of the solution as a whole: laws that it must obey and values known from elsewhere.

use super::{NoShelf, Shape, Shelf, SmallShelf, Unsolvable, solve, solved};

fn block(length: f64, width: f64, depth: f64, from: f64, to: f64, nu: f64) -> Shape {
    Shape {
        length_m: length,
        width_m: width,
        depth_m: depth,
        contact_from_m: from,
        contact_to_m: to,
        poisson_ratio: nu,
    }
}

fn cube(from: f64, to: f64) -> Shape {
    block(1.0, 1.0, 1.0, from, to, 0.35)
}

// Metre cube, G 30 MPa, ν 0.35: an independent boundary integral with its own kernels and a mesh of twelve patches a side
// gave 188.0, 223.1, 184.1 and 188.3 MN/m or MN m/rad.
#[test]
fn a_metre_cube_is_as_stiff_as_another_program_found() {
    let k = solve(&cube(0.0, 1.0)).unwrap().stiffness_over_g;
    for (axis, expected) in [(2, 188.0), (0, 223.1), (4, 184.1), (5, 188.3)] {
        let found = 30.0 * k[axis][axis];
        assert!((found / expected - 1.0).abs() < 0.01, "{axis}: {found}");
    }
}

// The same program: arcseconds under 750 N on the ground at 1, 1.5, 2 and 3 m.
#[test]
fn a_person_tilts_it_as_another_program_found() {
    let cube = solve(&cube(0.0, 1.0)).unwrap();
    for (x, expected) in [(1.0, 0.296), (1.5, 0.184), (2.0, 0.117), (3.0, 0.0564)] {
        let found = cube.under_weight(x, 0.0)[4] * 750.0 / 30e6 * 206_264.8;
        assert!((found / expected - 1.0).abs() < 0.015, "{x}: {found}");
    }
}

// Rigid square on the surface, bonded: even meshes of 16 and 20 patches a quarter's side, whose error falls with one over
// their number, lead to 108.3, 84.6, 24.8 and 32.3.
#[test]
fn a_square_on_the_surface() {
    let k = solve(&block(1.0, 1.0, 0.0, 0.0, 0.0, 0.35))
        .unwrap()
        .stiffness_over_g;
    for (axis, expected) in [(2, 108.3), (0, 84.6), (4, 24.8), (5, 32.3)] {
        let found = 30.0 * k[axis][axis];
        assert!((found / expected - 1.0).abs() < 0.015, "{axis}: {found}");
    }
}

#[test]
fn a_square_block_is_the_same_both_ways_and_a_turned_one_turns() {
    for (from, to) in [(0.0, 1.0), (0.4, 1.0), (0.0, 0.0)] {
        let k = solve(&cube(from, to)).unwrap().stiffness_over_g;
        for (a, b) in [(k[0][0], k[1][1]), (k[3][3], k[4][4]), (k[0][4], -k[1][3])] {
            assert!((a - b).abs() < 1e-9 * a.abs(), "{a} {b}");
        }
    }
    let (a, b) = (
        solve(&block(1.4, 0.9, 0.8, 0.0, 0.8, 0.3)).unwrap(),
        solve(&block(0.9, 1.4, 0.8, 0.0, 0.8, 0.3)).unwrap(),
    );
    assert!((a.stiffness_over_g[4][4] / b.stiffness_over_g[3][3] - 1.0).abs() < 1e-9);
    assert!((a.under_weight(1.3, 0.4)[4] / -b.under_weight(-0.4, 1.3)[3] - 1.0).abs() < 1e-9);
}

#[test]
fn a_block_twice_as_large_is_twice_and_eight_times_as_stiff() {
    let (small, large) = (
        solve(&cube(0.25, 1.0)).unwrap(),
        solve(&block(2.0, 2.0, 2.0, 0.5, 2.0, 0.35)).unwrap(),
    );
    let (s, l) = (small.stiffness_over_g, large.stiffness_over_g);
    assert!((l[2][2] / s[2][2] - 2.0).abs() < 1e-9);
    assert!((l[4][4] / s[4][4] - 8.0).abs() < 1e-8);
    assert!((l[0][4] / s[0][4] - 4.0).abs() < 1e-8);
}

#[test]
fn less_contact_is_less_stiff() {
    let stiffness = [(0.0, 1.0), (0.25, 1.0), (0.5, 1.0), (0.75, 1.0), (1.0, 1.0)]
        .map(|(from, to)| solve(&cube(from, to)).unwrap().stiffness_over_g);
    for pair in stiffness.windows(2) {
        assert!(
            (0..6).all(|axis| pair[1][axis][axis] < pair[0][axis][axis]),
            "{pair:?}"
        );
    }
}

#[test]
fn far_away_a_weight_tilts_the_block_with_the_free_ground() {
    for (from, to) in [(0.0, 1.0), (0.5, 1.0), (0.0, 0.0)] {
        let cube = solve(&cube(from, to)).unwrap();
        let slope = (1.0 - 0.35) / (2.0 * std::f64::consts::PI * 12.0 * 12.0);
        let found = cube.under_weight(12.0, 0.0)[4];
        assert!(
            (found / slope - 1.0).abs() < 0.02,
            "{from} {to}: {found} {slope}"
        );
    }
}

#[test]
fn at_a_bonded_edge_the_ground_moves_with_the_block() {
    let cube = solve(&cube(0.0, 1.0)).unwrap();
    let (inside, outside) = (
        cube.under_weight(0.4999, 0.1),
        cube.under_weight(0.5001, 0.1),
    );
    assert!(
        (inside[4] / outside[4] - 1.0).abs() < 0.05,
        "{inside:?} {outside:?}"
    );
    assert!(
        (inside[2] / outside[2] - 1.0).abs() < 0.02,
        "{inside:?} {outside:?}"
    );
}

#[test]
fn the_quick_weight_is_the_full_kernels_weight() {
    for (from, to) in [(0.0, 1.0), (0.5, 1.0), (0.0, 0.0)] {
        let cube = solve(&cube(from, to)).unwrap();
        for (x, y) in [(0.9, 0.2), (-1.4, 2.0), (0.6, -0.6)] {
            let (quick, full) = (cube.under_weight(x, y), cube.under_ground_forces(x, y)[2]);
            for axis in 0..6 {
                assert!(
                    (quick[axis] - full[axis]).abs() < 0.01 * full[2].abs(),
                    "{x} {y} {axis}: {quick:?} {full:?}"
                );
            }
        }
    }
}

#[test]
fn impossible_shapes_are_refused() {
    let refused = |shape: Shape| solved(&shape, &NoShelf).unwrap_err();
    assert!(matches!(
        refused(block(1.0, 100.0, 1.0, 0.0, 1.0, 0.3)),
        Unsolvable::Sides(..)
    ));
    assert!(matches!(
        refused(block(1.0, f64::NAN, 1.0, 0.0, 1.0, 0.3)),
        Unsolvable::Sides(..)
    ));
    assert!(matches!(
        refused(block(1.0, 1.0, -0.1, 0.0, 0.0, 0.3)),
        Unsolvable::Depth(_)
    ));
    assert!(matches!(refused(cube(0.8, 0.2)), Unsolvable::Contact(..)));
    assert!(matches!(refused(cube(0.2, 1.2)), Unsolvable::Contact(..)));
    assert!(matches!(
        refused(block(1.0, 1.0, 1.0, 0.0, 1.0, 0.5)),
        Unsolvable::Poisson(_)
    ));
}

#[test]
fn a_shelf_keeps_the_last_used() {
    let shelf = SmallShelf::holding(2);
    let shapes = [
        block(1.0, 1.0, 0.0, 0.0, 0.0, 0.3),
        block(1.1, 1.0, 0.0, 0.0, 0.0, 0.3),
        block(1.2, 1.0, 0.0, 0.0, 0.0, 0.3),
    ];
    let first = solved(&shapes[0], &shelf).unwrap();
    solved(&shapes[1], &shelf).unwrap();
    assert!(std::sync::Arc::ptr_eq(
        &first,
        &solved(&shapes[0], &shelf).unwrap()
    ));
    solved(&shapes[2], &shelf).unwrap();
    assert!(shelf.get(&shapes[1]).is_none() && shelf.get(&shapes[0]).is_some());
}

#[test]
fn the_matrix_is_symmetric_before_it_is_made_so() {
    for (from, to, most) in [(0.0, 1.0, 1e-9), (0.5, 1.0, 0.005), (0.0, 0.0, 0.01)] {
        let shape = cube(from, to);
        let [_, fine] = solve::meshes(&shape, 140);
        let asymmetry = solve::raw(&shape, fine).unwrap().asymmetry_ratio;
        assert!(asymmetry < most, "{from} to {to}: {asymmetry}");
    }
}

#[test]
fn extreme_shapes_have_sound_answers() {
    for (length, width, depth, from, to) in [
        (10.0, 1.0, 0.1, 0.0, 0.1),
        (0.2, 0.2, 2.0, 0.0, 2.0),
        (0.2, 2.0, 1.0, 1.0, 1.0),
        (1.0, 1.0, 1.0, 0.001, 1.0),
        (1.0, 1.0, 1.0, 0.0, 0.999),
        (1.0, 1.0, 1.0, 0.499, 0.501),
        (10.0, 10.0, 6.0, 5.9, 6.0),
        (2.0, 0.2, 0.1, 0.05, 0.05),
    ] {
        for nu in [0.0, 0.49] {
            let shape = block(length, width, depth, from, to, nu);
            let solved = solve(&shape).unwrap();
            let k = solved.stiffness_over_g;
            let (bonded, surface) = (
                solve(&shape.bonded()).unwrap(),
                solve(&block(length, width, 0.0, 0.0, 0.0, nu)).unwrap(),
            );
            let diagonal = |solved: &super::Solved| -> [f64; 6] {
                std::array::from_fn(|axis| solved.stiffness_over_g[axis][axis])
            };
            let between = diagonal(&surface)
                .into_iter()
                .zip(diagonal(&solved))
                .zip(diagonal(&bonded));
            for ((least, found), most) in between {
                assert!(
                    (0.97 * least..=1.03 * most).contains(&found),
                    "{shape:?}: {least} {found} {most}"
                );
            }
            assert!(
                k[0][0] * k[4][4] > k[0][4] * k[0][4] && k[1][1] * k[3][3] > k[1][3] * k[1][3],
                "{shape:?}"
            );
            for (x, y) in [
                (0.0, 0.0),
                (length / 2.0, 0.0),
                (length / 2.0 + 1e-6, 0.0),
                (length, width),
                (50.0, -50.0),
            ] {
                let motions = solved.under_ground_forces(x, y);
                assert!(
                    motions
                        .iter()
                        .flatten()
                        .chain(&solved.under_weight(x, y))
                        .all(|value| value.is_finite()),
                    "{shape:?} {x} {y}"
                );
            }
        }
    }
}
