//! Stands: what a weight at a place tilts, from the solved half-space.

use crate::halfspace::Solved;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::motion::influence::Influence;

impl Influence for Solved {
    /// The load that does to the block what a newton at a place does: `K q`, whatever the modulus.
    fn per_newton(&self, x_m: f64, y_m: f64) -> [f64; 6] {
        let motion = self.under_weight(x_m, y_m);
        self.stiffness_over_g.map(|row| row.iter().zip(motion).map(|(k, q)| k * q).sum())
    }
}

impl GroundStiffness {
    /// What a weight on the ground does to the block, where that is solved.
    #[must_use]
    pub fn influence(&self) -> Option<&dyn Influence> {
        self.solved.as_deref().map(|solved| solved as &dyn Influence)
    }
}
