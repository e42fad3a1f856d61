//! A rigid block in an elastic half-space: stiffness, contact, and where standing tilts it.

pub mod assembly;
pub mod gradient;
pub mod kernel;
pub mod mesh;
pub mod motions;
pub mod rectangle;
pub mod solve;

use std::sync::Arc;

/// Shape of a block and its contact with the ground: all that a solution over the shear modulus depends on. SI, metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Length along x.
    pub length_m: f64,
    /// Width along y.
    pub width_m: f64,
    /// Depth of the base below ground.
    pub depth_m: f64,
    /// Depth below ground from which the soil is hard against the sides.
    pub contact_from_m: f64,
    /// Depth to which it is.
    pub contact_to_m: f64,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
}

/// A solved block: stiffness over G and what is needed for the influence of loads on the ground.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    /// Stiffness about the base's centre over G, rows and columns in the order x, y, z, about x, about y, about z.
    pub stiffness_over_g: [[f64; 6]; 6],
}

/// Where solved shapes are kept.
pub trait Shelf: Sync {
    /// The solution kept for a shape.
    fn get(&self, shape: &Shape) -> Option<Arc<Solved>>;
    /// Keeps a solution.
    fn put(&self, shape: &Shape, solved: Arc<Solved>);
}

/// Keeps nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoShelf;

impl Shelf for NoShelf {
    fn get(&self, _shape: &Shape) -> Option<Arc<Solved>> {
        None
    }
    fn put(&self, _shape: &Shape, _solved: Arc<Solved>) {}
}
