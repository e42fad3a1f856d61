//! Pressure under an eccentrically loaded rigid base, against strips and a root (`reference/rigid_base.*`) and worked examples.

use serde::Deserialize;
use stillground::rules::en_1997_1_2004::{eccentric_base as base, uplift};
use stillground::units::{kilonewton, kilonewton_metre, kilopascal, metre, square_metre};
use stillground_tests::close;

#[derive(Deserialize)]
struct Case {
    force_kn: f64,
    moment_kn_m: f64,
    along_m: f64,
    across_m: f64,
    pressure_kpa: f64,
}

fn edge(force: f64, moment: f64, along: f64, across: f64) -> f64 {
    let force = kilonewton::new(force);
    let e = base::eccentricity(kilonewton_metre::new(moment), force).unwrap();
    kilopascal::get(base::edge_pressure(force, e, metre::new(along), metre::new(across)).unwrap())
}

#[test]
fn strips_on_springs_give_the_same_edge_pressure() {
    let cases: Vec<Case> = serde_json::from_str(include_str!("reference/rigid_base.json")).unwrap();
    assert_eq!(cases.len(), 8);
    for case in cases {
        let found = edge(case.force_kn, case.moment_kn_m, case.along_m, case.across_m);
        close(
            &format!("N {} M {}", case.force_kn, case.moment_kn_m),
            found,
            case.pressure_kpa,
            1e-4,
        );
    }
}

/// A worked example of a tower crane's base on the open web: 7 × 7 m, 2687.5 kN, 4200 kN m, partly lifted, 132.2 kPa.
#[test]
fn a_published_base_that_lifts_partly() {
    close("q_max", edge(2687.5, 4200.0, 7.0, 7.0), 132.2, 0.002);
}

/// A textbook's example of concrete footings: 2 m square, e = 0.125 m, 412.5 and 187.5 kPa at the edges, so 1200 kN.
#[test]
fn a_published_base_within_the_kern() {
    close("q_max", edge(1200.0, 150.0, 2.0, 2.0), 412.5, 1e-9);
    let least = 2.0 * 1200.0 / 4.0 - edge(1200.0, 150.0, 2.0, 2.0);
    close("q_min", least, 187.5, 1e-9);
}

/// EN 1997-1 Annex D by hand: 2 × 3 m, e = 0.25 m along 2 m leaves 1.5 × 3 = 4.5 m².
#[test]
fn effective_area_by_hand() {
    let area = base::effective_area(metre::new(0.25), metre::new(2.0), metre::new(3.0)).unwrap();
    close("A'", square_metre::get(area), 4.5, 1e-12);
}

/// EN 1997-1 Table A.15 by hand: a metre cube of 24 kN under water to its top: 0.9 × 24 = 21.6 against 9.81 kN.
#[test]
fn uplift_of_a_metre_cube_by_hand() {
    let lift = uplift::lift(square_metre::new(1.0), metre::new(1.0), metre::new(0.0));
    close("lift", kilonewton::get(lift), 9.81, 1e-9);
    close(
        "holding",
        kilonewton::get(uplift::holding(kilonewton::new(24.0))),
        21.6,
        1e-9,
    );
}
