//! A push along the surface, by Cerruti's solution, quickly: the feet of a walk and the doors need no more.

use super::mirrored::{Field, Force, Four};

/// A unit force along x.
pub struct East;
/// A unit force along y.
pub struct North;

impl Field for East {
    const FORCE: Force = Force::East;

    fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        displacement(x, y, z, nu)
    }

    fn traction(axis: usize, x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        if axis == 0 {
            ahead(x, y, z, nu)
        } else {
            beside(x, y, z, nu)
        }
    }
}

/// The same with x and y changed round.
impl Field for North {
    const FORCE: Force = Force::North;

    fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        let [along, across, down] = displacement(y, x, z, nu);
        [across, along, down]
    }

    fn traction(axis: usize, x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
        let [along, across, down] = if axis == 1 {
            ahead(y, x, z, nu)
        } else {
            beside(y, x, z, nu)
        };
        [across, along, down]
    }
}

/// Displacement along the force, across it and down, inside the ground under a unit force along its surface.
///
/// # Source
/// Cerruti 1882; Mindlin 1936 with the force at the surface.
fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
    let (k, slack) = (1.0 / (4.0 * std::f64::consts::PI), 1.0 - 2.0 * nu);
    let mut answer = [[0.0; 4]; 3];
    for m in 0..4 {
        let r = (x[m] * x[m] + y[m] * y[m] + z * z).sqrt();
        let (over, sum) = (1.0 / r, 1.0 / (r + z));
        let over3 = over * over * over;
        let cross = k * (over3 - slack * over * sum * sum);
        answer[0][m] = k * (over + slack * sum) + x[m] * x[m] * cross;
        answer[1][m] = x[m] * y[m] * cross;
        answer[2][m] = k * x[m] * (z * over3 + slack * over * sum);
    }
    answer
}

/// Traction there on a plane across the force, the normal against it: along the force, across it, down.
///
/// # Source
/// Differentiated from [`displacement`]; a test holds the two together.
fn ahead(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
    let (k, slack) = (1.0 / (2.0 * std::f64::consts::PI), 1.0 - 2.0 * nu);
    let mut answer = [[0.0; 4]; 3];
    for m in 0..4 {
        let curved = Curved::at(x[m], y[m], z, slack);
        let along = slack * (curved.over3 - 3.0 * curved.flat) + x[m] * x[m] * curved.both;
        let across = x[m] * x[m] * curved.both - slack * curved.flat;
        answer[0][m] = -k * x[m] * along;
        answer[1][m] = -k * y[m] * across;
        answer[2][m] = 3.0 * k * x[m] * x[m] * z * curved.over5;
    }
    answer
}

/// The same on a plane along the force: along the force, across it, down.
///
/// # Source
/// As [`ahead`].
fn beside(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3] {
    let (k, slack) = (1.0 / (2.0 * std::f64::consts::PI), 1.0 - 2.0 * nu);
    let mut answer = [[0.0; 4]; 3];
    for m in 0..4 {
        let curved = Curved::at(x[m], y[m], z, slack);
        let along = x[m] * x[m] * curved.both - slack * curved.flat;
        let across = slack * (curved.over3 - curved.flat) + y[m] * y[m] * curved.both;
        answer[0][m] = -k * y[m] * along;
        answer[1][m] = -k * x[m] * across;
        answer[2][m] = 3.0 * k * x[m] * y[m] * z * curved.over5;
    }
    answer
}

/// What the stresses share, with `R` the distance and `S` that and the depth.
struct Curved {
    over3: f64,
    over5: f64,
    /// `1/(R S²)`.
    flat: f64,
    /// `(1 − 2ν) (1/(R³ S²) + 2/(R² S³)) − 3/R⁵`.
    both: f64,
}

impl Curved {
    #[inline]
    fn at(x: f64, y: f64, z: f64, slack: f64) -> Self {
        let r = (x * x + y * y + z * z).sqrt();
        let (over, sum) = (1.0 / r, 1.0 / (r + z));
        let over3 = over * over * over;
        let over5 = over3 * over * over;
        let both = slack * (over3 + 2.0 * over * over * sum) * sum * sum - 3.0 * over5;
        Self {
            over3,
            over5,
            flat: over * sum * sum,
            both,
        }
    }
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

    fn holds<F: Field>(force: usize) {
        let (x, y) = ([AT[0]; 4], [AT[1]; 4]);
        let expected = mindlin()[force];
        let found = F::displacement(&x, &y, AT[2], NU);
        for i in 0..3 {
            assert!((found[i][0] - expected[i].value).abs() < 1e-14, "{i}");
        }
        for axis in [0, 1] {
            let found = F::traction(axis, &x, &y, AT[2], NU).map(|four| four[0]);
            let expected = kernel::traction_of(&expected, axis, NU);
            for i in 0..3 {
                assert!(
                    (found[i] - expected[i]).abs() < 1e-13,
                    "{axis}: {found:?} {expected:?}"
                );
            }
        }
    }

    #[test]
    fn cerruti_is_mindlin_at_the_surface() {
        holds::<East>(0);
        holds::<North>(1);
    }
}
