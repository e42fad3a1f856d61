//! The log of requests: one line each, by route. An address may hold a secret and is never written.

mod lines;

use std::sync::LazyLock;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use axum::extract::{MatchedPath, Request};
use axum::http::{self, HeaderName, Method};
use axum::response::Response;
use tower_http::classify::{ServerErrorsAsFailures, SharedClassifier};
use tower_http::request_id::{MakeRequestId, RequestId};
use tower_http::trace::{MakeSpan, OnResponse, TraceLayer};
use tracing::Span;

pub use lines::start;

use crate::app::App;
use crate::client::Client;
use crate::error::Trouble;
use crate::watch::{Running, Watch};

/// The header that names a request.
pub const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// A word for this run of this service: ids of two runs, or of two services on one database, do not meet in one log.
static RUN: LazyLock<u32> = LazyLock::new(|| {
    let mut bytes = [0; 4];
    let _ = getrandom::fill(&mut bytes);
    u32::from_le_bytes(bytes) ^ std::process::id()
});
static COUNT: AtomicU64 = AtomicU64::new(0);
static HIDDEN: AtomicU64 = AtomicU64::new(0);

/// Names each request.
#[derive(Clone, Copy)]
pub struct Names;

impl MakeRequestId for Names {
    fn make_request_id<B>(&mut self, _: &http::Request<B>) -> Option<RequestId> {
        let id = format!("{:08x}-{:x}", *RUN, COUNT.fetch_add(1, Ordering::Relaxed));
        id.parse().ok().map(RequestId::new)
    }
}

/// What is logged while a request is answered carries its name.
#[derive(Clone, Copy)]
pub struct Spans;

impl<B> MakeSpan<B> for Spans {
    fn make_span(&mut self, request: &http::Request<B>) -> Span {
        let id = request
            .extensions()
            .get::<RequestId>()
            .and_then(|id| id.header_value().to_str().ok())
            .unwrap_or_default();
        let route = name(request.extensions().get());
        tracing::info_span!("request", id, method = %request.method(), route)
    }
}

/// A line for each answer.
#[derive(Clone, Copy)]
pub struct Line;

impl<B> OnResponse<B> for Line {
    fn on_response(self, response: &http::Response<B>, took: Duration, _: &Span) {
        let took_us = u64::try_from(took.as_micros()).unwrap_or(u64::MAX);
        tracing::info!(status = response.status().as_u16(), took_us, "answered");
    }
}

/// The log of requests, as a layer.
pub type Journal =
    TraceLayer<SharedClassifier<ServerErrorsAsFailures>, Spans, (), Line, (), (), ()>;

/// Writes the log.
#[must_use]
pub fn journal() -> Journal {
    TraceLayer::new_for_http()
        .make_span_with(Spans)
        .on_request(())
        .on_response(Line)
        .on_body_chunk(())
        .on_eos(())
        .on_failure(())
}

/// A request as the watcher counts it.
pub struct Entry {
    route: Option<MatchedPath>,
    /// The client's address, where it is to be logged.
    from: Option<String>,
    method: Method,
    begun: Instant,
    running: Running,
}

impl Entry {
    /// A request begins.
    #[must_use]
    pub fn begin(app: &App, client: &Client, request: &Request) -> Self {
        if client.hidden && HIDDEN.fetch_add(1, Ordering::Relaxed) == 0 {
            let from = client.address;
            tracing::warn!(%from, "a machine that is not in STILLGROUND_TRUSTED_PROXIES says that it speaks for others: it is not believed, and all its visitors are counted as one");
        }
        Self {
            route: request.extensions().get::<MatchedPath>().cloned(),
            method: request.method().clone(),
            begun: Instant::now(),
            from: app.config.access_lines.then(|| named(client)),
            running: app.watch.begins(),
        }
    }

    /// It was answered.
    pub fn end(self, watch: &Watch, response: &Response) {
        drop(self.running);
        let status = response.status().as_u16();
        if let Some(from) = &self.from {
            let (method, route) = (self.method.as_str(), name(self.route.as_ref()));
            let refusal = response.extensions().get::<Trouble>();
            let code = refusal.map_or("", |trouble| trouble.code);
            tracing::info!(from, method, route, status, code, "asked");
        }
        watch.answered(
            name(self.route.as_ref()),
            &self.method,
            status,
            self.begun.elapsed(),
        );
    }
}

/// The client's address; whoever a proxy of ours names by no address has none.
fn named(client: &Client) -> String {
    if client.unnamed {
        "unnamed".to_owned()
    } else {
        client.address.to_string()
    }
}

fn name(route: Option<&MatchedPath>) -> &str {
    route.map_or("unmatched", MatchedPath::as_str)
}
