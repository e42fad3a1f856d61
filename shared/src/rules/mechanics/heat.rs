//! A column bent by warmth on one side.
//!
//! Mechanics: a straight temperature gradient bends a free bar to an arc and stresses nothing.

use crate::source::Source;
use crate::units::Length;

/// Where it comes from.
pub const SOURCE: Source = Source::derived(
    "a straight gradient α ΔT/d of strain bends a free column to an arc; α: EN 1993-1-1, 3.2.6",
);

/// Turn of the top in radians, θ = α ΔT L/d.
///
/// # Source
/// Mechanics.
/// # Valid for
/// A straight gradient across the diameter over the whole height: the worst case.
pub fn top_turn_ratio(
    expansion_per_k: f64,
    difference_k: f64,
    height: Length,
    diameter: Length,
) -> f64 {
    let slender: f64 = (height / diameter).value;
    expansion_per_k * difference_k * slender
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{ARCSEC_PER_RADIAN, metre, millimetre};

    /// Basis of this project, computed: 1 K across 200 mm and a metre of height turn the top by 12 arcsec.
    #[test]
    fn one_kelvin_across_a_bare_tube_turns_the_top_twelve_seconds() {
        let turn = top_turn_ratio(12e-6, 1.0, metre::new(1.0), millimetre::new(200.0));
        assert!((turn * ARCSEC_PER_RADIAN - 12.38).abs() < 0.01);
    }
}
