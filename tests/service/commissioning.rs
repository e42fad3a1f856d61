//! A pier that stands: begun at its own door, measured by hand or from a file, and told what it says.

use serde_json::json;
use stillground_tests::service::start;
use stillground_tests::workspace;

use crate::order::form;

#[test]
fn a_pier_that_stands_is_measured_and_nothing_is_ordered() {
    let service = start();
    let begun = form(&service, "/standing", &[]);
    assert_eq!(begun.status, 303, "{}", begun.text());
    let page = begun.header("location").to_owned();
    assert!(page.ends_with("/commissioning"), "{page}");
    let root = page.trim_end_matches("/commissioning").to_owned();
    let first = service.get(&page);
    assert_eq!(first.status, 200);
    assert!(first.text().contains("When does it tremble?"));
    let kept = form(
        &service,
        &page,
        &[
            ("base", "1"),
            ("what", "knock"),
            ("direction", "x"),
            ("with_mount", "yes"),
            ("frequency_hz", "8,3"),
        ],
    );
    assert_eq!(kept.status, 303, "{}", kept.text());
    let said = service.get(&page).text();
    assert!(said.contains("What the measurements say"), "{said}");
    assert!(said.contains("8.3"));
    for below in [
        "plan",
        "plan/order",
        "plan/days",
        "materials",
        "record",
        "pier",
        "plan.pdf",
        "file.pdf",
    ] {
        let answer = service.get(&format!("{root}/{below}"));
        assert!(answer.status < 500, "{below}: {}", answer.status);
    }
    let wrong = form(
        &service,
        &page,
        &[
            ("base", "2"),
            ("what", "pull"),
            ("direction", "x"),
            ("height_m", "1"),
            ("force_n", "9000"),
            ("tilt_arcsec", "3"),
        ],
    );
    assert_eq!(wrong.status, 422);
    assert!(wrong.text().contains("topple"));
}

#[test]
fn a_standing_plan_orders_nothing_and_its_fit_is_in_the_design() {
    let service = start();
    let answer = service.post_json(
        "/api/v1/design",
        &json!({
            "schema_version": 1, "state": "standing",
            "commissioning": { "knocks": [{ "direction": "x", "with_mount": true, "frequency_hz": 14.0 }] }
        }),
    );
    assert_eq!(answer.status, 200, "{}", answer.text());
    let design = answer.json();
    assert_eq!(design["materials"], json!([]));
    assert_eq!(design["schedule"], json!([]));
    for name in [
        "shear_modulus_mpa",
        "side_contact_ratio",
        "base_joint_stiffness_n_m_per_rad",
        "mount_stiffness_n_m_per_rad",
    ] {
        for end in ["low", "typical", "high"] {
            assert!(design["fitted"][name][end].is_number(), "{name}.{end}");
        }
    }
    for name in ["measurement", "measured", "foreseen", "fitted", "surprise"] {
        assert!(!design["fitted"]["agreement"][0][name].is_null(), "{name}");
    }
    assert!(design["fitted"]["motion"]["frequencies_hz"][0].is_number());
    assert!(design["fitted"]["suspects"].is_array());
}

#[test]
fn what_a_file_says_is_shown_before_it_is_taken() {
    let service = start();
    let begun = form(&service, "/standing", &[]);
    let page = begun.header("location").to_owned();
    let record =
        std::fs::read(workspace().join("tests/engineering/reference/records/r01_plain.csv"))
            .unwrap();
    let mut body = b"--line\r\nContent-Disposition: form-data; name=\"kind\"\r\n\r\nknock\r\n--line\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\nContent-Type: text/csv\r\n\r\n".to_vec();
    body.extend_from_slice(&record);
    body.extend_from_slice(b"\r\n--line--\r\n");
    let kind = [("content-type", "multipart/form-data; boundary=line")];
    let answer = service.send("POST", &format!("{page}/trace"), &kind, &body);
    assert_eq!(answer.status, 200, "{}", answer.text());
    assert!(answer.text().contains("value=\"16.31"), "{}", answer.text());
    assert!(
        !service
            .get(&page)
            .text()
            .contains("What the measurements say")
    );
}
