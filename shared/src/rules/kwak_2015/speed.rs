//! Speed of shear waves from N60 and the vertical effective stress, with a row for gravel.
//! Kwak, Brandenberg, Mikami and Stewart, Bulletin of the Seismological Society of America 105, 2015, as public code has it.

use crate::rules::blow_count_regression::Row;
use crate::source::Source;

/// Source of the regression.
pub const SOURCE: Source = Source::second_hand(
    "Kwak, Brandenberg, Mikami and Stewart",
    "2015",
    "ln Vs = c0 + c1 ln N60 + c2 ln σ'v, as public code has it",
);

/// Soil for which a row holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoilKind {
    /// Sand.
    Sand,
    /// Silt.
    Silt,
    /// Clay.
    Clay,
    /// Gravel.
    Gravel,
}

impl SoilKind {
    /// c0, c1, c2 of `ln Vs = c0 + c1 ln N60 + c2 ln σ'v`, m/s and kPa.
    ///
    /// # Source
    /// Kwak and others 2015, as public code has them.
    pub const fn row(self) -> Row {
        match self {
            Self::Sand => Row::new(3.913, 0.167, 0.216),
            Self::Silt => Row::new(3.879, 0.255, 0.168),
            Self::Clay => Row::new(4.119, 0.209, 0.165),
            Self::Gravel => Row::new(3.840, 0.154, 0.285),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilopascal, metre_per_second};

    // At 18 kPa, a metre deep: computed apart from the coefficients.
    #[test]
    fn soils_at_a_metre() {
        for (kind, n60, speed) in [
            (SoilKind::Clay, 2.8, 122.9),
            (SoilKind::Clay, 11.0, 163.5),
            (SoilKind::Silt, 7.0, 129.1),
            (SoilKind::Sand, 6.0, 126.0),
            (SoilKind::Sand, 17.0, 150.0),
            (SoilKind::Gravel, 30.0, 179.0),
        ] {
            let found = metre_per_second::get(kind.row().median(n60, kilopascal::new(18.0)));
            assert!(
                (found / speed - 1.0).abs() < 1e-3,
                "{kind:?} {n60}: {found}"
            );
        }
    }
}
