//! Depth of frost with the heat of the warm ground below: the modified Berggren equation.
//! UFC 3-130-06, 2004, section 3, modified Berggren equation.
//!
//! The document reads the factor λ from a chart. Here it is the root of the exact solution behind the chart (Neumann's
//! two-phase problem with the same diffusivity above and below the frost line): with g the frost line's similarity
//! coordinate, e^(−g²)/erf g − α e^(−g²)/erfc g = g √π/μ, and λ = g √(2/μ).

use crate::source::Source;

/// Source of the equation; λ is derived here.
pub const SOURCE: Source = Source::second_hand(
    "UFC 3-130-06 (TM 5-852-6)",
    "2004",
    "modified Berggren equation, λ from Neumann's solution",
);

/// Steps of the bisection: each halves the interval, so that the last is far below a float's own grain.
const STEPS: usize = 80;

/// Thermal ratio, α = v₀/v_s: the warmth of the ground over the cold of the surface.
///
/// # Source
/// UFC 3-130-06, 2004, thermal ratio; v₀ the mean annual temperature above freezing, v_s = n I/t.
///
/// # Valid for
/// `surface_index_k_d` above nought. Ground colder than freezing all year counts as being at freezing point.
pub fn thermal_ratio(mean_annual_c: f64, surface_index_k_d: f64, season_d: f64) -> f64 {
    mean_annual_c.max(0.0) * season_d / surface_index_k_d
}

/// Fusion parameter, μ = v_s C/L.
///
/// # Source
/// UFC 3-130-06, 2004, fusion parameter; C is the volumetric heat capacity, J/(m³ K), L the latent heat, J/m³.
///
/// # Valid for
/// Latent heat and season above nought.
pub fn fusion_ratio(
    surface_index_k_d: f64,
    season_d: f64,
    heat_capacity_j_m3_k: f64,
    latent_heat_j_m3: f64,
) -> f64 {
    surface_index_k_d / season_d * heat_capacity_j_m3_k / latent_heat_j_m3
}

/// Volumetric heat capacity of soil, mean of frozen and thawed, C = ρd c_w (0.17 + 0.75 w), J/(m³ K).
///
/// # Source
/// UFC 3-130-06, 2004, average volumetric heat (there γd (0.17 + 0.75 w/100) Btu/(ft³ °F)); c_w = 4187 J/(kg K).
///
/// # Valid for
/// Mineral soil.
pub fn heat_capacity_j_m3_k(dry_density_kg_m3: f64, water_content_ratio: f64) -> f64 {
    dry_density_kg_m3 * 4187.0 * (0.17 + 0.75 * water_content_ratio)
}

/// Factor λ on Stefan's depth.
///
/// # Source
/// UFC 3-130-06, 2004, figure of λ over μ and α; here the root of Neumann's solution that the figure plots.
///
/// # Valid for
/// α and μ not negative; one where μ is nought, less than one elsewhere.
///
/// # Example
/// ```
/// use stillground::rules::ufc_3_130_06_2004::berggren::lambda_factor;
/// assert!((lambda_factor(0.333, 0.204) - 0.896).abs() < 0.001);
/// ```
pub fn lambda_factor(thermal_ratio: f64, fusion_ratio: f64) -> f64 {
    if fusion_ratio < 1e-9 {
        return 1.0;
    }
    // At the root λ lies between 0 and 1, so that g lies between 0 and √(μ/2); the balance falls steadily with g.
    let (mut low, mut high) = (0.0, (fusion_ratio / 2.0).sqrt());
    for _ in 0..STEPS {
        let g = 0.5 * (low + high);
        if balance(g, thermal_ratio, fusion_ratio) > 0.0 {
            low = g;
        } else {
            high = g;
        }
    }
    0.5 * (low + high) * (2.0 / fusion_ratio).sqrt()
}

/// Heat that flows up from the frost line, less what flows into it from below and what the freezing water gives.
fn balance(g: f64, thermal_ratio: f64, fusion_ratio: f64) -> f64 {
    let bell = (-g * g).exp();
    bell / erf(g) - thermal_ratio * bell / erfc(g) - g * std::f64::consts::PI.sqrt() / fusion_ratio
}

/// Error function by its power series, exact to a float's grain for arguments up to 3.
fn erf(x: f64) -> f64 {
    let (mut term, mut sum) = (x, x);
    for n in 1..120 {
        let n = f64::from(n);
        term *= -x * x / n;
        sum += term / (2.0 * n + 1.0);
    }
    sum * 2.0 / std::f64::consts::PI.sqrt()
}

/// One less the error function; never below the least that keeps a quotient finite.
fn erfc(x: f64) -> f64 {
    (1.0 - erf(x)).max(1e-12)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_error_function_at_one() {
        assert!((erf(1.0) - 0.842_700_792_949_715).abs() < 1e-14);
        assert!((erf(2.5) - 0.999_593_047_982_555).abs() < 1e-12);
    }

    #[test]
    fn warm_ground_holds_the_frost_up() {
        assert!((lambda_factor(2.0, 0.2) - 0.639).abs() < 0.001);
        assert!(lambda_factor(0.0, 0.2) > lambda_factor(0.5, 0.2));
        assert_eq!(lambda_factor(0.5, 0.0), 1.0);
    }
}
