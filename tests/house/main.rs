//! The house itself: that the rules of its building are kept.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]

mod dependencies;
mod interface;
mod migrations;
#[cfg(feature = "service")]
mod pages;
mod rules;
mod templates;
mod threats;
mod words;

use std::fs;
use std::path::Path;

use stillground_tests::workspace as root;

/// Every file below a folder with one of the endings, with its text, in a steady order.
fn files(folder: &str, endings: &[&str]) -> Vec<(String, String)> {
    let mut found = Vec::new();
    collect(&root().join(folder), endings, &mut found);
    found.sort();
    found
}

fn collect(folder: &Path, endings: &[&str], found: &mut Vec<(String, String)>) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let path = entry.path();
        let name = entry.file_name().to_string_lossy().into_owned();
        if path.is_dir() {
            if !["target", "node_modules", ".git", "__pycache__"].contains(&name.as_str()) {
                collect(&path, endings, found);
            }
        } else if endings.iter().any(|ending| name.ends_with(ending)) {
            let short = path
                .strip_prefix(root())
                .unwrap()
                .to_string_lossy()
                .into_owned();
            found.push((short, fs::read_to_string(&path).unwrap()));
        }
    }
}
