//! What a point of the block sees of a patch and its mirrors.

use super::kernel::Kernel;

/// A patch and its three mirrors seen from a point.
pub struct Seen {
    /// The kernel of each class: the sum over the mirrors with the signs of the class.
    pub classes: [Kernel<f64>; 4],
    /// What the turns add.
    pub turning: Kernel<f64>,
}
