//! The diagonal of a square block: x and y changed round, patch for patch.

use super::kernel::Kernel;
use super::mesh::Patch;
use super::motions::MOTIONS;
use super::seen::Seen;
use super::surface::Answers;

/// Each patch's mirror across the diagonal; none where the block is not square.
pub fn partners(patches: &[Patch]) -> Option<Vec<usize>> {
    patches
        .iter()
        .map(|patch| patches.iter().position(|other| *other == mirrored(patch)))
        .collect()
}

fn mirrored(patch: &Patch) -> Patch {
    let swap = |[x, y, z]: [f64; 3]| [y, x, z];
    Patch {
        centre: swap(patch.centre),
        half: swap(patch.half),
        axis: turned(patch.axis),
        free: patch.free,
    }
}

fn turned(axis: usize) -> usize {
    [1, 0, 2][axis]
}

/// What the mirrored point sees of the mirrored patch. The second and third class change places; a turn is right-handed and
/// changes its sign as well.
pub fn across(seen: &Seen) -> Seen {
    let [both, along_x, along_y, neither] = &seen.classes;
    let classes = [both, along_y, along_x, neither].map(|kernel| swapped(kernel, 1.0));
    Seen {
        classes,
        turning: swapped(&seen.turning, -1.0),
    }
}

/// Motions that are those of x and about y in the mirror: along y, and about x.
pub const MIRRORED: &[usize] = MOTIONS[2];

/// Puts the answers for these motions from those that they mirror.
pub fn mirror(answers: &mut Answers, partners: &[usize]) {
    for (k, &partner) in partners.iter().enumerate() {
        let [x, y, z] = answers[k][0];
        answers[partner][1] = [y, x, z];
        let [x, y, z] = answers[k][4];
        answers[partner][3] = [-y, -x, -z];
    }
}

fn swapped([x, y, z]: &Kernel<f64>, sign: f64) -> Kernel<f64> {
    let row = |[a, b, c]: &[f64; 3]| [sign * b, sign * a, sign * c];
    [row(y), row(x), row(z)]
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::halfspace::assembly::with_partners;
    use crate::halfspace::{Shape, mesh, solve};

    fn patches(width_m: f64, from: f64, to: f64) -> Vec<Patch> {
        let shape = Shape {
            length_m: 1.1,
            width_m,
            depth_m: 0.8,
            contact_from_m: from,
            contact_to_m: to,
            poisson_ratio: 0.3,
        };
        mesh::quarter(&shape, solve::meshes(&shape, 40)[1])
    }

    #[test]
    fn half_of_a_square_blocks_equations_are_the_other_half() {
        for (from, to) in [(0.0, 0.8), (0.3, 0.8), (0.8, 0.8), (0.2, 0.6)] {
            let patches = patches(1.1, from, to);
            let partners = partners(&patches).unwrap();
            let (half, all) = (
                with_partners(&patches, 0.3, Some(&partners)),
                with_partners(&patches, 0.3, None),
            );
            for (a, b) in half.matrices.iter().zip(&all.matrices) {
                assert!(
                    (a - b).amax() < 1e-12 * b.amax(),
                    "{from} {to}: {}",
                    (a - b).amax()
                );
            }
            for (a, b) in half
                .turning
                .as_flattened()
                .as_flattened()
                .iter()
                .zip(all.turning.as_flattened().as_flattened())
            {
                assert!((a - b).abs() < 1e-11, "{from} {to}: {a} {b}");
            }
        }
    }

    #[test]
    fn mirrored_answers_are_those_that_solving_gives() {
        for (from, to) in [(0.0, 0.8), (0.3, 0.8), (0.8, 0.8)] {
            let shape = Shape {
                length_m: 1.1,
                width_m: 1.1,
                depth_m: 0.8,
                contact_from_m: from,
                contact_to_m: to,
                poisson_ratio: 0.3,
            };
            let patches = patches(1.1, from, to);
            let partners = partners(&patches);
            assert!(partners.is_some());
            let of = |partners| solve::raw_with(&shape, patches.clone(), partners).unwrap();
            let (mirrored, whole) = (of(partners), of(None));
            let all = |raw: &solve::Raw| raw.answers.as_flattened().as_flattened().to_vec();
            for (a, b) in all(&mirrored).iter().zip(all(&whole)) {
                assert!(
                    (a - b).abs() < 1e-9 * (1.0 + b.abs()),
                    "{from} {to}: {a} {b}"
                );
            }
        }
    }

    #[test]
    fn an_oblong_block_has_no_diagonal() {
        assert!(partners(&patches(1.2, 0.0, 0.8)).is_none());
    }
}
