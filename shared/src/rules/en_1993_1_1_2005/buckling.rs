//! Flexural buckling of a member in compression.
//!
//! EN 1993-1-1:2005, 6.3.1.

use std::f64::consts::PI;

use crate::source::Source;
use crate::units::{BendingStiffness, Force, Length, metre, newton, newton_square_metre};

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory("EN 1993-1-1", "2005", "6.3.1.2");
/// Imperfection factor of curve c, cold formed tube: the lower of the two kinds sold (curve a, 0.21, for hot finished).
pub const ALPHA_FACTOR: f64 = 0.49;

/// Critical force of a cantilever column, N_cr = π² EI/(2L)².
///
/// # Source
/// Euler; EN 1993-1-1:2005, 6.3.1.3 with a buckling length of twice the height.
/// # Valid for
/// A foot held fast; a soft joint lowers it.
pub fn critical(bending: BendingStiffness, height: Length) -> Force {
    newton::new(PI.powi(2) * newton_square_metre::get(bending) / (2.0 * metre::get(height)).powi(2))
}

/// Reduction factor χ from the slenderness λ̄ = √(A f_y/N_cr).
///
/// # Source
/// EN 1993-1-1:2005, (6.49).
/// # Valid for
/// Classes 1 to 3.
pub fn reduction_factor(slenderness_ratio: f64, imperfection_factor: f64) -> f64 {
    if slenderness_ratio <= 0.2 {
        return 1.0;
    }
    let phi =
        0.5 * (1.0 + imperfection_factor * (slenderness_ratio - 0.2) + slenderness_ratio.powi(2));
    (1.0 / (phi + (phi * phi - slenderness_ratio.powi(2)).max(0.0).sqrt())).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// EN 1993-1-1, Table 6.1 and Figure 6.4: curve c gives 0.54 at a slenderness of 1, curve a 0.67.
    #[test]
    fn curves_pass_through_their_known_points() {
        assert!((reduction_factor(1.0, 0.49) - 0.540).abs() < 0.001);
        assert!((reduction_factor(1.0, 0.21) - 0.666).abs() < 0.001);
        assert_eq!(reduction_factor(0.1, 0.49), 1.0);
    }
}
