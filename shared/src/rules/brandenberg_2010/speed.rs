//! Speed of shear waves from N60 and the vertical effective stress, with its scatter.
//! Brandenberg, Bellana and Shantz, Soil Dynamics and Earthquake Engineering 30, 2010, as a textbook's table and public code have it.

use crate::rules::blow_count_regression::Row;
use crate::source::{Source, Standing};
use crate::units::{Pressure, kilopascal};

/// Source of the regression.
pub const SOURCE: Source = Source::new(
    "Brandenberg, Bellana and Shantz",
    "2010",
    "ln Vs = c0 + c1 ln N60 + c2 ln σ'v, as a textbook's table and public code have it",
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
}

impl Kind {
    /// c0, c1, c2 of `ln Vs = c0 + c1 ln N60 + c2 ln σ'v`, m/s and kPa.
    ///
    /// # Source
    /// Brandenberg and others 2010, table of coefficients.
    #[must_use]
    pub const fn row(self) -> Row {
        match self {
            Self::Sand => Row::new(4.045, 0.096, 0.236),
            Self::Silt => Row::new(3.783, 0.178, 0.231),
            Self::Clay => Row::new(3.996, 0.230, 0.164),
        }
    }
}

/// Standard deviation of ln Vs: between boreholes and within them.
///
/// # Source
/// Brandenberg and others 2010: `√(τ² + σ²)`, σ falling with the stress.
///
/// # Valid for
/// Effective stresses below 200 kPa, where public code and the textbook's table agree on the sign of the trend.
#[must_use]
pub fn sd_ln(kind: Kind, effective_stress: Pressure) -> f64 {
    let (between, within, fall) = match kind {
        Kind::Sand => (0.217, 0.57, 0.07),
        Kind::Silt => (0.227, 0.31, 0.03),
        Kind::Clay => (0.227, 0.21, 0.01),
    };
    let within: f64 = within - fall * kilopascal::get(effective_stress).ln();
    f64::hypot(between, within)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::metre_per_second;

    // At 18 kPa, a metre deep: computed apart from the coefficients.
    #[test]
    fn soils_at_a_metre() {
        for (kind, n60, speed) in [
            (Kind::Clay, 2.8, 110.7),
            (Kind::Clay, 5.7, 130.4),
            (Kind::Clay, 11.0, 151.6),
            (Kind::Clay, 21.0, 176.0),
            (Kind::Silt, 7.0, 121.2),
            (Kind::Sand, 6.0, 134.2),
            (Kind::Sand, 17.0, 148.3),
            (Kind::Sand, 38.0, 160.2),
        ] {
            let found = metre_per_second::get(kind.row().median(n60, kilopascal::new(18.0)));
            assert!(
                (found / speed - 1.0).abs() < 1e-3,
                "{kind:?} {n60}: {found}"
            );
        }
    }

    // Total scatter at 18 kPa: clay 0.29, silt 0.32, sand 0.43 (computed apart).
    #[test]
    fn scatter_at_a_metre() {
        for (kind, expected) in [(Kind::Clay, 0.29), (Kind::Silt, 0.32), (Kind::Sand, 0.43)] {
            assert!((sd_ln(kind, kilopascal::new(18.0)) - expected).abs() < 0.006);
        }
    }

    // Half the stress: 0.85 of the speed in sand, 0.89 in clay; sand at 0.3 m: 0.75 (computed apart).
    #[test]
    fn water_and_depth() {
        let (half, whole) = (kilopascal::new(9.0), kilopascal::new(18.0));
        assert!((Kind::Sand.row().stress_ratio(half, whole) - 0.85).abs() < 0.002);
        assert!((Kind::Clay.row().stress_ratio(half, whole) - 0.89).abs() < 0.003);
        let shallow = kilopascal::new(5.4);
        assert!((Kind::Sand.row().stress_ratio(shallow, whole) - 0.75).abs() < 0.004);
    }
}
