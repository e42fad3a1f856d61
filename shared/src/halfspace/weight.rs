//! A weight on the surface, by Boussinesq's solution, quickly: the many places of a map need no more. The four mirrors of
//! a place go through the same arithmetic side by side.

use super::assembly::{REACH, offset, rule, split};
use super::mesh::Patch;
use super::surface::Surface;

/// One value for the place, its mirror across x, across y, and across both.
type Four = [f64; 4];

/// Work of a unit weight at a place, neither of its coordinates negative, on a unit of each of the block's motions, shear
/// modulus one.
pub fn work(surface: &Surface, x: f64, y: f64, nu: f64) -> [f64; 6] {
    let place = [x, y, 0.0];
    let mut work = [0.0; 6];
    for (patch, answer) in surface.patches.iter().zip(&surface.answers) {
        let mut sums = Sums::default();
        if far(patch, place) {
            sums.add_point(place, patch.centre, patch, patch.area(), nu);
        } else {
            split(patch, place, REACH, 0, &mut |piece| {
                sums.add(place, piece, patch, nu)
            });
        }
        sums.work(answer, patch.free, &mut work);
    }
    work
}

/// Whether one point stands for a patch: [`split`] would leave it whole and [`rule`] take its middle.
fn far(patch: &Patch, place: [f64; 3]) -> bool {
    let [dx, dy, dz] = offset(patch.centre, place);
    let half = patch.half[0].max(patch.half[1]).max(patch.half[2]);
    100.0 * half * half < dx * dx + dy * dy + dz * dz
}

/// A weight's share through one patch: displacement or, of a free one, traction, and what the turns do with that.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    answer: [Four; 3],
    turning: [Four; 3],
}

impl Sums {
    fn add(&mut self, place: [f64; 3], piece: &Patch, patch: &Patch, nu: f64) {
        let (u, v) = piece.sides();
        let [dx, dy, dz] = offset(piece.centre, place);
        let far = (dx * dx + dy * dy + dz * dz).sqrt();
        for &(s, ws) in rule(piece.half[u], far) {
            for &(t, wt) in rule(piece.half[v], far) {
                let mut at = piece.centre;
                at[u] += s * piece.half[u];
                at[v] += t * piece.half[v];
                self.add_point(
                    place,
                    at,
                    patch,
                    ws * wt * piece.half[u] * piece.half[v],
                    nu,
                );
            }
        }
    }

    fn add_point(
        &mut self,
        [px, py, _]: [f64; 3],
        at: [f64; 3],
        patch: &Patch,
        weight: f64,
        nu: f64,
    ) {
        let x = [at[0] - px, at[0] + px, at[0] - px, at[0] + px];
        let y = [at[1] - py, at[1] - py, at[1] + py, at[1] + py];
        if !patch.free {
            let part = displacement(&x, &y, at[2], nu);
            (0..3).for_each(|i| add(&mut self.answer[i], &part[i], weight));
            return;
        }
        let part = if patch.axis == 0 {
            traction(&x, &y, at[2], nu)
        } else {
            let [along, across, down] = traction(&y, &x, at[2], nu);
            [across, along, down]
        };
        (0..3).for_each(|i| add(&mut self.answer[i], &part[i], -weight));
        let [x, y, z] = offset(at, patch.centre).map(|value| -weight * value);
        let turns = [(1, z, 2, -y), (2, x, 0, -z), (1, x, 0, -y)];
        for (turning, (i, a, j, b)) in self.turning.iter_mut().zip(turns) {
            add(turning, &part[i], a);
            add(turning, &part[j], b);
        }
    }

    /// Adds the work on each motion: the mirrors' sums with the signs of the motion's class.
    fn work(&self, answer: &[[f64; 3]; 6], free: bool, work: &mut [f64; 6]) {
        let even = |[a, b, c, d]: Four| a + b + c + d;
        let odd_x = |[a, b, c, d]: Four| a - b + c - d;
        let odd_y = |[a, b, c, d]: Four| a + b - c - d;
        let odd = |[a, b, c, d]: Four| a - b - c + d;
        let dot = |sum: [f64; 3], answer: [f64; 3]| {
            sum[0] * answer[0] + sum[1] * answer[1] + sum[2] * answer[2]
        };
        let (along_x, along_y) = (self.answer.map(odd_x), self.answer.map(odd_y));
        work[0] += dot(along_x, answer[0]);
        work[1] += dot(along_y, answer[1]);
        work[2] += dot(self.answer.map(even), answer[2]);
        work[3] += dot(along_y, answer[3]);
        work[4] += dot(along_x, answer[4]);
        work[5] += dot(self.answer.map(odd), answer[5]);
        if free {
            work[3] -= odd_y(self.turning[0]);
            work[4] -= odd_x(self.turning[1]);
            work[5] -= odd(self.turning[2]);
        }
    }
}

fn add(total: &mut Four, part: &Four, weight: f64) {
    for (sum, value) in total.iter_mut().zip(part) {
        *sum += weight * value;
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
