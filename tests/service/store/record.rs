//! The record of the work: kept once however often it is sent, never changed, and a stop that holds.

use serde_json::{Value, json};
use stillground_tests::http::Answer;
use stillground_tests::service::{Kept, Service, titled, unknown};

use super::start;

fn entry(id: &str, task: &str, kind: &str) -> Value {
    json!({ "id": id, "revision": 1, "task": task, "kind": kind, "who": "A. Helper" })
}

fn measured(id: &str, task: &str, item: &str, value: f64) -> Value {
    let mut entry = entry(id, task, "measured");
    (entry["item"], entry["value"]) = (item.into(), value.into());
    entry
}

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

fn entries(service: &Service, kept: &Kept) -> Value {
    let answer = service.read(kept, &kept.view, "/entries");
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.json()
}

#[test]
fn an_entry_sent_twice_is_kept_once_and_one_that_differs_is_refused() {
    let service = start();
    let kept = service.create(&unknown());
    let depth = measured("a1", "inspect", "pit_depth", 0.9);
    let (first, second) = (
        enter(&service, &kept, &kept.record, &depth),
        enter(&service, &kept, &kept.record, &depth),
    );
    assert_eq!(
        (first.status, second.status),
        (201, 200),
        "{}",
        first.text()
    );
    assert_eq!(first.json(), second.json());
    let other = enter(
        &service,
        &kept,
        &kept.record,
        &measured("a1", "inspect", "pit_depth", 1.0),
    );
    assert_eq!(
        (other.status, other.json()["code"].as_str().unwrap()),
        (409, "name_taken")
    );
    assert_eq!(
        entries(&service, &kept)["entries"]
            .as_array()
            .unwrap()
            .len(),
        1
    );
}

#[test]
fn entries_sent_at_once_are_all_kept_each_once() {
    let service = start();
    let kept = service.create(&unknown());
    std::thread::scope(|scope| {
        for sender in 0..4 {
            let (service, kept) = (&service, &kept);
            scope.spawn(move || {
                for number in 0..10 {
                    // Every entry is sent by two of the senders.
                    let note = json!({ "id": format!("n{}-{number}", sender / 2), "revision": 1, "task": "dig", "kind": "note", "text": "stones", "who": "A" });
                    assert!(matches!(enter(service, kept, &kept.record, &note).status, 200 | 201));
                }
            });
        }
    });
    assert_eq!(
        entries(&service, &kept)["entries"]
            .as_array()
            .unwrap()
            .len(),
        20
    );
}

#[test]
fn a_stop_holds_what_follows_until_it_is_measured_better_or_decided() {
    let service = start();
    let kept = service.create(&unknown());
    for task in ["services", "set_out", "dig", "inspect"] {
        assert_eq!(
            enter(&service, &kept, &kept.record, &entry(task, task, "done")).status,
            201
        );
    }
    let water = enter(
        &service,
        &kept,
        &kept.record,
        &measured("w", "inspect", "water_depth", 0.6),
    )
    .json();
    assert_eq!(water["judgement"]["verdict"], "stop");
    assert!(
        water["judgement"]["why"]
            .as_str()
            .unwrap()
            .contains("do not pour"),
        "{water}"
    );
    assert_eq!(water["judgement"]["ask"], "whoever made the plan");
    let held = |task: &str| entries(&service, &kept)["tasks"][task] == "held";
    assert!(held("inspect") && held("pour") && held("torque") && !held("dig"));
    let mut decision = entry("d", "inspect", "decided");
    (decision["decides"], decision["text"]) = ("w".into(), "drained, looked at together".into());
    assert_eq!(
        enter(&service, &kept, &kept.record, &decision).status,
        403,
        "a helper does not decide"
    );
    assert_eq!(enter(&service, &kept, &kept.edit, &decision).status, 201);
    assert!(!held("pour"));
    let ended = entries(&service, &kept)["entries"]
        .as_array()
        .unwrap()
        .iter()
        .find(|entry| entry["id"] == "w")
        .unwrap()
        .clone();
    assert_eq!(ended["ended_by"], "d");
}

#[test]
fn a_link_writes_what_it_is_for_and_a_revoked_one_nothing() {
    let service = start();
    let (kept, other) = (service.create(&unknown()), service.create(&unknown()));
    let done = entry("1", "dig", "done");
    assert_eq!(enter(&service, &kept, &kept.view, &done).status, 403);
    for secret in [&other.record, &"a".repeat(32)] {
        assert_eq!(enter(&service, &kept, secret, &done).status, 404);
    }
    let bearer = format!("Bearer {}", kept.edit);
    assert_eq!(
        service
            .send(
                "DELETE",
                &kept.path("/links/record"),
                &[("authorization", &bearer)],
                b""
            )
            .status,
        204
    );
    assert_eq!(enter(&service, &kept, &kept.record, &done).status, 404);
    assert_eq!(enter(&service, &kept, &kept.edit, &done).status, 201);
    assert_eq!(service.get(&kept.path("/entries")).status, 401);
    assert!(
        entries(&service, &other)["entries"]
            .as_array()
            .unwrap()
            .is_empty()
    );
}

#[test]
fn what_is_wrong_with_an_entry_is_named_and_nothing_is_kept() {
    let service = start();
    let kept = service.create(&unknown());
    let with = |member: &str, value: Value| {
        let mut entry = measured("x", "inspect", "pit_depth", 0.9);
        entry[member] = value;
        entry
    };
    for (sent, path) in [
        (with("task", "dance".into()), "task"),
        (with("item", "colour".into()), "item"),
        (with("value", 900.into()), "value"),
        (with("value", "deep".into()), "value"),
        (with("who", "x".repeat(500).into()), "who"),
        (with("who", "".into()), "who"),
        (with("text", "x".repeat(5000).into()), "text"),
        (with("id", "../../etc".into()), "id"),
        (with("revision", 7.into()), "revision"),
        (with("kind", "erased".into()), "kind"),
        (with("measured_at", "yesterday".into()), "measured_at"),
        (with("supersedes", "nobody".into()), "supersedes"),
        (with("colour", "red".into()), "colour"),
    ] {
        let answer = enter(&service, &kept, &kept.record, &sent);
        assert_eq!(answer.status, 422, "{path}: {}", answer.text());
        let errors = answer.json()["errors"].clone();
        assert!(
            errors
                .as_array()
                .unwrap()
                .iter()
                .any(|error| error["path"] == path),
            "{path}: {errors}"
        );
    }
    for body in ["", "[]", "null", "{", "[[1]]"] {
        let headers = [
            ("content-type", "application/json"),
            ("authorization", &format!("Bearer {}", kept.record)),
        ];
        assert!(
            matches!(
                service
                    .send("POST", &kept.path("/entries"), &headers, body.as_bytes())
                    .status,
                400 | 422
            ),
            "{body}"
        );
    }
    assert!(
        entries(&service, &kept)["entries"]
            .as_array()
            .unwrap()
            .is_empty()
    );
}

#[test]
fn names_in_any_script_are_kept_as_they_are() {
    let service = start();
    let kept = service.create(&titled("مرصد الحجر"));
    for (id, who) in [
        ("1", "観測者 太郎"),
        ("2", "أحمد بن علي"),
        ("3", "🔭 <script>alert(1)</script>"),
        ("4", "O'Brien; DROP TABLE entries"),
    ] {
        let mut note = entry(id, "dig", "note");
        (note["who"], note["text"]) = (who.into(), "<b>bold</b>".into());
        assert_eq!(
            enter(&service, &kept, &kept.record, &note).status,
            201,
            "{who}"
        );
    }
    let whole = entries(&service, &kept);
    assert_eq!(whole["entries"][3]["who"], "O'Brien; DROP TABLE entries");
    let page = service.get(&format!("/p/{}/record", kept.record)).text();
    assert!(
        !page.contains("<script>alert") && !page.contains("<b>bold"),
        "markup of a helper's is shown, not run"
    );
    assert!(page.contains("観測者 太郎") && page.contains("أحمد بن علي"));
}

#[test]
fn an_entry_made_on_an_older_revision_is_kept_and_judged_by_the_plan_as_it_stands() {
    let service = start();
    let kept = service.create(&json!({ "schema_version": 1, "site": { "soil": "stiff_clay" } }));
    let mut soil = entry("s", "inspect", "measured");
    (soil["item"], soil["text"]) = ("soil_met".into(), "firm_clay".into());
    assert_eq!(
        enter(&service, &kept, &kept.record, &soil).json()["judgement"]["verdict"],
        "stop"
    );
    assert_eq!(
        service
            .replace(
                &kept,
                1,
                &json!({ "schema_version": 1, "site": { "soil": "firm_clay" } })
            )
            .status,
        200
    );
    assert_eq!(
        entries(&service, &kept)["entries"][0]["judgement"]["verdict"],
        "within"
    );
    let late = measured("late", "inspect", "pit_depth", 0.9);
    assert_eq!(enter(&service, &kept, &kept.record, &late).status, 201);
    assert_eq!(entries(&service, &kept)["entries"][1]["revision"], 1);
}

#[test]
fn the_code_on_a_sheet_says_whether_it_is_superseded_and_nothing_of_the_plan() {
    let service = start();
    let kept = service.create(&titled("Secret garden pier"));
    assert_eq!(
        service
            .get(&format!("/p/{}/template.pdf", kept.edit))
            .status,
        200
    );
    assert_eq!(
        service.get("/s/aaaaaaaaaaaaaaaaaaaaaaaaaa?rev=1").status,
        404
    );
    assert_eq!(
        service.get(&format!("/s/{}?rev=1", kept.view)).status,
        404,
        "a link's secret is no sheet's word"
    );
}
