//! Concrete in shear: breakout of the edge, and pry-out.

use super::clause;
use super::edition::Edition;
use crate::source::{Source, Standing};
use crate::units::{Force, Length, Pressure};

/// Breakout of the edge and its factors.
pub const BREAKOUT: Source = clause("17.7.2", Standing::SecondHand);
/// Pry-out.
pub const PRY_OUT: Source = clause("17.7.3", Standing::SecondHand);
/// Tension and shear together.
pub const INTERACTION: Source = clause("17.8", Standing::FromMemory);

/// Basic breakout V_b: the lesser of 7 (l_e/d_a)^0.2 √d_a √f'_c c_a1^1.5 and 9 √f'_c c_a1^1.5 in lb, psi and in; in N, MPa and
/// mm the code rounds 7 to 0.6, which is 3.2 % more, and 9 to 3.7.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, eqs (17.7.2.2.1a) and (17.7.2.2.1b); l_e is h_ef, at most 8 d_a; λ_a is 1.
pub fn basic(
    edition: Edition,
    diameter: Length,
    embedment: Length,
    strength: Pressure,
    edge: Length,
) -> Force {
    let d = edition.length(diameter);
    let bearing = edition.length(embedment).min(8.0 * d);
    let leading = (edition.either(7.0, 0.6) * (bearing / d).powf(0.2) * d.sqrt())
        .min(edition.either(9.0, 3.7));
    edition.force_of(leading * edition.stress(strength).sqrt() * edition.length(edge).powf(1.5))
}

/// Corner factor ψ_ed,V = 0.7 + 0.3 c_a2/(1.5 c_a1), at most 1.
///
/// # Source
/// ACI 318-19, 17.7.2.4.1.
pub fn corner_factor(corner: Length, edge: Length) -> f64 {
    (0.7 + 0.3 * (corner / (edge * 1.5)).value).min(1.0)
}

/// Cracking factor ψ_c,V: 1.4 uncracked, 1.0 cracked without edge bars.
///
/// # Source
/// ACI 318-19, Table 17.7.2.5.1.
pub fn cracking_factor(cracked: bool) -> f64 {
    if cracked { 1.0 } else { 1.4 }
}

/// Thickness factor ψ_h,V = √(1.5 c_a1/h_a), at least 1.
///
/// # Source
/// ACI 318-19, 17.7.2.6.1.
pub fn thickness_factor(edge: Length, thickness: Length) -> f64 {
    (edge * 1.5 / thickness).value.sqrt().max(1.0)
}

/// Eccentricity factor ψ_ec,V = 1/(1 + e'_V/(1.5 c_a1)), at most 1.
///
/// # Source
/// ACI 318-19, 17.7.2.3.1.
pub fn eccentricity_factor(eccentricity: Length, edge: Length) -> f64 {
    1.0 / (1.0 + (eccentricity / (edge * 1.5)).value)
}

/// Pry-out factor k_cp: 1 for embedments below 2.5 in, in SI 65 mm, else 2.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, 17.7.3.1.
pub fn pry_out_factor(edition: Edition, embedment: Length) -> f64 {
    if edition.length(embedment) < edition.either(2.5, 65.0) {
        1.0
    } else {
        2.0
    }
}

/// Tension and shear together: the greater ratio alone where the lesser is at most 0.2, else their sum over 1.2.
///
/// # Source
/// ACI 318-19, 17.8.1 to 17.8.3.
pub fn interaction_ratio(tension_ratio: f64, shear_ratio: f64) -> f64 {
    let greater = tension_ratio.max(shear_ratio);
    if tension_ratio.min(shear_ratio) <= 0.2 {
        greater
    } else {
        ((tension_ratio + shear_ratio) / 1.2).max(greater)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, megapascal, millimetre};

    /// Computed: M16, 160 mm, 25 MPa, edge at 300: 94.5 kN, the other form 96.1.
    #[test]
    fn edge_of_the_usual_stud() {
        let mm = millimetre::new;
        let found = kilonewton::get(basic(
            Edition::Si,
            mm(16.0),
            mm(160.0),
            megapascal::new(25.0),
            mm(300.0),
        ));
        assert!((found - 94.5).abs() < 0.05);
        assert!((interaction_ratio(0.9, 0.1) - 0.9).abs() < 1e-12);
        assert!((interaction_ratio(0.7, 0.5) - 1.0).abs() < 1e-12);
    }
}
