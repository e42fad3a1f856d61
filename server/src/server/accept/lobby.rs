//! Where connections wait for which there is no place: whether the service lives is answered here, everything else is told
//! to come back. The newest takes the place of the oldest, so that nobody fills the lobby by standing in it.

use std::collections::VecDeque;
use std::net::SocketAddr;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use axum::http::Request;
use axum::response::IntoResponse;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::TcpStream;
use tokio::task::AbortHandle;
use tower::{ServiceExt, service_fn};

use super::named;
use crate::error::Trouble;

/// Most connections in it.
const MOST: usize = 32;
/// Longest time for a request's head to arrive here.
const SLOWEST_HEAD: Duration = Duration::from_secs(2);
/// Longest stay.
const LONGEST_STAY: Duration = Duration::from_secs(5);

/// Those who wait.
#[derive(Default)]
pub(super) struct Lobby(VecDeque<AbortHandle>);

impl Lobby {
    /// Lets a connection in, and the oldest out where there is no room.
    pub(super) fn enter(
        &mut self,
        stream: TcpStream,
        from: SocketAddr,
        base: &str,
        router: &Router,
    ) {
        self.0.retain(|waiting| !waiting.is_finished());
        while self.0.len() >= MOST
            && let Some(oldest) = self.0.pop_front()
        {
            oldest.abort();
        }
        let answers = answers(router.clone(), format!("{base}/health/"));
        let service = TowerToHyperService::new(answers.map_request(named(from)));
        let connection = http1::Builder::new()
            .timer(TokioTimer::new())
            .header_read_timeout(SLOWEST_HEAD)
            .keep_alive(false)
            .serve_connection(TokioIo::new(stream), service);
        let task = tokio::spawn(async move {
            let _ = tokio::time::timeout(LONGEST_STAY, connection).await;
        });
        self.0.push_back(task.abort_handle());
    }

    /// Lets all out.
    pub(super) fn clear(&mut self) {
        self.0.drain(..).for_each(|waiting| waiting.abort());
    }
}

/// Whether the service lives, and that there is no room.
fn answers(
    router: Router,
    health: String,
) -> impl tower::Service<
    Request<Body>,
    Response = axum::response::Response,
    Error = std::convert::Infallible,
    Future: Send,
> + Clone
+ Send {
    service_fn(move |request: Request<Body>| {
        let (router, watching) = (router.clone(), request.uri().path().starts_with(&health));
        async move {
            if watching {
                router.oneshot(request).await
            } else {
                Ok(Trouble::full().into_response())
            }
        }
    })
}
