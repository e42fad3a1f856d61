//! Bad answers about block, ground and floor at the command line: a reason that names the fields, or the right physics.

use std::process::Output;

use serde_json::{Value, json};
use stillground_tests::binary::run_with_input;
use tempfile::tempdir;

fn block(length: f64, depth: f64, more: &Value) -> Value {
    let mut plan = json!({
        "schema_version": 1,
        "site": {"shear_wave_speed_m_s": 150.0, "unit_weight_kn_m3": 18.0, "poisson_ratio": 0.35},
        "block": {"length_m": length, "width_m": 1.0, "depth_m": depth},
    });
    for (section, fields) in more.as_object().unwrap() {
        for (field, value) in fields.as_object().unwrap() {
            plan[section][field] = value.clone();
        }
    }
    plan
}

fn design(plan: &Value) -> Output {
    let folder = tempdir().unwrap();
    run_with_input(folder.path(), &["design", "-"], plan.to_string().as_bytes())
}

/// Status 2, nothing printed, and one line that names every field.
fn refused(plan: &Value, fields: &[&str]) {
    let output = design(plan);
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(
        (
            output.status.code(),
            output.stdout.is_empty(),
            said.lines().count()
        ),
        (Some(2), true, 1),
        "{plan}: {said}"
    );
    for field in fields {
        assert!(said.contains(field), "{field} is not named: {said}");
    }
}

fn designed(plan: &Value) -> Value {
    let output = design(plan);
    assert!(
        output.status.success(),
        "{plan}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn a_block_above_ground_or_one_to_a_hundred_is_refused() {
    refused(&block(1.0, -0.2, &json!({})), &["block.depth_m"]);
    refused(&block(1.0, 0.0, &json!({})), &["block.depth_m"]);
    refused(&block(100.0, 1.0, &json!({})), &["block.length_m"]);
    refused(
        &block(10.0, 1.0, &json!({"block": {"width_m": 0.2}})),
        &["block.length_m", "block.width_m"],
    );
    refused(
        &block(0.2, 1.0, &json!({"block": {"width_m": 10.0}})),
        &["block.length_m", "block.width_m"],
    );
}

#[test]
fn contact_reversed_or_outside_the_block_is_refused() {
    refused(
        &block(
            1.0,
            1.0,
            &json!({"block": {"side_contact_from_m": 0.8, "side_contact_to_m": 0.2}}),
        ),
        &["block.side_contact_from_m", "block.side_contact_to_m"],
    );
    refused(
        &block(1.0, 1.0, &json!({"block": {"side_contact_from_m": 1.2}})),
        &["block.side_contact_from_m", "block.depth_m"],
    );
    refused(
        &block(1.0, 1.0, &json!({"block": {"side_contact_to_m": 1.2}})),
        &["block.side_contact_to_m", "block.depth_m"],
    );
    refused(
        &block(1.0, 1.0, &json!({"block": {"side_contact_from_m": -0.1}})),
        &["block.side_contact_from_m"],
    );
}

#[test]
fn ground_that_cannot_change_its_volume_is_refused_and_nearly_so_is_solved() {
    refused(
        &block(1.0, 1.0, &json!({"site": {"poisson_ratio": 0.5}})),
        &["site.poisson_ratio"],
    );
    refused(
        &block(1.0, 1.0, &json!({"site": {"poisson_ratio": -0.1}})),
        &["site.poisson_ratio"],
    );
    for ratio in [0.0, 0.49] {
        let held = designed(&block(1.0, 1.0, &json!({"site": {"poisson_ratio": ratio}})));
        assert!(
            held["ground_stiffness"]["rocking_y_n_m_per_rad"]
                .as_f64()
                .unwrap()
                > 1e8,
            "{ratio}"
        );
    }
}

#[test]
fn a_stand_inside_the_pier_is_refused() {
    let stands = json!([{"name": "Anna", "x_m": 0.05, "y_m": 0.0, "mass_kg": 80.0}]);
    refused(
        &block(
            1.0,
            1.0,
            &json!({"floor": {"stands": stands}, "pier": {"outside_diameter_mm": 219.1}}),
        ),
        &["floor.stands[0].x_m", "pier.outside_diameter_mm"],
    );
}

/// A weight on the block itself leans it by its moment about the base: nothing of the ground's dish about it.
#[test]
fn a_post_or_a_person_on_the_block_leans_it_by_the_moment() {
    let stands = json!([{"name": "Anna", "x_m": 0.4, "y_m": 0.0, "mass_kg": 80.0}]);
    let found = designed(&block(
        1.0,
        1.0,
        &json!({"floor": {"kind": "ground", "stands": stands}}),
    ));
    let held = |field: &str| found["ground_stiffness"][field].as_f64().unwrap();
    let [x, coupling, rocking] = [
        "horizontal_x_n_per_m",
        "coupling_x_ry_n_per_rad",
        "rocking_y_n_m_per_rad",
    ]
    .map(held);
    let expected = 80.0 * 9.80665 * 0.4 * x / (x * rocking - coupling * coupling) * 206_264.806;
    let tilt = |design: &Value| {
        design["motion"]["stands"][0]["block_tilt_arcsec"]
            .as_f64()
            .unwrap()
    };
    assert!(
        (tilt(&found) / expected - 1.0).abs() < 1e-4,
        "{} {expected}",
        tilt(&found)
    );

    let posts = json!([
        [0.4, 0.3],
        [0.4, -0.3],
        [-2.0, 1.5],
        [-2.0, -1.5],
        [2.0, 1.5],
        [2.0, -1.5]
    ]);
    let on_deck = |posts: &Value| {
        let stands = json!([{"name": "Anna", "x_m": 0.6, "y_m": 0.0, "mass_kg": 80.0}]);
        designed(&block(
            1.0,
            1.0,
            &json!({"floor": {"kind": "deck", "supports": posts, "stands": stands}}),
        ))
    };
    let (on, off) = (
        on_deck(&posts),
        on_deck(&json!([[2.0, 1.5], [2.0, -1.5], [-2.0, 1.5], [-2.0, -1.5]])),
    );
    assert!(tilt(&on) > 2.0 * tilt(&off), "{} {}", tilt(&on), tilt(&off));
    let verdict = |design: &Value| {
        let checks = design["checks"].as_array().unwrap();
        checks
            .iter()
            .find(|check| {
                check["note"]
                    .as_str()
                    .is_some_and(|note| note.contains("post on the block"))
            })
            .unwrap()["verdict"]
            .clone()
    };
    assert_eq!(
        (verdict(&on), verdict(&off) == "fails"),
        (json!("fails"), false)
    );
}
