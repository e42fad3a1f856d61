//! Places whose influence was found, kept with a solution: stands, walk, card and map ask for the same ones again and
//! again, and so does the next plan with the same block.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use super::push::{East, North};
use super::weight::Weight;
use super::{Shape, Solved};

/// Most places kept with one solution, some seventy bytes each: a floor's map and a long walk.
const MOST_PLACES: usize = 896;

/// The block's motions under unit forces at places with neither coordinate negative, by the coordinates' exact bits.
#[derive(Debug)]
pub struct Places<T>(Mutex<BTreeMap<[u64; 2], T>>);

impl<T: Copy> Places<T> {
    fn get(&self, key: [u64; 2]) -> Option<T> {
        self.0
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .get(&key)
            .copied()
    }

    fn put(&self, key: [u64; 2], motion: T) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if kept.len() >= MOST_PLACES {
            kept.clear();
        }
        let _ = kept.insert(key, motion);
    }
}

impl<T> Default for Places<T> {
    fn default() -> Self {
        Self(Mutex::default())
    }
}

/// What is remembered says nothing about which solution it is.
impl<T> PartialEq for Places<T> {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

/// A copy begins with an empty memory.
impl<T> Clone for Places<T> {
    fn clone(&self) -> Self {
        Self::default()
    }
}

impl Solved {
    /// Motion under a unit weight beside the block, from the place that stands for it in the block's symmetry.
    pub(super) fn beside(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        let (x, y) = (x_m.abs(), y_m.abs());
        // A square block looks the same across its diagonals.
        let swapped = square(&self.shape) && x < y;
        let [u, v] = if swapped { [y, x] } else { [x, y] };
        let key = [u.to_bits(), v.to_bits()];
        let found = self.places.get(key).unwrap_or_else(|| {
            let motion = self.beside_quarter::<Weight>(u, v);
            self.places.put(key, motion);
            motion
        });
        mirrored(
            if swapped {
                across_diagonal(found)
            } else {
                found
            },
            x_m,
            y_m,
        )
    }

    /// Motions under a unit force along x and under one along y beside the block.
    pub(super) fn pushed_beside(&self, x_m: f64, y_m: f64) -> [[f64; 6]; 2] {
        let (x, y) = (x_m.abs(), y_m.abs());
        let key = [x.to_bits(), y.to_bits()];
        let [east, north] = self.pushed.get(key).unwrap_or_else(|| {
            let motions = [
                self.beside_quarter::<East>(x, y),
                self.beside_quarter::<North>(x, y),
            ];
            self.pushed.put(key, motions);
            motions
        });
        // A mirror across its own way turns a force round.
        let turned = |motion, way: f64| mirrored(motion, x_m, y_m).map(|m| m * 1f64.copysign(way));
        [turned(east, x_m), turned(north, y_m)]
    }
}

fn square(shape: &Shape) -> bool {
    shape.length_m.to_bits() == shape.width_m.to_bits()
}

/// Mirrored back to where the place is: a motion follows the signs of its class.
fn mirrored(motion: [f64; 6], x: f64, y: f64) -> [f64; 6] {
    let (east, north) = (1f64.copysign(x), 1f64.copysign(y));
    let signs = [east, north, 1.0, north, east, east * north];
    std::array::from_fn(|i| motion[i] * signs[i])
}

/// With x and y changed round; a turn is right-handed and so changes its sign as well.
fn across_diagonal([x, y, z, about_x, about_y, about_z]: [f64; 6]) -> [f64; 6] {
    [y, x, z, -about_y, -about_x, -about_z]
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::halfspace::solve;

    fn solved(length_m: f64) -> Solved {
        let shape = Shape {
            length_m,
            width_m: 1.0,
            depth_m: 0.8,
            contact_from_m: 0.2,
            contact_to_m: 0.8,
            poisson_ratio: 0.3,
        };
        solve::quick(&shape).unwrap()
    }

    /// A square block's diagonal changes rounding only.
    #[test]
    fn across_the_diagonal_a_place_is_what_it_is_alone() {
        let solved = solved(1.0);
        for [x, y] in [[0.4, 0.9], [0.0, 1.1], [1.0, 1.7]] {
            let (kept, alone) = (
                solved.under_weight(x, y),
                solved.beside_quarter::<Weight>(x, y),
            );
            for i in 0..6 {
                assert!(
                    (kept[i] - alone[i]).abs() < 1e-12 * alone[2].abs(),
                    "{x} {y} {i}: {kept:?} {alone:?}"
                );
            }
        }
    }

    /// The general kernels know nothing of these symmetries; their rules of integration differ a little.
    #[test]
    fn mirrored_places_move_the_block_as_the_general_kernels_say() {
        for length in [1.0, 1.3] {
            let solved = solved(length);
            for [x, y] in [
                [0.9, 0.4],
                [-0.9, 0.4],
                [0.4, -0.9],
                [-0.4, -1.2],
                [1.1, 0.0],
                [0.0, -1.1],
                [-1.0, 1.0],
            ] {
                let general = solved.under_ground_forces(x, y);
                let [east, north] = solved.under_pushes(x, y);
                let kept = [east, north, solved.under_weight(x, y)];
                for (force, (kept, general)) in kept.iter().zip(general).enumerate() {
                    for i in 0..6 {
                        assert!(
                            (kept[i] - general[i]).abs() < 3e-3 * general[force].abs(),
                            "{length} {x} {y} {force} {i}: {kept:?} {general:?}"
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn memory_is_bounded_and_gives_back_what_it_took() {
        let solved = solved(1.3);
        let first = solved.under_weight(0.8, 0.3);
        assert_eq!(first, solved.under_weight(0.8, 0.3));
        for i in 0..2000 {
            solved.places.put([i, 0], [0.0; 6]);
            assert!(solved.places.0.lock().unwrap().len() <= MOST_PLACES);
        }
        assert_eq!(first, solved.under_weight(0.8, 0.3));
    }
}
