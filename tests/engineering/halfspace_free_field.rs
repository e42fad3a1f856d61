//! The lean of a bonded block lies between two averages of the free ground under the same weight, which know nothing of
//! the solver: the turn of its base's settlement, and the turn of its sides' sideways movement.
//!
//! Boussinesq's displacements under a point force on the surface (Poulos & Davis 1974, section 2.1), fitted here by
//! quadrature over base and sides.

use stillground::halfspace::{Shape, solve};

const N: usize = 40;

/// Settlement and sideways movement towards +x, times G, at a point under a unit force down at `(at, 0)` on the surface.
fn boussinesq(at: f64, [x, y, z]: [f64; 3], nu: f64) -> [f64; 2] {
    let (dx, pi) = (x - at, std::f64::consts::PI);
    let r = dx.hypot(y);
    let far = r.hypot(z);
    let down = (z * z / far.powi(3) + 2.0 * (1.0 - nu) / far) / (4.0 * pi);
    let out = (r * z / far.powi(3) - (1.0 - 2.0 * nu) * r / (far * (far + z))) / (4.0 * pi);
    [down, out * dx / r]
}

fn middles(half: f64) -> impl Iterator<Item = f64> {
    (0..N).map(move |i| half * ((2 * i + 1) as f64 / N as f64 - 1.0))
}

/// Turn about y that fits the base's settlement best.
fn of_base(shape: &Shape, at: f64) -> f64 {
    let (mut moment, mut inertia) = (0.0, 0.0);
    for x in middles(shape.length_m / 2.0) {
        for y in middles(shape.width_m / 2.0) {
            moment += x * boussinesq(at, [x, y, shape.depth_m], shape.poisson_ratio)[0];
            inertia += x * x;
        }
    }
    moment / inertia
}

/// Turn about y that fits the sideways movement up the middle of the block best.
fn of_sides(shape: &Shape, at: f64) -> f64 {
    let (mut moment, mut inertia) = (0.0, 0.0);
    let half = shape.depth_m / 2.0;
    for up in middles(half) {
        for y in middles(shape.width_m / 2.0) {
            for x in [-shape.length_m / 2.0, shape.length_m / 2.0] {
                moment += up * boussinesq(at, [x, y, half - up], shape.poisson_ratio)[1];
                inertia += up * up;
            }
        }
    }
    moment / inertia
}

#[test]
fn a_bonded_block_leans_between_the_free_grounds_averages() {
    for (length_m, width_m, depth_m, poisson_ratio) in [
        (1.0, 1.0, 1.0, 0.35),
        (0.8, 0.8, 0.8, 0.25),
        (1.2, 0.8, 1.0, 0.45),
        (1.0, 1.3, 0.9, 0.3),
    ] {
        let shape = Shape {
            length_m,
            width_m,
            depth_m,
            contact_from_m: 0.0,
            contact_to_m: depth_m,
            poisson_ratio,
        };
        let solved = solve(&shape).unwrap();
        for at in [1.0, 1.5, 2.0, 3.0] {
            let (sides, found, base) = (
                of_sides(&shape, at),
                solved.under_weight(at, 0.0)[4],
                of_base(&shape, at),
            );
            let [low, high] = [sides.min(base), sides.max(base)];
            assert!(
                found > 0.97 * low && found < 1.03 * high,
                "{shape:?} at {at}: {sides} {found} {base}"
            );
        }
    }
}
