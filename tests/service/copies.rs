//! Copies made now and then: each a whole store, so many of them kept, and a failure told where somebody looks.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use stillground_server::config::Settings;
use stillground_tests::binary::{command, run, start};
use stillground_tests::http::send;
use stillground_tests::service::{start_with, titled, unknown};

/// The copies in a folder, the oldest first.
fn copies(folder: &Path) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = fs::read_dir(folder)
        .map(|entries| entries.map(|entry| entry.unwrap().path()).collect())
        .unwrap_or_default();
    found.retain(|path| {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        name.starts_with("plans-") && name.ends_with(".sqlite")
    });
    found.sort();
    found
}

/// Waits until something is so.
fn until(what: &str, is_so: impl Fn() -> bool) {
    let begun = Instant::now();
    while !is_so() {
        assert!(begun.elapsed() < Duration::from_secs(30), "never {what}");
        std::thread::sleep(Duration::from_millis(50));
    }
}

#[test]
fn the_planner_copies_itself_keeps_so_many_and_tells_when_it_fails() {
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().join("copies");
    fs::create_dir(&to).unwrap();
    fs::write(to.join("plans-by-hand.sqlite"), b"mine").unwrap();
    let metrics = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let watcher = metrics.local_addr().unwrap();
    drop(metrics);
    let service = start_with(Settings {
        data: Some(folder.path().join("data")),
        metrics: Some(watcher.to_string()),
        copies: Some(to.clone()),
        copies_every: Some("1s".to_owned()),
        copies_kept: Some("2".to_owned()),
        ..Settings::default()
    });
    let _ = service.create(&titled("Hollow Oak"));
    let figure = |name: &str| {
        let text = send(watcher, "GET", "/metrics", &[], b"").text();
        let line = text
            .lines()
            .find(|line| line.starts_with(&format!("stillground_{name} ")))
            .unwrap_or_else(|| panic!("{name} is missing: {text}"))
            .to_owned();
        line.rsplit(' ').next().unwrap().parse::<f64>().unwrap()
    };
    until("four good copies", || figure("copies_good_total") >= 4.0);
    let kept: Vec<_> = copies(&to)
        .into_iter()
        .filter(|path| !path.ends_with("plans-by-hand.sqlite"))
        .collect();
    assert!((2..=3).contains(&kept.len()), "{kept:?}");
    assert!(
        to.join("plans-by-hand.sqlite").exists(),
        "another's file is not taken away"
    );
    let ready = service.get("/health/ready").json();
    assert_eq!(ready["copies"]["status"], "well", "{ready}");
    assert_eq!(figure("copies_failing"), 0.0);

    // The folder is taken away, and something else stands in its place.
    let aside = folder.path().join("aside");
    fs::rename(&to, &aside).unwrap();
    fs::write(&to, b"no folder").unwrap();
    until("told", || figure("copies_failing") > 0.0);
    let ready = service.get("/health/ready");
    assert_eq!(
        ready.status, 200,
        "whoever asks for a page is served all the same"
    );
    assert!(
        ready.json()["copies"]["status"]
            .as_str()
            .unwrap()
            .contains("failed")
    );
    let good = copies(&aside);
    assert!(good.len() >= 2, "no older one went: {good:?}");
    fs::remove_file(&to).unwrap();
    until("well again", || figure("copies_failing") < 1.0);
    drop(service);
    let last = good
        .iter()
        .rfind(|path| !path.ends_with("plans-by-hand.sqlite"))
        .unwrap();
    let verified = run(folder.path(), &["verify", &last.display().to_string()]);
    assert!(verified.status.success(), "{verified:?}");
}

#[test]
fn the_command_that_copies_stays_and_ends_with_what_became_of_the_last_copy() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let service = start_with(Settings {
        data: Some(data.clone()),
        ..Settings::default()
    });
    let _ = service.create(&unknown());
    let words = [
        "backup", "copies", "--every", "1s", "--keep", "3", "--data", "data",
    ];
    let staying = || {
        let mut command = command(folder.path(), &words);
        command
            .stdout(std::process::Stdio::null())
            .stderr(std::process::Stdio::null())
            .spawn()
            .unwrap()
    };
    let stop = |id: u32| {
        let told = std::process::Command::new("kill")
            .args(["-TERM", &id.to_string()])
            .status()
            .unwrap();
        assert!(told.success());
    };
    let to = folder.path().join("copies");
    let mut good = staying();
    until("three copies", || copies(&to).len() == 3);
    let first = copies(&to)[0].clone();
    until("the oldest gone", || !first.exists());
    assert!(copies(&to).len() >= 3, "only after a new one: {to:?}");
    stop(good.id());
    assert!(good.wait().unwrap().success());

    let mut bad = staying();
    let newest = copies(&to).last().unwrap().clone();
    until("one more", || copies(&to).last() != Some(&newest));
    drop(service);
    fs::rename(&data, folder.path().join("aside")).unwrap();
    std::thread::sleep(Duration::from_millis(2500));
    let left = copies(&to).len();
    assert!(left >= 2, "none went for a copy that failed: {left}");
    stop(bad.id());
    assert_eq!(bad.wait().unwrap().code(), Some(1));

    let refused = run(folder.path(), &words);
    assert_eq!(
        refused.status.code(),
        Some(1),
        "the first has to be made: {refused:?}"
    );
    for wrong in [
        &["backup", "copies", "--every", "0s"][..],
        &["backup", "copies", "--every", "soon"],
        &["backup", "copies", "--every", "1h", "--keep", "0"],
        &["backup", "copies", "--keep", "3"],
    ] {
        let refused = run(folder.path(), wrong);
        assert_eq!(refused.status.code(), Some(2), "{wrong:?}");
    }
}

#[test]
fn a_copy_of_damaged_rows_takes_no_good_ones_place() {
    let folder = tempfile::tempdir().unwrap();
    let data = folder.path().join("data");
    let service = start_with(Settings {
        data: Some(data.clone()),
        ..Settings::default()
    });
    let _ = service.create(&titled("Hollow Oak"));
    drop(service);
    let flags = ["--data", "data", "--every", "366d", "--keep", "1"];
    let words: Vec<&str> = ["backup", "copies"].into_iter().chain(flags).collect();
    let mut first = start_quietly(folder.path(), &words);
    let to = folder.path().join("copies");
    until("a copy", || copies(&to).len() == 1);
    let _ = std::process::Command::new("kill")
        .args(["-TERM", &first.id().to_string()])
        .status();
    let _ = first.wait();
    let store = data.join("stillground.sqlite");
    let mut bytes = fs::read(&store).unwrap();
    let title = b"Hollow Oak";
    let mut at = 0;
    while let Some(found) = bytes[at..]
        .windows(title.len())
        .position(|window| window == title)
    {
        bytes[at + found] = b'W';
        at += found + title.len();
    }
    assert!(at > 0, "the title stands in the file");
    fs::write(&store, bytes).unwrap();
    std::thread::sleep(Duration::from_millis(1100));
    let refused = run(folder.path(), &words);
    assert_eq!(refused.status.code(), Some(1), "{refused:?}");
    assert_eq!(copies(&to).len(), 1, "the good one stays");
    assert!(to.join("damaged.sqlite").exists());
    let verified = run(
        folder.path(),
        &["verify", &copies(&to)[0].display().to_string()],
    );
    assert!(verified.status.success());
    // And the planner starts all the same.
    drop(start(command(
        folder.path(),
        &["--data", "data", "--listen", "127.0.0.1:0"],
    )));
}

fn start_quietly(folder: &Path, words: &[&str]) -> std::process::Child {
    command(folder, words)
        .stdout(std::process::Stdio::null())
        .stderr(std::process::Stdio::null())
        .spawn()
        .unwrap()
}
