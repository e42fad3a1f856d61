//! Pais & Kausel 1988: how stiffness and radiation of a rigid rectangular footing change with frequency.
//!
//! Read as transcribed from NIST GCR 12-917-21, Tables 2-2b and 2-3b, in two public collections of formulas. Half-sides
//! `L` ≥ `B`, depth of the base `D`, `a₀ = ωB/V_s`; `x` along the longer side. The factors of a footing in the ground are
//! those of one on its surface (note to Table 2-3b).

use crate::source::{Source, Standing};

/// Factors on stiffness and damping ratios.
pub const SOURCE: Source = Source::new(
    "Pais & Kausel",
    "1988",
    "as tabulated in NIST GCR 12-917-21, Tables 2-2b and 2-3b",
    Standing::SecondHand,
);

/// A footing's proportions: half its longer side and its depth over half its shorter side, and Poisson's ratio.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// L/B, at least 1.
    pub long_ratio: f64,
    /// D/B.
    pub depth_ratio: f64,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
}

/// Dynamic over static stiffness of rocking about the longer axis, the softer way:
/// `1 − (0.55 + 0.01 √(L/B − 1)) a₀²/(2.4 − 0.4/(L/B)³ + a₀²)`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2b of NIST GCR 12-917-21.
/// # Valid for
/// a₀ up to about 1.5; L/B up to 4.
#[must_use]
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
#[must_use]
pub fn rocking_long_ratio(long_ratio: f64, a0_ratio: f64) -> f64 {
    let square = a0_ratio * a0_ratio;
    1.0 - 0.55 * square / (0.6 + 1.4 / long_ratio.powi(3) + square)
}

/// Speed of the waves that a pushed face sends out over that of shear waves, `√(2(1−ν)/(1−2ν))`, at most 2.5.
///
/// # Source
/// Pais & Kausel 1988, Table 2-2b of NIST GCR 12-917-21.
/// # Valid for
/// All ν below 0.5.
#[must_use]
pub fn push_ratio(poisson_ratio: f64) -> f64 {
    (2.0 * (1.0 - poisson_ratio) / (1.0 - 2.0 * poisson_ratio))
        .max(0.0)
        .sqrt()
        .min(2.5)
}

/// Radiation damping ratio of sway along the longer side, embedded:
/// `4 [L/B + (D/B)(ψ + L/B)]/(K_x/GB) a₀/2`; the stiffness is given over `GB`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3b of NIST GCR 12-917-21.
/// # Valid for
/// Homogeneous ground, sides bonded from surface to base.
#[must_use]
pub fn sway_damping_ratio(shape: Shape, stiffness_ratio: f64, a0_ratio: f64) -> f64 {
    let Shape {
        long_ratio: l,
        depth_ratio: d,
        poisson_ratio,
    } = shape;
    4.0 * (l + d * (push_ratio(poisson_ratio) + l)) / stiffness_ratio * a0_ratio / 2.0
}

/// Radiation damping ratio of rocking about the longer axis, embedded:
/// `{4/3 [D/B + (D/B)³ + ψ(L/B)(D/B)³ + 3(D/B)(L/B) + ψL/B] a₀²/((K_xx/GB³)[1.8/(1 + 1.75(L/B − 1)) + a₀²]) +
/// 4/3 (ψL/B + 1)(D/B)³/(K_xx/GB³)} a₀/2α`; the stiffness is given over `GB³`.
///
/// # Source
/// Pais & Kausel 1988, Table 2-3b of NIST GCR 12-917-21.
/// # Valid for
/// Homogeneous ground, sides bonded from surface to base.
#[must_use]
pub fn rocking_short_damping_ratio(shape: Shape, stiffness_ratio: f64, a0_ratio: f64) -> f64 {
    let Shape {
        long_ratio: l,
        depth_ratio: d,
        poisson_ratio,
    } = shape;
    let (psi, square) = (push_ratio(poisson_ratio), a0_ratio * a0_ratio);
    let moving = d + d.powi(3) + psi * l * d.powi(3) + 3.0 * d * l + psi * l;
    let share = square / (1.8 / (1.0 + 1.75 * (l - 1.0)) + square);
    let still = (psi * l + 1.0) * d.powi(3);
    4.0 / 3.0 * (moving * share + still) / stiffness_ratio * a0_ratio
        / (2.0 * rocking_short_ratio(l, a0_ratio))
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

    #[test]
    fn waves_of_push_are_faster_the_less_the_ground_gives() {
        near(push_ratio(0.35), 2.0817);
        near(push_ratio(0.45), 2.5);
    }
}
