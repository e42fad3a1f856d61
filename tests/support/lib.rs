//! What the suites share: comparing figures, reading the examples, starting the service.
#![cfg_attr(feature = "service", allow(clippy::expect_used, reason = "a test fails by panicking"))]

#[cfg(feature = "service")]
pub mod binary;
#[cfg(feature = "service")]
pub mod http;
#[cfg(feature = "service")]
pub mod service;

/// Asserts that a value is within a relative tolerance of its reference.
///
/// # Panics
/// When it is not; the message names both.
#[track_caller]
pub fn close(what: &str, found: f64, reference: f64, tolerance_ratio: f64) {
    let off = (found - reference).abs();
    let allowed = tolerance_ratio * reference.abs().max(f64::MIN_POSITIVE);
    assert!(off <= allowed, "{what}: found {found}, reference {reference}, off by {:.3} %", 100.0 * off / reference.abs());
}
