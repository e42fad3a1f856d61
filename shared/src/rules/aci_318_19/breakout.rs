//! Concrete breakout in tension.

use super::clause;
use super::edition::Edition;
use crate::source::{Source, Standing};
use crate::units::{Area, Force, Length, Pressure, millimetre, square_millimetre};

/// Breakout and its factors.
pub const BREAKOUT: Source = clause("17.6.2", Standing::SecondHand);

/// Factor k_c of post-installed anchors, in the edition's units.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, 17.6.2.2.1.
pub fn post_installed_factor(edition: Edition) -> f64 {
    edition.either(17.0, 7.0)
}

/// Basic breakout N_b = k_c λ_a √f'_c h_ef^1.5, in the edition's units.
///
/// # Source
/// ACI 318-19 and ACI 318M-19, eq. (17.6.2.2.1); λ_a is 1 in normal-weight concrete.
pub fn basic(edition: Edition, kc_factor: f64, strength: Pressure, embedment: Length) -> Force {
    edition
        .force_of(kc_factor * edition.stress(strength).sqrt() * edition.length(embedment).powf(1.5))
}

/// Area of a single anchor far from edges A_Nco = 9 h_ef².
///
/// # Source
/// ACI 318-19, eq. (17.6.2.1.4).
pub fn single_area(embedment: Length) -> Area {
    square_millimetre::new(9.0 * millimetre::get(embedment).powi(2))
}

/// Edge factor ψ_ed,N = 0.7 + 0.3 c_a,min/(1.5 h_ef), at most 1.
///
/// # Source
/// ACI 318-19, 17.6.2.4.1.
pub fn edge_factor(edge: Length, embedment: Length) -> f64 {
    (0.7 + 0.3 * (edge / (embedment * 1.5)).value).min(1.0)
}

/// Eccentricity factor ψ_ec,N = 1/(1 + e'_N/(1.5 h_ef)).
///
/// # Source
/// ACI 318-19, 17.6.2.3.1.
pub fn eccentricity_factor(eccentricity: Length, embedment: Length) -> f64 {
    1.0 / (1.0 + (eccentricity / (embedment * 1.5)).value)
}

/// Cracking factor ψ_c,N of post-installed anchors: 1.4 where the concrete stays uncracked, else 1.
///
/// # Source
/// ACI 318-19, 17.6.2.5.1, with k_c = 17 (7 in SI).
pub fn cracking_factor(cracked: bool) -> f64 {
    if cracked { 1.0 } else { 1.4 }
}

/// Critical edge distance of adhesive anchors without tests, c_ac = 2 h_ef.
///
/// # Source
/// ACI 318-19, Table 17.9.5.
pub fn critical_edge(embedment: Length) -> Length {
    embedment * 2.0
}

/// Splitting factor ψ_cp,N = max(c_a,min, 1.5 h_ef)/c_ac, at most 1; 1 in cracked concrete.
///
/// # Source
/// ACI 318-19, 17.6.2.6.1.
pub fn splitting_factor(
    cracked: bool,
    edge: Length,
    embedment: Length,
    critical_edge: Length,
) -> f64 {
    if cracked {
        return 1.0;
    }
    (millimetre::get(edge).max(1.5 * millimetre::get(embedment)) / millimetre::get(critical_edge))
        .min(1.0)
}

/// Embedment that counts beside three or more edges, max(c_a,max/1.5, s/3), at most h_ef.
///
/// # Source
/// ACI 318-19, 17.6.2.1.2.
pub fn narrow_embedment(
    embedment: Length,
    largest_near_edge: Length,
    largest_spacing: Length,
) -> Length {
    let counted =
        (millimetre::get(largest_near_edge) / 1.5).max(millimetre::get(largest_spacing) / 3.0);
    millimetre::new(counted.min(millimetre::get(embedment)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{kilonewton, megapascal};

    /// Computed: 160 mm in 25 MPa: 70.84 kN cracked, 99.17 kN uncracked.
    #[test]
    fn breakout_of_the_usual_depth() {
        let found = kilonewton::get(basic(
            Edition::Si,
            post_installed_factor(Edition::Si),
            megapascal::new(25.0),
            millimetre::new(160.0),
        ));
        assert!((found - 70.84).abs() < 0.01);
        assert!((found * cracking_factor(false) - 99.17).abs() < 0.02);
    }

    #[test]
    fn factors_are_one_where_nothing_disturbs() {
        let mm = millimetre::new;
        assert!((edge_factor(mm(240.0), mm(160.0)) - 1.0).abs() < 1e-12);
        assert!(
            (splitting_factor(false, mm(240.0), mm(160.0), critical_edge(mm(160.0))) - 0.75).abs()
                < 1e-12
        );
        assert!(
            (millimetre::get(narrow_embedment(mm(160.0), mm(180.0), mm(200.0))) - 120.0).abs()
                < 1e-9
        );
    }
}
