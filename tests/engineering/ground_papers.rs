//! Stiffness of soil near the surface: Hardin & Richart 1963, Hardin & Black 1968, PEER 2012/08, EN 1998-1 Table 3.1.

use stillground::brief::resolve;
use stillground::rules::hardin_black_1968::modulus::{
    angular_sand_and_clay, rounded_sand, stress_factor,
};
use stillground::rules::wair_2012::blow_count::{Kind, shear_wave_speed};
use stillground::site_plan::SitePlan;
use stillground::site_plan::site::Soil;
use stillground::stages::ground::{self, Ground};
use stillground::units::{kilopascal, megapascal, metre_per_second};
use stillground_tests::close;

fn found(soil: Soil) -> Ground {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(soil);
    ground::stage(&resolve(&plan).unwrap()).value
}

#[test]
fn hardin_and_richart_rounded_sand_at_a_metre() {
    // e 0.6 and 0.8 at σ'm 12 kPa: 37 and 25 MPa (engineering basis, computed from the paper's form).
    close(
        "e 0.6",
        megapascal::get(rounded_sand(0.6, kilopascal::new(12.0))),
        37.0,
        0.01,
    );
    close(
        "e 0.8",
        megapascal::get(rounded_sand(0.8, kilopascal::new(12.0))),
        25.0,
        0.01,
    );
}

#[test]
fn hardin_and_black_angular_sand_at_a_metre() {
    close(
        "e 0.65",
        megapascal::get(angular_sand_and_clay(0.65, 1.0, kilopascal::new(12.0))),
        36.6,
        0.002,
    );
}

#[test]
fn the_modulus_goes_with_the_root_of_stress() {
    close(
        "half the stress",
        stress_factor(kilopascal::new(9.0), kilopascal::new(18.0)),
        0.5_f64.sqrt(),
        1e-12,
    );
}

#[test]
fn peer_2012_08_blow_counts() {
    // N60 15, σ'v 18 kPa: all soils, clay and silt, sand, gravel.
    for (kind, speed) in [
        (Kind::All, 118.9),
        (Kind::ClayAndSilt, 103.9),
        (Kind::Sand, 108.7),
        (Kind::Gravel, 149.2),
    ] {
        close(
            "speed",
            metre_per_second::get(shear_wave_speed(kind, 15.0, kilopascal::new(18.0))),
            speed,
            1e-3,
        );
    }
}

#[test]
fn sand_of_the_table_has_what_hardins_formula_gives_at_a_metre() {
    // Void ratios of loose, medium and dense sand, 0.85, 0.65 and 0.45; σ'm 12 kPa. Within the band of each word.
    for (soil, e) in [
        (Soil::LooseSand, 0.85),
        (Soil::MediumSand, 0.65),
        (Soil::DenseSand, 0.45),
    ] {
        let (band, formula) = (
            found(soil).shear_modulus.unwrap(),
            megapascal::get(rounded_sand(e, kilopascal::new(12.0))),
        );
        assert!(
            megapascal::get(band.low) < formula && formula < megapascal::get(band.high),
            "{}: {formula}",
            soil.key()
        );
    }
}

#[test]
fn words_fall_into_the_site_class_that_the_code_describes() {
    // EN 1998-1, Table 3.1: D below 180 m/s (loose to medium sand, soft to firm clay), C 180 to 360 (dense sand, stiff clay),
    // B 360 to 800, A above 800 (rock).
    let speed = |soil| metre_per_second::get(found(soil).shear_wave_speed.unwrap().typical);
    for soil in [
        Soil::SoftClay,
        Soil::FirmClay,
        Soil::LooseSand,
        Soil::MediumSand,
    ] {
        assert!(speed(soil) < 180.0, "{}", soil.key());
    }
    for soil in [
        Soil::StiffClay,
        Soil::HardClay,
        Soil::DenseSand,
        Soil::Gravel,
    ] {
        assert!((180.0..360.0).contains(&speed(soil)), "{}", soil.key());
    }
    assert!((360.0..800.0).contains(&speed(Soil::WeatheredRock)) && speed(Soil::Rock) > 800.0);
}

#[test]
fn softer_words_are_softer() {
    for order in [
        vec![
            Soil::SoftClay,
            Soil::FirmClay,
            Soil::StiffClay,
            Soil::HardClay,
        ],
        vec![
            Soil::LooseSand,
            Soil::MediumSand,
            Soil::DenseSand,
            Soil::Gravel,
            Soil::WeatheredRock,
            Soil::Rock,
        ],
    ] {
        let moduli: Vec<_> = order
            .iter()
            .map(|&soil| found(soil).shear_modulus.unwrap().typical)
            .collect();
        assert!(moduli.is_sorted(), "{order:?}");
    }
}
