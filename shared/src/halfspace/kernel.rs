//! Point forces: Kelvin's in a body without end, and what Mindlin adds to it for the free surface.
//!
//! Coordinates x, y and depth z, all three components of a vector along them (depth and downward positive), shear modulus
//! one. A kernel is indexed `[force][displacement]`. `R₁` is the distance from the force at depth `c`, `R₂` the distance
//! from its mirror image above the surface.

use super::gradient::{Number, Sloped};

/// A three by three kernel, `[direction of the force][component of the answer]`.
pub type Kernel<T> = [[T; 3]; 3];

/// Displacement in a body without end: Kelvin's part of Mindlin's solution, `R₁` only.
///
/// # Source
/// Kelvin 1848; Love, A Treatise on the Mathematical Theory of Elasticity, art. 130.
pub fn kelvin<T: Number>(r: [T; 3], nu: f64) -> Kernel<T> {
    let over = (r[0] * r[0] + r[1] * r[1] + r[2] * r[2]).sqrt().recip();
    let factor = over * scale(nu);
    let unit = [r[0] * over, r[1] * over, r[2] * over];
    let diagonal = factor * (3.0 - 4.0 * nu);
    let mut kernel = [[factor; 3]; 3];
    for i in 0..3 {
        for j in 0..3 {
            kernel[i][j] = factor * unit[i] * unit[j];
        }
        kernel[i][i] = kernel[i][i] + diagonal;
    }
    kernel
}

/// What the free surface adds to Kelvin's displacement: the terms in `R₂` of Mindlin's solution. `x` and `y` lead from
/// the force to the point; `z` is the point's depth, `c` the force's.
///
/// # Source
/// Mindlin, Force at a Point in the Interior of a Semi-Infinite Solid, Physics 7, 1936, 195–202.
pub fn image<T: Number>(x: T, y: T, z: T, c: f64, nu: f64) -> Kernel<T> {
    let constant = T::constant;
    let (k3, k12) = (3.0 - 4.0 * nu, 4.0 * (1.0 - nu) * (1.0 - 2.0 * nu));
    let (sum, difference, twice) = (z + constant(c), z - constant(c), z * (2.0 * c));
    let r = (x * x + y * y + sum * sum).sqrt();
    let over = r.recip();
    let over3 = over * over * over;
    let over5 = over3 * over * over;
    let shallow = (r + sum).recip();
    let k = scale(nu);
    // Factor of x·x, x·y and y·y under a horizontal force.
    let cross = (over3 * k3 - twice * over5 * 3.0 - over * shallow * shallow * k12) * k;
    let plain = (over + twice * over3 + shallow * k12) * k;
    // The two couplings of horizontal and vertical share their outer terms.
    let outer = difference * over3 * k3;
    let inner = twice * sum * over5 * 3.0 - over * shallow * k12;
    let (down, across) = ((outer - inner) * k, (outer + inner) * k);
    let vertical = (over * (8.0 * (1.0 - nu) * (1.0 - nu) - k3)
        + (sum * sum * k3 - twice) * over3
        + twice * sum * sum * over5 * 3.0)
        * k;
    let xy = x * y * cross;
    [
        [plain + x * x * cross, xy, x * down],
        [xy, plain + y * y * cross, y * down],
        [x * across, y * across, vertical],
    ]
}

/// Traction at a point of a plane across the axis `axis`, its normal against that axis, from a displacement's slopes.
#[inline]
pub fn traction_of(u: &[Sloped; 3], axis: usize, nu: f64) -> [f64; 3] {
    let lame = 2.0 * nu / (1.0 - 2.0 * nu);
    let shear = |j: usize| -(u[j].slope[axis] + u[axis].slope[j]);
    let mut answer = [shear(0), shear(1), shear(2)];
    answer[axis] -= lame * (u[0].slope[0] + u[1].slope[1] + u[2].slope[2]);
    answer
}

/// The same for the displacements under a force along each axis.
#[inline]
pub fn traction([along_x, along_y, down]: &Kernel<Sloped>, axis: usize, nu: f64) -> Kernel<f64> {
    [
        traction_of(along_x, axis, nu),
        traction_of(along_y, axis, nu),
        traction_of(down, axis, nu),
    ]
}

/// Traction of Mindlin's image terms, as [`traction`].
pub fn image_traction(x: f64, y: f64, z: f64, c: f64, nu: f64, axis: usize) -> Kernel<f64> {
    let terms = image(
        Sloped::coordinate(x, 0),
        Sloped::coordinate(y, 1),
        Sloped::coordinate(z, 2),
        c,
        nu,
    );
    // The axis known to the compiler, what is not asked for falls away.
    match axis {
        0 => traction(&terms, 0, nu),
        1 => traction(&terms, 1, nu),
        _ => traction(&terms, 2, nu),
    }
}

/// Traction of Kelvin's solution on a plane across `axis`, its normal against that axis.
pub fn kelvin_traction(r: [f64; 3], nu: f64, axis: usize) -> Kernel<f64> {
    match axis {
        0 => kelvin_traction_across::<0>(r, nu),
        1 => kelvin_traction_across::<1>(r, nu),
        _ => kelvin_traction_across::<2>(r, nu),
    }
}

#[inline]
fn kelvin_traction_across<const AXIS: usize>([x, y, z]: [f64; 3], nu: f64) -> Kernel<f64> {
    let over = 1.0 / (x * x + y * y + z * z).sqrt();
    let factor = over * over / (8.0 * std::f64::consts::PI * (1.0 - nu));
    let unit = [x * over, y * over, z * over];
    let (slack, triple) = (factor * (1.0 - 2.0 * nu), 3.0 * factor * unit[AXIS]);
    let mut kernel = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in 0..3 {
            kernel[i][j] = triple * unit[i] * unit[j];
        }
    }
    for i in 0..3 {
        kernel[i][i] += slack * unit[AXIS];
        kernel[i][AXIS] -= slack * unit[i];
        kernel[AXIS][i] += slack * unit[i];
    }
    kernel
}

/// `1/(16π(1−ν))`, the factor of all of Kelvin's and Mindlin's terms.
pub fn scale(nu: f64) -> f64 {
    1.0 / (16.0 * std::f64::consts::PI * (1.0 - nu))
}

#[cfg(test)]
mod tests {
    use super::*;

    const NU: [f64; 4] = [0.0, 0.2, 0.35, 0.49];

    fn mindlin(from: [f64; 3], to: [f64; 3], nu: f64) -> Kernel<f64> {
        let r = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
        let (k, m) = (kelvin(r, nu), image(r[0], r[1], to[2], from[2], nu));
        std::array::from_fn(|i| std::array::from_fn(|j| k[i][j] + m[i][j]))
    }

    fn sloped(from: [f64; 3], to: [f64; 3], nu: f64) -> Kernel<Sloped> {
        let at = |axis: usize| Sloped::coordinate(to[axis] - from[axis], axis);
        let (k, m) = (
            kelvin([at(0), at(1), at(2)], nu),
            image(at(0), at(1), Sloped::coordinate(to[2], 2), from[2], nu),
        );
        std::array::from_fn(|i| std::array::from_fn(|j| k[i][j] + m[i][j]))
    }

    #[test]
    fn force_and_answer_can_change_places() {
        let (a, b) = ([0.3, -0.2, 0.7], [1.1, 0.5, 0.15]);
        for nu in NU {
            let (there, back) = (mindlin(a, b, nu), mindlin(b, a, nu));
            for i in 0..3 {
                for j in 0..3 {
                    assert!((there[i][j] - back[j][i]).abs() < 1e-12 * there[0][0].abs());
                }
            }
        }
    }

    #[test]
    fn the_surface_is_free() {
        for nu in NU {
            let from = [0.2, 0.1, 0.6];
            for to in [[0.9, -0.4, 0.0], [0.25, 0.1, 0.0], [-3.0, 2.0, 0.0]] {
                let stress = traction(&sloped(from, to, nu), 2, nu);
                let inside = traction(&sloped(from, [to[0], to[1], 0.5], nu), 2, nu)[2][2].abs();
                for value in stress.iter().flatten() {
                    assert!(value.abs() < 1e-12 * (1.0 + inside), "{value} at ν {nu}");
                }
            }
        }
    }

    #[test]
    fn shallow_forces_are_boussinesqs_and_cerrutis() {
        let pi = std::f64::consts::PI;
        for nu in NU {
            let (x, y) = (0.8, 0.6);
            let u = mindlin([0.0; 3], [x, y, 0.0], nu);
            assert!((u[2][2] - (1.0 - nu) / (2.0 * pi)).abs() < 1e-12);
            assert!((u[2][0] + x * (1.0 - 2.0 * nu) / (4.0 * pi)).abs() < 1e-12);
            assert!((u[0][0] - ((1.0 - nu) + nu * x * x) / (2.0 * pi)).abs() < 1e-12);
            assert!((u[0][1] - nu * x * y / (2.0 * pi)).abs() < 1e-12);
            assert!((u[0][2] - x * (1.0 - 2.0 * nu) / (4.0 * pi)).abs() < 1e-12);
        }
    }

    #[test]
    fn deep_forces_are_kelvins() {
        let (from, to) = ([0.0, 0.0, 1e6], [0.5, 0.3, 1e6 + 0.2]);
        for nu in NU {
            let (m, k) = (mindlin(from, to, nu), kelvin([0.5, 0.3, 0.2], nu));
            for i in 0..3 {
                for j in 0..3 {
                    assert!((m[i][j] - k[i][j]).abs() < 1e-6);
                }
            }
        }
    }

    // Mindlin 1936 with load and point at depths 0.5 and 1, a metre apart, 750 N, 30 MPa, ν 0.35: 2.59819 µm both ways.
    #[test]
    fn a_value_worked_by_hand() {
        for (c, z) in [(0.5, 1.0), (1.0, 0.5)] {
            let w = mindlin([0.0, 0.0, c], [1.0, 0.0, z], 0.35)[2][2] * 750.0 / 30.0;
            assert!((w - 2.598_19).abs() < 1e-5, "{w}");
        }
    }

    #[test]
    fn tractions_balance_the_force() {
        // Over a plane below the force the traction adds up to the force; the normal points up, so with its sign turned.
        // What lies beyond the square's edge falls with its size, so two sizes give the whole.
        let (near, far) = (force_through_a_square(20.0), force_through_a_square(40.0));
        for axis in 0..3 {
            let whole = 2.0 * far[axis] - near[axis];
            assert!((whole - 1.0).abs() < 0.002, "{axis}: {near:?} {far:?}");
        }
    }

    fn force_through_a_square(reach: f64) -> [f64; 3] {
        let (nu, step) = (0.3, 0.1);
        let count = (2.0 * reach / step) as i32;
        let mut total = [0.0; 3];
        for i in 0..count * count {
            let (x, y) = (
                f64::from(i / count) * step + 0.05 - reach,
                f64::from(i % count) * step + 0.05 - reach,
            );
            let (k, m) = (
                kelvin_traction([x, y, 0.5], nu, 2),
                image_traction(x, y, 1.0, 0.5, nu, 2),
            );
            for (axis, sum) in total.iter_mut().enumerate() {
                *sum += (k[axis][axis] + m[axis][axis]) * step * step;
            }
        }
        total
    }

    #[test]
    fn kelvins_traction_agrees_with_the_slopes() {
        let r = [0.4, -0.7, 0.2];
        for nu in NU {
            for axis in 0..3 {
                let direct = kelvin_traction(r, nu, axis);
                let at = |i: usize| Sloped::coordinate(r[i], i);
                let slopes = traction(&kelvin([at(0), at(1), at(2)], nu), axis, nu);
                for i in 0..3 {
                    for j in 0..3 {
                        assert!(
                            (direct[i][j] - slopes[i][j]).abs() < 1e-12,
                            "{i}{j} {direct:?} {slopes:?}"
                        );
                    }
                }
            }
        }
    }
}
