//! The running service: a store, a listener, and a stop that lets requests finish.

mod accept;
mod sweep;
mod watcher;

use std::io::{self, ErrorKind};
use std::net::SocketAddr;

use tokio::net::{TcpListener, TcpSocket};

use crate::app::App;
use crate::config::{Config, DEFAULT_LISTEN};
use crate::connections::connections;
use crate::guard::Guard;
use crate::router::router;
use crate::store::{Store, StoreFailure};
use accept::Entrance;

/// A service that has its store and its port, and is about to answer.
pub struct Server {
    listener: TcpListener,
    watcher: Option<TcpListener>,
    app: App,
}

/// Why the service cannot start.
#[derive(Debug, thiserror::Error)]
pub enum StartFailure {
    /// The store.
    #[error("STILLGROUND_DATA or STILLGROUND_DATABASE_URL ({place}): {failure}")]
    Store {
        /// The file or the server.
        place: String,
        /// What is wrong with it.
        failure: StoreFailure,
    },
    /// The address.
    #[error("{setting} ({address}): {error}")]
    Listen {
        /// The setting that names it.
        setting: &'static str,
        /// The address.
        address: SocketAddr,
        /// What is wrong with it.
        error: std::io::Error,
    },
}

impl Server {
    /// Opens the store and takes the port.
    ///
    /// # Errors
    /// The setting that cannot be used.
    pub async fn prepare(config: Config) -> Result<Self, StartFailure> {
        let place = config.database.to_string();
        let store = Store::open(&config.database)
            .await
            .map_err(|failure| StartFailure::Store { place, failure })?;
        let listener = listen(config.listen)?;
        let watcher = match config.metrics {
            Some(address) => Some(bind("STILLGROUND_METRICS", address)?),
            None => None,
        };
        Ok(Self {
            listener,
            watcher,
            app: App::new(store.with_quotas(config.access.quotas), config),
        })
    }

    /// The address at which a browser finds the first page.
    ///
    /// # Errors
    /// The system's own.
    pub fn address(&self) -> std::io::Result<String> {
        Ok(format!(
            "http://{}{}/",
            self.listener.local_addr()?,
            self.app.config.base
        ))
    }

    /// The port and address taken.
    ///
    /// # Errors
    /// The system's own.
    pub fn socket(&self) -> std::io::Result<SocketAddr> {
        self.listener.local_addr()
    }

    /// The port and address at which a watcher reads figures.
    #[must_use]
    pub fn watcher(&self) -> Option<SocketAddr> {
        self.watcher
            .as_ref()
            .and_then(|listener| listener.local_addr().ok())
    }

    /// Answers until `stop` is done, then finishes the requests that run and closes the store.
    pub async fn run(self, stop: impl Future<Output = ()>) {
        let store = self.app.store.clone();
        let sweeping = tokio::spawn(sweep::sweep(store.clone()));
        let verifying = tokio::spawn(sweep::verify(store.clone()));
        let config = self.app.config.clone();
        let copying = config.copying.clone().map(|copying| {
            let (copies, database) = (self.app.copies.clone(), config.database.clone());
            tokio::spawn(copies.for_ever(database, copying))
        });
        let figures = self.watcher.map(|listener| {
            let (figures, config) = (watcher::router(self.app.clone()), config.clone());
            tokio::spawn(async move {
                let stop = std::future::pending();
                let entrance = Entrance {
                    connections: connections(),
                    guard: Guard::default(),
                };
                accept::serve(listener, figures, config, entrance, stop).await;
            })
        });
        let entrance = Entrance {
            connections: self.app.connections.clone(),
            guard: self.app.guard.clone(),
        };
        accept::serve(self.listener, router(self.app), config, entrance, stop).await;
        sweeping.abort();
        verifying.abort();
        copying.into_iter().for_each(|copying| copying.abort());
        figures.into_iter().for_each(|figures| figures.abort());
        store.close().await;
    }
}

/// The stated address, or else the usual one, or else a free port beside it.
fn listen(stated: Option<SocketAddr>) -> Result<TcpListener, StartFailure> {
    let address = stated.unwrap_or(DEFAULT_LISTEN);
    match bound(address) {
        Ok(listener) => Ok(listener),
        Err(error) if stated.is_none() && error.kind() == ErrorKind::AddrInUse => {
            let free = SocketAddr::new(address.ip(), 0);
            bind(LISTEN, free)
        }
        Err(error) => Err(StartFailure::Listen {
            setting: LISTEN,
            address,
            error,
        }),
    }
}

const LISTEN: &str = "STILLGROUND_LISTEN";

fn bind(setting: &'static str, address: SocketAddr) -> Result<TcpListener, StartFailure> {
    bound(address).map_err(|error| StartFailure::Listen {
        setting,
        address,
        error,
    })
}

/// Connections that the system keeps until they are taken; it lowers this to its own limit. Where there is no place left,
/// whoever comes tries again after a whole second, one who watches the service too.
const WAITING: u32 = 8192;

/// Bytes that the system takes of one connection before they are read. Left to itself it takes megabytes of each, for which
/// nothing here is asked; at a sixth of a second each way this is still a megabyte and a half a second.
const UNREAD: u32 = 256 * 1024;

fn bound(address: SocketAddr) -> io::Result<TcpListener> {
    let socket = socket(address)?;
    socket.bind(address)?;
    socket.listen(WAITING)
}

fn socket(address: SocketAddr) -> io::Result<TcpSocket> {
    let socket = if address.is_ipv4() {
        TcpSocket::new_v4()
    } else {
        TcpSocket::new_v6()
    }?;
    #[cfg(not(windows))]
    socket.set_reuseaddr(true)?;
    socket.set_recv_buffer_size(UNREAD)?;
    Ok(socket)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The system doubles what it is asked for, for its own book-keeping (man 7 socket).
    #[test]
    fn no_connection_is_given_megabytes_before_they_are_read() {
        for address in ["127.0.0.1:0", "[::1]:0"] {
            let socket = socket(address.parse().expect("an address")).expect("a socket");
            let size = socket.recv_buffer_size().expect("a size");
            assert!((UNREAD..=2 * UNREAD).contains(&size), "{size}");
        }
    }
}
