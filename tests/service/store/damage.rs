//! What was kept and is damaged is told, never shown as sound, and takes nothing else with it.

use std::process::Output;

use serde_json::json;
use stillground_tests::binary::run_in;
use stillground_tests::place::{Place, tamper_file};
use stillground_tests::service::{Kept, Service, start_with, titled, unknown};

use super::place;

/// A changed document, title, time, place, entry and photograph, each with what is told of it.
fn damages(kept: &Kept) -> [(String, String); 6] {
    let id = &kept.id;
    let revision = format!("revision 1 of plan {id}");
    let on_plan = |change: &str| format!("UPDATE revisions SET {change} WHERE plan_id = '{id}'");
    [
        (
            on_plan("document = replace(document, 'stiff_clay', 'loose_sand')"),
            revision.clone(),
        ),
        (on_plan("title = 'another'"), revision.clone()),
        (on_plan("saved_at = saved_at + 1"), revision.clone()),
        (on_plan("digest = NULL"), revision),
        (
            format!(
                "UPDATE entries SET document = replace(document, 'stones', 'gravel') WHERE plan_id = '{id}'"
            ),
            format!("entry 1 in the record of plan {id}"),
        ),
        (
            format!("UPDATE entries SET received_at = received_at - 1 WHERE plan_id = '{id}'"),
            format!("entry 1 in the record of plan {id}"),
        ),
    ]
}

/// A plan on stiff clay with a note in its record.
fn with_a_note(service: &Service) -> Kept {
    let mut plan = titled("damaged");
    plan["site"] = json!({ "soil": "stiff_clay" });
    let kept = service.create(&plan);
    let note = json!({ "id": "n", "revision": 1, "task": "dig", "kind": "note", "text": "stones", "who": "A helper" });
    let sent = service.send(
        "POST",
        &format!("/api/v1/plans/{}/entries", kept.id),
        &[
            ("authorization", &format!("Bearer {}", kept.record)),
            ("content-type", "application/json"),
        ],
        note.to_string().as_bytes(),
    );
    assert_eq!(sent.status, 201, "{}", sent.text());
    kept
}

#[test]
fn a_damaged_row_is_told_with_its_plan_and_the_others_go_on() {
    let place = place();
    let service = start_with(place.settings());
    let other = service.create(&titled("sound"));
    for (number, kept) in (0..6).map(|number| (number, with_a_note(&service))) {
        let (sql, named) = damages(&kept)[number].clone();
        place.tamper(&sql);
        let is_entry = named.starts_with("entry");
        let below = if is_entry { "/entries" } else { "" };
        let read = service.read(&kept, &kept.view, below);
        assert_eq!(
            (read.status, read.json()["code"].as_str()),
            (503, Some("store_damaged")),
            "{named}: {}",
            read.text()
        );
        if !is_entry {
            let saved = service.replace(&kept, 1, &titled("on top"));
            assert_eq!(saved.status, 503, "{named}: {}", saved.text());
            let page = service.get(&format!("/p/{}/plan", kept.edit));
            assert_eq!(page.status, 503, "{named}");
        }
        assert_eq!(service.get("/health/ready").status, 503, "{named}");
        assert_eq!(service.get("/health/live").status, 200);
        assert_eq!(service.read(&other, &other.view, "").status, 200);
        let verified = run_in(&place, &["verify"]);
        assert_eq!(verified.status.code(), Some(1), "{}", said(&verified));
        assert!(
            printed(&verified).contains(&named),
            "{}",
            printed(&verified)
        );
    }
    let stands = service.replace(&other, 1, &titled("sound still"));
    assert_eq!(stands.status, 200);
    let copied = run_in(&place, &["backup", "copy.sqlite"]);
    assert_eq!(
        copied.status.code(),
        Some(1),
        "a copy of damage is no success"
    );
    assert!(
        printed(&copied).contains("damaged: "),
        "{}",
        printed(&copied)
    );
    let copy = place.folder().join("copy.sqlite");
    let to = Place::on_sqlite();
    let refused = run_in(&to, &["restore", copy.to_str().unwrap()]);
    assert_eq!(refused.status.code(), Some(1), "{}", said(&refused));
    let taken = run_in(&to, &["restore", copy.to_str().unwrap(), "--damaged-too"]);
    assert!(taken.status.success(), "{}", said(&taken));
    let again = start_with(to.settings());
    assert_eq!(again.read(&other, &other.view, "").status, 200);
}

#[test]
fn what_is_sound_is_verified_and_a_photograph_that_is_not_is_told() {
    let place = place();
    let service = start_with(place.settings());
    let kept = with_a_note(&service);
    let sound = run_in(&place, &["verify"]);
    assert!(
        sound.status.success()
            && printed(&sound)
                .starts_with("1 plans, 1 revisions, 1 entries and 0 photographs read, all as"),
        "{}{}",
        printed(&sound),
        said(&sound)
    );
    // An entry's photograph, put there as damage would leave it: its digest is not that of its bytes.
    let (empty, short) = match place.database() {
        Some(_) => ("decode(repeat('00', 32), 'hex')", "decode('ffd8', 'hex')"),
        None => ("zeroblob(32)", "x'ffd8'"),
    };
    place.tamper(&format!(
        "INSERT INTO photos (plan_id, id, picture, digest) VALUES ('{}', 'n', {short}, {empty})",
        kept.id
    ));
    let photo = service.get(&format!("/p/{}/photos/n", kept.edit));
    assert_eq!(photo.status, 503);
    let verified = run_in(&place, &["verify"]);
    assert!(
        printed(&verified).contains(&format!("photograph n in the record of plan {}", kept.id)),
        "{}",
        printed(&verified)
    );
}

#[test]
fn a_plan_without_its_newest_revision_is_damage() {
    let place = place();
    let service = start_with(place.settings());
    let kept = service.create(&titled("first"));
    assert_eq!(service.replace(&kept, 1, &titled("second")).status, 200);
    place.tamper("DELETE FROM revisions WHERE number = 2");
    let verified = run_in(&place, &["verify"]);
    assert!(
        printed(&verified).contains("whose newest revision is not there"),
        "{}",
        printed(&verified)
    );
    assert_eq!(verified.status.code(), Some(1));
    let _ = run_in(&place, &["backup", "copy.sqlite"]);
    let copy = place.folder().join("copy.sqlite");
    let refused = run_in(&Place::on_sqlite(), &["restore", copy.to_str().unwrap()]);
    assert_eq!(refused.status.code(), Some(1), "{}", said(&refused));
}

#[test]
fn a_copy_with_a_trigger_a_view_or_a_table_of_anothers_is_refused() {
    let place = place();
    let service = start_with(place.settings());
    let _ = service.create(&titled("mine"));
    for (number, (sql, named)) in [
        (
            "CREATE TRIGGER t AFTER INSERT ON revisions BEGIN UPDATE revisions SET title = 'pwned'; END",
            "trigger t",
        ),
        ("CREATE VIEW v AS SELECT * FROM links", "view v"),
        ("CREATE TABLE more (a TEXT)", "table more"),
        ("ALTER TABLE revisions ADD COLUMN extra TEXT", "table revisions"),
        ("DROP TABLE sessions", "table sessions"),
    ]
    .into_iter()
    .enumerate()
    {
        let copy = place.folder().join(format!("copy-{number}.sqlite"));
        let made = run_in(&place, &["backup", copy.to_str().unwrap()]);
        assert!(made.status.success(), "{}", said(&made));
        tamper_file(&copy, sql);
        for to in [Place::on_sqlite(), Place::on_postgres()] {
            let refused = run_in(&to, &["restore", copy.to_str().unwrap(), "--damaged-too"]);
            assert_eq!(refused.status.code(), Some(1), "{sql}");
            assert!(said(&refused).contains(named), "{sql}: {}", said(&refused));
        }
    }
}

#[test]
fn an_import_is_held_to_what_the_service_takes() {
    let place = place();
    let at = "2026-03-01T09:00:00Z";
    let export = |plan: serde_json::Value, who: &str| {
        json!({
            "stillground_export": 1,
            "revisions": [{ "revision": 1, "saved_at": at, "plan": plan }],
            "record": [{ "received_at": at, "entry": { "id": "b", "revision": 1, "task": "inspect", "kind": "done", "who": who } }],
        })
    };
    let with = |path: &str, value: serde_json::Value| {
        let mut plan = unknown();
        plan[path] = value;
        export(plan, "A helper")
    };
    for (document, told) in [
        (
            with("site", json!({ "frost_depth_m": 1e300 })),
            "site.frost_depth_m",
        ),
        (with("schema_version", json!(77)), "schema_version"),
        (with("title", json!("a\u{202e}b")), "title"),
        (with("title", json!("a\0b")), "title"),
        (with("title", json!("W".repeat(100_000))), "title"),
        (export(unknown(), &"W".repeat(100_000)), "who"),
        (export(unknown(), "a\u{202e}b"), "who"),
    ] {
        std::fs::write(place.folder().join("export.json"), document.to_string()).unwrap();
        let refused = run_in(&place, &["import", "export.json"]);
        assert_eq!(refused.status.code(), Some(2), "{told}: {}", said(&refused));
        assert!(said(&refused).contains(told), "{told}: {}", said(&refused));
    }
}

fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn printed(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}
