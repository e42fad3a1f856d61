//! From a shape to its solution: four small systems, tractions, and the stiffness that they add up to.

use nalgebra::{DMatrix, DVector};

use super::mesh::{self, Fineness, Patch};
use super::motions::{MOTIONS, movement};
use super::{Shape, assembly};

/// Tractions or movements of the quarter's patches under a unit of each motion.
pub type Answers = Vec<[[f64; 3]; 6]>;

/// Patches, answers and stiffness.
pub struct Raw {
    /// The quarter's patches.
    pub patches: Vec<Patch>,
    /// Traction of each patch in contact, movement of each free one, for the six motions.
    pub answers: Answers,
    /// Stiffness over G, not yet made symmetric.
    pub stiffness: [[f64; 6]; 6],
}

/// Solves on a mesh of the given fineness; none when the numbers fail.
pub fn raw(shape: &Shape, fineness: Fineness) -> Option<Raw> {
    let patches = mesh::quarter(shape, fineness);
    let matrices = assembly::matrices(&patches, shape.poisson_ratio);
    let mut answers: Answers = vec![[[0.0; 3]; 6]; patches.len()];
    for (matrix, motions) in matrices.into_iter().zip(MOTIONS) {
        let solution = solve(matrix, &patches, motions, shape.depth_m)?;
        for (column, &motion) in motions.iter().enumerate() {
            for (k, answer) in answers.iter_mut().enumerate() {
                answer[motion] = std::array::from_fn(|i| solution[(3 * k + i, column)]);
            }
        }
    }
    let stiffness = stiffness(&patches, &answers, shape.depth_m);
    Some(Raw { patches, answers, stiffness })
}

fn solve(matrix: DMatrix<f64>, patches: &[Patch], motions: &[usize], depth: f64) -> Option<DMatrix<f64>> {
    let asked = DMatrix::from_fn(matrix.nrows(), motions.len(), |row, column| movement(motions[column], patches[row / 3].centre, depth)[row % 3]);
    if patches.iter().any(|patch| patch.free) {
        return matrix.lu().solve(&asked);
    }
    // Weighted with the patches' areas the matrix is symmetric but for the quadrature; its symmetric half is solved.
    let areas = DVector::from_fn(matrix.nrows(), |row, _| patches[row / 3].area());
    let weighted = DMatrix::from_fn(matrix.nrows(), matrix.ncols(), |i, j| 0.5 * (areas[i] * matrix[(i, j)] + areas[j] * matrix[(j, i)]));
    let asked = DMatrix::from_fn(asked.nrows(), asked.ncols(), |i, j| areas[i] * asked[(i, j)]);
    weighted.cholesky().map(|factor| factor.solve(&asked))
}

/// Forces and moments on the ground for a unit of each motion: four quarters of the tractions' sums.
fn stiffness(patches: &[Patch], answers: &Answers, depth: f64) -> [[f64; 6]; 6] {
    let mut total = [[0.0; 6]; 6];
    for (patch, answer) in patches.iter().zip(answers).filter(|(patch, _)| !patch.free) {
        for motions in MOTIONS {
            for &i in motions {
                let arm = movement(i, patch.centre, depth);
                for &j in motions {
                    let work: f64 = (0..3).map(|axis| arm[axis] * answer[j][axis]).sum();
                    total[i][j] += 4.0 * patch.area() * work;
                }
            }
        }
    }
    total
}
