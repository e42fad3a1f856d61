//! Concrete cone in tension.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{Force, Length, Pressure, megapascal, millimetre, newton};

/// The cone and its factors.
pub const CONE: Source = clause("7.2.1.4", Standing::SecondHand);

/// Factor k₁ of post-installed fasteners: 7.7 in cracked, 11.0 in uncracked concrete.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (2): the values that hold where the product gives no others.
pub fn k1_factor(cracked: bool) -> f64 {
    if cracked { 7.7 } else { 11.0 }
}

/// Cone of a single stud far from edges N⁰_Rk,c = k₁ √f_ck h_ef^1.5, in N, MPa and mm.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (2).
pub fn single(k1_factor: f64, strength: Pressure, embedment: Length) -> Force {
    newton::new(k1_factor * megapascal::get(strength).sqrt() * millimetre::get(embedment).powf(1.5))
}

/// Spacing at which cones no longer meet, s_cr,N = 3 h_ef; the edge distance c_cr,N is half of it.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (3).
pub fn characteristic_spacing(embedment: Length) -> Length {
    embedment * 3.0
}

/// Disturbance by an edge ψ_s,N = 0.7 + 0.3 c/c_cr, at most 1.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (4).
pub fn edge_factor(edge: Length, characteristic_edge: Length) -> f64 {
    (0.7 + 0.3 * (edge / characteristic_edge).value).min(1.0)
}

/// Shell spalling by dense reinforcement ψ_re,N = 0.5 + h_ef/200, at most 1.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (5).
///
/// # Valid for
/// Bars closer than 150 mm (or 100 mm to 10 mm diameter); 1 in a plain block.
pub fn dense_bars_factor(embedment: Length) -> f64 {
    (0.5 + millimetre::get(embedment) / 200.0).min(1.0)
}

/// Eccentricity in one direction ψ_ec,N = 1/(1 + 2 e_N/s_cr).
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (6); also 7.2.1.6 (6) with s_cr,Np.
pub fn eccentricity_factor(eccentricity: Length, characteristic_spacing: Length) -> f64 {
    1.0 / (1.0 + 2.0 * (eccentricity / characteristic_spacing).value)
}

/// Help from a plate that presses on the concrete beside the cone, ψ_M,N = 2 − z/(1.5 h_ef), at least 1; just 1 where an
/// edge is nearer than 1.5 h_ef, where less than eight tenths of the pull press, and where z is 1.5 h_ef or more.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (7).
///
/// # Valid for
/// A plate on the concrete or on grout; 1 over a gap.
pub fn compression_factor(
    lever: Length,
    embedment: Length,
    edge: Length,
    pressing_ratio: f64,
) -> f64 {
    if edge < embedment * 1.5 || pressing_ratio < 0.8 {
        return 1.0;
    }
    (2.0 - (lever / (embedment * 1.5)).value).max(1.0)
}

/// Embedment that counts beside three or more near edges, h'_ef = max(c_max/c_cr, s_max/s_cr) h_ef, at most h_ef.
///
/// # Source
/// EN 1992-4:2018, 7.2.1.4 (8).
pub fn narrow_embedment(
    embedment: Length,
    largest_near_edge: Length,
    largest_spacing: Length,
) -> Length {
    let by_edge = (largest_near_edge / (embedment * 1.5)).value;
    let by_spacing = (largest_spacing / (embedment * 3.0)).value;
    embedment * by_edge.max(by_spacing).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed: C25, 125 and 160 mm: 53.81 and 77.92 kN cracked, 76.86 and 111.3 kN uncracked.
    #[test]
    fn cones_of_the_usual_depths() {
        for (cracked, depth, expected) in [
            (true, 125.0, 53.81),
            (true, 160.0, 77.92),
            (false, 125.0, 76.86),
            (false, 160.0, 111.3),
        ] {
            let found = kilonewton::get(single(
                k1_factor(cracked),
                megapascal::new(25.0),
                millimetre::new(depth),
            ));
            assert!(
                (found - expected).abs() < 0.001 * expected,
                "{depth}: {found}"
            );
        }
    }

    #[test]
    fn factors_are_one_where_nothing_disturbs() {
        let mm = millimetre::new;
        assert!((edge_factor(mm(300.0), mm(240.0)) - 1.0).abs() < 1e-12);
        assert!((eccentricity_factor(mm(0.0), mm(480.0)) - 1.0).abs() < 1e-12);
        assert!((dense_bars_factor(mm(125.0)) - 1.0).abs() < 1e-12);
        assert!((compression_factor(mm(120.0), mm(160.0), mm(300.0), 1.0) - 1.5).abs() < 1e-12);
        for (lever, edge, pressing) in [
            (240.0, 300.0, 1.0),
            (120.0, 200.0, 1.0),
            (120.0, 300.0, 0.7),
        ] {
            assert!(
                (compression_factor(mm(lever), mm(160.0), mm(edge), pressing) - 1.0).abs() < 1e-12
            );
        }
        assert!(
            (millimetre::get(narrow_embedment(mm(160.0), mm(180.0), mm(200.0))) - 120.0).abs()
                < 1e-9
        );
    }
}
