//! Stiffness of soil near the surface: Hardin & Richart 1963, Hardin & Black 1968, PEER 2012/08, Brandenberg and others 2010,
//! Kwak and others 2015, EN 1998-1 Table 3.1.

use crate::hardin::{angular_sand_and_clay, rounded_sand};
use stillground::brief::resolve;
use stillground::rules::wair_2012::blow_count::{SoilKind, shear_wave_speed};
use stillground::rules::{brandenberg_2010, kwak_2015, scatter};
use stillground::site_plan::SitePlan;
use stillground::site_plan::site::Soil;
use stillground::stages::ground::soil_table::Group;
use stillground::stages::ground::{self, Ground};
use stillground::units::{
    Pressure, kilonewton_per_cubic_metre, kilopascal, megapascal, metre_per_second, pascal,
};
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
fn peer_2012_08_blow_counts() {
    // N60 15, σ'v 18 kPa: all soils, clay and silt, sand, gravel.
    for (kind, speed) in [
        (SoilKind::All, 118.9),
        (SoilKind::ClayAndSilt, 103.9),
        (SoilKind::Sand, 108.7),
        (SoilKind::Gravel, 149.2),
    ] {
        close(
            "speed",
            metre_per_second::get(shear_wave_speed(kind, 15.0, kilopascal::new(18.0))),
            speed,
            1e-3,
        );
    }
}

/// The rows of `data/soils.csv` are rounded choices within what the regressions and Hardin's forms give a metre deep, in ground
/// of the row's own weight: from the least of them less a twentieth to the largest, to the nearest 5 m/s.
#[test]
fn each_word_has_a_speed_between_those_of_its_predictors() {
    let by_strength = |ratio: f64, strength: f64, weight: f64| {
        (ratio * strength * 1e3 / (weight * 1e3 / 9.806_65)).sqrt()
    };
    let hardin = |form: fn(f64, Pressure) -> Pressure, e: f64, weight: f64| {
        (pascal::get(form(e, kilopascal::new(12.0))) / (weight * 1e3 / 9.806_65)).sqrt()
    };
    let angular = |e, stress| angular_sand_and_clay(e, 1.0, stress);
    use brandenberg_2010::speed as brandenberg;
    use kwak_2015::speed as kwak;
    // N60 and strength are the geometric middle of each word's band, as in Terzaghi & Peck and BS 5930 (from memory); the
    // ratio of modulus to strength is 300 to 600 for a dried crust (Weiler 1988, from memory); void ratios are usual ones.
    for (soil, kind, n60, strength) in [
        (Soil::SoftClay, "clay", 2.8, 28.0),
        (Soil::FirmClay, "clay", 5.7, 55.0),
        (Soil::StiffClay, "clay", 11.0, 106.0),
        (Soil::HardClay, "clay", 21.0, 212.0),
        (Soil::Silt, "silt", 7.0, 0.0),
        (Soil::LooseSand, "sand", 6.0, 0.85),
        (Soil::MediumSand, "sand", 17.0, 0.65),
        (Soil::DenseSand, "sand", 38.0, 0.45),
        (Soil::Gravel, "gravel", 30.0, 0.40),
    ] {
        let ground = found(soil);
        let weight = kilonewton_per_cubic_metre::get(ground.unit_weight);
        let stress = kilopascal::new(weight);
        let get = metre_per_second::get;
        let mut predicted = match kind {
            "clay" => vec![
                get(brandenberg::SoilKind::Clay.row().median(n60, stress)),
                get(kwak::SoilKind::Clay.row().median(n60, stress)),
                by_strength(300.0, strength, weight),
                by_strength(600.0, strength, weight),
            ],
            "silt" => vec![
                get(brandenberg::SoilKind::Silt.row().median(n60, stress)),
                get(kwak::SoilKind::Silt.row().median(n60, stress)),
            ],
            "sand" => vec![
                get(brandenberg::SoilKind::Sand.row().median(n60, stress)),
                get(kwak::SoilKind::Sand.row().median(n60, stress)),
                hardin(rounded_sand, strength, weight),
                hardin(angular, strength, weight),
            ],
            _ => vec![
                get(kwak::SoilKind::Gravel.row().median(n60, stress)),
                hardin(rounded_sand, strength, weight),
            ],
        };
        predicted.sort_by(f64::total_cmp);
        let speed = get(ground.shear_wave_speed.unwrap().typical);
        let (least, most) = (predicted[0], predicted[predicted.len() - 1]);
        assert!(
            0.95 * least <= speed && speed <= most + 2.5,
            "{}: {speed} {predicted:?}",
            soil.key()
        );
    }
}

/// 5 and 95 % lie `exp(1.645 s)` either way, s 0.30 in clay and sand, 0.32 in silt, 0.35 in gravel, 0.45 in rock; rounded to
/// whole metres a second. The regressions' own scatter near the surface is 0.29 in clay, 0.32 in silt and 0.43 in sand; 0.30 in
/// sand is judgement, since Hardin's form binds it from the other side.
#[test]
fn each_words_range_is_its_scatter() {
    for (soil, sd) in [
        (Soil::SoftClay, 0.30),
        (Soil::FirmClay, 0.30),
        (Soil::StiffClay, 0.30),
        (Soil::HardClay, 0.30),
        (Soil::Silt, 0.32),
        (Soil::LooseSand, 0.30),
        (Soil::MediumSand, 0.30),
        (Soil::DenseSand, 0.30),
        (Soil::Gravel, 0.35),
        (Soil::WeatheredRock, 0.45),
        (Soil::Rock, 0.45),
    ] {
        let speed = found(soil)
            .shear_wave_speed
            .unwrap()
            .map(metre_per_second::get);
        let factor = scatter::worst_ratio(sd);
        assert!(
            (speed.typical / factor - speed.low).abs() < 0.75
                && (speed.typical * factor - speed.high).abs() < 0.75,
            "{}: {speed:?} {factor}",
            soil.key()
        );
    }
}

#[test]
fn words_fall_into_the_site_class_that_the_code_describes() {
    // EN 1998-1, Table 3.1: D below 180 m/s, C 180 to 360, B 360 to 800, A above 800 (rock), each a mean over 30 m. A metre deep
    // soil is slower than that mean, 0.4 to 0.7 of it, so that soils stand in D or just in C here; rock keeps its class.
    let speed = |soil| metre_per_second::get(found(soil).shear_wave_speed.unwrap().typical);
    for &soil in Soil::ALL {
        match found(soil).group {
            Group::Unfit => {}
            Group::Rock if soil == Soil::Rock => assert!(speed(soil) > 800.0),
            Group::Rock => assert!((360.0..800.0).contains(&speed(soil))),
            _ => {
                assert!(speed(soil) < 0.7 * 360.0, "{}", soil.key());
                assert!(speed(soil) > 0.4 * 180.0, "{}", soil.key());
            }
        }
    }
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
