//! Waits do not wait for a tick: by the interface and by the helper's page, a minute before and a minute after.

use jiff::{SignedDuration, Timestamp};
use serde_json::{Value, json};
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, start, unknown};

fn enter(service: &Service, kept: &Kept, secret: &str, entry: &Value) -> Answer {
    let headers = [
        ("content-type", "application/json"),
        ("authorization", &format!("Bearer {secret}")),
    ];
    service.send(
        "POST",
        &kept.path("/entries"),
        &headers,
        entry.to_string().as_bytes(),
    )
}

fn done(task: &str, at: Timestamp) -> Value {
    json!({ "id": task, "revision": 1, "task": task, "kind": "done", "who": "A. Helper", "measured_at": at.to_string() })
}

fn measured(item: &str, value: f64) -> Value {
    json!({ "id": item, "revision": 1, "task": "pour", "kind": "measured", "item": item, "value": value, "who": "A. Helper" })
}

/// A plan whose block was poured so that its concrete has hardened so many minutes ago; the interface tells when that was.
fn hardened(service: &Service, minutes: i64) -> (Kept, Value) {
    let kept = service.create(&unknown());
    let design = service.read(&kept, &kept.view, "/design").json();
    let hours = design["schedule"]
        .as_array()
        .unwrap()
        .iter()
        .find(|task| task["id"] == "harden")
        .unwrap()["lasts_h"]
        .as_f64()
        .unwrap();
    let poured = Timestamp::now() - SignedDuration::from_mins((hours * 60.0) as i64 + minutes);
    for entry in [
        measured("air_temperature", 10.0),
        measured("concrete_temperature", 15.0),
    ] {
        assert_eq!(enter(service, &kept, &kept.record, &entry).status, 201);
    }
    for task in [
        "services",
        "set_out",
        "dig",
        "inspect",
        "steel_and_ducts",
        "pour",
        "cover",
    ] {
        let answer = enter(service, &kept, &kept.record, &done(task, poured));
        assert_eq!(answer.status, 201, "{task}: {}", answer.text());
    }
    let entries = service.read(&kept, &kept.view, "/entries").json();
    (kept, entries)
}

#[test]
fn a_wait_is_refused_a_minute_before_its_time_and_taken_a_minute_after() {
    let service = start();
    let (early, entries) = hardened(&service, -2);
    let over = entries["waits"]["harden"].as_str().unwrap();
    let refused = enter(
        &service,
        &early,
        &early.record,
        &done("harden", Timestamp::now()),
    );
    assert_eq!(refused.status, 422, "{}", refused.text());
    let said = refused.json()["detail"].as_str().unwrap().to_owned();
    assert!(
        said.contains(over) && said.contains("counted from"),
        "{said}"
    );
    // A clock that runs ahead helps nobody.
    let ahead = done("harden", Timestamp::now() + SignedDuration::from_hours(48));
    assert_eq!(enter(&service, &early, &early.record, &ahead).status, 422);
    let (late, _) = hardened(&service, 1);
    let taken = enter(
        &service,
        &late,
        &late.record,
        &done("harden", Timestamp::now()),
    );
    assert_eq!(taken.status, 201, "{}", taken.text());
    let again = enter(
        &service,
        &late,
        &late.record,
        &done("harden", Timestamp::now()),
    );
    assert!([200, 409].contains(&again.status), "{}", again.text());
}

#[test]
fn only_the_link_that_edits_decides_otherwise_and_the_record_says_so() {
    let service = start();
    let (kept, _) = hardened(&service, -600);
    let decision = json!({
        "id": "d", "revision": 1, "task": "harden", "kind": "decided", "decides": "task:harden",
        "text": "cubes were tested", "who": "An engineer"
    });
    assert_eq!(
        enter(&service, &kept, &kept.record, &decision).status,
        403,
        "a helper does not decide"
    );
    let mut nowhere = decision.clone();
    nowhere["decides"] = "task:dance".into();
    assert_eq!(enter(&service, &kept, &kept.edit, &nowhere).status, 422);
    let answer = enter(&service, &kept, &kept.edit, &decision);
    assert_eq!(answer.status, 201, "{}", answer.text());
    let tick = done("harden", Timestamp::now());
    assert_eq!(enter(&service, &kept, &kept.record, &tick).status, 201);
    let page = service.get(&format!("/p/{}/record", kept.view)).text();
    assert!(
        page.contains("cubes were tested"),
        "the log has the decision"
    );
}

#[test]
fn what_must_be_measured_is_named_and_the_helpers_page_refuses_alike() {
    let service = start();
    let kept = service.create(&unknown());
    let bare = enter(
        &service,
        &kept,
        &kept.record,
        &done("pour", Timestamp::now()),
    );
    assert_eq!(bare.status, 422);
    assert!(
        bare.text().contains("Temperature of the fresh concrete"),
        "{}",
        bare.text()
    );
    let form = "task=harden&form=f&revision=1&who=A&do=done";
    let headers = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("accept", "application/json"),
    ];
    let page = service.send(
        "POST",
        &format!("/p/{}/record", kept.record),
        &headers,
        form.as_bytes(),
    );
    assert_eq!(page.status, 422, "{}", page.text());
    assert!(
        page.text().contains("not in the record yet"),
        "{}",
        page.text()
    );
    // One form may measure and tick off.
    let form = "task=pour&form=g&revision=1&who=A&do=done&item~air_temperature=10&item~concrete_temperature=15";
    let page = service.send(
        "POST",
        &format!("/p/{}/record", kept.record),
        &headers,
        form.as_bytes(),
    );
    assert_eq!(page.status, 200, "{}", page.text());
}
