//! From a shape to its solution: four small systems, tractions, and the stiffness that they add up to.

use std::sync::OnceLock;

use nalgebra::{DMatrix, Matrix6};

use super::assembly::{self, Equations};
use super::diagonal;
use super::mesh::{self, Fineness, Lines, Patch};
use super::motions::{MOTIONS, movement};
use super::part::Part;
use super::places::Places;
use super::surface::{Answers, Surface};
use super::{Shape, Solved, blocks, inverse};

/// Most patches of the quarter on the finer mesh: what a core solves within the time a page may take.
const MOST_PATCHES: usize = 140;

/// The same where a few per cent are enough.
const QUICK_PATCHES: usize = 80;

/// Patches, answers and stiffness.
pub struct Raw {
    /// The quarter's patches.
    pub patches: Vec<Patch>,
    /// Traction of each patch in contact, movement of each free one, for the six motions.
    pub answers: Answers,
    /// Stiffness over G, the two sides of the diagonal averaged.
    pub stiffness: [[f64; 6]; 6],
    /// The same as the tractions give it: row by row the force of every motion.
    pub found: [[f64; 6]; 6],
    /// How far apart they were, over the root of the diagonal's two entries; the largest.
    pub asymmetry_ratio: f64,
}

/// The two meshes of a shape, the coarser first, the finer with at most so many patches. Towards the edge between a bonded
/// base and a free wall the traction grows faster than at an edge bonded on both sides, so that a free wall wants a
/// stronger grading, and two meshes of the same shape to find the limit from.
pub fn meshes(shape: &Shape, most_patches: usize) -> [Fineness; 2] {
    let full = shape.contact_from_m <= 0.0 && shape.contact_to_m >= shape.depth_m;
    let of = |cells: f64| match (full, shape.depth_m > 0.0) {
        (true, true) => Fineness {
            cells,
            lines: Lines::Any,
            base: 2.0,
            along: 2.0,
            down: 2.0,
        },
        (true, false) => Fineness {
            cells,
            lines: Lines::Any,
            base: 1.0,
            along: 1.0,
            down: 1.0,
        },
        (false, _) => Fineness {
            cells,
            lines: Lines::Even,
            base: 4.0,
            along: 3.0,
            down: 4.0,
        },
    };
    let mut cells = if full { 5.0 } else { 6.0 };
    while cells > 2.0 && mesh::quarter(shape, of(cells)).len() > most_patches {
        cells -= 0.25;
    }
    let coarse = if full {
        of(cells / 1.5)
    } else {
        Fineness {
            lines: Lines::Half,
            ..of(cells)
        }
    };
    [coarse, of(cells)]
}

/// Solves a shape on two meshes and takes the stiffness to the limit of ever finer ones: its error falls with the square
/// of a patch's side, that is with one over the number of patches.
pub fn solve(shape: &Shape) -> Option<Solved> {
    let [coarse, fine] = meshes(shape, MOST_PATCHES);
    solve_on(shape, coarse, fine)
}

/// The same within a few per cent, for comparisons.
pub fn quick(shape: &Shape) -> Option<Solved> {
    let [coarse, fine] = meshes(shape, QUICK_PATCHES);
    solve_on(shape, coarse, fine)
}

/// How far ahead of the finer mesh the limit lies, in steps from the coarser one.
fn ahead(shape: &Shape, coarse: usize, fine: usize) -> f64 {
    let ratio = fine as f64 / coarse as f64;
    // On the surface the even mesh's error falls with the side itself.
    1.0 / (if shape.depth_m > 0.0 {
        ratio
    } else {
        ratio.sqrt()
    } - 1.0)
}

/// Solves on two given meshes, the coarser first.
pub fn solve_on(shape: &Shape, coarse: Fineness, fine: Fineness) -> Option<Solved> {
    let (coarse, fine) = (raw(shape, coarse)?, raw(shape, fine)?);
    let ahead = ahead(shape, coarse.patches.len(), fine.patches.len());
    let limit = std::array::from_fn(|i| {
        std::array::from_fn(|j| {
            fine.stiffness[i][j] + ahead * (fine.stiffness[i][j] - coarse.stiffness[i][j])
        })
    });
    // Ground gives way to every push: a matrix that would push back is the mesh's failure, and no figure is taken from it.
    let _ = Matrix6::from_fn(|i, j| limit[i][j]).cholesky()?;
    let flexibility_times_g = inverse(&limit)?;
    let surfaces = vec![
        Surface::new(coarse, -ahead)?,
        Surface::new(fine, 1.0 + ahead)?,
    ];
    let finite = flexibility_times_g
        .iter()
        .flatten()
        .all(|value| value.is_finite());

    finite.then_some(Solved {
        shape: *shape,
        stiffness_over_g: limit,
        flexibility_times_g,
        surfaces,
        linings: OnceLock::new(),
        places: Places::default(),
        pushed: Places::default(),
        part: Part::default(),
    })
}

impl Surface {
    fn new(raw: Raw, weight: f64) -> Option<Self> {
        // Where a far load moves all the ground alike, the tractions' work is the transpose of what they add up to, and only
        // its inverse gives that movement back without a turn.
        let transposed: [[f64; 6]; 6] =
            std::array::from_fn(|i| std::array::from_fn(|j| raw.found[j][i]));
        Some(Self {
            flexibility: inverse(&transposed)?,
            patches: raw.patches,
            answers: raw.answers,
            weight,
        })
    }
}

/// Solves on a mesh of the given fineness; none when the numbers fail.
pub fn raw(shape: &Shape, fineness: Fineness) -> Option<Raw> {
    let patches = mesh::quarter(shape, fineness);
    let partners = diagonal::partners(&patches);
    raw_with(shape, patches, partners)
}

/// The same on patches whose mirrors across the diagonal are known, where there are any.
pub(super) fn raw_with(
    shape: &Shape,
    patches: Vec<Patch>,
    partners: Option<Vec<usize>>,
) -> Option<Raw> {
    let Equations { matrices, turning } =
        assembly::with_partners(&patches, shape.poisson_ratio, partners.as_deref());
    let mut answers: Answers = vec![[[0.0; 3]; 6]; patches.len()];
    for (matrix, motions) in matrices.into_iter().zip(MOTIONS) {
        if partners.is_some() && motions == diagonal::MIRRORED {
            continue;
        }
        let asked = DMatrix::from_fn(matrix.nrows(), motions.len(), |row, column| {
            let motion = motions[column];
            let turn = if motion >= 3 {
                turning[row / 3][motion - 3][row % 3]
            } else {
                0.0
            };
            movement(motion, patches[row / 3].centre, shape.depth_m)[row % 3] + turn
        });
        let solution = answer(matrix, &patches, asked)?;
        for (column, &motion) in motions.iter().enumerate() {
            for (k, answer) in answers.iter_mut().enumerate() {
                answer[motion] = std::array::from_fn(|i| solution[(3 * k + i, column)]);
            }
        }
    }
    if let Some(partners) = partners {
        diagonal::mirror(&mut answers, &partners);
    }
    let found = stiffness(&patches, &answers, shape.depth_m);
    let stiffness =
        std::array::from_fn(|i| std::array::from_fn(|j| 0.5 * (found[i][j] + found[j][i])));
    let apart = |(i, j): (usize, usize)| {
        ((found[i][j] - found[j][i]) / (found[i][i] * found[j][j]).sqrt()).abs()
    };
    let asymmetry_ratio = apart((0, 4)).max(apart((1, 3)));
    Some(Raw {
        patches,
        answers,
        stiffness,
        found,
        asymmetry_ratio,
    })
}

fn answer(
    mut matrix: DMatrix<f64>,
    patches: &[Patch],
    mut asked: DMatrix<f64>,
) -> Option<DMatrix<f64>> {
    if patches.iter().any(|patch| patch.free) {
        return blocks::general(matrix, asked);
    }
    // Weighted with the patches' areas the matrix is symmetric but for the quadrature; its symmetric half is solved.
    let areas: Vec<f64> = (0..matrix.nrows())
        .map(|row| patches[row / 3].area())
        .collect();
    for column in 0..areas.len() {
        for row in column..areas.len() {
            let (below, above) = (
                areas[row] * matrix[(row, column)],
                areas[column] * matrix[(column, row)],
            );
            matrix[(row, column)] = 0.5 * (below + above);
        }
    }
    for (mut row, area) in asked.row_iter_mut().zip(&areas) {
        row *= *area;
    }
    blocks::symmetric(matrix, asked)
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
