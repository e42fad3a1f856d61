//! Bearing resistance of a rectangular base, drained and undrained.
//! EN 1997-1:2004, Annex D.

use crate::source::Source;
use crate::units::{
    Force, Length, Moment, Pressure, UnitWeight, kilonewton, kilonewton_metre,
    kilonewton_per_cubic_metre, kilopascal, metre,
};

/// Where the formulas come from: the factors were read where others quote them, the clause's text was not seen.
pub const SOURCE: Source =
    Source::second_hand("EN 1997-1", "2004", "Annex D.3 and D.4, bearing resistance");

/// What acts on a base, at its centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Downwards, less the lift of the water.
    pub vertical: Force,
    /// Along the shorter side.
    pub push: Force,
    /// Its moment about the base's centre, along the shorter side.
    pub moment: Moment,
}

/// A base in the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Base {
    /// Side along the moment.
    pub along: Length,
    /// Side across it.
    pub across: Length,
    /// Stress of the soil beside the base less the water's pressure, as the load is less its lift.
    pub overburden: Pressure,
    /// Weight of the soil below the base: effective where water stands.
    pub unit_weight: UnitWeight,
}

/// Reductions for ground that falls away from the base; all one on level ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Falling {
    /// On the term of cohesion.
    pub cohesion_factor: f64,
    /// On the terms of overburden and weight.
    pub weight_factor: f64,
    /// What takes the place of nought for Nγ of undrained soil, minus twice the sine of the slope.
    pub undrained_weight_factor: f64,
}

/// Level ground.
pub const LEVEL: Falling = Falling {
    cohesion_factor: 1.0,
    weight_factor: 1.0,
    undrained_weight_factor: 0.0,
};

/// The part of the base that carries, in metres and kilonewtons.
struct Effective {
    breadth: f64,
    area: f64,
    /// B'/L', at most one.
    ratio: f64,
}

fn effective(load: &Load, base: &Base) -> Option<Effective> {
    let vertical = kilonewton::get(load.vertical);
    if vertical <= 0.0 {
        return None;
    }
    let eccentricity = kilonewton_metre::get(load.moment).abs() / vertical;
    let (along, across) = (
        metre::get(base.along) - 2.0 * eccentricity,
        metre::get(base.across),
    );
    (along > 0.0).then(|| Effective {
        breadth: along.min(across),
        area: along * across,
        ratio: along.min(across) / along.max(across),
    })
}

/// Undrained resistance R = A' [(π + 2) c_u s_c i_c g_c + ½ γ B' N_γ + q g_q].
///
/// # Source
/// EN 1997-1:2004, Annex D.3; the factors for falling ground are added as Vesić and Hansen have them, where the annex has none.
///
/// # Valid for
/// Ground that is even to twice the breadth below the base; e ≤ B/3, beyond which the code asks for special care. No depth
/// factors: the annex has none. None when the force falls outside the base; nought where the push exceeds A' c_u.
pub fn undrained(load: &Load, base: &Base, strength: Pressure, falling: &Falling) -> Option<Force> {
    let part = effective(load, base)?;
    let strength = kilopascal::get(strength);
    let share = kilonewton::get(load.push).abs() / (part.area * strength);
    if !share.is_finite() || share > 1.0 {
        return Some(kilonewton::new(0.0));
    }
    let (shape, inclined) = (1.0 + 0.2 * part.ratio, 0.5 * (1.0 + (1.0 - share).sqrt()));
    let weight = kilonewton_per_cubic_metre::get(base.unit_weight);
    let pressure =
        (std::f64::consts::PI + 2.0) * strength * shape * inclined * falling.cohesion_factor
            + 0.5 * weight * part.breadth * falling.undrained_weight_factor
            + kilopascal::get(base.overburden) * falling.weight_factor;
    Some(kilonewton::new((part.area * pressure).max(0.0)))
}

/// Bearing factors N_q, N_c and N_γ of a rough base: N_q = e^(π tan φ) tan²(45° + φ/2), N_c = (N_q − 1) cot φ,
/// N_γ = 2 (N_q − 1) tan φ.
///
/// # Source
/// EN 1997-1:2004, Annex D.4.
///
/// # Valid for
/// Angles of friction above nought and below 50°.
pub fn factors(friction_deg: f64) -> [f64; 3] {
    let tangent = friction_deg.to_radians().tan();
    let passive = (45.0 + friction_deg / 2.0).to_radians().tan().powi(2);
    let n_q = (std::f64::consts::PI * tangent).exp() * passive;
    [n_q, (n_q - 1.0) / tangent, 2.0 * (n_q - 1.0) * tangent]
}

/// Drained resistance without cohesion, R = A' [q' N_q s_q i_q g_q + ½ γ' B' N_γ s_γ i_γ g_γ].
///
/// # Source
/// EN 1997-1:2004, Annex D.4: s_q = 1 + (B'/L') sin φ, s_γ = 1 − 0.3 B'/L', i_q = (1 − H/V)^m, i_γ = (1 − H/V)^(m+1),
/// m = (2 + B'/L')/(1 + B'/L'); falling ground as [`undrained`].
///
/// # Valid for
/// As [`undrained`]; soil without cohesion. Nought where the push exceeds the weight.
pub fn drained(load: &Load, base: &Base, friction_deg: f64, falling: &Falling) -> Option<Force> {
    let part = effective(load, base)?;
    let [n_q, _, n_gamma] = factors(friction_deg);
    let left = 1.0 - kilonewton::get(load.push).abs() / kilonewton::get(load.vertical);
    if left <= 0.0 {
        return Some(kilonewton::new(0.0));
    }
    let power = (2.0 + part.ratio) / (1.0 + part.ratio);
    let overburden = kilopascal::get(base.overburden)
        * n_q
        * (1.0 + part.ratio * friction_deg.to_radians().sin())
        * left.powf(power);
    let weight = 0.5
        * kilonewton_per_cubic_metre::get(base.unit_weight)
        * part.breadth
        * n_gamma
        * (1.0 - 0.3 * part.ratio)
        * left.powf(power + 1.0);
    Some(kilonewton::new(
        part.area * (overburden + weight) * falling.weight_factor,
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A metre cube flush with the ground: V 25.5 kN, M 2.5 kN m, H 1 kN; A' 0.8039 m².
    const CASE_A: f64 = 25.5;

    fn load(vertical: f64) -> Load {
        Load {
            vertical: kilonewton::new(vertical),
            push: kilonewton::new(1.0),
            moment: kilonewton_metre::new(2.5),
        }
    }

    fn cube(overburden: f64, weight: f64) -> Base {
        Base {
            along: metre::new(1.0),
            across: metre::new(1.0),
            overburden: kilopascal::new(overburden),
            unit_weight: kilonewton_per_cubic_metre::new(weight),
        }
    }

    fn near(found: Option<Force>, wanted: f64) {
        let area = 1.0 - 2.0 * 2.5 / CASE_A;
        let found = kilonewton::get(found.unwrap()) / area;
        assert!((found / wanted - 1.0).abs() < 1e-3, "{found} {wanted}");
    }

    /// Computed apart, as are the factors below: R/A' 181.7, 344.9 and 649.8 kPa for 28, 55 and 106 kPa.
    #[test]
    fn undrained_resistance_of_a_metre_cube() {
        for (strength, weight, wanted) in [
            (28.0, 16.5, 181.7),
            (55.0, 18.5, 344.9),
            (106.0, 19.0, 649.8),
        ] {
            let base = cube(weight, weight);
            near(
                undrained(&load(CASE_A), &base, kilopascal::new(strength), &LEVEL),
                wanted,
            );
        }
    }

    /// 506.2 kPa in moist sand of 30° and 17 kN/m³, 456.4 with water at the base.
    #[test]
    fn drained_resistance_of_a_metre_cube() {
        near(
            drained(&load(CASE_A), &cube(17.0, 17.0), 30.0, &LEVEL),
            506.2,
        );
        near(
            drained(&load(CASE_A), &cube(17.0, 8.0), 30.0, &LEVEL),
            456.4,
        );
    }

    #[test]
    fn bearing_factors_by_the_angle() {
        for (angle, n_q, n_c, n_gamma) in [
            (25.0, 10.66, 20.72, 9.01),
            (28.0, 14.72, 25.80, 14.59),
            (30.0, 18.40, 30.14, 20.09),
            (32.5, 24.59, 37.02, 30.05),
            (35.0, 33.30, 46.12, 45.23),
            (38.0, 48.93, 61.35, 74.90),
        ] {
            for (found, wanted) in factors(angle).into_iter().zip([n_q, n_c, n_gamma]) {
                assert!((found - wanted).abs() < 6e-3, "{found} {wanted}");
            }
        }
    }

    /// A board of 0.225 m by 0.45 m on dense sand, φ 30°, γ 18.6 kN/m³: published 35.8 kPa, 35.74 by the formula.
    #[test]
    fn a_published_board_on_sand() {
        let board = Base {
            along: metre::new(0.225),
            across: metre::new(0.45),
            ..cube(0.0, 18.6)
        };
        let straight = Load {
            vertical: kilonewton::new(1.0),
            push: kilonewton::new(0.0),
            moment: kilonewton_metre::new(0.0),
        };
        let found = kilonewton::get(drained(&straight, &board, 30.0, &LEVEL).unwrap());
        assert!((found / (0.225 * 0.45) - 35.74).abs() < 0.02, "{found}");
    }

    #[test]
    fn what_nothing_carries_has_no_resistance() {
        let tipped = Load {
            moment: kilonewton_metre::new(13.0),
            ..load(CASE_A)
        };
        assert!(drained(&tipped, &cube(17.0, 17.0), 30.0, &LEVEL).is_none());
        let slid = Load {
            push: kilonewton::new(30.0),
            ..load(CASE_A)
        };
        for found in [
            drained(&slid, &cube(17.0, 17.0), 30.0, &LEVEL),
            undrained(&slid, &cube(17.0, 17.0), kilopascal::new(20.0), &LEVEL),
        ] {
            assert_eq!(found, Some(kilonewton::new(0.0)));
        }
    }
}
