//! Pais & Kausel 1988: how the stiffness of a rigid rectangular footing changes with frequency.
//!
//! Read as transcribed from NIST GCR 12-917-21, Tables 2-2b and 2-3b, in two public collections of formulas. Half-sides
//! `L` ≥ `B`, depth of the base `D`, `a₀ = ωB/V_s`; `x` along the longer side. The factors of a footing in the ground are
//! those of one on its surface (note to Table 2-3b).

use crate::source::Source;

/// Factors on stiffness.
pub const SOURCE: Source = Source::second_hand(
    "Pais & Kausel",
    "1988",
    "as tabulated in NIST GCR 12-917-21, Tables 2-2b and 2-3b",
);

/// Dynamic over static stiffness of rocking about the longer axis, the softer way:
/// `1 − (0.55 + 0.01 √(L/B − 1)) a₀²/(2.4 − 0.4/(L/B)³ + a₀²)`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2b of NIST GCR 12-917-21.
/// # Valid for
/// a₀ up to about 1.5; L/B up to 4.
pub fn rocking_short_ratio(long_ratio: f64, a0_ratio: f64) -> f64 {
    let square = a0_ratio * a0_ratio;
    1.0 - (0.55 + 0.01 * (long_ratio - 1.0).max(0.0).sqrt()) * square
        / (2.4 - 0.4 / long_ratio.powi(3) + square)
}

/// The same about the shorter axis, the stiffer way: `1 − 0.55 a₀²/(0.6 + 1.4/(L/B)³ + a₀²)`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2b of NIST GCR 12-917-21.
/// # Valid for
/// a₀ up to about 1.5; L/B up to 4.
pub fn rocking_long_ratio(long_ratio: f64, a0_ratio: f64) -> f64 {
    let square = a0_ratio * a0_ratio;
    1.0 - 0.55 * square / (0.6 + 1.4 / long_ratio.powi(3) + square)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64) {
        assert!(
            (found / expected - 1.0).abs() < 5e-3,
            "found {found}, expected {expected}"
        );
    }

    /// A square at a₀ 0.365 and 0.973 (the metre cube at 15 and 40 Hz): by hand from the printed forms.
    #[test]
    fn a_square_loses_stiffness_with_the_square_of_the_frequency() {
        near(rocking_short_ratio(1.0, 0.365), 0.9656);
        near(rocking_short_ratio(1.0, 0.973), 0.8233);
        near(
            rocking_long_ratio(1.0, 0.973),
            rocking_short_ratio(1.0, 0.973),
        );
        near(rocking_short_ratio(2.0, 0.5), 0.9462);
    }
}
