//! EN 1992-1-1:2004, 3.1.2, Annex B and 7.3.2, against an open library, structuralcodes 0.7.
//!
//! Script and values stand in `reference/concrete.*`.

use serde::Deserialize;
use stillground::rules::en_1992_1_1_2004::{maturity, minimum_steel, strength, strength_by_age};
use stillground::units::{day, megapascal, square_millimetre};
use stillground_tests::close;

#[derive(Deserialize)]
struct Reference {
    ages: Vec<Age>,
    paces: Vec<Pace>,
    classes: Vec<Class>,
    steel: Vec<Steel>,
}

#[derive(Deserialize)]
struct Age {
    fck: f64,
    s: f64,
    days: f64,
    fcm: f64,
}

#[derive(Deserialize)]
struct Pace {
    temperature_c: f64,
    days: f64,
    adjusted: f64,
}

#[derive(Deserialize)]
struct Class {
    fck: f64,
    fctm: f64,
    ecm: f64,
}

#[derive(Deserialize)]
struct Steel {
    zone_mm2: f64,
    tensile: f64,
    stress: f64,
    k: f64,
    area: f64,
}

fn reference() -> Reference {
    let found: Reference = serde_json::from_str(include_str!("reference/concrete.json")).unwrap();
    let counts = [
        found.ages.len(),
        found.paces.len(),
        found.classes.len(),
        found.steel.len(),
    ];
    assert_eq!(counts, [126, 21, 6, 3]);
    found
}

#[test]
fn mean_strength_by_age_for_every_class_and_cement() {
    for case in reference().ages {
        let mean = strength::mean(megapascal::new(case.fck));
        let found = megapascal::get(strength_by_age::mean_at(day::new(case.days), mean, case.s));
        close(
            &format!("f_cm of {} at {} d, s {}", case.fck, case.days, case.s),
            found,
            case.fcm,
            1e-9,
        );
    }
}

#[test]
fn adjusted_age_by_temperature() {
    for case in reference().paces {
        let found = day::get(maturity::adjusted_age(
            day::new(case.days),
            case.temperature_c,
        ));
        close(
            &format!("{} d at {} °C", case.days, case.temperature_c),
            found,
            case.adjusted,
            1e-9,
        );
    }
}

#[test]
fn tensile_strength_and_modulus_by_class() {
    for case in reference().classes {
        let class = megapascal::new(case.fck);
        close(
            "f_ctm",
            megapascal::get(strength::mean_tensile(class)),
            case.fctm,
            1e-9,
        );
        close(
            "E_cm",
            megapascal::get(strength::elastic_modulus(class)),
            case.ecm,
            1e-6,
        );
    }
}

#[test]
fn least_steel_of_a_face() {
    for case in reference().steel {
        let zone = square_millimetre::new(case.zone_mm2);
        let found = minimum_steel::least(
            case.k,
            megapascal::new(case.tensile),
            zone,
            megapascal::new(case.stress),
        );
        close("A_s,min", square_millimetre::get(found), case.area, 1e-9);
    }
}

/// ASTM C1074 allows the Nurse–Saul sum with a datum of −10 °C too; there 28 days at 20 °C take 42 days at 10 °C.
#[test]
fn the_other_maturity_rule_gives_nearly_the_same_wait() {
    let nurse_saul = 28.0 * (20.0 + 10.0) / (10.0 + 10.0);
    let found = day::get(maturity::time_for(day::new(28.0), 10.0));
    close(
        "28 d at 10 °C against Nurse and Saul",
        found,
        nurse_saul,
        0.10,
    );
}

/// Common practice: two thirds to four fifths of the strength after a week.
#[test]
fn a_week_gives_about_three_quarters() {
    let week = strength_by_age::share_ratio(day::new(7.0), strength_by_age::NORMAL_FACTOR);
    assert!(
        (0.65..=0.80).contains(&week),
        "common practice: two thirds to four fifths after a week, found {week}"
    );
}
