//! Taking connections: bounded in number for one machine and in all, each with limits of time on what it sends and on what
//! it does not read. Whoever watches the service hears from it when there is no room for anybody else.

mod lobby;
mod patient;

use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::body::Body;
use axum::extract::{ConnectInfo, Request};
use hyper::body::Incoming;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::server::graceful::{GracefulConnection, GracefulShutdown};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tower::ServiceExt;

use crate::client::Circle;
use crate::config::Config;
use crate::guard::Guard;
use crate::shares::{Share, Shares};
use lobby::Lobby;
use patient::Patient;

/// Longest time for a request's head to arrive, and for a kept connection to stay idle.
const SLOWEST_HEAD: Duration = Duration::from_secs(30);
/// Longest head that is read, bytes.
const LARGEST_HEAD: usize = 64 * 1024;
/// Longest time for requests to finish when the service is told to stop.
const LONGEST_FAREWELL: Duration = Duration::from_secs(20);
/// Pause after the system could not give a connection, for instance for want of file handles.
const PAUSE: Duration = Duration::from_millis(20);

/// What a connection is held against before it is read.
pub(super) struct Entrance {
    /// Places for connections.
    pub(super) connections: Shares,
    /// Who was refused too often.
    pub(super) guard: Guard,
}

/// Answers connections until `stop` is done, then lets running requests finish.
pub(super) async fn serve(
    listener: TcpListener,
    router: Router,
    config: Arc<Config>,
    Entrance { connections, guard }: Entrance,
    stop: impl Future<Output = ()>,
) {
    let farewell = GracefulShutdown::new();
    let mut lobby = Lobby::default();
    tokio::pin!(stop);
    loop {
        tokio::select! {
            accepted = listener.accept() => match accepted {
                Ok((stream, from)) => {
                    let alone = (!is_many(&config, from)).then(|| from.ip().to_canonical());
                    match connections.one(circles(alone)) {
                        Ok(share) => {
                            let connection = farewell.watch(connection(stream, from, router.clone()));
                            tokio::spawn(held(connection, share, guard.clone(), alone));
                        }
                        // Nobody who waits for refusals has the lobby's few places again and again.
                        Err(_) if alone.is_some_and(|peer| guard.is_late(peer)) => drop(stream),
                        Err(_) => lobby.enter(stream, from, &config.base, &router),
                    }
                }
                Err(error) => {
                    tracing::warn!(%error, "no connection could be taken");
                    lobby.clear();
                    tokio::time::sleep(PAUSE).await;
                }
            },
            () = &mut stop => break,
        }
    }
    drop(listener);
    lobby.clear();
    if tokio::time::timeout(LONGEST_FAREWELL, farewell.shutdown())
        .await
        .is_err()
    {
        tracing::warn!("some requests did not finish before the service stopped");
    }
}

/// Answers one connection. A machine that was refused too often waits before it is read.
async fn held(
    connection: impl Future<Output = hyper::Result<()>>,
    _share: Share,
    guard: Guard,
    alone: Option<IpAddr>,
) {
    if let Some(peer) = alone {
        guard.delay_connection(peer).await;
    }
    if let Err(error) = connection.await {
        tracing::debug!(%error, "a connection broke off");
        if let Some(peer) = alone.filter(|_| error.is_parse()) {
            guard.unread(peer);
        }
    }
}

/// Whether a machine speaks for many, or is not counted.
fn is_many(config: &Config, from: SocketAddr) -> bool {
    let ip = from.ip().to_canonical();
    let mut many = config.proxies.iter().chain(&config.uncounted);
    many.any(|network| network.holds(ip))
}

/// Whom a connection is counted as.
fn circles(alone: Option<IpAddr>) -> Vec<(Circle, u32)> {
    alone.map_or_else(Vec::new, |peer| Circle::of_address(peer, false))
}

/// A connection whose requests know where they come from.
fn connection(
    stream: TcpStream,
    from: SocketAddr,
    router: Router,
) -> impl GracefulConnection<Error = hyper::Error> + Send {
    // Answers are written whole: waiting to fill a packet would only delay them.
    let _ = stream.set_nodelay(true);
    let service = TowerToHyperService::new(router.map_request(named(from)));
    http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(SLOWEST_HEAD)
        .max_buf_size(LARGEST_HEAD)
        .serve_connection(TokioIo::new(Patient::new(stream)), service)
}

/// Writes down where a request comes from.
fn named(from: SocketAddr) -> impl FnMut(Request<Incoming>) -> Request<Body> + Clone + Send {
    move |request| {
        let mut request = request.map(Body::new);
        request.extensions_mut().insert(ConnectInfo(from));
        request
    }
}
