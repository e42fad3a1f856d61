//! Speed of shear waves from N60 and the vertical effective stress, with its scatter.
//! Brandenberg, Bellana and Shantz, Soil Dynamics and Earthquake Engineering 30, 2010, as a textbook's table and public code have it.

use crate::rules::blow_count_regression::Row;
use crate::source::Source;

/// Source of the regression.
pub const SOURCE: Source = Source::second_hand(
    "Brandenberg, Bellana and Shantz",
    "2010",
    "ln Vs = c0 + c1 ln N60 + c2 ln σ'v, as a textbook's table and public code have it",
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
}

impl SoilKind {
    /// c0, c1, c2 of `ln Vs = c0 + c1 ln N60 + c2 ln σ'v`, m/s and kPa.
    ///
    /// # Source
    /// Brandenberg and others 2010, table of coefficients.
    pub const fn row(self) -> Row {
        match self {
            Self::Sand => Row::new(4.045, 0.096, 0.236),
            Self::Silt => Row::new(3.783, 0.178, 0.231),
            Self::Clay => Row::new(3.996, 0.230, 0.164),
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
            (SoilKind::Clay, 2.8, 110.7),
            (SoilKind::Clay, 5.7, 130.4),
            (SoilKind::Clay, 11.0, 151.6),
            (SoilKind::Clay, 21.0, 176.0),
            (SoilKind::Silt, 7.0, 121.2),
            (SoilKind::Sand, 6.0, 134.2),
            (SoilKind::Sand, 17.0, 148.3),
            (SoilKind::Sand, 38.0, 160.2),
        ] {
            let found = metre_per_second::get(kind.row().median(n60, kilopascal::new(18.0)));
            assert!(
                (found / speed - 1.0).abs() < 1e-3,
                "{kind:?} {n60}: {found}"
            );
        }
    }

    // Half the stress: 0.85 of the speed in sand, 0.89 in clay; sand at 0.3 m: 0.75 (computed apart).
    #[test]
    fn water_and_depth() {
        let (half, whole) = (kilopascal::new(9.0), kilopascal::new(18.0));
        assert!((SoilKind::Sand.row().stress_ratio(half, whole) - 0.85).abs() < 0.002);
        assert!((SoilKind::Clay.row().stress_ratio(half, whole) - 0.89).abs() < 0.003);
        let shallow = kilopascal::new(5.4);
        assert!((SoilKind::Sand.row().stress_ratio(shallow, whole) - 0.75).abs() < 0.004);
    }
}
