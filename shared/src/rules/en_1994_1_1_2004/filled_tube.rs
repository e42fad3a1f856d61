//! A tube filled with concrete.
//!
//! EN 1994-1-1:2004, 6.7.3.3.

use crate::source::Source;
use crate::units::{BendingStiffness, Pressure, SecondMoment};

/// Where it comes from.
pub const SOURCE: Source = Source::from_memory("EN 1994-1-1", "2004", "6.7.3.3, (6.40)");
/// Share K_e of the concrete's stiffness that counts.
pub const CONCRETE_FACTOR: f64 = 0.6;

/// Effective bending stiffness, (EI)eff = E_a I_a + K_e E_cm I_c.
///
/// # Source
/// EN 1994-1-1:2004, (6.40).
/// # Valid for
/// Concrete that fills the tube and sticks to it; a fill that has shrunk from the wall gives less.
pub fn bending_stiffness(
    steel: Pressure,
    steel_moment: SecondMoment,
    concrete: Pressure,
    concrete_moment: SecondMoment,
) -> BendingStiffness {
    steel * steel_moment + concrete * concrete_moment * CONCRETE_FACTOR
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{megapascal, millimetre_to_the_fourth, newton_square_metre};

    #[test]
    fn concrete_adds_six_tenths_of_its_stiffness() {
        let (e, i) = (
            megapascal::new(30_000.0),
            millimetre_to_the_fourth::new(1e8),
        );
        let ei = bending_stiffness(
            megapascal::new(210_000.0),
            millimetre_to_the_fourth::new(0.0),
            e,
            i,
        );
        assert!((newton_square_metre::get(ei) - 1.8e6).abs() < 1e-3);
    }
}
