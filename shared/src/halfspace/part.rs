//! Sides that are held in part: `K = K_free + c (K − K_free)`, for the stiffness and for what the ground does to the block.
//!
//! The load under a motion of the block is the sum of two: that of the block as it was solved, `c` times, and that of the same
//! block with free sides, `1 − c` times, as if strips of the sides were held and strips between them not. By Betti's theorem the
//! influence of a weight on the ground is the same sum.

use std::sync::{Arc, Mutex, PoisonError};

use super::places::Places;
use super::surface::Surface;
use super::{Solved, apply_to_matrix, inverse};

/// The last block held in part, by its share's exact bits: the next plan with the same block asks for the same one.
#[derive(Debug, Default)]
pub struct Part(Mutex<Option<(u64, Arc<Solved>)>>);

/// What is remembered says nothing about which solution it is.
impl PartialEq for Part {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

/// A copy begins with an empty memory.
impl Clone for Part {
    fn clone(&self) -> Self {
        Self::default()
    }
}

impl Solved {
    /// The same block of whose side contact a share is lost: `held_ratio` of it is left. None where its free sides cannot be
    /// solved.
    pub fn held_in_part(&self, held_ratio: f64) -> Option<Arc<Self>> {
        let key = held_ratio.to_bits();
        let mut kept = self.part.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, part)) = kept.as_ref().filter(|(bits, _)| *bits == key) {
            return Some(Arc::clone(part));
        }
        let part = Arc::new(self.mixed(held_ratio)?);
        *kept = Some((key, Arc::clone(&part)));
        Some(part)
    }

    fn mixed(&self, held_ratio: f64) -> Option<Self> {
        let free = &self.linings()?.full;
        let parts = [(self, held_ratio), (&**free, 1.0 - held_ratio)];
        let stiffness_over_g: [[f64; 6]; 6] = std::array::from_fn(|i| {
            std::array::from_fn(|j| {
                parts
                    .iter()
                    .map(|(solved, share)| share * solved.stiffness_over_g[i][j])
                    .sum()
            })
        });
        let flexibility_times_g = inverse(&stiffness_over_g)?;
        let surfaces = parts.iter().flat_map(|(solved, share)| {
            // From the part's own motion to its load, and from that to the motion of the whole.
            let carried = apply_to_matrix(&flexibility_times_g, &solved.stiffness_over_g);
            solved.surfaces.iter().map(move |surface| Surface {
                flexibility: apply_to_matrix(&carried, &surface.flexibility),
                weight: share * surface.weight,
                ..surface.clone()
            })
        });
        Some(Self {
            shape: self.shape,
            stiffness_over_g,
            flexibility_times_g,
            surfaces: surfaces.collect(),
            linings: self.linings.clone(),
            places: Places::default(),
            pushed: Places::default(),
            part: Part::default(),
        })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use crate::halfspace::{Shape, solve};

    const CUBE: Shape = Shape {
        length_m: 1.0,
        width_m: 1.0,
        depth_m: 1.0,
        contact_from_m: 0.15,
        contact_to_m: 1.0,
        poisson_ratio: 0.35,
    };

    /// Held wholly it is the block itself, held not at all the one with free sides, in stiffness and under a weight.
    #[test]
    fn the_ends_are_the_two_solutions() {
        let solved = solve::quick(&CUBE).unwrap();
        let free = std::sync::Arc::clone(&solved.linings().unwrap().full);
        for (share, whole) in [(1.0, &solved), (0.0, &*free)] {
            let part = solved.held_in_part(share).unwrap();
            let (found, expected) = (part.under_weight(1.2, 0.3), whole.under_weight(1.2, 0.3));
            for i in 0..6 {
                assert!(
                    (part.stiffness_over_g[i][i] / whole.stiffness_over_g[i][i] - 1.0).abs() < 1e-9
                );
                assert!(
                    (found[i] - expected[i]).abs() < 1e-9 * expected[2].abs(),
                    "{share} {i}"
                );
            }
        }
    }

    /// Less held is softer. A weight beside the block leans it no less for that, within a part in two hundred: a block held down
    /// to a half follows the ground's dish as one that is held wholly, and a free one follows it further.
    #[test]
    fn less_held_is_softer_and_leans_no_less() {
        let solved = solve::quick(&CUBE).unwrap();
        let at = |share: f64| {
            let part = solved.held_in_part(share).unwrap();
            (
                part.stiffness_over_g[4][4],
                part.under_weight(1.0, 0.0)[4].abs(),
            )
        };
        let found: Vec<(f64, f64)> = [1.0, 0.8, 0.6, 0.3, 0.0].map(at).to_vec();
        assert!(
            found
                .windows(2)
                .all(|pair| pair[0].0 > pair[1].0 && pair[1].1 > 0.995 * pair[0].1),
            "{found:?}"
        );
        assert!(found[4].1 > 1.5 * found[0].1);
    }
}
