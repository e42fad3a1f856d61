//! Stores of earlier versions open for ever; a newer one is left alone.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};
use stillground_server::store::SCHEMA;
use stillground_tests::binary::{run_in, serve_in};
use stillground_tests::place::Place;
use stillground_tests::service::{Kept, Service, start_with, titled};
use stillground_tests::workspace;

use super::place;

#[test]
fn a_store_of_every_earlier_version_opens_with_all_that_is_in_it() {
    for schema in 1.. {
        let file = releases().join(format!("schema-{schema}.sqlite"));
        if !file.is_file() {
            assert!(
                schema > SCHEMA,
                "the store of schema {schema} is missing: run tests/releases/make"
            );
            break;
        }
        let known: Value =
            serde_json::from_slice(&fs::read(file.with_extension("json")).unwrap()).unwrap();
        let place = holding(&file);
        holds(&start_with(place.settings()), &known);
        let again = start_with(place.settings());
        holds(&again, &known);
        // A code is used up by being used, so that this comes last.
        for plan in known["plans"]
            .as_array()
            .unwrap()
            .iter()
            .filter(|plan| plan["recovery"].is_string())
        {
            let found = again.post_json("/api/v1/recover", &json!({ "code": plan["recovery"] }));
            assert_eq!(found.status, 201, "{}", found.text());
        }
    }
}

/// A place whose store is the one in a file, as that version left it where the database allows.
fn holding(file: &Path) -> Place {
    let place = place();
    if place.database().is_some() {
        assert!(
            run_in(&place, &["restore", file.to_str().unwrap()])
                .status
                .success()
        );
    } else {
        fs::create_dir(place.folder().join("data")).unwrap();
        fs::copy(file, place.folder().join("data/stillground.sqlite")).unwrap();
    }
    place
}

fn holds(service: &Service, known: &Value) {
    for plan in known["plans"].as_array().unwrap() {
        let text = |name: &str| plan[name].as_str().unwrap().to_owned();
        let kept = Kept {
            id: text("id"),
            edit: text("edit"),
            record: text("record"),
            view: text("view"),
        };
        let revisions = service.read(&kept, &kept.edit, "/revisions").json()["revisions"].clone();
        let titles: Vec<_> = revisions
            .as_array()
            .unwrap()
            .iter()
            .map(|line| line["title"].clone())
            .collect();
        let (found, expected) = (
            titles.iter().rev(),
            plan["titles"].as_array().unwrap().iter().rev(),
        );
        assert!(
            found
                .zip(expected)
                .all(|(found, expected)| found == expected),
            "{titles:?}"
        );
        for (right, secret) in [
            ("edit", &kept.edit),
            ("record", &kept.record),
            ("view", &kept.view),
        ] {
            let dead = plan["dead"].as_array().unwrap().contains(&right.into());
            assert_eq!(
                service.read(&kept, secret, "/design").status,
                if dead { 404 } else { 200 },
                "{right}"
            );
        }
        recorded(service, &kept, plan);
        let stands = u32::try_from(titles.len()).unwrap();
        assert_eq!(
            service
                .replace(&kept, stands, &titled("saved by this version"))
                .status,
            200
        );
    }
}

/// What was entered while that version's plan was built, and its photograph.
fn recorded(service: &Service, kept: &Kept, plan: &Value) {
    let answer = service.read(kept, &kept.edit, "/entries");
    assert_eq!(answer.status, 200, "{}", answer.text());
    let entries = answer.json()["entries"].clone();
    let found: Vec<_> = entries
        .as_array()
        .unwrap()
        .iter()
        .map(|entry| &entry["id"])
        .collect();
    for id in plan["entries"]
        .as_array()
        .into_iter()
        .flatten()
        .chain(plan.get("photo"))
    {
        assert!(found.contains(&id), "{id} is not among {found:?}");
    }
    if let Some(photo) = plan["photo"].as_str() {
        let picture = service.get(&format!("/p/{}/photos/{photo}", kept.edit));
        assert_eq!(
            (picture.status, picture.header("content-type")),
            (200, "image/jpeg")
        );
    }
}

#[test]
fn an_older_store_is_copied_before_it_is_brought_up_to_date() {
    if SCHEMA == 1 {
        return; // there is no older one
    }
    let place = place();
    let file = releases().join("schema-1.sqlite");
    if let Some((cluster, url)) = place.database() {
        let first =
            fs::read_to_string(workspace().join("server/migrations/postgres/0001_plans.sql"))
                .unwrap();
        let mark = "CREATE TABLE stillground_schema (version BIGINT NOT NULL); INSERT INTO stillground_schema VALUES (1);";
        let plan = "INSERT INTO plans VALUES ('aaaaaaaaaaaaaaaa', 1, 0); \
                    INSERT INTO revisions VALUES ('aaaaaaaaaaaaaaaa', 1, 'old', '{\"schema_version\":1}', 0);";
        let _ = cluster.ask(url, &format!("{first}{mark}{plan}"));
    } else {
        fs::create_dir(place.folder().join("data")).unwrap();
        fs::copy(&file, place.folder().join("data/stillground.sqlite")).unwrap();
    }
    let started: Vec<_> = std::thread::scope(|scope| {
        let starts: Vec<_> = (0..3).map(|_| scope.spawn(|| serve_in(&place))).collect();
        starts
            .into_iter()
            .map(|start| start.join().unwrap())
            .collect()
    });
    drop(started);
    let copies: Vec<PathBuf> = fs::read_dir(place.folder().join("data"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    let copies: Vec<_> = copies
        .iter()
        .filter(|path| path.to_str().unwrap().contains("before-schema-2"))
        .collect();
    assert_eq!(copies.len(), 1, "{copies:?}");
    let elsewhere = Place::on_sqlite();
    assert!(
        run_in(&elsewhere, &["restore", copies[0].to_str().unwrap()])
            .status
            .success()
    );
}

#[test]
fn a_store_of_a_newer_version_is_left_alone() {
    let place = place();
    let newer = "UPDATE stillground_schema SET version = 999";
    if let Some((cluster, url)) = place.database() {
        drop(start_with(place.settings()));
        assert_eq!(cluster.ask(url, newer), "");
    } else {
        // A file that nobody has open: one that was just let go of may still be written.
        let file = place.folder().join("data/stillground.sqlite");
        fs::create_dir(place.folder().join("data")).unwrap();
        fs::copy(releases().join(format!("schema-{SCHEMA}.sqlite")), &file).unwrap();
        set_schema(&file, 999);
    }
    for words in [
        &["serve", "--listen", "127.0.0.1:0"][..],
        &["backup", "copy.sqlite"],
        &["check"],
    ] {
        let refused = run_in(&place, words);
        let said = format!(
            "{}{}",
            String::from_utf8_lossy(&refused.stdout),
            String::from_utf8_lossy(&refused.stderr)
        );
        assert!(
            refused.status.code() == Some(1) && said.contains("schema 999"),
            "{words:?}: {said}"
        );
    }
}

/// Writes the number at its place in the file's head, sqlite.org/fileformat2.html, 1.3.
fn set_schema(file: &Path, schema: u32) {
    let mut bytes = fs::read(file).unwrap();
    bytes[60..64].copy_from_slice(&schema.to_be_bytes());
    fs::write(file, bytes).unwrap();
}

fn releases() -> PathBuf {
    workspace().join("tests/releases")
}
