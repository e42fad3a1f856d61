//! The log of requests: one line each, by route. An address may hold a secret and is never written.

mod lines;

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::Instant;

use axum::extract::{MatchedPath, Request};
use axum::http::{HeaderName, HeaderValue, Method};
use axum::response::Response;
use tracing::Span;

pub use lines::start;

use crate::client::Client;
use crate::watch::{Running, Watch};

const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// A word for this run of this service: ids of two runs, or of two services on one database, do not meet in one log.
static RUN: LazyLock<u32> = LazyLock::new(|| {
    let mut bytes = [0; 4];
    let _ = getrandom::fill(&mut bytes);
    u32::from_le_bytes(bytes) ^ std::process::id()
});
static COUNT: AtomicU64 = AtomicU64::new(0);
static HIDDEN: AtomicU64 = AtomicU64::new(0);

/// A request's line, which is written when it is answered.
pub struct Entry {
    id: String,
    route: Option<MatchedPath>,
    method: Method,
    span: Span,
    begun: Instant,
    running: Running,
}

impl Entry {
    /// Begins a request's line.
    #[must_use]
    pub fn begin(watch: &Watch, client: &Client, request: &Request) -> Self {
        let id = format!("{:08x}-{:x}", *RUN, COUNT.fetch_add(1, Ordering::Relaxed));
        let (route, method) = (
            request.extensions().get::<MatchedPath>().cloned(),
            request.method().clone(),
        );
        let span = tracing::info_span!("request", id, %method, route = name(route.as_ref()));
        if client.hidden && HIDDEN.fetch_add(1, Ordering::Relaxed) == 0 {
            let from = client.address;
            span.in_scope(|| tracing::warn!(%from, "a machine that is not in STILLGROUND_TRUSTED_PROXIES says that it speaks for others: it is not believed, and all its visitors are counted as one"));
        }
        Self {
            id,
            route,
            method,
            span,
            begun: Instant::now(),
            running: watch.begins(),
        }
    }

    /// What is logged within it carries the request's id.
    #[must_use]
    pub fn span(&self) -> Span {
        self.span.clone()
    }

    /// Writes the line, and the request's id on the answer.
    pub fn end(self, watch: &Watch, response: &mut Response) {
        let (took, status) = (self.begun.elapsed(), response.status().as_u16());
        drop(self.running);
        watch.answered(name(self.route.as_ref()), &self.method, status, took);
        let took_us = u64::try_from(took.as_micros()).unwrap_or(u64::MAX);
        self.span
            .in_scope(|| tracing::info!(status, took_us, "answered"));
        if let Ok(value) = HeaderValue::try_from(self.id) {
            response.headers_mut().insert(REQUEST_ID, value);
        }
    }
}

fn name(route: Option<&MatchedPath>) -> &str {
    route.map_or("unmatched", MatchedPath::as_str)
}
