//! Where a force on the ground moves the block, by Betti's theorem: the surface's displacement while the block makes a
//! unit of a motion is the work that a unit force there does on it, so `K q` is that displacement for each motion.

use super::assembly::{self, Block, CLASSES, MIRRORS, offset, sign, split};
use super::gradient::Number;
use super::mesh::Patch;
use super::motions::MOTIONS;
use super::{Shape, Solved};

/// Patches of a quarter with their answers, and the flexibility that belongs to the same mesh: what each mesh says of the
/// block's motion is closer to the limit than its tractions or its stiffness alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    pub(super) patches: Vec<Patch>,
    pub(super) answers: super::solve::Answers,
    pub(super) flexibility: [[f64; 6]; 6],
    /// What this mesh counts for on the way to the limit.
    pub(super) weight: f64,
}

impl Solved {
    /// The block's six motions times G under a unit force on the ground at a place: along x, along y, and down. A place on
    /// the block stands for a force on the block at ground level.
    #[must_use]
    pub fn under_ground_forces(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 3] {
        if on_block(&self.shape, x_m, y_m) {
            let forces = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, -1.0]];
            return forces.map(|force| self.under_block_force([x_m, y_m, 0.0], force));
        }
        let mut motions = [[0.0; 6]; 3];
        for surface in &self.surfaces {
            let work = surface.work(x_m, y_m, &self.shape);
            for (total, row) in motions.iter_mut().zip(work) {
                add(total, apply(&surface.flexibility, row), surface.weight);
            }
        }
        motions
    }

    /// The block's six motions times G under a unit weight at a place: on the ground, or on the block where that is.
    #[must_use]
    pub fn under_weight(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        if on_block(&self.shape, x_m, y_m) {
            return self.under_block_force([x_m, y_m, 0.0], [0.0, 0.0, -1.0]);
        }
        let mut motion = [0.0; 6];
        for surface in &self.surfaces {
            add(&mut motion, apply(&surface.flexibility, surface.work_of_weight(x_m, y_m, &self.shape)), surface.weight);
        }
        motion
    }

    /// The block's six motions times G under a force on the block; place and force along x, y and up, height from the ground.
    #[must_use]
    pub fn under_block_force(&self, at_m: [f64; 3], force: [f64; 3]) -> [f64; 6] {
        let [x, y, up] = at_m;
        let arm = up + self.shape.depth_m;
        let [fx, fy, fz] = force;
        apply(&self.flexibility_times_g, [fx, fy, fz, y * fz - arm * fy, arm * fx - x * fz, x * fy - y * fx])
    }
}

/// Whether a place lies within the block's outline.
#[must_use]
pub fn on_block(shape: &Shape, x_m: f64, y_m: f64) -> bool {
    x_m.abs() <= shape.length_m / 2.0 && y_m.abs() <= shape.width_m / 2.0
}

fn apply(matrix: &[[f64; 6]; 6], load: [f64; 6]) -> [f64; 6] {
    matrix.map(|row| row.iter().zip(load).map(|(a, b)| a * b).sum())
}

impl Surface {
    /// Displacement of the surface along x, y and down for a unit of each motion.
    fn work(&self, x: f64, y: f64, shape: &Shape) -> [[f64; 6]; 3] {
        let mut work = [[0.0; 6]; 3];
        self.each(x, y, |from, patch, answer, mirror| {
            let mut total = Block::default();
            split(patch, from, 0, &mut |piece| {
                total.join(&assembly::block(from, piece, shape.poisson_ratio), offset(piece.centre, patch.centre), patch.free)
            });
            let turned = [mirror[0], mirror[1], 1.0];
            for (class, motions) in CLASSES.into_iter().zip(MOTIONS) {
                for &motion in motions {
                    for (i, row) in work.iter_mut().enumerate() {
                        let turn = if motion >= 3 { total.turning[motion - 3][i] } else { 0.0 };
                        row[motion] += sign(class, mirror) * turned[i] * (dot(total.kernel[i], answer[motion]) - turn);
                    }
                }
            }
        });
        work
    }

    /// The same for a weight alone, by Boussinesq's solution: the many places of a map need no more.
    fn work_of_weight(&self, x: f64, y: f64, shape: &Shape) -> [f64; 6] {
        let mut work = [0.0; 6];
        for (patch, answer) in self.patches.iter().zip(&self.answers) {
            // Sums over the mirrors first, one for each class: displacement or traction, and what the turns do.
            let mut sums = [Weight::default(); 4];
            for mirror in MIRRORS {
                let from = [x * mirror[0], y * mirror[1], 0.0];
                let mut part = Weight::default();
                split(patch, from, 0, &mut |piece| part.add(from, piece, patch, shape.poisson_ratio));
                for (class, sum) in CLASSES.into_iter().zip(&mut sums) {
                    sum.join(&part, sign(class, mirror));
                }
            }
            for (sum, motions) in sums.iter().zip(MOTIONS) {
                for &motion in motions {
                    let turn = if motion >= 3 { sum.turning[motion - 3] } else { 0.0 };
                    work[motion] += dot(sum.answer, answer[motion]) - turn;
                }
            }
        }
        work
    }

    /// Calls `each` for every patch of the quarter with the place and its three mirrors.
    fn each(&self, x: f64, y: f64, mut each: impl FnMut([f64; 3], &Patch, &[[f64; 3]; 6], [f64; 2])) {
        for (patch, answer) in self.patches.iter().zip(&self.answers) {
            for mirror in MIRRORS {
                each([x * mirror[0], y * mirror[1], 0.0], patch, answer, mirror);
            }
        }
    }
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Displacement inside the ground under a unit weight on its surface, shear modulus one.
///
/// # Source
/// Boussinesq 1885; Mindlin 1936 with the force at the surface.
pub fn boussinesq<T: Number>(x: T, y: T, z: T, nu: f64) -> [T; 3] {
    let r = (x * x + y * y + z * z).sqrt();
    let over = r.recip();
    let over3 = over * over * over;
    let k = 1.0 / (4.0 * std::f64::consts::PI);
    let radial = (z * over3 - over * (r + z).recip() * (1.0 - 2.0 * nu)) * k;
    [x * radial, y * radial, (over * (2.0 * (1.0 - nu)) + z * z * over3) * k]
}

/// Stress inside the ground under a unit weight on its surface, on a plane across x or y: the traction, the normal
/// against the axis.
///
/// # Source
/// Differentiated from [`boussinesq`]; a test holds the two together.
fn boussinesq_traction([x, y, z]: [f64; 3], nu: f64, axis: usize) -> [f64; 3] {
    let over = 1.0 / (x * x + y * y + z * z).sqrt();
    let sum = 1.0 / (1.0 / over + z);
    let (over2, slack) = (over * over, 1.0 - 2.0 * nu);
    let (over3, over5) = (over2 * over, over2 * over2 * over);
    let k = 1.0 / (2.0 * std::f64::consts::PI);
    let curved = slack * sum * over2 * (over + sum) - 3.0 * z * over5;
    let (own, other) = if axis == 0 { (x, y) } else { (y, x) };
    let normal = k * (slack * z * over3 - slack * over * sum + own * own * curved);
    let (shear, down) = (k * own * other * curved, -3.0 * k * own * z * z * over5);
    if axis == 0 { [-normal, -shear, -down] } else { [-shear, -normal, -down] }
}

/// A weight's share through one patch: displacement or, of a free one, traction, and what the turns do with that.
#[derive(Debug, Clone, Copy, Default)]
struct Weight {
    answer: [f64; 3],
    turning: [f64; 3],
}

impl Weight {
    fn add(&mut self, from: [f64; 3], piece: &Patch, patch: &Patch, nu: f64) {
        assembly::over(piece, from, |at, weight| {
            let (x, y, z) = (at[0] - from[0], at[1] - from[1], at[2]);
            if !patch.free {
                let part = boussinesq(x, y, z, nu);
                (0..3).for_each(|i| self.answer[i] += weight * part[i]);
                return;
            }
            let part = boussinesq_traction([x, y, z], nu, patch.axis).map(|value| -weight * value);
            let [x, y, z] = offset(at, patch.centre);
            (0..3).for_each(|i| self.answer[i] += part[i]);
            self.turning[0] += z * part[1] - y * part[2];
            self.turning[1] += x * part[2] - z * part[0];
            self.turning[2] += x * part[1] - y * part[0];
        });
    }

    fn join(&mut self, other: &Self, sign: f64) {
        add(&mut self.answer, other.answer, sign);
        add(&mut self.turning, other.turning, sign);
    }
}

fn add<const N: usize>(total: &mut [f64; N], part: [f64; N], weight: f64) {
    for (sum, value) in total.iter_mut().zip(part) {
        *sum += weight * value;
    }
}

/// Force and moment about the base's centre do the same work as a force on the block: a check on signs.
#[cfg(test)]
mod tests {
    use super::*;
    use crate::halfspace::gradient::Sloped;
    use crate::halfspace::kernel;
    use crate::halfspace::motions::movement;

    #[test]
    fn a_force_on_the_block_does_work_on_each_motion() {
        let (at, force, depth) = ([0.3, -0.2, 0.4], [2.0, 3.0, -5.0], 1.1);
        let arm = at[2] + depth;
        let load =
            [2.0, 3.0, -5.0, at[1] * force[2] - arm * force[1], arm * force[0] - at[0] * force[2], at[0] * force[1] - at[1] * force[0]];
        for (motion, &expected) in load.iter().enumerate() {
            let moved = movement(motion, [at[0], at[1], -at[2]], depth);
            let work = moved[0] * force[0] + moved[1] * force[1] - moved[2] * force[2];
            assert!((work - expected).abs() < 1e-12, "{motion}");
        }
    }

    #[test]
    fn boussinesqs_traction_follows_from_his_displacement() {
        let (at, nu) = ([0.7, -0.3, 0.4], 0.3);
        let u = boussinesq(Sloped::coordinate(at[0], 0), Sloped::coordinate(at[1], 1), Sloped::coordinate(at[2], 2), nu);
        for axis in 0..2 {
            let (found, expected) = (boussinesq_traction(at, nu, axis), kernel::traction_of(&u, axis, nu));
            for i in 0..3 {
                assert!((found[i] - expected[i]).abs() < 1e-13, "{axis}: {found:?} {expected:?}");
            }
        }
    }

    #[test]
    fn boussinesq_is_mindlin_at_the_surface() {
        let (at, nu) = ([0.7, -0.3, 0.4], 0.3);
        let (k, m) = (kernel::kelvin(at, nu), kernel::image(at[0], at[1], at[2], 0.0, nu));
        let b = boussinesq(at[0], at[1], at[2], nu);
        for i in 0..3 {
            assert!((k[2][i] + m[2][i] - b[i]).abs() < 1e-14);
        }
    }
}
