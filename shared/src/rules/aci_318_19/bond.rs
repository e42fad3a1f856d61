//! Bond strength of adhesive anchors in tension.

use super::clause;
use super::edition::Edition;
use crate::source::{Source, Standing};
use crate::units::customary::PSI_MPA;
use crate::units::{Area, Force, Length, Pressure, megapascal, millimetre, square_millimetre};

/// Bond and its factors.
pub const BOND: Source = clause("17.6.5", Standing::SecondHand);
/// Least bond stresses without tests.
pub const LEAST: Source = clause("Table 17.6.5.2.5", Standing::SecondHand);
/// Sustained tension.
pub const SUSTAINED: Source = clause("17.5.2.2", Standing::SecondHand);

/// Least characteristic bond stress of a qualified adhesive without tests: outdoors 200 psi cracked and 650 uncracked,
/// indoors 300 and 1000; four tenths of it where tension is sustained.
///
/// # Source
/// ACI 318-19, Table 17.6.5.2.5 with its notes.
pub fn least_bond(outdoors: bool, cracked: bool, sustained: bool) -> Pressure {
    let psi = match (outdoors, cracked) {
        (true, true) => 200.0,
        (true, false) => 650.0,
        (false, true) => 300.0,
        (false, false) => 1000.0,
    };
    megapascal::new(psi * PSI_MPA * if sustained { 0.4 } else { 1.0 })
}

/// Basic bond N_ba = λ_a τ_cr π d_a h_ef; λ_a is 1 in normal-weight concrete.
///
/// # Source
/// ACI 318-19, eq. (17.6.5.2.1).
///
/// # Valid for
/// 4 d_a ≤ h_ef ≤ 20 d_a.
pub fn basic(bond: Pressure, diameter: Length, embedment: Length) -> Force {
    bond * (diameter * embedment) * std::f64::consts::PI
}

/// Reach of the bond c_Na = 10 d_a √(τ_uncr/τ₁), τ₁ 1100 psi, or 7.6 MPa in SI.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, eq. (17.6.5.1.2b).
pub fn reach(edition: Edition, diameter: Length, uncracked_bond: Pressure) -> Length {
    diameter * (10.0 * (edition.stress(uncracked_bond) / edition.either(1100.0, 7.6)).sqrt())
}

/// Area of a single anchor far from edges A_Nao = (2 c_Na)².
///
/// # Source
/// ACI 318-19, eq. (17.6.5.1.2a).
pub fn single_area(reach: Length) -> Area {
    square_millimetre::new((2.0 * millimetre::get(reach)).powi(2))
}

/// Edge factor ψ_ed,Na = 0.7 + 0.3 c_a,min/c_Na, at most 1.
///
/// # Source
/// ACI 318-19, 17.6.5.4.1.
pub fn edge_factor(edge: Length, reach: Length) -> f64 {
    (0.7 + 0.3 * (edge / reach).value).min(1.0)
}

/// Eccentricity factor ψ_ec,Na = 1/(1 + e'_N/c_Na).
///
/// # Source
/// ACI 318-19, 17.6.5.3.1.
pub fn eccentricity_factor(eccentricity: Length, reach: Length) -> f64 {
    1.0 / (1.0 + (eccentricity / reach).value)
}

/// Splitting factor ψ_cp,Na = max(c_a,min, c_Na)/c_ac, at most 1; 1 in cracked concrete.
///
/// # Source
/// ACI 318-19, 17.6.5.5.1.
pub fn splitting_factor(cracked: bool, edge: Length, reach: Length, critical_edge: Length) -> f64 {
    if cracked {
        return 1.0;
    }
    (millimetre::get(edge).max(millimetre::get(reach)) / millimetre::get(critical_edge)).min(1.0)
}

/// Share of the reduced bond that a lasting pull may use, ACI 318-19, 17.5.2.2.
pub const SUSTAINED_RATIO: f64 = 0.55;

/// Sustained tension that a single anchor may carry, 0.55 φ N_ba.
///
/// # Source
/// ACI 318-19, eq. (17.5.2.2).
pub fn sustained(basic: Force, reduction_factor: f64) -> Force {
    basic * (SUSTAINED_RATIO * reduction_factor)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed for M16, 160 mm: 11.09, 36.04, 16.64 and 55.45 kN at the table's stresses; c_Na 152.4 and 183.5 mm.
    #[test]
    fn least_bonds_and_reach() {
        let mm = millimetre::new;
        for (outdoors, cracked, expected) in [
            (true, true, 11.09),
            (true, false, 36.04),
            (false, true, 16.64),
            (false, false, 55.45),
        ] {
            let found = kilonewton::get(basic(
                least_bond(outdoors, cracked, false),
                mm(16.0),
                mm(160.0),
            ));
            assert!(
                (found - expected).abs() < 0.001 * expected,
                "{found} {expected}"
            );
        }
        assert!(
            (millimetre::get(reach(Edition::Si, mm(16.0), megapascal::new(6.895))) - 152.4).abs()
                < 0.1
        );
        assert!(
            (millimetre::get(reach(Edition::Si, mm(16.0), megapascal::new(10.0))) - 183.5).abs()
                < 0.1
        );
    }

    /// Computed: 7 MPa sustained with φ 0.65: 20.1 kN; the table's least with its 0.4: 1.59 kN.
    #[test]
    fn sustained_tension_is_the_hard_one() {
        let mm = millimetre::new;
        let found = sustained(basic(megapascal::new(7.0), mm(16.0), mm(160.0)), 0.65);
        assert!((kilonewton::get(found) - 20.13).abs() < 0.02);
        let least = sustained(
            basic(least_bond(true, true, true), mm(16.0), mm(160.0)),
            0.65,
        );
        assert!((kilonewton::get(least) - 1.59).abs() < 0.01);
    }
}
