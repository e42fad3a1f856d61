//! A force on the surface seen from a quarter's patches: the four mirrors of its place go through the same arithmetic side
//! by side, and a motion takes of them what its symmetry asks.

use super::assembly::{REACH, far, offset, rule, split};
use super::mesh::Patch;
use super::surface::Surface;

/// One value for the place, its mirror across x, across y, and across both.
pub type Four = [f64; 4];

/// Which way a unit force on the surface points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Force {
    /// Along x.
    East,
    /// Along y.
    North,
    /// A weight.
    Down,
}

/// What a unit force on the surface does inside the ground, shear modulus one, `x` and `y` leading from the force.
pub trait Field {
    /// The way of the force.
    const FORCE: Force;

    /// Displacement along x, y and down at a depth.
    fn displacement(x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3];

    /// Traction on a plane across x (0) or y (1), its normal against that axis.
    fn traction(axis: usize, x: &Four, y: &Four, z: f64, nu: f64) -> [Four; 3];
}

/// Work of a unit force at a place, neither of its coordinates negative, on a unit of each of the block's motions.
pub fn work<F: Field>(surface: &Surface, x: f64, y: f64, nu: f64) -> [f64; 6] {
    let place = [x, y, 0.0];
    let mut work = [0.0; 6];
    for (patch, answer) in surface.patches.iter().zip(&surface.answers) {
        let mut sums = Sums::default();
        if far(patch, place) {
            sums.add_point::<F>(place, patch.centre, patch, patch.area(), nu);
        } else {
            split(patch, place, REACH, 0, &mut |piece| {
                sums.add::<F>(place, piece, patch, nu)
            });
        }
        sums.work(F::FORCE, answer, patch.free, &mut work);
    }
    work
}

/// The force's share through one patch: displacement or, of a free one, traction, and what the turns do with that.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    answer: [Four; 3],
    turning: [Four; 3],
}

impl Sums {
    fn add<F: Field>(&mut self, place: [f64; 3], piece: &Patch, patch: &Patch, nu: f64) {
        let (u, v) = piece.sides();
        let [dx, dy, dz] = offset(piece.centre, place);
        let far = (dx * dx + dy * dy + dz * dz).sqrt();
        for &(s, ws) in rule(piece.half[u], far) {
            for &(t, wt) in rule(piece.half[v], far) {
                let mut at = piece.centre;
                at[u] += s * piece.half[u];
                at[v] += t * piece.half[v];
                let weight = ws * wt * piece.half[u] * piece.half[v];
                self.add_point::<F>(place, at, patch, weight, nu);
            }
        }
    }

    fn add_point<F: Field>(
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
            let part = F::displacement(&x, &y, at[2], nu);
            (0..3).for_each(|i| add(&mut self.answer[i], &part[i], weight));
            return;
        }
        let part = F::traction(patch.axis, &x, &y, at[2], nu);
        (0..3).for_each(|i| add(&mut self.answer[i], &part[i], -weight));
        let [x, y, z] = offset(at, patch.centre).map(|value| -weight * value);
        let turns = [(1, z, 2, -y), (2, x, 0, -z), (1, x, 0, -y)];
        for (turning, (i, a, j, b)) in self.turning.iter_mut().zip(turns) {
            add(turning, &part[i], a);
            add(turning, &part[j], b);
        }
    }

    /// Adds the work on each motion: the mirrors' sums with the signs of the motion's class, and with that of the force,
    /// which a mirror across its own way turns round.
    fn work(&self, force: Force, answer: &[[f64; 3]; 6], free: bool, work: &mut [f64; 6]) {
        let even = |[a, b, c, d]: Four| a + b + c + d;
        let odd_x = |[a, b, c, d]: Four| a - b + c - d;
        let odd_y = |[a, b, c, d]: Four| a + b - c - d;
        let odd = |[a, b, c, d]: Four| a - b - c + d;
        let dot = |sum: [f64; 3], answer: [f64; 3]| {
            sum[0] * answer[0] + sum[1] * answer[1] + sum[2] * answer[2]
        };
        let sums = self.answer;
        let (evens, odds) = (sums.map(even), sums.map(odd));
        let (odds_x, odds_y) = (sums.map(odd_x), sums.map(odd_y));
        // Along x with the turn about y, along y with the turn about x, down, and the turn about the upright.
        let [x, y, down, about] = match force {
            Force::East => [evens, odds, odds_x, odds_y],
            Force::North => [odds, evens, odds_y, odds_x],
            Force::Down => [odds_x, odds_y, evens, odds],
        };
        for (motion, sum) in [x, y, down, y, x, about].into_iter().enumerate() {
            work[motion] += dot(sum, answer[motion]);
        }
        if free {
            let turned: [fn(Four) -> f64; 3] = match force {
                Force::East => [odd, even, odd_y],
                Force::North => [even, odd, odd_x],
                Force::Down => [odd_y, odd_x, odd],
            };
            for (turn, sum) in turned.into_iter().enumerate() {
                work[3 + turn] -= sum(self.turning[turn]);
            }
        }
    }
}

fn add(total: &mut Four, part: &Four, weight: f64) {
    for (sum, value) in total.iter_mut().zip(part) {
        *sum += weight * value;
    }
}
