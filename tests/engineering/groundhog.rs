//! groundhog 0.15.0, a general geotechnical library from PyPI; script and values in `reference/groundhog_ground.*`.

use crate::hardin::angular_sand_and_clay;
use serde::Deserialize;
use stillground::rules::fhwa_gec5_2017::shear_modulus::{density, shear_modulus};
use stillground::site_plan::site::Soil;
use stillground::stages::ground::soil_table::{self, SoilRow};
use stillground::stages::ground::water::water;
use stillground::units::{
    kilogram_per_cubic_metre, kilonewton_per_cubic_metre, kilopascal, metre, metre_per_second,
};
use stillground_tests::close;

#[derive(Deserialize)]
struct Reference {
    moduli: Vec<Modulus>,
    hardin_black: Vec<Hardin>,
    stresses: Vec<Stress>,
}

#[derive(Deserialize)]
struct Modulus {
    speed_m_s: f64,
    weight_kn_m3: f64,
    density_kg_m3: f64,
    modulus_kpa: f64,
}

#[derive(Deserialize)]
struct Hardin {
    void_ratio: f64,
    stress_kpa: f64,
    modulus_kpa: f64,
}

#[derive(Deserialize)]
struct Stress {
    moist_kn_m3: f64,
    wet_kn_m3: f64,
    water_m: f64,
    effective_kpa: f64,
}

fn reference() -> Reference {
    let found: Reference =
        serde_json::from_str(include_str!("reference/groundhog_ground.json")).unwrap();
    assert_eq!((found.moduli.len(), found.hardin_black.len()), (8, 4));
    found
}

#[test]
fn shear_modulus_from_speed_and_weight() {
    let cases = reference().moduli;
    assert_eq!(cases.len(), 8);
    for case in cases {
        let weight = kilonewton_per_cubic_metre::new(case.weight_kn_m3);
        close(
            "density",
            kilogram_per_cubic_metre::get(density(weight)),
            case.density_kg_m3,
            1e-12,
        );
        let found = shear_modulus(weight, metre_per_second::new(case.speed_m_s));
        close(
            "shear modulus",
            kilopascal::get(found),
            case.modulus_kpa,
            1e-12,
        );
    }
}

#[test]
fn hardins_two_forms_agree_within_three_per_cent() {
    // The library has the later form 625/(0.3 + 0.7 e²) √(pa σ'); ours is that of 1968, (2.973 − e)²/(1 + e).
    for case in reference().hardin_black {
        let found = angular_sand_and_clay(case.void_ratio, 1.0, kilopascal::new(case.stress_kpa));
        close(
            "modulus of sand",
            kilopascal::get(found),
            case.modulus_kpa,
            0.03,
        );
    }
}

#[test]
fn effective_stress_at_a_metre() {
    let cases = reference().stresses;
    assert_eq!(cases.len(), 5);
    for case in cases {
        let row = SoilRow {
            unit_weight_kn_m3: case.moist_kn_m3,
            wet_unit_weight_kn_m3: case.wet_kn_m3,
            ..soil_table::row(Soil::MediumSand)
        };
        let found = water(&row, Some(metre::new(case.water_m)), metre::new(1.0));
        close(
            "effective stress",
            kilopascal::get(found.stress),
            case.effective_kpa,
            1e-9,
        );
    }
}
