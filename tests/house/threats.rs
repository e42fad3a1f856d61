//! The threat model names tests; each of them is there.

use std::collections::BTreeSet;
use std::fs;

use crate::{files, root};

#[test]
fn every_test_that_the_threat_model_names_exists() {
    let model = fs::read_to_string(root().join("docs/threat-model.md")).unwrap();
    let mut known = BTreeSet::new();
    for folder in ["tests", "server/src", "shared/src"] {
        for (_, text) in files(folder, &[".rs"]) {
            let mut lines = text.lines().map(str::trim).peekable();
            while let Some(line) = lines.next() {
                if line == "#[test]" || line.starts_with("#[tokio::test") {
                    let name = lines.find_map(|line| {
                        line.split_once("fn ")
                            .map(|(_, rest)| rest.split('(').next().unwrap_or_default().to_owned())
                    });
                    known.extend(name);
                }
            }
        }
    }
    let named: Vec<&str> = model
        .split('`')
        .filter(|word| {
            word.contains('_')
                && word
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_')
        })
        .collect();
    assert!(named.len() > 25, "{} tests are named", named.len());
    let missing: Vec<_> = named
        .iter()
        .filter(|name| !known.contains(**name))
        .collect();
    assert!(
        missing.is_empty(),
        "docs/threat-model.md names tests that are not there: {missing:?}"
    );
}
