//! A cantilever on a rotational spring: what a force and a moment at the top do.
//!
//! Mechanics: bending by Euler and Bernoulli, shear by Timoshenko with Cowper's coefficient.

use crate::source::Source;
use crate::units::{
    Area, BendingStiffness, Length, LinearStiffness, Pressure, RotationalStiffness, metre,
    newton_metre_per_radian, newton_per_metre, newton_square_metre, pascal, square_metre,
};

/// Where the deflection comes from.
pub const SOURCE: Source = Source::derived(
    "cantilever with shear on a rotational spring; Roark's Formulas, Table 8.1, case 1a for the bending",
);

/// Shear coefficient of a hollow circle, κ = 6(1+ν)(1+m²)²/[(7+6ν)(1+m²)² + (20+12ν)m²], m inner over outer diameter.
///
/// # Source
/// Cowper 1966, hollow circle.
/// # Valid for
/// Any ratio from 0 (solid, 0.886 at ν = 0.3) to 1 (thin wall, 0.531).
pub fn shear_factor(inner_over_outer_ratio: f64, poisson_ratio: f64) -> f64 {
    let (m2, nu) = (inner_over_outer_ratio.powi(2), poisson_ratio);
    let round = (1.0 + m2).powi(2);
    6.0 * (1.0 + nu) * round / ((7.0 + 6.0 * nu) * round + (20.0 + 12.0 * nu) * m2)
}

/// Shear stiffness κ G A, in newtons: force for a shear angle of one radian.
///
/// # Source
/// Cowper 1966, hollow circle.
/// # Valid for
/// A tube of one material.
pub fn shear_stiffness(factor: f64, shear_modulus: Pressure, area: Area) -> crate::units::Force {
    crate::units::newton::new(factor * pascal::get(shear_modulus) * square_metre::get(area))
}

/// Force at the top for a movement of the top: 1/k = L³/(3EI) + L/(κGA) + L²/K.
///
/// # Source
/// Mechanics; the bending term is Roark's Table 8.1, case 1a.
/// # Valid for
/// Small movements; the foot turns on the joint's spring and does not slide.
pub fn top_stiffness(
    length: Length,
    bending: BendingStiffness,
    shear: crate::units::Force,
    joint: RotationalStiffness,
) -> LinearStiffness {
    let l = metre::get(length);
    let bend = l.powi(3) / (3.0 * newton_square_metre::get(bending));
    let slide = l / crate::units::newton::get(shear);
    let turn = l * l / newton_metre_per_radian::get(joint);
    newton_per_metre::new(1.0 / (bend + slide + turn))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::newton;

    #[test]
    fn a_thin_tube_shears_over_half_its_area() {
        assert!((shear_factor(1.0, 0.3) - 2.0 * 1.3 / (4.0 + 3.0 * 0.3)).abs() < 1e-12);
        assert!((shear_factor(0.0, 0.3) - 0.8864).abs() < 1e-4);
    }

    #[test]
    fn stiff_in_shear_and_joint_leaves_three_ei_over_l_cubed() {
        let k = top_stiffness(
            metre::new(1.2),
            newton_square_metre::new(6.215e6),
            newton::new(1e18),
            newton_metre_per_radian::new(1e18),
        );
        assert!((newton_per_metre::get(k) - 3.0 * 6.215e6 / 1.2f64.powi(3)).abs() < 1.0);
    }
}
