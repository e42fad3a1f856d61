//! Combined pull-out and concrete failure of bonded studs.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{Force, Length, Pressure, megapascal, millimetre};

/// Bond and its factors.
pub const BOND: Source = clause("7.2.1.6", Standing::SecondHand);
/// Bond under sustained load.
pub const SUSTAINED: Source = clause("7.2.1.6 (2), sustained actions", Standing::FromMemory);

/// Sustained-load factor taken where the product states none.
pub const SUSTAINED_DEFAULT_RATIO: f64 = 0.6;

/// Bond of a single stud N⁰_Rk,p = ψ_sus τ_Rk π d h_ef.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (2).
///
/// # Valid for
/// 6 d ≤ h_ef ≤ 20 d.
pub fn single(sustained_factor: f64, bond: Pressure, diameter: Length, embedment: Length) -> Force {
    bond * (diameter * embedment) * (std::f64::consts::PI * sustained_factor)
}

/// Sustained-load factor: 1 where the sustained share α_sus ≤ ψ⁰_sus, else ψ⁰_sus + 1 − α_sus.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (2).
pub fn sustained_factor(sustained_share_ratio: f64, product_factor: f64) -> f64 {
    if sustained_share_ratio <= product_factor {
        1.0
    } else {
        product_factor + 1.0 - sustained_share_ratio
    }
}

/// Spacing at which bonds no longer meet, s_cr,Np = 7.3 d √(ψ_sus τ_Rk), at most 3 h_ef.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (3), with the bond strength in uncracked C20/25.
pub fn characteristic_spacing(
    diameter: Length,
    sustained_factor: f64,
    uncracked_bond: Pressure,
    embedment: Length,
) -> Length {
    let found = 7.3
        * millimetre::get(diameter)
        * (sustained_factor * megapascal::get(uncracked_bond)).sqrt();
    millimetre::new(found.min(3.0 * millimetre::get(embedment)))
}

/// Bond strength at which the concrete fails first, τ_Rk,c = k₃ √(h_ef f_ck)/(π d); k₃ is 7.7 cracked, 11.0 uncracked.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (4).
pub fn concrete_bond(
    cracked: bool,
    diameter: Length,
    embedment: Length,
    strength: Pressure,
) -> Pressure {
    let k3_factor = super::cone::k1_factor(cracked);
    let root = (millimetre::get(embedment) * megapascal::get(strength)).sqrt();
    megapascal::new(k3_factor * root / (std::f64::consts::PI * millimetre::get(diameter)))
}

/// Effect of the group at no spacing ψ⁰_g,Np = √n − (√n − 1)(τ_Rk/τ_Rk,c)^1.5, at least 1.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (4).
pub fn close_group_factor(count: usize, bond: Pressure, concrete_bond: Pressure) -> f64 {
    let root = (count as f64).sqrt();
    (root - (root - 1.0) * (bond / concrete_bond).value.powf(1.5)).max(1.0)
}

/// Effect of the group ψ_g,Np = ψ⁰_g − √(s/s_cr)(ψ⁰_g − 1), at least 1, with the mean spacing.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.6 (4).
pub fn group_factor(
    close_group_factor: f64,
    spacing: Length,
    characteristic_spacing: Length,
) -> f64 {
    let root = (spacing / characteristic_spacing).value.sqrt();
    (close_group_factor - root * (close_group_factor - 1.0)).max(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed for M16, 160 mm, 7 MPa cracked and 10 MPa uncracked in C25.
    #[test]
    fn bond_of_the_usual_stud() {
        let (d, depth) = (millimetre::new(16.0), millimetre::new(160.0));
        assert!(
            (kilonewton::get(single(1.0, megapascal::new(7.0), d, depth)) - 56.30).abs() < 0.01
        );
        let spacing = characteristic_spacing(d, 1.0, megapascal::new(10.0), depth);
        assert!((millimetre::get(spacing) - 369.4).abs() < 0.1);
        let limit = concrete_bond(true, d, depth, megapascal::new(25.0));
        assert!((megapascal::get(limit) - 9.688).abs() < 0.002);
        let close = close_group_factor(4, megapascal::new(7.0), limit);
        assert!((close - 1.386).abs() < 0.001);
        assert!((group_factor(close, millimetre::new(200.0), spacing) - 1.102).abs() < 0.001);
    }

    #[test]
    fn sustained_load_costs_only_beyond_the_product_s_share() {
        assert!((sustained_factor(0.5, 0.6) - 1.0).abs() < 1e-12);
        assert!((sustained_factor(1.0, 0.6) - 0.6).abs() < 1e-12);
    }
}
