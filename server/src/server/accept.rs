//! Taking connections: bounded in number, each with a time limit on its request's head.

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
use tokio::sync::Semaphore;
use tower::ServiceExt;

/// Most connections at once; those beyond it wait in the system's queue.
const MOST_CONNECTIONS: usize = 16_384;
/// Longest time for a request's head to arrive, and for a kept connection to stay idle.
const SLOWEST_HEAD: Duration = Duration::from_secs(30);
/// Longest time for requests to finish when the service is told to stop.
const LONGEST_FAREWELL: Duration = Duration::from_secs(20);
/// Pause after the system could not give a connection, for instance for want of file handles.
const PAUSE: Duration = Duration::from_millis(100);

/// Answers connections until `stop` is done, then lets running requests finish.
pub(super) async fn serve(listener: TcpListener, router: Router, stop: impl Future<Output = ()>) {
    let farewell = GracefulShutdown::new();
    let places = Arc::new(Semaphore::new(MOST_CONNECTIONS));
    tokio::pin!(stop);
    loop {
        let next = async {
            let place = places.clone().acquire_owned().await;
            (listener.accept().await, place)
        };
        tokio::select! {
            (accepted, place) = next => match accepted {
                Ok((stream, from)) => {
                    let connection = farewell.watch(connection(stream, ConnectInfo(from), router.clone()));
                    tokio::spawn(async move {
                        let _place = place;
                        if let Err(error) = connection.await {
                            tracing::debug!(%error, "a connection broke off");
                        }
                    });
                }
                Err(error) => {
                    tracing::warn!(%error, "no connection could be taken");
                    tokio::time::sleep(PAUSE).await;
                }
            },
            () = &mut stop => break,
        }
    }
    drop(listener);
    if tokio::time::timeout(LONGEST_FAREWELL, farewell.shutdown())
        .await
        .is_err()
    {
        tracing::warn!("some requests did not finish before the service stopped");
    }
}

/// A connection whose requests know where they come from.
fn connection(
    stream: TcpStream,
    from: ConnectInfo<std::net::SocketAddr>,
    router: Router,
) -> impl GracefulConnection<Error = hyper::Error> + Send {
    // Answers are written whole: waiting to fill a packet would only delay them.
    let _ = stream.set_nodelay(true);
    let named = move |request: Request<Incoming>| {
        let mut request = request.map(Body::new);
        request.extensions_mut().insert(from);
        request
    };
    let service = TowerToHyperService::new(router.map_request(named));
    http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(SLOWEST_HEAD)
        .serve_connection(TokioIo::new(stream), service)
}
