//! What a base loses where the ground falls away beside it.
//! Vesić 1975 and Hansen 1970, as a textbook's table reproduces them.

use crate::rules::en_1997_1_2004::annex_d::Falling;
use crate::source::Source;

/// Where this comes from.
pub const SOURCE: Source = Source::second_hand(
    "Vesić 1975 and Hansen 1970",
    "",
    "ground factors of a base on a slope",
);

/// Vesić: g_q = g_γ = (1 − tan β)², nought from 45° on.
///
/// # Source
/// Vesić 1975.
///
/// # Valid for
/// A base on or at a slope that itself stands, β ≤ φ.
pub fn vesic_factor(slope_deg: f64) -> f64 {
    (1.0 - slope_deg.to_radians().tan()).max(0.0).powi(2)
}

/// Hansen: g_q = g_γ = (1 − ½ tan β)⁵.
///
/// # Source
/// Hansen 1970.
///
/// # Valid for
/// As [`vesic_factor`].
pub fn hansen_factor(slope_deg: f64) -> f64 {
    (1.0 - 0.5 * slope_deg.to_radians().tan()).max(0.0).powi(5)
}

/// Undrained: g_c = 1 − β°/147.
///
/// # Source
/// Hansen 1970, Vesić 1975.
///
/// # Valid for
/// As [`vesic_factor`].
pub fn cohesion_factor(slope_deg: f64) -> f64 {
    (1.0 - slope_deg / 147.0).max(0.0)
}

/// All of them, the less of Vesić's and Hansen's.
///
/// # Source
/// Vesić 1975 and Hansen 1970; for undrained soil N_γ = −2 sin β (Vesić).
///
/// # Valid for
/// As [`vesic_factor`]; charts for a base set back from the slope were not read, so none is counted.
pub fn falling(slope_deg: f64) -> Falling {
    Falling {
        cohesion_factor: cohesion_factor(slope_deg),
        weight_factor: vesic_factor(slope_deg).min(hansen_factor(slope_deg)),
        undrained_weight_factor: -2.0 * slope_deg.to_radians().sin(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed apart from the formulas that the table prints.
    #[test]
    fn factors_by_the_slope() {
        for (slope, vesic, hansen, cohesion) in [
            (5.0, 0.833, 0.800, 0.966),
            (10.0, 0.678, 0.630, 0.932),
            (15.0, 0.536, 0.487, 0.898),
            (20.0, 0.405, 0.366, 0.864),
            (26.57, 0.250, 0.237, 0.819),
            (30.0, 0.179, 0.182, 0.796),
        ] {
            assert!((vesic_factor(slope) - vesic).abs() < 6e-4, "{slope}");
            assert!((hansen_factor(slope) - hansen).abs() < 6e-4, "{slope}");
            assert!((cohesion_factor(slope) - cohesion).abs() < 6e-4, "{slope}");
        }
        let level = falling(0.0);
        assert_eq!([level.cohesion_factor, level.weight_factor], [1.0, 1.0]);
        assert_eq!(falling(58.0).weight_factor, 0.0);
    }
}
