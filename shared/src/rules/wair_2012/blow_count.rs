//! Speed of shear waves from the blow count of the standard penetration test.
//! PEER report 2012/08, Table 4.1, N60 with the vertical effective stress.

use crate::source::Source;
use crate::units::{Pressure, Velocity, kilopascal, metre_per_second};

/// Source of the formula and its coefficients.
pub const SOURCE: Source = Source::from_memory(
    "PEER report 2012/08",
    "2012",
    "table of N60 with effective stress",
);

/// Soil for which a row of coefficients holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoilKind {
    /// Any soil.
    All,
    /// Clay and silt.
    ClayAndSilt,
    /// Sand.
    Sand,
    /// Gravel of the Holocene.
    Gravel,
}

impl SoilKind {
    /// Factor, exponent of the blow count, exponent of the stress.
    ///
    /// # Source
    /// PEER report 2012/08, the table of correlations.
    pub const fn coefficients(self) -> [f64; 3] {
        match self {
            Self::All => [30.0, 0.215, 0.275],
            Self::ClayAndSilt => [26.0, 0.17, 0.32],
            Self::Sand => [30.0, 0.23, 0.23],
            Self::Gravel => [53.0, 0.19, 0.18],
        }
    }
}

/// Least vertical effective stress among the data, kPa; nearer the surface the stage uses this one and says so.
pub const LEAST_STRESS_KPA: f64 = 15.0;

/// Speed of shear waves, Vs = a N60^b σ'v^c with the stress in kPa and the speed in m/s.
///
/// # Source
/// PEER report 2012/08, the table of correlations with N60 and effective stress.
///
/// # Valid for
/// N60 from 1 to 100 and σ'v of at least 15 kPa; the scatter of the data about it is 25 to 30 %.
pub fn shear_wave_speed(kind: SoilKind, n60_ratio: f64, effective_stress: Pressure) -> Velocity {
    let [a, b, c] = kind.coefficients();
    metre_per_second::new(a * n60_ratio.powf(b) * kilopascal::get(effective_stress).powf(c))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fifteen_blows_at_a_metre() {
        let speeds = [
            SoilKind::All,
            SoilKind::ClayAndSilt,
            SoilKind::Sand,
            SoilKind::Gravel,
        ]
        .map(|kind| metre_per_second::get(shear_wave_speed(kind, 15.0, kilopascal::new(18.0))));
        for (found, reference) in speeds.into_iter().zip([118.9, 103.9, 108.7, 149.2]) {
            assert!(
                (found - reference).abs() < 0.1,
                "{found} against {reference}"
            );
        }
    }
}
