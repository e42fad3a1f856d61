//! Speed of shear waves from N60 and the vertical effective stress, with a row for gravel.
//! Kwak, Brandenberg, Mikami and Stewart, Bulletin of the Seismological Society of America 105, 2015, as public code has it.

use crate::source::{Source, Standing};
use crate::units::{Pressure, Velocity, kilopascal, metre_per_second};

/// Source of the regression.
pub const SOURCE: Source = Source::new(
    "Kwak, Brandenberg, Mikami and Stewart",
    "2015",
    "ln Vs = c0 + c1 ln N60 + c2 ln σ'v, as public code has it",
    Standing::SecondHand,
);

/// Soil for which a row holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Sand.
    Sand,
    /// Silt.
    Silt,
    /// Clay.
    Clay,
    /// Gravel.
    Gravel,
}

impl Kind {
    /// c0, c1, c2 of `ln Vs = c0 + c1 ln N60 + c2 ln σ'v`, m/s and kPa.
    ///
    /// # Source
    /// Kwak and others 2015, as public code has them.
    #[must_use]
    pub const fn coefficients(self) -> [f64; 3] {
        match self {
            Self::Sand => [3.913, 0.167, 0.216],
            Self::Silt => [3.879, 0.255, 0.168],
            Self::Clay => [4.119, 0.209, 0.165],
            Self::Gravel => [3.840, 0.154, 0.285],
        }
    }
}

/// Median speed of shear waves.
///
/// # Source
/// Kwak and others 2015.
///
/// # Valid for
/// The stresses of their boreholes, few of them below 20 kPa: at a metre's depth it is stretched.
#[must_use]
pub fn median(kind: Kind, n60_ratio: f64, effective_stress: Pressure) -> Velocity {
    let [c0, c1, c2] = kind.coefficients();
    let stress = kilopascal::get(effective_stress);
    metre_per_second::new((c0 + c1 * n60_ratio.ln() + c2 * stress.ln()).exp())
}

/// How the speed in the same gravel changes with its effective stress: `(σ'/σ'₀)^0.285`.
///
/// # Source
/// Kwak and others 2015, the exponent of the stress.
///
/// # Valid for
/// Positive stresses.
#[must_use]
pub fn gravel_stress_ratio(stress: Pressure, reference: Pressure) -> f64 {
    let [_, _, c2] = Kind::Gravel.coefficients();
    (stress.value / reference.value).powf(c2)
}

#[cfg(test)]
mod tests {
    use super::*;

    // At 18 kPa, a metre deep: computed apart from the coefficients.
    #[test]
    fn soils_at_a_metre() {
        for (kind, n60, speed) in [
            (Kind::Clay, 2.8, 122.9),
            (Kind::Clay, 11.0, 163.5),
            (Kind::Silt, 7.0, 129.1),
            (Kind::Sand, 6.0, 126.0),
            (Kind::Sand, 17.0, 150.0),
            (Kind::Gravel, 30.0, 179.0),
        ] {
            let found = metre_per_second::get(median(kind, n60, kilopascal::new(18.0)));
            assert!(
                (found / speed - 1.0).abs() < 1e-3,
                "{kind:?} {n60}: {found}"
            );
        }
    }
}
