//! Studs that cannot be: refused by the interface and by the command line alike, at the field, with the limit.

use serde_json::{Value, json};
use stillground_tests::binary::run_with_input;
use stillground_tests::service::start;

/// What is wrong, the field at which it is named, and the limit in the words of a reader in metric units.
fn cases() -> Vec<(&'static str, Value, &'static str, &'static str)> {
    let plan = |rest: Value| {
        let mut plan = json!({ "schema_version": 1 });
        plan.as_object_mut()
            .unwrap()
            .extend(rest.as_object().unwrap().clone());
        plan
    };
    let anchors = |anchors: Value| plan(json!({ "anchors": anchors }));
    vec![
        (
            "studs overlap",
            anchors(json!({ "count": 12, "circle_diameter_mm": 100 })),
            "anchors.circle_diameter_mm",
            "more than 116 mm",
        ),
        (
            "studs stand outside the plate",
            plan(
                json!({ "anchors": { "circle_diameter_mm": 600, "size": "M16" }, "pier": { "plate_side_mm": 300 } }),
            ),
            "anchors.circle_diameter_mm",
            "this one is 300 mm",
        ),
        (
            "embedment is more than the block",
            plan(
                json!({ "anchors": { "embedment_mm": 300 }, "block": { "depth_m": 0.25, "upstand_m": 0 } }),
            ),
            "anchors.embedment_mm",
            "At most 220 mm fits",
        ),
        (
            "embedment is more than the product allows",
            anchors(json!({ "embedment_mm": 200, "max_embedment_mm": 160 })),
            "anchors.embedment_mm",
            "the greatest embedment stated for it is 160 mm",
        ),
        (
            "embedment is within twenty diameters and yet more than the block",
            plan(
                json!({ "anchors": { "embedment_mm": 320, "size": "M16" }, "block": { "depth_m": 0.33, "upstand_m": 0 } }),
            ),
            "anchors.embedment_mm",
            "At most 300 mm fits",
        ),
        (
            "the plate is wider than the block",
            plan(json!({ "pier": { "plate_side_mm": 700 }, "block": { "length_m": 0.6 } })),
            "pier.plate_side_mm",
            "600 mm",
        ),
        (
            "the torque is above proof",
            anchors(json!({ "torque_n_m": 1765.2, "size": "M16" })),
            "anchors.torque_n_m",
            "The limit is 291 N m",
        ),
        (
            "the temperature is outside the resin's range",
            anchors(
                json!({ "concrete_temperature_c": -15, "times_by_temperature": [
                { "concrete_c": 5, "working_min": 30, "cure_h": 24 },
                { "concrete_c": 20, "working_min": 8, "cure_h": 6 },
            ] }),
            ),
            "anchors.concrete_temperature_c",
            "range of",
        ),
        (
            "the cartridge holds nothing",
            anchors(json!({ "cartridge_ml": 0 })),
            "anchors.cartridge_ml",
            "50",
        ),
    ]
}

#[test]
fn each_is_named_at_its_field_with_the_limit() {
    let service = start();
    let folder = tempfile::tempdir().unwrap();
    for (what, plan, field, limit) in cases() {
        let answer = service.post_json("/api/v1/design", &plan);
        assert_eq!(answer.status, 422, "{what}: {}", answer.text());
        let problem = answer.json();
        let said = problem.to_string().replace('\u{a0}', " ");
        let errors = problem["errors"].as_array().unwrap();
        let named = errors.iter().any(|error| error.to_string().contains(field));
        assert!(named && said.contains(limit), "{what}: {said}");
        let output = run_with_input(folder.path(), &["design", "-"], plan.to_string().as_bytes());
        assert_eq!(output.status.code(), Some(2), "{what}");
        let line = String::from_utf8_lossy(&output.stderr).replace('\u{a0}', " ");
        assert!(line.contains(field), "{what}: {line}");
        assert_eq!(line.trim_end().lines().count(), 1, "{what}: {line}");
    }
}

/// The same in a reader's pounds and feet: no metric figure stands in what is said.
#[test]
fn limits_are_said_in_the_reader_s_units() {
    let service = start();
    for (what, mut plan, _, _) in cases() {
        plan["units"] = json!("imperial");
        let said = service.post_json("/api/v1/design", &plan).json()["errors"]
            .to_string()
            .replace('\u{a0}', " ");
        for unit in [" N m", " kN", " mm ", " mm,", " mm."] {
            assert!(!said.contains(unit), "{what}: {said}");
        }
    }
}
