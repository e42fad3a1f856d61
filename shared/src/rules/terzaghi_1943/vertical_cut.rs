//! Height at which a vertical cut in clay falls.
//! Terzaghi 1943, stability of vertical banks of cohesive soil.

use crate::source::{Source, Standing};
use crate::units::{Length, Pressure, UnitWeight, metre};

/// Source of both formulas.
pub const SOURCE: Source = Source::new(
    "Terzaghi, Theoretical Soil Mechanics",
    "1943",
    "vertical banks in clay",
    Standing::SecondHand,
);

/// Critical height of a whole face, H = 4 c/γ.
///
/// # Source
/// Terzaghi 1943: a plane slip surface in soil without friction, no crack behind the face.
///
/// # Valid for
/// Clay before it has had time to soften; the face falls at this height, so nobody may rely on it.
#[must_use]
pub fn whole(undrained_strength: Pressure, unit_weight: UnitWeight) -> Length {
    metre::new(4.0 * undrained_strength.value / unit_weight.value)
}

/// Critical height of a face with a crack behind it, H = 2.67 c/γ.
///
/// # Source
/// Terzaghi 1943: a crack to half the height leaves two thirds of [`whole`].
///
/// # Valid for
/// As [`whole`]; clay that dries cracks within days.
#[must_use]
pub fn cracked(undrained_strength: Pressure, unit_weight: UnitWeight) -> Length {
    whole(undrained_strength, unit_weight) * (2.0 / 3.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton_per_cubic_metre, kilopascal};

    #[test]
    fn a_crack_takes_a_third() {
        let (strength, weight) = (kilopascal::new(15.0), kilonewton_per_cubic_metre::new(20.0));
        assert!((metre::get(whole(strength, weight)) - 3.0).abs() < 1e-12);
        assert!((metre::get(cracked(strength, weight)) - 2.0).abs() < 1e-12);
    }
}
