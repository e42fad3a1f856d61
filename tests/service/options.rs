//! All the piers that fit, by the interface and by the command line.

use serde_json::{Value, json};
use stillground_tests::binary::run_with_input;
use stillground_tests::service::start_searching;
use stillground_tests::small::small;
use tempfile::tempdir;

use crate::command_line::{printed, said};

#[test]
fn the_piers_that_fit_are_the_same_by_interface_and_command_line() {
    let answer = start_searching().post_json("/api/v1/options", &small());
    assert_eq!(answer.status, 200, "{}", answer.text());
    let found = answer.json();
    let counted = |name: &str| found[name].as_u64().unwrap();
    // Five depths from 0.3 to 0.5 m, on nuts or on grout.
    assert_eq!(counted("looked_at") + counted("skipped"), 10);
    assert_eq!(counted("not_reached"), 0);
    let front = found["front"].as_array().unwrap();
    assert!(!front.is_empty());
    for point in front {
        assert!(point["block"]["depth_m"].as_f64().unwrap() >= 0.4);
        assert!(point["star_growth_ratio"]["worst"].is_number());
        assert_eq!(point["fails"], json!([]));
        assert!(point["quiet_distance_m"].is_number() && point["frequency_hz"].is_number());
    }
    assert!(found["named"]["least_digging"]["dig_volume_m3"].is_number());
    let folder = tempdir().unwrap();
    let input = small().to_string();
    let output = run_with_input(folder.path(), &["options", "-"], input.as_bytes());
    assert!(output.status.success(), "{}", said(&output));
    let by_hand: Value = serde_json::from_str(&printed(&output)).unwrap();
    assert_eq!(by_hand, found);
}

#[test]
fn a_plan_that_contradicts_itself_has_no_options() {
    let mut plan = small();
    plan["pier"]["wall_mm"] = json!(200.0);
    let answer = start_searching().post_json("/api/v1/options", &plan);
    assert_eq!(answer.status, 422, "{}", answer.text());
    let folder = tempdir().unwrap();
    let output = run_with_input(
        folder.path(),
        &["options", "-"],
        plan.to_string().as_bytes(),
    );
    assert_eq!(output.status.code(), Some(2));
    assert!(said(&output).contains("pier.wall_mm"), "{}", said(&output));
}
