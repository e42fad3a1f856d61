//! Small-strain shear modulus from the void ratio and the mean effective stress.
//! Hardin and Richart 1963 (rounded sand); Hardin and Black 1968 (angular sand and clay).

use crate::source::{Source, Standing};
use crate::units::{Pressure, kilopascal};

/// Source of the forms.
pub const SOURCE: Source = Source::new(
    "Hardin and Black, J. Soil Mech. Found. Div. ASCE 94",
    "1968",
    "G as a function of e and σ'm",
    Standing::FromMemory,
);

/// Shear modulus of rounded sand, G = 6908 (2.17 − e)²/(1 + e) √σ'm, both in kPa.
///
/// # Source
/// Hardin and Richart 1963, J. Soil Mech. Found. Div. ASCE 89.
///
/// # Valid for
/// Void ratios of 0.35 to 0.8.
#[must_use]
pub fn rounded_sand(void_ratio: f64, mean_stress: Pressure) -> Pressure {
    kilopascal::new(
        6908.0 * (2.17 - void_ratio).powi(2) / (1.0 + void_ratio)
            * kilopascal::get(mean_stress).sqrt(),
    )
}

/// Shear modulus of angular sand and of clay, G = 3230 (2.973 − e)²/(1 + e) OCR^k √σ'm, both in kPa.
///
/// # Source
/// Hardin and Black 1968; overconsolidation by Hardin and Drnevich 1972. `ocr_factor` is OCR^k.
///
/// # Valid for
/// Void ratios of 0.6 to 1.3.
#[must_use]
pub fn angular_sand_and_clay(void_ratio: f64, ocr_factor: f64, mean_stress: Pressure) -> Pressure {
    kilopascal::new(
        3230.0 * (2.973 - void_ratio).powi(2) / (1.0 + void_ratio)
            * ocr_factor
            * kilopascal::get(mean_stress).sqrt(),
    )
}

/// How the shear modulus of the same soil changes with its effective stress: √(σ'/σ'₀).
///
/// # Source
/// Hardin and Black 1968: the modulus goes with the root of the mean effective stress.
///
/// # Valid for
/// Positive stresses; soil whose stiffness comes from its grains' contacts.
#[must_use]
pub fn stress_factor(stress: Pressure, reference: Pressure) -> f64 {
    (stress.value / reference.value).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::megapascal;

    #[test]
    fn sand_at_a_metre() {
        let stress = kilopascal::new(12.0);
        assert!((megapascal::get(rounded_sand(0.65, stress)) - 33.5).abs() < 0.05);
        assert!((megapascal::get(angular_sand_and_clay(0.65, 1.0, stress)) - 36.6).abs() < 0.05);
    }
}
