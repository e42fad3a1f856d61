//! What one mesh says of a block: all that the influence of loads on the ground is found from.

use super::mesh::Patch;

/// Tractions or movements of the quarter's patches under a unit of each motion.
pub type Answers = Vec<[[f64; 3]; 6]>;

/// Patches of a quarter with their answers, and the flexibility that belongs to the same mesh: what each mesh says of the
/// block's motion is closer to the limit than its tractions or its stiffness alone.
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    pub(super) patches: Vec<Patch>,
    pub(super) answers: Answers,
    pub(super) flexibility: [[f64; 6]; 6],
    /// What this mesh counts for on the way to the limit.
    pub(super) weight: f64,
}
