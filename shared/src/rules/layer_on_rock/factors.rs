//! What rigid rock below a layer makes of a disc's stiffness on the half-space; `t` is the disc's radius over the thickness.
//!
//! Radius of equal area for sway and vertical, of equal second moment for rocking, of equal polar moment for torsion.

use std::f64::consts::PI;

/// Poisson's ratio above which the fits fail; a larger one is taken as this, which is the softer side.
pub const MOST_POISSON_RATIO: f64 = 0.40;

/// Sway: `1 + a t (t + 0.53)/(t + 0.82)`, `a = π (2 − ν)/8`.
///
/// # Source
/// Fitted to own finite elements, layers of 4 radii to 0.05; the thin layer exact.
///
/// # Valid for
/// Any thickness; ν up to 0.40, within 13 % of the elements.
pub fn sway_factor(radius_over_layer_ratio: f64, poisson_ratio: f64) -> f64 {
    let (t, v) = (radius_over_layer_ratio, capped(poisson_ratio));
    1.0 + PI * (2.0 - v) / 8.0 * t * (t + 0.53) / (t + 0.82)
}

/// Rocking: `1 + a t³/(t² + 0.9 t + 1.17)`, `a = (π/4) (2(1 − ν)/(1 − 2ν)) 3(1 − ν)/8`.
///
/// # Source
/// Fitted to own finite elements, layers of 4 radii to 0.05; the thin layer exact.
///
/// # Valid for
/// Any thickness; ν up to 0.40, within 13 % of the elements.
pub fn rocking_factor(radius_over_layer_ratio: f64, poisson_ratio: f64) -> f64 {
    let (t, v) = (radius_over_layer_ratio, capped(poisson_ratio));
    let a = PI / 4.0 * confined_ratio(v) * 3.0 * (1.0 - v) / 8.0;
    1.0 + a * t.powi(3) / (t * t + 0.9 * t + 1.17)
}

/// Vertical: `1 + a t [1 − 0.55/(1 + t^1.3)]`, `a = π (2(1 − ν)/(1 − 2ν)) (1 − ν)/4`.
///
/// # Source
/// Fitted to own finite elements, layers of 4 radii to 0.05; the thin layer exact.
///
/// # Valid for
/// Any thickness; ν up to 0.40, within 13 % of the elements.
pub fn vertical_factor(radius_over_layer_ratio: f64, poisson_ratio: f64) -> f64 {
    let (t, v) = (radius_over_layer_ratio, capped(poisson_ratio));
    let a = PI * confined_ratio(v) * (1.0 - v) / 4.0;
    1.0 + a * t * (1.0 - 0.55 / (1.0 + t.powf(1.3)))
}

/// Torsion: `1 + (3π/32) t⁴/(t³ + 1.2 t² + 1.2 t + 2.5)`.
///
/// # Source
/// Fitted to own finite elements, layers of 2 radii to 0.05; the thin layer exact.
///
/// # Valid for
/// Any thickness and any ν.
pub fn torsion_factor(radius_over_layer_ratio: f64) -> f64 {
    let t = radius_over_layer_ratio;
    1.0 + 3.0 * PI / 32.0 * t.powi(4) / (t.powi(3) + 1.2 * t * t + 1.2 * t + 2.5)
}

fn capped(poisson_ratio: f64) -> f64 {
    poisson_ratio.min(MOST_POISSON_RATIO)
}

/// Modulus of a layer that cannot bulge sideways over its shear modulus.
fn confined_ratio(poisson_ratio: f64) -> f64 {
    2.0 * (1.0 - poisson_ratio) / (1.0 - 2.0 * poisson_ratio)
}

#[cfg(test)]
mod tests {
    use super::*;

    // Computed apart at ν 0.35, t 0.25, 0.5, 1, 2, 4, 10, 100; kept to three or four figures.
    #[test]
    fn the_factors_as_computed_apart() {
        let ratios = [0.25, 0.5, 1.0, 2.0, 4.0, 10.0, 100.0];
        let sway = [1.118, 1.253, 1.545, 2.163, 3.436, 7.306, 65.6];
        let rocking = [1.009, 1.055, 1.270, 1.952, 3.556, 8.53, 83.2];
        let vertical = [1.292, 1.673, 2.604, 4.722, 9.16, 22.5, 221.9];
        type Row = (fn(f64, f64) -> f64, [f64; 7]);
        let rows: [Row; 3] = [
            (sway_factor, sway),
            (rocking_factor, rocking),
            (vertical_factor, vertical),
        ];
        for (factor, expected) in rows {
            for (t, expected) in ratios.into_iter().zip(expected) {
                let found = factor(t, 0.35);
                assert!(
                    (found / expected - 1.0).abs() < 2e-3,
                    "{t}: {found} {expected}"
                );
            }
        }
    }

    // Own finite elements at h/R 2, 1, 0.5, 0.25, 0.1, 0.05, and the formula as computed apart.
    #[test]
    fn torsion_lies_near_the_elements() {
        let elements = [1.010, 1.062, 1.259, 1.78, 3.50, 6.43];
        let formula = [1.005, 1.050, 1.266, 1.83, 3.60, 6.54];
        for (i, layer) in [2.0, 1.0, 0.5, 0.25, 0.1, 0.05].into_iter().enumerate() {
            let found = torsion_factor(1.0 / layer);
            assert!((found / formula[i] - 1.0).abs() < 2e-3, "{layer}: {found}");
            assert!((found / elements[i] - 1.0).abs() < 0.03, "{layer}: {found}");
        }
    }

    // A thin layer between two rigid bodies: shear G A/h, confined compression E A/h, over 8GR/(2−ν) and 4GR/(1−ν).
    #[test]
    fn a_thin_layer_is_exact() {
        let (t, v) = (1e5, 0.30);
        let sway = PI * t * (2.0 - v) / 8.0;
        let vertical = PI * confined_ratio(v) * t * (1.0 - v) / 4.0;
        assert!((sway_factor(t, v) / sway - 1.0).abs() < 1e-4);
        assert!((vertical_factor(t, v) / vertical - 1.0).abs() < 1e-4);
    }

    #[test]
    fn a_ratio_past_the_fit_counts_as_its_end() {
        let at = |v| {
            [
                sway_factor(1.0, v),
                rocking_factor(1.0, v),
                vertical_factor(1.0, v),
            ]
        };
        assert_eq!(at(0.49), at(MOST_POISSON_RATIO));
    }
}
