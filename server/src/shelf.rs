//! Solved block shapes, kept between requests in a bounded cache.

use std::sync::Arc;

use moka::sync::Cache;
use stillground::halfspace::{Shape, Shelf, Solved};

/// Most shapes kept; a solved shape takes some tens of kilobytes.
const MOST_SHAPES: u64 = 256;

/// The shelf of the service: the most useful shapes stay, the others are solved again.
#[derive(Clone)]
pub struct MemoryShelf {
    kept: Cache<[u64; 6], Arc<Solved>>,
}

impl MemoryShelf {
    /// An empty shelf.
    #[must_use]
    pub fn new() -> Self {
        Self::holding(MOST_SHAPES)
    }

    /// An empty shelf for so many shapes.
    #[must_use]
    pub fn holding(most: u64) -> Self {
        Self {
            kept: Cache::new(most),
        }
    }
}

impl Default for MemoryShelf {
    fn default() -> Self {
        Self::new()
    }
}

impl Shelf for MemoryShelf {
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>> {
        self.kept.get(&key(shape))
    }

    fn put(&self, shape: &Shape, solved: Arc<Solved>) {
        self.kept.insert(key(shape), solved);
    }
}

/// The shape's exact bits: two shapes that differ in the last digit are solved apart, so that answers never depend on
/// what was asked before.
fn key(shape: &Shape) -> [u64; 6] {
    [
        shape.length_m,
        shape.width_m,
        shape.depth_m,
        shape.contact_from_m,
        shape.contact_to_m,
        shape.poisson_ratio,
    ]
    .map(f64::to_bits)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHAPE: Shape = Shape {
        length_m: 1.0,
        width_m: 1.0,
        depth_m: 0.8,
        contact_from_m: 0.0,
        contact_to_m: 0.8,
        poisson_ratio: 0.3,
    };

    #[test]
    fn a_shape_is_found_again_and_another_is_not() {
        let shelf = MemoryShelf::new();
        shelf.put(
            &SHAPE,
            Arc::new(stillground::halfspace::solve(&SHAPE).unwrap()),
        );
        assert!(shelf.get(&SHAPE).is_some());
        assert!(
            shelf
                .get(&Shape {
                    depth_m: 0.81,
                    ..SHAPE
                })
                .is_none()
        );
    }
}
