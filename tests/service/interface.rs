//! The description of the interface says what the service does.

use serde_json::{Value, json};
use stillground::site_plan::SitePlan;
use stillground_server::config::Settings;
use stillground_server::openapi::OPERATIONS;
use stillground_tests::service::{start, start_with, unknown};

#[test]
fn the_service_describes_itself() {
    let service = start();
    let answer = service.get("/api/v1/openapi.json");
    assert_eq!(
        (answer.status, answer.header("content-type")),
        (200, "application/json")
    );
    let document = answer.json();
    assert_eq!(document["openapi"], "3.1.0");
    assert_eq!(document["servers"][0]["url"], "/api/v1");
    let under = start_with(Settings {
        base_path: Some("/planner".to_owned()),
        ..Settings::default()
    });
    assert_eq!(
        under.get("/planner/api/v1/openapi.json").json()["servers"][0]["url"],
        "/planner/api/v1"
    );
}

/// The description says each range once, from the engine's own row of the answer.
#[test]
fn every_answer_is_described_with_its_range() {
    let document = start().get("/api/v1/openapi.json").json();
    let plan = &document["components"]["schemas"]["Plan"]["properties"];
    let mut found = 0;
    for field in SitePlan::numbers() {
        let mut schema = plan;
        for (depth, name) in field.path.split('.').enumerate() {
            let within = if depth == 0 {
                schema
            } else {
                &schema["properties"]
            };
            schema = &within[name];
        }
        let range = [&schema["minimum"], &schema["maximum"]].map(Value::as_f64);
        assert_eq!(
            range,
            [Some(field.least), Some(field.most)],
            "{}",
            field.path
        );
        found += 1;
    }
    assert!(found >= 120, "{found}");
}

#[test]
fn every_reference_in_the_description_leads_somewhere() {
    let document = start().get("/api/v1/openapi.json").json();
    let mut found = 0;
    each(&document, &mut |value| {
        if let Some(reference) = value.get("$ref").and_then(Value::as_str) {
            assert!(
                document
                    .pointer(reference.trim_start_matches('#'))
                    .is_some(),
                "{reference}"
            );
            found += 1;
        }
    });
    assert!(found > 50, "{found}");
}

#[test]
fn every_operation_described_is_answered() {
    let service = start();
    let kept =
        service.create(&json!({ "schema_version": 1, "work": { "start_date": "2027-04-19" } }));
    for operation in OPERATIONS {
        let is_picture = operation.method == "post" && operation.path.ends_with("/photos");
        let path = operation
            .path
            .replace("{id}", &kept.id)
            .replace("{number}", "1")
            .replace("{name}", "section")
            .replace("{right}", "view")
            .replace("{photo}", "p");
        let query = if is_picture {
            "?id=p&revision=1&task=inspect&who=A"
        } else {
            ""
        };
        let bearer = format!("Bearer {}", kept.edit);
        let kind = if is_picture {
            "image/jpeg"
        } else if operation.path == "/trace" {
            "text/csv"
        } else {
            "application/json"
        };
        let headers = [
            ("authorization", &*bearer),
            ("content-type", kind),
            ("if-match", "\"1\""),
        ];
        let body = match (operation.method, operation.path) {
            ("post", path) if path.ends_with("/entries") => {
                json!({ "id": "a", "revision": 1, "task": "inspect", "kind": "done", "who": "A helper" }).to_string().into_bytes()
            }
            ("post", "/recover") => json!({ "code": service.recovery_code(&kept) }).to_string().into_bytes(),
            // Of a plan with nothing open, which is one candidate.
            ("post", "/options") => json!({
                "schema_version": 1,
                "block": { "length_m": 1.0, "width_m": 1.0, "depth_m": 1.0 },
                "pier": { "outside_diameter_mm": 219.1, "wall_mm": 6.3, "fill": "none", "levelling": "nuts" },
            }).to_string().into_bytes(),
            ("post", "/trace") => include_bytes!("../engineering/reference/records/r01_plain.csv").to_vec(),
            _ if is_picture => include_bytes!("pictures/grey.jpg").to_vec(),
            ("post" | "put", _) => unknown().to_string().into_bytes(),
            _ => Vec::new(),
        };
        let answer = service.send(
            &operation.method.to_uppercase(),
            &format!("/api/v1{path}{query}"),
            &headers,
            &body,
        );
        // The plan has lost its start day by then: the calendar was read before, or there is none to read.
        let described = service.get("/api/v1/openapi.json").json()["paths"][operation.path]
            [operation.method]["responses"]
            .clone();
        assert!(
            described.get(answer.status.to_string()).is_some(),
            "{} {}: {}",
            operation.method,
            operation.path,
            answer.status
        );
        assert!(
            answer.status < 300 || operation.path.ends_with(".ics"),
            "{} {}: {}",
            operation.method,
            operation.path,
            answer.text()
        );
    }
}

#[test]
fn the_sheets_of_a_plan_are_files_of_their_kind() {
    let service = start();
    let kept =
        service.create(&json!({ "schema_version": 1, "work": { "start_date": "2027-04-19" } }));
    for (below, kind, within) in [
        ("/materials.csv", "text/csv; charset=utf-8", ","),
        (
            "/schedule.ics",
            "text/calendar; charset=utf-8",
            "BEGIN:VCALENDAR",
        ),
        ("/drawings/section.svg", "image/svg+xml", "<svg"),
    ] {
        let answer = service.read(&kept, &kept.view, below);
        assert_eq!(
            (answer.status, answer.header("content-type")),
            (200, kind),
            "{below}"
        );
        assert!(answer.text().contains(within));
        assert_eq!(
            answer.body,
            service.read(&kept, &kept.view, below).body,
            "the same bytes each time"
        );
    }
    for below in [
        "/drawings/nothing.svg",
        "/drawings/section",
        "/nothing.csv",
        "/drawings/..%2f..%2fx.svg",
    ] {
        assert_eq!(
            service.read(&kept, &kept.view, below).status,
            404,
            "{below}"
        );
    }
    let without = service.create(&unknown());
    let refused = service.read(&without, &without.view, "/schedule.ics");
    assert_eq!(
        (
            refused.status,
            refused.json()["errors"][0]["path"].as_str().unwrap()
        ),
        (422, "work.start_date")
    );
}

fn each(value: &Value, see: &mut impl FnMut(&Value)) {
    see(value);
    match value {
        Value::Array(items) => items.iter().for_each(|item| each(item, see)),
        Value::Object(members) => members.values().for_each(|member| each(member, see)),
        _ => (),
    }
}
