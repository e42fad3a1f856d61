//! A weight on the surface, by Boussinesq's solution, quickly: the many places of a map need no more.

use super::mirrored::{Field, Force, Four};

/// A unit weight.
pub struct Weight;

impl Field for Weight {
    const FORCE: Force = Force::Down;

    fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        displacement(x, y, z, nu)
    }

    fn traction(axis: usize, x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        if axis == 0 {
            return traction(x, y, z, nu);
        }
        let [along, across, down] = traction(y, x, z, nu);
        [across, along, down]
    }
}

/// Displacement along x, y and down inside the ground under a unit weight on its surface, `x` and `y` from the weight.
///
/// # Source
/// Boussinesq 1885; Mindlin 1936 with the force at the surface.
fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
    let k = 1.0 / (4.0 * std::f64::consts::PI);
    let mut answer = [[0.0; 4]; 3];
    for m in 0..4 {
        let r = (x[m] * x[m] + y[m] * y[m] + z * z).sqrt();
        let over = 1.0 / r;
        let over3 = over * over * over;
        let radial = k * (z * over3 - (1.0 - 2.0 * nu) * over / (r + z));
        answer[0][m] = x[m] * radial;
        answer[1][m] = y[m] * radial;
        answer[2][m] = k * (2.0 * (1.0 - nu) * over + z * z * over3);
    }
    answer
}

/// Traction there on a plane across the first coordinate, the normal against it.
///
/// # Source
/// Differentiated from [`displacement`]; a test holds the two together.
fn traction(own: &Four, other: &Four, z: f64, nu: f64) -> [Four; 3] {
    let (k, slack) = (1.0 / (2.0 * std::f64::consts::PI), 1.0 - 2.0 * nu);
    let mut answer = [[0.0; 4]; 3];
    for m in 0..4 {
        let r = (own[m] * own[m] + other[m] * other[m] + z * z).sqrt();
        let (over, sum) = (1.0 / r, 1.0 / (r + z));
        let over2 = over * over;
        let (over3, over5) = (over2 * over, over2 * over2 * over);
        let curved = slack * sum * over2 * (over + sum) - 3.0 * z * over5;
        answer[0][m] = -k * (slack * z * over3 - slack * over * sum + own[m] * own[m] * curved);
        answer[1][m] = -k * own[m] * other[m] * curved;
        answer[2][m] = 3.0 * k * own[m] * z * z * over5;
    }
    answer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::halfspace::gradient::Sloped;
    use crate::halfspace::kernel::{self, Kernel};

    const AT: [f64; 3] = [0.7, -0.3, 0.4];
    const NU: f64 = 0.3;

    /// Mindlin's kernel for a force at the surface, with its slopes.
    fn mindlin() -> Kernel<Sloped> {
        let at = |axis: usize| Sloped::coordinate(AT[axis], axis);
        let (k, m) = (
            kernel::kelvin([at(0), at(1), at(2)], NU),
            kernel::image(at(0), at(1), at(2), 0.0, NU),
        );
        std::array::from_fn(|i| std::array::from_fn(|j| k[i][j] + m[i][j]))
    }

    #[test]
    fn boussinesq_is_mindlin_at_the_surface() {
        let (found, expected) = (
            displacement(&[AT[0]; 4], &[AT[1]; 4], AT[2], NU),
            mindlin()[2],
        );
        for i in 0..3 {
            assert!((found[i][0] - expected[i].value).abs() < 1e-14);
        }
    }

    #[test]
    fn his_traction_follows_from_his_displacement() {
        for (axis, own, other) in [(0, AT[0], AT[1]), (1, AT[1], AT[0])] {
            let found = traction(&[own; 4], &[other; 4], AT[2], NU).map(|four| four[0]);
            let expected = kernel::traction_of(&mindlin()[2], axis, NU);
            let ordered = [expected[axis], expected[1 - axis], expected[2]];
            for i in 0..3 {
                assert!(
                    (found[i] - ordered[i]).abs() < 1e-13,
                    "{axis}: {found:?} {ordered:?}"
                );
            }
        }
    }
}
