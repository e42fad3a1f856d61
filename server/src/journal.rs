//! The log of requests: one line each, by route. An address may hold a secret and is never written.

mod lines;

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::Instant;

use axum::extract::{MatchedPath, Request};
use axum::http::{HeaderName, HeaderValue};
use axum::response::Response;
use tracing::Instrument;

pub use lines::start;

use crate::client::Client;
use crate::watch::Watch;

const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// A word for this run of this service: ids of two runs, or of two services on one database, do not meet in one log.
static RUN: LazyLock<u32> = LazyLock::new(|| {
    let mut bytes = [0; 4];
    let _ = getrandom::fill(&mut bytes);
    u32::from_le_bytes(bytes) ^ std::process::id()
});
static COUNT: AtomicU64 = AtomicU64::new(0);
static HIDDEN: AtomicU64 = AtomicU64::new(0);

/// Writes a line when a request is answered; what is logged meanwhile carries the request's id.
pub async fn journal<F: Future<Output = Response>>(
    watch: &Watch,
    client: &Client,
    request: Request,
    next: impl FnOnce(Request) -> F,
) -> Response {
    let id = format!("{:08x}-{:x}", *RUN, COUNT.fetch_add(1, Ordering::Relaxed));
    let route = request.extensions().get::<MatchedPath>().cloned();
    let route = route.as_ref().map_or("unmatched", MatchedPath::as_str);
    let method = request.method().clone();
    let span = tracing::info_span!("request", id, %method, route);
    let running = watch.begins();
    if client.hidden && HIDDEN.fetch_add(1, Ordering::Relaxed) == 0 {
        let from = client.address;
        span.in_scope(|| tracing::warn!(%from, "a machine that is not in STILLGROUND_TRUSTED_PROXIES says that it speaks for others: it is not believed, and all its visitors are counted as one"));
    }
    let begun = Instant::now();
    let mut response = next(request).instrument(span.clone()).await;
    let (took, status) = (begun.elapsed(), response.status().as_u16());
    drop(running);
    watch.answered(route, &method, status, took);
    let took_us = u64::try_from(took.as_micros()).unwrap_or(u64::MAX);
    span.in_scope(|| tracing::info!(status, took_us, "answered"));
    if let Ok(value) = HeaderValue::from_str(&id) {
        response.headers_mut().insert(REQUEST_ID, value);
    }
    response
}
