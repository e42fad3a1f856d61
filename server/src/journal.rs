//! The log of requests: one line each, by route. An address may hold a secret and is never written.

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Instant, SystemTime};

use axum::extract::{MatchedPath, Request};
use axum::http::{HeaderName, HeaderValue};
use axum::middleware::Next;
use axum::response::Response;
use tracing::Instrument;

const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// When this service started, in seconds: request ids of two runs do not meet in one log.
static STARTED: LazyLock<u64> = LazyLock::new(|| SystemTime::UNIX_EPOCH.elapsed().map_or(0, |since| since.as_secs()));
static COUNT: AtomicU64 = AtomicU64::new(0);

/// Writes a line when a request is answered; what is logged meanwhile carries the request's id.
pub async fn journal(request: Request, next: Next) -> Response {
    let id = format!("{:x}-{:x}", *STARTED, COUNT.fetch_add(1, Ordering::Relaxed));
    let route = request.extensions().get::<MatchedPath>().cloned();
    let route = route.as_ref().map_or("unmatched", MatchedPath::as_str);
    let span = tracing::info_span!("request", id, method = %request.method(), route);
    let begun = Instant::now();
    let mut response = next.run(request).instrument(span.clone()).await;
    let took_us = u64::try_from(begun.elapsed().as_micros()).unwrap_or(u64::MAX);
    span.in_scope(|| tracing::info!(status = response.status().as_u16(), took_us, "answered"));
    if let Ok(value) = HeaderValue::from_str(&id) {
        response.headers_mut().insert(REQUEST_ID, value);
    }
    response
}
