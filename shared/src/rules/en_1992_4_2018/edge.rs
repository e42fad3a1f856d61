//! Break-out of the concrete's edge in shear.

use super::clause;
use crate::source::{Source, Standing};
use crate::units::{
    Area, Force, Length, Pressure, megapascal, millimetre, newton, square_millimetre,
};

/// The edge and its factors.
pub const EDGE: Source = clause("7.2.2.5", Standing::SecondHand);

/// Factor k₉: 1.7 in cracked, 2.4 in uncracked concrete.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (5).
pub fn k9_factor(cracked: bool) -> f64 {
    if cracked { 1.7 } else { 2.4 }
}

/// Length that bears in shear, l_f = min(h_ef, 12 d).
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (5).
///
/// # Valid for
/// Diameters to 24 mm.
pub fn bearing_length(embedment: Length, diameter: Length) -> Length {
    millimetre::new(millimetre::get(embedment).min(12.0 * millimetre::get(diameter)))
}

/// Exponent α = 0.1 (l_f/c₁)^0.5.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (5).
pub fn alpha_factor(bearing_length: Length, edge: Length) -> f64 {
    0.1 * (bearing_length / edge).value.sqrt()
}

/// Exponent β = 0.1 (d_nom/c₁)^0.2.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (5).
pub fn beta_factor(diameter: Length, edge: Length) -> f64 {
    0.1 * (diameter / edge).value.powf(0.2)
}

/// Edge of a single stud V⁰_Rk,c = k₉ d^α l_f^β √f_ck c₁^1.5, in N, MPa and mm.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (5).
pub fn single(
    k9_factor: f64,
    diameter: Length,
    bearing_length: Length,
    strength: Pressure,
    edge: Length,
) -> Force {
    let (d, c1) = (millimetre::get(diameter), millimetre::get(edge));
    let length = millimetre::get(bearing_length);
    let (alpha, beta) = (
        alpha_factor(bearing_length, edge),
        beta_factor(diameter, edge),
    );
    newton::new(
        k9_factor
            * d.powf(alpha)
            * length.powf(beta)
            * megapascal::get(strength).sqrt()
            * c1.powf(1.5),
    )
}

/// Area of a single stud far from corners A⁰_c,V = 4.5 c₁².
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (6).
pub fn single_area(edge: Length) -> Area {
    square_millimetre::new(4.5 * millimetre::get(edge).powi(2))
}

/// Area of a row: its width with 1.5 c₁ to each side or the corner if nearer, times 1.5 c₁ or the thickness if less.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (6) and Figure 7.14.
pub fn row_area(edge: Length, row: Length, corners: [Length; 2], thickness: Length) -> Area {
    let reach = 1.5 * millimetre::get(edge);
    let sides: f64 = corners
        .iter()
        .map(|&corner| millimetre::get(corner).min(reach))
        .sum();
    square_millimetre::new((millimetre::get(row) + sides) * reach.min(millimetre::get(thickness)))
}

/// Disturbance by corners ψ_s,V = 0.7 + 0.3 c₂/(1.5 c₁), at most 1.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (7).
pub fn corner_factor(corner: Length, edge: Length) -> f64 {
    (0.7 + 0.3 * (corner / (edge * 1.5)).value).min(1.0)
}

/// Thickness ψ_h,V = √(1.5 c₁/h), at least 1.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (8).
pub fn thickness_factor(edge: Length, thickness: Length) -> f64 {
    (edge * 1.5 / thickness).value.sqrt().max(1.0)
}

/// Eccentricity ψ_ec,V = 1/(1 + 2 e_V/(3 c₁)).
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (9).
pub fn eccentricity_factor(eccentricity: Length, edge: Length) -> f64 {
    1.0 / (1.0 + 2.0 * (eccentricity / (edge * 3.0)).value)
}

/// Direction ψ_α,V = √(1/(cos²α + (0.5 sin α)²)), at least 1; α from the perpendicular to the edge, 0 to 90°.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (10).
pub fn direction_factor(angle_radians: f64) -> f64 {
    let (sine, cosine) = angle_radians.sin_cos();
    (1.0 / (cosine.powi(2) + (0.5 * sine).powi(2)))
        .sqrt()
        .max(1.0)
}

/// Edge distance that counts where both corners are within 1.5 c₁ and the member is thinner than that:
/// c'₁ = max(c₂,max/1.5, h/1.5, s₂,max/3), at most c₁.
///
/// # Source
/// EN 1992-4:2018, 7.2.2.5 (11).
pub fn narrow_edge(
    edge: Length,
    corners: [Length; 2],
    thickness: Length,
    largest_spacing: Length,
) -> Length {
    let c1 = millimetre::get(edge);
    let [first, second] = corners.map(millimetre::get);
    let h = millimetre::get(thickness);
    if first.max(second) < 1.5 * c1 && h < 1.5 * c1 {
        millimetre::new(
            (first.max(second) / 1.5)
                .max(h / 1.5)
                .max(millimetre::get(largest_spacing) / 3.0)
                .min(c1),
        )
    } else {
        edge
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::kilonewton;

    /// Computed for M16, 160 mm, C25: c₁ 100 gives 17.16 kN; c₁ = c₂ = 300, a pair at 200 in 900 gives 57.4 kN.
    #[test]
    fn edge_of_one_and_of_a_pair() {
        let mm = millimetre::new;
        let length = bearing_length(mm(160.0), mm(16.0));
        let near = single(
            k9_factor(true),
            mm(16.0),
            length,
            megapascal::new(25.0),
            mm(100.0),
        );
        assert!((kilonewton::get(near) - 17.16).abs() < 0.01);
        let far = single(
            k9_factor(true),
            mm(16.0),
            length,
            megapascal::new(25.0),
            mm(300.0),
        );
        assert!((kilonewton::get(far) - 71.73).abs() < 0.02);
        let area_ratio = (row_area(mm(300.0), mm(200.0), [mm(300.0); 2], mm(900.0))
            / single_area(mm(300.0)))
        .value;
        assert!((area_ratio - 0.8889).abs() < 1e-4);
        let pair = kilonewton::get(far)
            * area_ratio
            * corner_factor(mm(300.0), mm(300.0))
            * thickness_factor(mm(300.0), mm(900.0));
        assert!((pair - 57.4).abs() < 0.05);
    }

    #[test]
    fn a_shear_along_the_edge_is_twice_as_good() {
        assert!((direction_factor(std::f64::consts::FRAC_PI_2) - 2.0).abs() < 1e-12);
        assert!((direction_factor(0.0) - 1.0).abs() < 1e-12);
    }
}
