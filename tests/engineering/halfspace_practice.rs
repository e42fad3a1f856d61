//! Linings in arcseconds and the trade's "80 kg beside the pier: about 1.5 arcsec", against finite elements of the metre cube
//! (`reference/halfspace_block.json`), worked out by hand from their stiffness and leans.

use serde_json::Value;
use stillground::decided::design_plan;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;
use stillground_tests::close;
use stillground_tests::elements::{Asked, Case, Reference};

const WEIGHT_N: f64 = 80.0 * 9.80665;
const ARCSEC: f64 = 206_264.806;

fn design() -> (Value, f64) {
    let mut plan = SitePlan::unknown();
    plan.site.shear_wave_speed_m_s = Some(130.0);
    plan.site.unit_weight_kn_m3 = Some(17.41);
    plan.site.poisson_ratio = Some(0.35);
    (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
        (Some(1.0), Some(1.0), Some(1.0));
    (plan.block.side_contact_from_m, plan.block.side_contact_to_m) = (Some(0.0), Some(1.0));
    let design = design_plan(&plan, &NoShelf).unwrap();
    (
        serde_json::to_value(&design).unwrap()["motion"].clone(),
        17.41e3 / 9.80665 * 130.0 * 130.0,
    )
}

/// Turn of the block about y under a moment about its base's centre and a force along x there.
fn turned(case: &Case, contact: &str, moment: f64, force: f64) -> f64 {
    let [x, ry, coupling] =
        [(0, 0), (4, 4), (0, 4)].map(|(i, j)| case.figure(contact, Asked::Entry(i, j)).limit);
    (x * moment - coupling * force) / (x * ry - coupling * coupling)
}

#[test]
fn the_trades_figure_holds_for_ground_that_the_elements_name() {
    let (motion, modulus) = design();
    let case = Reference::read().case("cube 1, 0.35");
    let rows = &motion["practice"]["rows"];
    let on_block = turned(&case, "full", rows[0]["at_m"].as_f64().unwrap(), 0.0);
    let away = case.figure("full", Asked::Lean(3)).limit;
    close(
        "a metre from the side",
        rows[2]["at_m"].as_f64().unwrap(),
        case.places()[3],
        1e-9,
    );
    for (row, lean) in [(0, on_block), (2, away)] {
        let expected = lean * WEIGHT_N / modulus * ARCSEC;
        close(
            "tilt",
            rows[row]["tilt_arcsec"]["typical"].as_f64().unwrap(),
            expected,
            0.03,
        );
        let needed = lean * WEIGHT_N * ARCSEC / 1.5;
        close(
            "modulus",
            rows[row]["holds_at_shear_modulus_mpa"].as_f64().unwrap(),
            needed / 1e6,
            0.03,
        );
        let speed = (needed / (17.41e3 / 9.80665)).sqrt();
        close(
            "speed",
            rows[row]["holds_at_shear_wave_speed_m_s"].as_f64().unwrap(),
            speed,
            0.02,
        );
    }
    // Beside the block it lies between the two.
    let tilt = |row: usize| rows[row]["tilt_arcsec"]["typical"].as_f64().unwrap();
    assert!(tilt(0) > tilt(1) && tilt(1) > tilt(2));
}

#[test]
fn what_a_lining_costs_and_buys_is_what_the_elements_say() {
    let (motion, modulus) = design();
    let case = Reference::read().case("cube 1, 0.35");
    let isolation = &motion["isolation"];
    let height = isolation["push_at_m"].as_f64().unwrap() + 1.0;
    close(
        "person",
        isolation["person_at_m"].as_f64().unwrap(),
        case.places()[1],
        1e-9,
    );
    for (row, contact) in ["full", "half", "none"].into_iter().enumerate() {
        let said = |field: &str| isolation["rows"][row][field].clone();
        let rocking = case.figure(contact, Asked::Entry(4, 4)).limit * modulus;
        close(
            &format!("{contact}, rocking"),
            said("rocking_n_m_per_rad").as_f64().unwrap(),
            rocking,
            0.03,
        );
        let person = case.figure(contact, Asked::Lean(1)).limit * WEIGHT_N / modulus * ARCSEC;
        close(
            &format!("{contact}, person"),
            said("person_arcsec")["typical"].as_f64().unwrap(),
            person,
            0.04,
        );
        let push = turned(&case, contact, height, 1.0) * 10.0 / modulus * ARCSEC;
        close(
            &format!("{contact}, push"),
            said("push_arcsec")["typical"].as_f64().unwrap(),
            push,
            0.03,
        );
    }
}
