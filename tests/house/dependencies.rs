//! What the crates lean on.

use std::fs;

use crate::root;

/// Crates that the engine may use when it runs.
const OF_THE_ENGINE: &[&str] = &[
    "serde",
    "thiserror",
    "uom",
    "csv",
    "jiff",
    "nalgebra",
    "rust_decimal",
];

#[test]
fn the_engine_depends_on_no_web_crate_and_no_io() {
    let manifest = fs::read_to_string(root().join("shared/Cargo.toml")).unwrap();
    let names = names_under(&manifest, "[dependencies]");
    assert_eq!(names.len(), OF_THE_ENGINE.len(), "{names:?}");
    for name in names {
        assert!(
            OF_THE_ENGINE.contains(&name.as_str()),
            "shared/Cargo.toml depends on {name}; the engine uses only {OF_THE_ENGINE:?}"
        );
    }
}

#[test]
fn every_dependency_has_its_reason_written_down() {
    let reasons = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    for manifest in ["shared/Cargo.toml", "server/Cargo.toml", "tests/Cargo.toml"] {
        let text = fs::read_to_string(root().join(manifest)).unwrap();
        for section in ["[dependencies]", "[dev-dependencies]"] {
            for name in names_under(&text, section)
                .into_iter()
                .filter(|name| !name.starts_with("stillground"))
            {
                assert!(
                    reasons.contains(&format!("`{name}`")),
                    "DEVELOPERS.md gives no reason for `{name}` of {manifest}"
                );
            }
        }
    }
}

fn names_under(manifest: &str, section: &str) -> Vec<String> {
    manifest
        .lines()
        .skip_while(|line| line.trim() != section)
        .skip(1)
        .take_while(|line| !line.starts_with('['))
        .filter(|line| !line.trim_start().starts_with('#'))
        .filter_map(|line| line.split(['=', '.', ' ']).next())
        .filter(|name| !name.is_empty())
        .map(str::to_owned)
        .collect()
}
