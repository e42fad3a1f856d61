//! What the suites share: comparing figures, reading the examples, starting the service.
#![cfg_attr(
    feature = "service",
    allow(clippy::expect_used, reason = "a test fails by panicking")
)]

#[cfg(feature = "service")]
pub mod abuse;
#[cfg(feature = "service")]
pub mod binary;
#[cfg(feature = "service")]
pub mod browser;
pub mod elements;
#[cfg(feature = "service")]
pub mod faults;
pub mod generated;
pub mod ground_page;
#[cfg(feature = "service")]
pub mod http;
pub mod neighbours;
pub mod piers;
#[cfg(feature = "service")]
pub mod place;
#[cfg(feature = "service")]
pub mod postgres;
pub mod random_blocks;
#[cfg(feature = "service")]
pub mod routes;
#[cfg(feature = "service")]
pub mod service;
#[cfg(feature = "service")]
pub mod small;

/// Asserts that a value is within a relative tolerance of its reference.
///
/// # Panics
/// When it is not; the message names both.
#[track_caller]
pub fn close(what: &str, found: f64, reference: f64, tolerance_ratio: f64) {
    let off = (found - reference).abs();
    let allowed = tolerance_ratio * reference.abs().max(f64::MIN_POSITIVE);
    assert!(
        off <= allowed,
        "{what}: found {found}, reference {reference}, off by {:.3} %",
        100.0 * off / reference.abs()
    );
}

/// The workspace's folder: the one that runs, since a target folder may be shared by several.
///
/// # Panics
/// When the crate lies at the file system's root.
#[must_use]
#[allow(clippy::expect_used, reason = "a test fails by panicking")]
pub fn workspace() -> std::path::PathBuf {
    let crate_folder =
        std::env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
    std::path::Path::new(&crate_folder)
        .parent()
        .expect("the crate lies in the workspace")
        .to_path_buf()
}

/// An example plan of `tests/examples`, by its name.
///
/// # Panics
/// When there is none or it is no plan.
#[must_use]
#[allow(clippy::expect_used, reason = "a test fails by panicking")]
pub fn example(name: &str) -> stillground::site_plan::SitePlan {
    let path = workspace()
        .join("tests/examples")
        .join(format!("{name}.json"));
    let text = std::fs::read_to_string(&path).expect("the example's file");
    serde_json::from_str(&text).expect("a plan")
}
