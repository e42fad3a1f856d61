//! How settings are explained, and what is told of those that cannot be used.

use std::process::Output;

use stillground_tests::binary::run;
use tempfile::tempdir;

use crate::command_line::{printed, said, with_file};

#[test]
fn check_explains_each_setting() {
    let folder = tempdir().unwrap();
    let fine = run(folder.path(), &["check"]);
    assert!(fine.status.success(), "{}{}", printed(&fine), said(&fine));
    for name in [
        "STILLGROUND_LISTEN",
        "STILLGROUND_DATA",
        "STILLGROUND_DATABASE_URL",
        "STILLGROUND_BASE_PATH",
    ] {
        assert!(printed(&fine).contains(name));
    }
    let wrong = run(folder.path(), &["check", "--base-path", "/a b"]);
    assert!(
        !wrong.status.success() && said(&wrong).contains("STILLGROUND_BASE_PATH"),
        "{}",
        said(&wrong)
    );
}

#[test]
fn check_says_where_a_value_came_from_and_all_that_is_wrong() {
    let folder = with_file("token", "short\n");
    let mut command = stillground_tests::binary::command(
        folder.path(),
        &[
            "check",
            "--colours",
            "accent=#ffff00",
            "--organiser-token-file",
            "token",
        ],
    );
    let output = command
        .env("STILLGROUND_TRUSTED_PROXIES", "here")
        .env("STILLGROUND_HOUSE_NAME", "Ashdown")
        .output()
        .unwrap();
    let text = printed(&output);
    assert!(!output.status.success());
    for said in [
        "STILLGROUND_COLOURS = accent=#ffff00",
        "from the command line",
        "STILLGROUND_HOUSE_NAME = Ashdown",
        "from the environment",
        "left out",
        "accent on paper is 1.",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    for name in [
        "STILLGROUND_COLOURS",
        "STILLGROUND_TRUSTED_PROXIES",
        "STILLGROUND_ORGANISER_TOKEN_FILE",
    ] {
        assert!(said_of(&output).contains(name), "{name}");
    }
    assert!(!text.contains("short"), "a secret is never shown");
}

/// A figure or an address that cannot be read is one wrong setting among the others: each is still explained.
#[test]
fn check_explains_every_setting_whatever_stands_in_one() {
    let folder = with_file("file", "");
    let words = [
        "check",
        "--photo-mib",
        "-1",
        "--most-plans",
        "-1",
        "--data",
        "file/below",
    ];
    let mut command = stillground_tests::binary::command(folder.path(), &words);
    command
        .env("STILLGROUND_LISTEN", "nonsense")
        .env("STILLGROUND_METRICS", "localhost:9464");
    let output = command
        .env("STILLGROUND_MOST_REVISIONS", "many")
        .env("STILLGROUND_MOST_PLAN_BYTES", "4294967296")
        .output()
        .unwrap();
    let text = printed(&output);
    assert_eq!(output.status.code(), Some(1), "{text}");
    for (name, wrong) in [
        (
            "LISTEN",
            "nonsense\u{201d} is no address in figures with a port",
        ),
        ("METRICS", "localhost:9464\u{201d} is no address"),
        ("PHOTO_MIB", "1 to 50 MiB"),
        ("MOST_PLANS", "\u{201c}-1\u{201d} is no whole number"),
        ("MOST_REVISIONS", "\u{201c}many\u{201d} is no whole number"),
        ("MOST_PLAN_BYTES", "from 0 to 4294967295"),
    ] {
        let told = text
            .split("\n\n")
            .find(|part| part.starts_with(&format!("STILLGROUND_{name} = ")))
            .unwrap_or_default();
        assert!(
            told.contains("wrong: ") && told.contains(wrong),
            "{name}: {told}"
        );
        assert!(said_of(&output).contains(name), "{name}");
    }
    let explained = text
        .lines()
        .filter(|line| line.starts_with("STILLGROUND_"))
        .count();
    assert_eq!(
        explained,
        printed(&run(folder.path(), &["check"]))
            .lines()
            .filter(|line| line.starts_with("STILLGROUND_"))
            .count()
    );
    assert!(
        said_of(&output).contains("STILLGROUND_DATA "),
        "what can be read is looked at as ever: {text}"
    );
}

#[test]
fn the_planner_does_not_start_with_a_figure_or_an_address_that_cannot_be_read() {
    let folder = tempdir().unwrap();
    for (flag, name) in [
        ("--listen", "LISTEN"),
        ("--metrics", "METRICS"),
        ("--photo-mib", "PHOTO_MIB"),
        ("--most-plans", "MOST_PLANS"),
    ] {
        let output = run(folder.path(), &[flag, "nonsense"]);
        assert_eq!(
            (output.status.code(), said(&output).lines().count()),
            (Some(2), 1),
            "{}",
            said(&output)
        );
        assert!(
            said(&output).contains(&format!("STILLGROUND_{name}: \u{201c}nonsense\u{201d} ")),
            "{}",
            said(&output)
        );
    }
}

/// A misspelt name would leave a planner open to anyone: it is told, and nothing starts.
#[test]
fn a_misspelt_setting_is_told_and_nothing_starts_with_it() {
    let folder = tempdir().unwrap();
    let with = |words: &[&str], name: &str| {
        stillground_tests::binary::command(folder.path(), words)
            .env(name, "a-secret-of-the-house")
            .output()
            .unwrap()
    };
    for words in [
        &["serve", "--listen", "127.0.0.1:0"][..],
        &["backup", "copy.sqlite"],
        &["check"],
    ] {
        let output = with(words, "STILLGROUND_WHO_CREATE");
        assert!(!output.status.success(), "{words:?}: {}", printed(&output));
        let all = printed(&output) + &said(&output);
        assert!(
            all.contains("STILLGROUND_WHO_CREATE") && all.contains("write STILLGROUND_WHO_CREATES"),
            "{words:?}: {all}"
        );
        assert!(!all.contains("a-secret"), "{words:?}: {all}");
    }
    let other = with(&["check"], "STILLGROUND_SERVICE_HOST");
    assert!(
        other.status.success() && printed(&other).contains("nothing reads it"),
        "{}{}",
        printed(&other),
        said(&other)
    );
}

/// Bytes that are no text would be read as another value, or end before anything is explained.
#[test]
fn a_setting_whose_bytes_are_no_text_is_explained_like_any_other() {
    let folder = tempdir().unwrap();
    let broken = <std::ffi::OsStr as std::os::unix::ffi::OsStrExt>::from_bytes(b"caf\xe9");
    let explained = printed(&run(folder.path(), &["check"]));
    for name in [
        "LISTEN",
        "DATABASE_URL",
        "BASE_PATH",
        "HOUSE_NAME",
        "CLIMATE_SOURCE",
        "WHO_CREATES",
        "MOST_PLANS",
    ] {
        let name = format!("STILLGROUND_{name}");
        let with = |words: &[&str]| {
            stillground_tests::binary::command(folder.path(), words)
                .env(&name, broken)
                .output()
                .unwrap()
        };
        let output = with(&["check"]);
        let text = printed(&output);
        let told = text
            .split("\n\n")
            .find(|part| part.starts_with(&format!("{name} = ")))
            .unwrap_or_default();
        assert!(
            told.contains("wrong: its bytes are no text in UTF-8"),
            "{name}: {text}{}",
            said(&output)
        );
        assert_eq!(
            text.lines()
                .filter(|line| line.starts_with("STILL"))
                .count(),
            explained.lines().filter(|l| l.starts_with("STILL")).count()
        );
        assert_eq!(
            (output.status.code(), said_of(&output).trim()),
            (Some(1), name.as_str())
        );
        let refused = with(&["serve"]);
        assert_eq!(
            (refused.status.code(), said(&refused).contains(&name)),
            (Some(2), true),
            "{}",
            said(&refused)
        );
    }
    let place = stillground_tests::binary::command(folder.path(), &["check"])
        .env("STILLGROUND_DATA", broken)
        .output()
        .unwrap();
    assert!(
        place.status.success(),
        "a folder may have any name: {}{}",
        printed(&place),
        said(&place)
    );
}

/// No more of a file is read than a secret takes, so that a wrong name does not fill the memory.
#[test]
fn a_file_that_holds_no_secret_is_told_in_words_whatever_it_is() {
    let folder = with_file("empty", "");
    std::fs::write(folder.path().join("latin"), b"p\xe9ssword-of-the-house\n").unwrap();
    std::fs::write(folder.path().join("second"), "\nsecret-on-line-two\n").unwrap();
    for (file, told) in [
        ("empty", "is empty"),
        ("latin", "is no text in UTF-8"),
        ("second", "its first line is empty"),
        (".", "Is a directory"),
        ("nowhere", "No such file"),
        ("/dev/zero", "is larger than"),
    ] {
        for name in ["DATABASE_URL", "ORGANISER_TOKEN"] {
            let flag = format!("--{}-file", name.to_ascii_lowercase().replace('_', "-"));
            let output = run(folder.path(), &["check", &flag, file]);
            assert!(
                output.status.code() == Some(1) && printed(&output).contains(told),
                "{flag} {file}: {}",
                printed(&output)
            );
            assert!(
                !printed(&output).contains("secret-on") && said_of(&output).contains(name),
                "{}",
                said(&output)
            );
        }
    }
    let defaults = run(folder.path(), &["check", "--defaults-file", "/dev/zero"]);
    assert!(
        defaults.status.code() == Some(1) && printed(&defaults).contains("is larger than 1024 KiB"),
        "{}",
        printed(&defaults)
    );
}

/// A tube in the house's store that nobody sells is named with its place in the list, in both families.
#[test]
fn a_tube_in_stock_that_no_catalogue_has_stops_the_start() {
    for (stock, tubes, told) in [
        (
            "metric",
            "[[168.3, 6.3], [168.3, 6.1]]",
            "tubes_mm[1]: 168.3 × 6.1 mm",
        ),
        ("inch", "[[219.1, 8.0]]", "tubes_mm[0]: 219.1 × 8 mm"),
        ("inch", "[[219.1, -8.0]]", "tubes_mm: at most"),
    ] {
        let text = format!(
            r#"{{ "plan": {{ "schema_version": 1, "stock": "{stock}" }}, "tubes_mm": {tubes} }}"#
        );
        let folder = with_file("house.json", &text);
        let file = folder.path().join("house.json");
        let checked = run(
            folder.path(),
            &["check", "--defaults-file", file.to_str().unwrap()],
        );
        assert!(
            checked.status.code() == Some(1) && printed(&checked).contains(told),
            "{told}: {}",
            printed(&checked)
        );
    }
}

fn said_of(output: &Output) -> String {
    said(output)
        .split("cannot start with")
        .nth(1)
        .unwrap_or_default()
        .to_owned()
}

#[test]
fn a_secret_is_read_from_a_file_and_not_from_two_places() {
    let folder = with_file("url", "sqlite:kept.sqlite\n");
    let one = run(folder.path(), &["check", "--database-url-file", "url"]);
    assert!(
        one.status.success() && printed(&one).contains("kept.sqlite: it will be made"),
        "{}{}",
        printed(&one),
        said(&one)
    );
    let both = run(
        folder.path(),
        &[
            "check",
            "--database-url-file",
            "url",
            "--database-url",
            "sqlite:other.sqlite",
        ],
    );
    assert!(
        !both.status.success() && printed(&both).contains("leave one of them out"),
        "{}",
        printed(&both)
    );
    let missing = run(folder.path(), &["--database-url-file", "nowhere"]);
    assert_eq!(missing.status.code(), Some(2), "{}", said(&missing));
}

#[test]
fn nothing_starts_with_a_network_of_proxies_that_holds_everybody() {
    let folder = tempdir().unwrap();
    for wide in ["0.0.0.0/0", "127.0.0.1,::/0"] {
        for command in ["check", "serve"] {
            let refused = run(folder.path(), &[command, "--trusted-proxies", wide]);
            assert!(!refused.status.success(), "{command} {wide}");
            let told = format!("{}{}", printed(&refused), said(&refused));
            assert!(
                told.contains("STILLGROUND_TRUSTED_PROXIES") && told.contains("every visitor"),
                "{told}"
            );
        }
    }
}
