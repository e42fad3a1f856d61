//! Copies of the whole store and of single plans: whole, never over something else, and good in either database.

use std::path::Path;
use std::process::Output;

use serde_json::Value;
use stillground_tests::binary::{run_in, serve_in};
use stillground_tests::place::Place;
use stillground_tests::service::{Kept, Service, start_with, titled, unknown};

use super::place;

/// A small grey picture.
const PICTURE: &str = "iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAAAAADhZOFXAAAADklEQVR4nGNogAIGyhgAgIQgAQ2AJGEAAAAASUVORK5CYII=";

#[test]
fn a_copy_made_under_load_holds_what_was_acknowledged_and_goes_into_either_database() {
    let from = place();
    let service = start_with(from.settings());
    let kept: Vec<Kept> = (0..3).map(|_| service.create(&titled("save 1"))).collect();
    let copy = from.folder().join("copy.sqlite");
    let (before, after) = std::thread::scope(|scope| {
        let writers: Vec<_> = kept
            .iter()
            .map(|kept| scope.spawn(|| save_until_copied(&service, kept, &copy)))
            .collect();
        let made = run_in(&from, &["backup", copy.to_str().unwrap()]);
        assert!(made.status.success(), "{}", said(&made));
        writers
            .into_iter()
            .map(|writer| writer.join().unwrap())
            .unzip::<u32, u32, Vec<_>, Vec<_>>()
    });
    assert!(after.iter().sum::<u32>() > 3, "nothing was saved meanwhile");
    for to in [Place::on_sqlite(), Place::on_postgres()] {
        let restored = run_in(&to, &["restore", copy.to_str().unwrap()]);
        assert!(restored.status.success(), "{}", said(&restored));
        let again = start_with(to.settings());
        for (kept, (&before, &after)) in kept.iter().zip(before.iter().zip(&after)) {
            let stands = revision(&again, kept);
            assert!(
                (before..=after).contains(&stands),
                "{before} ≤ {stands} ≤ {after}"
            );
            for below in (1..=stands)
                .map(|number| format!("/revisions/{number}"))
                .chain([String::new()])
            {
                let (old, new) = (
                    service.read(kept, &kept.edit, &below),
                    again.read(kept, &kept.edit, &below),
                );
                assert_eq!(new.status, 200);
                assert!(below.is_empty() || old.json() == new.json(), "{below}");
            }
            assert_eq!(again.replace(kept, stands, &titled("after")).status, 200);
        }
    }
}

/// Saves until a copy is there; the revisions acknowledged when the first save was done, and in the end.
fn save_until_copied(service: &Service, kept: &Kept, copy: &Path) -> (u32, u32) {
    let mut stands = 1;
    while !copy.exists() && stands < 400 {
        assert_eq!(
            service
                .replace(kept, stands, &titled(&format!("save {}", stands + 1)))
                .status,
            200
        );
        stands += 1;
    }
    (1, stands)
}

fn revision(service: &Service, kept: &Kept) -> u32 {
    service
        .read(kept, &kept.view, "")
        .header("etag")
        .trim_matches('"')
        .parse()
        .unwrap()
}

#[test]
fn a_copy_replaces_a_store_only_when_told_and_keeps_what_was_there() {
    let place = place();
    let service = start_with(place.settings());
    let old = service.create(&titled("old"));
    let backup = run_in(&place, &["backup", "copy.sqlite"]);
    assert!(
        backup.status.success() && printed(&backup).contains("1 plans in 1 revisions"),
        "{}{}",
        printed(&backup),
        said(&backup)
    );
    assert_eq!(
        run_in(&place, &["backup", "copy.sqlite"]).status.code(),
        Some(1),
        "a copy is never overwritten"
    );
    let new = service.create(&titled("new"));
    let in_use = run_in(&place, &["restore", "copy.sqlite", "--force"]);
    assert!(
        !in_use.status.success() && said(&in_use).contains("in use"),
        "{}",
        said(&in_use)
    );
    drop(service);
    let refused = run_in(&place, &["restore", "copy.sqlite"]);
    assert!(
        !refused.status.success() && said(&refused).contains("--force"),
        "{}",
        said(&refused)
    );
    let forced = run_in(&place, &["restore", "copy.sqlite", "--force"]);
    assert!(
        forced.status.success() && printed(&forced).contains("replaced-1"),
        "{}{}",
        printed(&forced),
        said(&forced)
    );

    let service = start_with(place.settings());
    assert_eq!(
        (
            service.read(&old, &old.view, "").status,
            service.read(&new, &new.view, "").status
        ),
        (200, 404)
    );
    drop(service);
    let aside = printed(&forced)
        .lines()
        .find_map(|line| line.strip_prefix("the store that was there is now "))
        .unwrap()
        .to_owned();
    assert!(
        run_in(&place, &["restore", &aside, "--force"])
            .status
            .success()
    );
    let service = start_with(place.settings());
    assert_eq!(
        (
            service.read(&old, &old.view, "").status,
            service.read(&new, &new.view, "").status
        ),
        (200, 200)
    );
}

#[test]
fn a_plan_is_carried_to_another_store_with_its_revisions_and_without_its_links() {
    let from = place();
    let service = start_with(from.settings());
    let kept = service.create(&titled("first"));
    assert_eq!(service.replace(&kept, 1, &titled("second")).status, 200);
    let _ = service.create(&titled("another"));
    for named in [&kept.id, &kept.view] {
        let out = from.folder().join(format!("{named}.json"));
        let exported = run_in(&from, &["export", named, "--out", out.to_str().unwrap()]);
        assert!(exported.status.success(), "{}", said(&exported));
        let text = std::fs::read_to_string(&out).unwrap();
        assert!(
            [&kept.edit, &kept.record, &kept.view]
                .iter()
                .all(|secret| !text.contains(secret.as_str())),
            "{text}"
        );
        assert!(
            !run_in(&from, &["export", named, "--out", out.to_str().unwrap()])
                .status
                .success(),
            "nothing is overwritten"
        );
        for to in [Place::on_sqlite(), Place::on_postgres()] {
            carried(&service, &kept, &to, &out);
        }
    }
    assert_eq!(
        run_in(&from, &["export", "aaaaaaaaaaaaaaaa"]).status.code(),
        Some(1)
    );
}

fn carried(service: &Service, kept: &Kept, to: &Place, file: &Path) {
    let imported = run_in(to, &["import", file.to_str().unwrap()]);
    assert!(imported.status.success(), "{}", said(&imported));
    let arrived = arrived(&printed(&imported));
    let again = start_with(to.settings());
    assert_eq!(
        again.read(&arrived, &kept.view, "").status,
        404,
        "the old links open nothing here"
    );
    // All but the version that saved each, which an export does not say.
    let revisions = |service: &Service, kept: &Kept| {
        let mut listed = service.read(kept, &kept.edit, "/revisions").json();
        let lines = listed["revisions"].as_array_mut().unwrap();
        let engines: Vec<_> = lines.iter_mut().map(|line| line["engine"].take()).collect();
        (listed, engines)
    };
    let (found, engines) = revisions(&again, &arrived);
    assert_eq!(found, revisions(service, kept).0);
    assert!(engines.iter().all(serde_json::Value::is_null), "{engines:?}");
    assert_eq!(
        again.read(&arrived, &arrived.edit, "/revisions/1").json()["title"],
        "first"
    );
    assert_eq!(again.replace(&arrived, 2, &titled("third")).status, 200);
}

#[test]
fn a_record_and_its_photographs_are_carried_too() {
    let place = place();
    let entry = |id: &str, kind: &str| serde_json::json!({ "id": id, "revision": 1, "task": "inspect", "kind": kind, "who": "A helper" });
    let at = "2026-03-01T09:00:00Z";
    let sent = serde_json::json!({
        "stillground_export": 1,
        "revisions": [{ "revision": 1, "saved_at": at, "plan": unknown() }],
        "record": [
            { "received_at": at, "entry": entry("b", "done") },
            { "received_at": at, "entry": entry("a", "photo"), "picture": PICTURE },
        ],
    });
    std::fs::write(place.folder().join("export.json"), sent.to_string()).unwrap();
    let imported = run_in(&place, &["import", "export.json"]);
    assert!(imported.status.success(), "{}", said(&imported));
    let exported = run_in(&place, &["export", &arrived(&printed(&imported)).id]);
    let again: Value = serde_json::from_slice(&exported.stdout).unwrap();
    assert_eq!(again["record"][0], sent["record"][0]);
    assert_eq!(again["record"][1]["entry"], sent["record"][1]["entry"]);
    // A picture is written anew, as one that is sent to the service is: it begins as a JPEG does.
    assert!(
        again["record"][1]["picture"]
            .as_str()
            .unwrap()
            .starts_with("/9j/"),
        "{again}"
    );
    let mut none = sent.clone();
    none["record"][1]["picture"] = "bm8gcGljdHVyZQ==".into();
    std::fs::write(place.folder().join("export.json"), none.to_string()).unwrap();
    assert_eq!(
        run_in(&place, &["import", "export.json"]).status.code(),
        Some(2)
    );
    let mut twice = sent;
    twice["record"][0]["entry"]["id"] = "a".into();
    std::fs::write(place.folder().join("export.json"), twice.to_string()).unwrap();
    let refused = run_in(&place, &["import", "export.json"]);
    assert_eq!(
        (refused.status.code(), said(&refused).contains("same id")),
        (Some(2), true),
        "{}",
        said(&refused)
    );
}

/// The plan's name and links, as `import` prints them.
fn arrived(text: &str) -> Kept {
    let id = text.split_whitespace().nth(1).unwrap().to_owned();
    let secret = |right: &str| {
        let line = text.lines().find(|line| line.starts_with(right)).unwrap();
        line.split("/p/")
            .nth(1)
            .unwrap()
            .split('/')
            .next()
            .unwrap()
            .to_owned()
    };
    Kept {
        id,
        edit: secret("edit"),
        record: secret("record"),
        view: secret("view"),
    }
}

#[test]
fn what_is_no_export_is_refused_with_its_place() {
    let place = place();
    let whole =
        |revisions: Value| serde_json::json!({ "stillground_export": 1, "revisions": revisions });
    let carried = |number: u32, plan: Value| serde_json::json!({ "revision": number, "saved_at": "2026-01-01T00:00:00Z", "plan": plan });
    let mut later = whole(serde_json::json!([carried(1, unknown())]));
    later["stillground_export"] = 2.into();
    for (document, told) in [
        (unknown(), "stillground_export"),
        (later, "newer version"),
        (whole(serde_json::json!([])), "without a gap"),
        (
            whole(serde_json::json!([carried(2, unknown())])),
            "without a gap",
        ),
        (
            whole(serde_json::json!([carried(
                1,
                serde_json::json!({ "schema_version": 1, "colour": 3 })
            )])),
            "revisions[0].plan",
        ),
    ] {
        std::fs::write(place.folder().join("export.json"), document.to_string()).unwrap();
        let refused = run_in(&place, &["import", "export.json"]);
        assert_eq!(
            (refused.status.code(), said(&refused).contains(told)),
            (Some(2), true),
            "{}",
            said(&refused)
        );
    }
}

#[test]
fn several_that_start_at_once_on_an_empty_store_all_find_it_made() {
    let place = place();
    let started: Vec<_> = std::thread::scope(|scope| {
        let starts: Vec<_> = (0..4).map(|_| scope.spawn(|| serve_in(&place))).collect();
        starts
            .into_iter()
            .map(|start| start.join().unwrap())
            .collect()
    });
    for process in started {
        assert_eq!(
            stillground_tests::http::send(process.socket, "GET", "/health/ready", &[], b"").status,
            200
        );
    }
}

fn said(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn printed(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}
