//! Height at which a vertical cut in clay falls.
//! Terzaghi 1943, stability of vertical banks of cohesive soil.

use crate::source::Source;
use crate::units::{Length, Pressure, UnitWeight, kilopascal, metre};

/// Source of the formulas: 4 c/γ was read in worked examples that quote the book, the crack's two thirds is remembered.
pub const SOURCE: Source = Source::from_memory(
    "Terzaghi, Theoretical Soil Mechanics",
    "1943",
    "vertical banks in clay, with a crack behind the face",
);
/// Source of the height that a plan relies on.
pub const DESIGN: Source = Source::judgement(
    "strength of a cracked face over 1.5, with 5 kPa of people and tools beside the edge",
);

/// Factor on the clay's strength.
const STRENGTH_FACTOR: f64 = 1.5;
/// What stands and walks beside the edge, kPa.
const BESIDE_KPA: f64 = 5.0;

/// Critical height of a whole face, H = 4 c/γ.
///
/// # Source
/// Terzaghi 1943: a plane slip surface in soil without friction, no crack behind the face.
///
/// # Valid for
/// Clay before it has had time to soften; the face falls at this height, so nobody may rely on it.
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
pub fn cracked(undrained_strength: Pressure, unit_weight: UnitWeight) -> Length {
    whole(undrained_strength, unit_weight) * (2.0 / 3.0)
}

/// Height to which a face of clay may be left for the hours of digging and pouring: H = (2.67 c/1.5 − q)/γ, never less than
/// nought, with q = 5 kPa beside the edge.
///
/// # Source
/// Judgement upon [`cracked`].
///
/// # Valid for
/// Dry clay without fissures, for hours; see [`season_later`] for what is left of it afterwards.
pub fn design_height(undrained_strength: Pressure, unit_weight: UnitWeight) -> Length {
    let beside = kilopascal::new(BESIDE_KPA).value / unit_weight.value;
    let stands = metre::get(cracked(undrained_strength, unit_weight)) / STRENGTH_FACTOR - beside;
    metre::new(stands.max(0.0))
}

/// Critical height of a cracked face a season later, H = 2.67 c' tan(45° + φ/2)/γ.
///
/// # Source
/// Terzaghi 1943, with the drained strength.
///
/// # Valid for
/// Soil with some drained cohesion; without cohesion the height is nought. What a damp sand shows is suction, which sun,
/// rain or a footstep takes away, and is never counted.
pub fn season_later(cohesion: Pressure, friction_deg: f64, unit_weight: UnitWeight) -> Length {
    cracked(cohesion, unit_weight) * (45.0 + friction_deg / 2.0).to_radians().tan()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton_per_cubic_metre;

    #[test]
    fn a_crack_takes_a_third() {
        let (strength, weight) = (kilopascal::new(15.0), kilonewton_per_cubic_metre::new(20.0));
        assert!((metre::get(whole(strength, weight)) - 3.0).abs() < 1e-12);
        assert!((metre::get(cracked(strength, weight)) - 2.0).abs() < 1e-12);
    }
    /// Computed apart: strength in kPa, unit weight in kN/m³, cracked and design heights in m.
    #[test]
    fn heights_of_clay_that_were_computed_apart() {
        for (strength, weight, falls, stands) in [
            (10.0, 16.5, 1.62, 0.78),
            (28.0, 16.5, 4.53, 2.72),
            (40.0, 18.5, 5.77, 3.58),
            (55.0, 18.5, 7.94, 5.02),
            (75.0, 19.0, 10.5, 6.76),
        ] {
            let (strength, weight) = (
                kilopascal::new(strength),
                kilonewton_per_cubic_metre::new(weight),
            );
            // The list is rounded to three figures or to a centimetre.
            let close = |found: Length, height: f64| {
                (metre::get(found) - height).abs() < (height * 6e-3).max(6e-3)
            };
            assert!(close(cracked(strength, weight), falls), "{falls}");
            assert!(close(design_height(strength, weight), stands), "{stands}");
        }
        let (weak, weight) = (kilopascal::new(2.0), kilonewton_per_cubic_metre::new(19.0));
        assert_eq!(metre::get(design_height(weak, weight)), 0.0);
    }

    /// Computed apart: c' 2 and 5 kPa at 25° and 19 kN/m³ are 0.44 and 1.10 m; without cohesion nothing stands.
    #[test]
    fn a_season_takes_most_of_it() {
        for (cohesion, height) in [(2.0, 0.44), (5.0, 1.10), (0.0, 0.0)] {
            let found = season_later(
                kilopascal::new(cohesion),
                25.0,
                kilonewton_per_cubic_metre::new(19.0),
            );
            assert!((metre::get(found) - height).abs() < 6e-3, "{found:?}");
        }
    }
}
