//! Depth of frost: UFC 3-130-06 (TM 5-852-6), Aldrich & Paynter 1953, scipy's roots and a finite-difference field.
//!
//! Script and values of the last two stand in `reference/frost.*`.

use serde::Deserialize;
use stillground::rules::ufc_3_130_06_2004::{berggren, stefan};
use stillground::units::{kilogram_per_cubic_metre, metre};
use stillground_tests::close;

/// Units of the document: 1 lb/ft³, 1 Btu/(h ft °F), 1 °F d, 1 ft.
const PCF_KG_M3: f64 = 0.453_592_37 / (0.3048 * 0.3048 * 0.3048);
const BTU_HFTF_W_MK: f64 = 1.730_735;
const FAHRENHEIT_K: f64 = 1.0 / 1.8;
const FOOT_M: f64 = 0.3048;

#[derive(Deserialize)]
struct Reference {
    roots: Vec<Root>,
    enthalpy: Vec<Field>,
}

#[derive(Deserialize)]
struct Root {
    alpha: f64,
    mu: f64,
    lambda: f64,
}

#[derive(Deserialize)]
struct Field {
    conductivity_w_mk: f64,
    dry_density_kg_m3: f64,
    water_content_ratio: f64,
    surface_index_k_d: f64,
    season_d: f64,
    mean_c: f64,
    depth_m: f64,
}

fn reference() -> Reference {
    let found: Reference = serde_json::from_str(include_str!("reference/frost.json")).unwrap();
    assert_eq!(found.roots.len(), 30);
    found
}

/// λ and depth by the engine's rules.
fn depth(case: &Field) -> (f64, f64) {
    let heat = stefan::latent_heat_j_m3(
        kilogram_per_cubic_metre::new(case.dry_density_kg_m3),
        case.water_content_ratio,
    );
    let capacity = berggren::heat_capacity_j_m3_k(case.dry_density_kg_m3, case.water_content_ratio);
    let alpha = berggren::thermal_ratio(case.mean_c, case.surface_index_k_d, case.season_d);
    let mu = berggren::fusion_ratio(case.surface_index_k_d, case.season_d, capacity, heat);
    let lambda = berggren::lambda_factor(alpha, mu);
    (
        lambda,
        lambda
            * metre::get(stefan::depth(
                case.conductivity_w_mk,
                case.surface_index_k_d,
                heat,
            )),
    )
}

/// TM 5-852-6, example of a homogeneous sandy silt: 100 lb/ft³, 15 %, k 0.76, nF 2500 °F d in 160 days, year's mean 37.2 °F.
fn army_example() -> Field {
    Field {
        conductivity_w_mk: 0.76 * BTU_HFTF_W_MK,
        dry_density_kg_m3: 100.0 * PCF_KG_M3,
        water_content_ratio: 0.15,
        surface_index_k_d: 2500.0 * FAHRENHEIT_K,
        season_d: 160.0,
        mean_c: (37.2 - 32.0) * FAHRENHEIT_K,
        depth_m: 5.8 * FOOT_M,
    }
}

#[test]
fn army_manual_example_of_a_sandy_silt() {
    // Remembered answer of the manual: λ 0.89 from its chart and 5.8 ft; the manual's page could not be read again.
    let case = army_example();
    let (lambda, found) = depth(&case);
    close("λ", lambda, 0.89, 0.01);
    close("depth of frost", found, case.depth_m, 0.01);
}

#[test]
fn army_manual_latent_heat_and_heat_capacity() {
    // L = 144 × 100 × 0.15 = 2160 Btu/ft³; C = 100 (0.17 + 0.75 × 0.15) = 28.25 Btu/(ft³ °F). 1 Btu = 1055.056 J.
    let volume = FOOT_M * FOOT_M * FOOT_M;
    let heat = stefan::latent_heat_j_m3(kilogram_per_cubic_metre::new(100.0 * PCF_KG_M3), 0.15);
    close("latent heat", heat * volume / 1055.056, 2160.0, 0.005);
    let capacity = berggren::heat_capacity_j_m3_k(100.0 * PCF_KG_M3, 0.15);
    close(
        "heat capacity",
        capacity * volume / 1055.056 * FAHRENHEIT_K,
        28.25,
        0.001,
    );
}

#[test]
fn stefan_in_imperial_units() {
    // X = √(48 k nF/L), the form the manual and the state highway notes print: √(48 × 0.76 × 2500/2160) = 6.50 ft.
    let case = army_example();
    let heat =
        stefan::latent_heat_j_m3(kilogram_per_cubic_metre::new(case.dry_density_kg_m3), 0.15);
    let found = metre::get(stefan::depth(
        case.conductivity_w_mk,
        case.surface_index_k_d,
        heat,
    )) / FOOT_M;
    close(
        "Stefan's depth, ft",
        found,
        (48.0_f64 * 0.76 * 2500.0 / 2160.0).sqrt(),
        0.003,
    );
}

#[test]
fn lambda_is_the_root_that_scipy_finds() {
    let roots = reference().roots;
    assert_eq!(roots.len(), 30);
    for root in roots {
        close(
            "λ",
            berggren::lambda_factor(root.alpha, root.mu),
            root.lambda,
            1e-9,
        );
    }
}

#[test]
fn lambda_against_aldrich_and_paynters_closed_form() {
    // 1/√(1 + μ (α + 0.5)) as quoted from Aldrich & Paynter 1953: near the root where the ground is hardly warmer than
    // freezing, and above it, so deeper, where the ground is warm.
    let closed = |root: &Root| 1.0 / (1.0 + root.mu * (root.alpha + 0.5)).sqrt();
    for root in reference().roots {
        let found = berggren::lambda_factor(root.alpha, root.mu);
        if root.alpha >= 1.0 / 3.0 {
            assert!(found < closed(&root), "α {} μ {}", root.alpha, root.mu);
        } else if root.mu <= 0.2 {
            close("λ in cold ground", found, closed(&root), 0.02);
        }
    }
}

#[test]
fn lambda_of_ground_at_freezing_point_is_the_one_phase_series() {
    // Stefan's one-phase problem: λ = 1 − μ/6 for a small fusion parameter.
    for mu in [0.01, 0.02, 0.05] {
        close(
            "λ",
            berggren::lambda_factor(0.0, mu),
            1.0 - mu / 6.0,
            mu * mu,
        );
    }
}

#[test]
fn a_field_of_finite_differences_freezes_as_deep() {
    let fields = reference().enthalpy;
    assert_eq!(fields.len(), 3);
    for case in fields {
        close("depth of frost", depth(&case).1, case.depth_m, 0.02);
    }
}
