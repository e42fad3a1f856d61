//! Small-strain shear modulus from void ratio and mean effective stress, by which the table of soils and a library are held.

use stillground::units::{Pressure, kilopascal};

/// Shear modulus of rounded sand, G = 6908 (2.17 − e)²/(1 + e) √σ'm, both in kPa.
///
/// # Source
/// Hardin and Richart 1963, J. Soil Mech. Found. Div. ASCE 89.
///
/// # Valid for
/// Void ratios of 0.35 to 0.8.
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
pub fn angular_sand_and_clay(void_ratio: f64, ocr_factor: f64, mean_stress: Pressure) -> Pressure {
    kilopascal::new(
        3230.0 * (2.973 - void_ratio).powi(2) / (1.0 + void_ratio)
            * ocr_factor
            * kilopascal::get(mean_stress).sqrt(),
    )
}
