//! Where a force on the ground moves the block, by Betti's theorem: the surface's displacement while the block makes a
//! unit of a motion is the work that a unit force there does on it, so `K q` is that displacement for each motion.

use super::assembly::{self, Block, CLASSES, MIRRORS, REACH, offset, sign, split};
use super::mesh::Patch;
use super::mirrored::{self, Field};
use super::motions::MOTIONS;
use super::surface::Surface;
use super::{Shape, Solved};

impl Solved {
    /// The block's six motions times G under a unit force on the ground at a place: along x, along y, and down. A place on
    /// the block stands for a force on the block at ground level.
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
    pub fn under_weight(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        if on_block(&self.shape, x_m, y_m) {
            return self.under_block_force([x_m, y_m, 0.0], [0.0, 0.0, -1.0]);
        }
        self.beside(x_m, y_m)
    }

    /// The same under a unit force on the ground where neither coordinate is negative, worked out.
    pub(super) fn beside_quarter<F: Field>(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        let mut motion = [0.0; 6];
        for surface in &self.surfaces {
            add(
                &mut motion,
                apply(
                    &surface.flexibility,
                    mirrored::work::<F>(surface, x_m, y_m, self.shape.poisson_ratio),
                ),
                surface.weight,
            );
        }
        motion
    }

    /// The block's six motions times G under a unit force along x and under one along y: on the ground, or on the block
    /// where that is.
    pub fn under_pushes(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 2] {
        if on_block(&self.shape, x_m, y_m) {
            let forces = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0]];
            return forces.map(|force| self.under_block_force([x_m, y_m, 0.0], force));
        }
        self.pushed_beside(x_m, y_m)
    }

    /// The block's six motions times G under a force on the block; place and force along x, y and up, height from the ground.
    pub fn under_block_force(&self, at_m: [f64; 3], force: [f64; 3]) -> [f64; 6] {
        let [x, y, up] = at_m;
        let arm = up + self.shape.depth_m;
        let [fx, fy, fz] = force;
        apply(
            &self.flexibility_times_g,
            [
                fx,
                fy,
                fz,
                y * fz - arm * fy,
                arm * fx - x * fz,
                x * fy - y * fx,
            ],
        )
    }
}

/// Whether a place lies within the block's outline.
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
            split(patch, from, REACH, 0, &mut |piece| {
                total.join(
                    &assembly::block(from, piece, shape.poisson_ratio),
                    offset(piece.centre, patch.centre),
                    patch.free,
                )
            });
            let turned = [mirror[0], mirror[1], 1.0];
            for (class, motions) in CLASSES.into_iter().zip(MOTIONS) {
                for &motion in motions {
                    for (i, row) in work.iter_mut().enumerate() {
                        let turn = if motion >= 3 {
                            total.turning[motion - 3][i]
                        } else {
                            0.0
                        };
                        row[motion] += sign(class, mirror)
                            * turned[i]
                            * (dot(total.kernel[i], answer[motion]) - turn);
                    }
                }
            }
        });
        work
    }

    /// Calls `each` for every patch of the quarter with the place and its three mirrors.
    fn each(
        &self,
        x: f64,
        y: f64,
        mut each: impl FnMut([f64; 3], &Patch, &[[f64; 3]; 6], [f64; 2]),
    ) {
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

fn add(total: &mut [f64; 6], part: [f64; 6], weight: f64) {
    for (sum, value) in total.iter_mut().zip(part) {
        *sum += weight * value;
    }
}

/// Force and moment about the base's centre do the same work as a force on the block: a check on signs.
#[cfg(test)]
mod tests {
    use crate::halfspace::motions::movement;

    #[test]
    fn a_force_on_the_block_does_work_on_each_motion() {
        let (at, force, depth) = ([0.3, -0.2, 0.4], [2.0, 3.0, -5.0], 1.1);
        let arm = at[2] + depth;
        let load = [
            2.0,
            3.0,
            -5.0,
            at[1] * force[2] - arm * force[1],
            arm * force[0] - at[0] * force[2],
            at[0] * force[1] - at[1] * force[0],
        ];
        for (motion, &expected) in load.iter().enumerate() {
            let moved = movement(motion, [at[0], at[1], -at[2]], depth);
            let work = moved[0] * force[0] + moved[1] * force[1] - moved[2] * force[2];
            assert!((work - expected).abs() < 1e-12, "{motion}");
        }
    }
}
