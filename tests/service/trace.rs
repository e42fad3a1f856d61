//! Records of samples, by the interface and by the command line.

use std::io::Write;
use std::process::Stdio;

use serde_json::{Value, json};
use stillground_tests::binary::{command, run_with_input};
use stillground_tests::service::start;
use stillground_tests::workspace;
use tempfile::tempdir;

use crate::command_line::{printed, said};

fn record(name: &str) -> Vec<u8> {
    let folder = workspace().join("tests/engineering/reference/records");
    std::fs::read(folder.join(name)).unwrap()
}

#[test]
fn a_record_is_answered_alike_by_interface_and_command_line() {
    let service = start();
    let folder = tempdir().unwrap();
    for (name, query, words) in [
        ("r01_plain.csv", "", vec![]),
        (
            "r04_one_column_200hz.txt",
            "?rate=200&kind=knock",
            vec!["--rate", "200", "--kind", "knock"],
        ),
        (
            "r08_lean_pixels.csv",
            "?scale=0.776&value=y_px",
            vec!["--scale", "0.776", "--value", "y_px"],
        ),
        (
            "r08_lean_pixels.csv",
            "?scale=0.776&towards=180,90",
            vec!["--scale", "0.776", "--towards", "180,90"],
        ),
    ] {
        let sent = record(name);
        let answer = service.send(
            "POST",
            &format!("/api/v1/trace{query}"),
            &[("content-type", "text/csv")],
            &sent,
        );
        assert_eq!(answer.status, 200, "{}", answer.text());
        let mut all = vec!["trace", "-"];
        all.extend(words);
        let output = run_with_input(folder.path(), &all, &sent);
        assert!(output.status.success(), "{}", said(&output));
        let by_hand: Value = serde_json::from_str(&printed(&output)).unwrap();
        assert_eq!(by_hand, answer.json());
        let names: Vec<&String> = by_hand.as_object().unwrap().keys().collect();
        assert_eq!(
            names,
            [
                "columns",
                "direction",
                "drift_per_s",
                "kind",
                "modes",
                "remarks",
                "steps",
                "together"
            ],
            "{name}"
        );
    }
}

#[test]
fn a_record_of_another_kind_or_with_other_words_is_refused() {
    let service = start();
    let sent = record("r01_plain.csv");
    let answer =
        |path: &str, kind: &str| service.send("POST", path, &[("content-type", kind)], &sent);
    assert_eq!(answer("/api/v1/trace", "application/json").status, 415);
    for query in [
        "rate=fast",
        "kind=quake",
        "at=1,b",
        "towards=east",
        "colour=red",
    ] {
        assert_eq!(
            answer(&format!("/api/v1/trace?{query}"), "text/csv").status,
            400,
            "{query}"
        );
    }
    let refused = answer("/api/v1/trace?value=nothing", "text/csv");
    assert_eq!(refused.status, 422);
    assert_eq!(refused.json()["code"], json!("table"));
}

fn rows(row: impl Fn(usize) -> String, count: usize) -> Vec<u8> {
    (0..count).map(row).collect::<String>().into_bytes()
}

/// What no program should choke on: each with the words that its refusal must have.
fn hostile() -> Vec<(&'static str, Vec<u8>, &'static str)> {
    vec![
        ("nothing", Vec::new(), "empty"),
        (
            "binary",
            (0..200_000_u32).map(|i| (i * 7919 % 251) as u8).collect(),
            "no plain text",
        ),
        ("one line", vec![b'1'; 20 << 20], "a line is longer"),
        (
            "a million columns",
            b"1,".repeat(1_000_000),
            "a line is longer",
        ),
        (
            "a hundred columns",
            rows(|_| format!("{}1\n", "1,".repeat(99)), 300),
            "columns",
        ),
        (
            "too large",
            vec![b'\n'; (20 << 20) + 1],
            "larger than 20 MiB",
        ),
        (
            "too many rows",
            rows(|i| format!("{}\n", i % 9), 1_000_002),
            "more than 1000000 rows",
        ),
        (
            "words",
            rows(|i| format!("row {i} of a tale\n"), 500),
            "table",
        ),
        (
            "not a number",
            rows(|i| format!("{},nan\n", i as f64 / 100.0), 500),
            "value",
        ),
        (
            "1900",
            rows(
                |i| format!("1900-01-01 00:00:{:02},{}\n", i % 60, i % 7),
                400,
            ),
            "year 1900",
        ),
        (
            "standing clock",
            rows(|i| format!("5,{}\n", i % 7), 400),
            "rate",
        ),
    ]
}

#[test]
fn a_hostile_file_is_refused_in_a_sentence() {
    let folder = tempdir().unwrap();
    for (name, bytes, words) in hostile() {
        let mut words_of = vec!["trace", "-", "--kind", "knock"];
        if name == "too many rows" {
            words_of.extend(["--rate", "100"]);
        }
        let output = run_with_input(folder.path(), &words_of, &bytes);
        assert_eq!(output.status.code(), Some(2), "{name}: {}", said(&output));
        let told = said(&output);
        assert!(
            told.lines().count() == 1 && told.contains(words),
            "{name}: {told}"
        );
    }
}

#[test]
fn a_hostile_body_is_refused_too() {
    let service = start();
    for (name, bytes, words) in hostile() {
        if bytes.is_empty() {
            continue;
        }
        let answer = service.send(
            "POST",
            "/api/v1/trace?kind=knock&rate=100",
            &[("content-type", "text/csv")],
            &bytes,
        );
        let expected = if name == "too large" { 413 } else { 422 };
        if ["1900", "standing clock", "not a number"].contains(&name) {
            // With a rate the file's own times are of no use.
            assert!(
                answer.status == 200 || answer.status == 422,
                "{name}: {}",
                answer.text()
            );
            continue;
        }
        assert_eq!(answer.status, expected, "{name}: {}", answer.text());
        assert!(
            expected == 413 || answer.text().contains(words),
            "{name}: {}",
            answer.text()
        );
    }
}

/// The most that the program ever held while it read this, KiB.
fn most_held(words: &[&str], sent: &[u8]) -> u64 {
    let folder = tempdir().unwrap();
    let mut child = command(folder.path(), words)
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let status = format!("/proc/{}/status", child.id());
    let watching = std::thread::spawn(move || {
        let mut most = 0;
        while child.try_wait().unwrap().is_none() {
            let text = std::fs::read_to_string(&status).unwrap_or_default();
            let held = text.lines().find_map(|line| {
                line.strip_prefix("RssAnon:")?
                    .trim()
                    .strip_suffix(" kB")?
                    .parse()
                    .ok()
            });
            most = most.max(held.unwrap_or(0_u64));
            std::thread::sleep(std::time::Duration::from_millis(1));
        }
        most
    });
    // A file that is refused is not read to its end.
    let _ = stdin.write_all(sent);
    drop(stdin);
    watching.join().unwrap()
}

#[test]
fn a_million_rows_take_no_more_than_sixty_four_mebibytes() {
    let sent = rows(
        |i| format!("{:.3},{},{},{}\n", i as f64 * 0.005, i % 7, i % 5, i % 11),
        999_000,
    );
    let most = most_held(&["trace", "-", "--kind", "knock"], &sent);
    assert!(most > 0 && most < 64 * 1024, "{most} KiB");
}

#[test]
fn no_hostile_file_takes_more_than_sixty_four_mebibytes() {
    for (name, bytes, _) in hostile() {
        let most = most_held(&["trace", "-", "--kind", "knock"], &bytes);
        assert!(most < 64 * 1024, "{name}: {most} KiB");
    }
}
