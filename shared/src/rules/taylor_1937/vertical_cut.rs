//! Height at which a vertical face of uncracked clay falls.
//! Taylor 1937, stability number of a vertical bank.

use crate::source::{Source, Standing};
use crate::units::{Length, Pressure, UnitWeight, metre};

/// Where this comes from.
pub const SOURCE: Source = Source::new(
    "Taylor, Stability of earth slopes",
    "1937",
    "stability number 0.261 of a vertical bank",
    Standing::FromMemory,
);

/// One over the stability number 0.261.
const STABILITY: f64 = 3.83;

/// Critical height of an uncracked face, H = 3.83 c/γ, on the worst circular slip surface.
///
/// # Source
/// Taylor 1937; limit analysis has 3.77 to 3.78 (from memory).
///
/// # Valid for
/// Clay without cracks, for hours or days, before it has had time to soften.
#[must_use]
pub fn critical_height(undrained_strength: Pressure, unit_weight: UnitWeight) -> Length {
    metre::new(STABILITY * undrained_strength.value / unit_weight.value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton_per_cubic_metre, kilopascal};

    /// Computed apart for strengths of 10 to 75 kPa and unit weights of 16.5 to 19 kN/m³.
    #[test]
    fn heights_that_were_computed_apart() {
        for (strength, weight, height) in [
            (10.0, 16.5, 2.32),
            (28.0, 16.5, 6.50),
            (40.0, 18.5, 8.28),
            (55.0, 18.5, 11.4),
            (75.0, 19.0, 15.1),
        ] {
            let found = critical_height(
                kilopascal::new(strength),
                kilonewton_per_cubic_metre::new(weight),
            );
            assert!((metre::get(found) / height - 1.0).abs() < 4e-3, "{found:?}");
        }
    }
}
