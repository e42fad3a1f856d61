//! The running service: a store, a listener, and a stop that lets requests finish.

mod accept;

use std::io::ErrorKind;
use std::net::SocketAddr;

use tokio::net::TcpListener;

use crate::app::App;
use crate::config::{Config, DEFAULT_LISTEN};
use crate::router::router;
use crate::store::{Store, StoreFailure};

/// A service that has its store and its port, and is about to answer.
pub struct Server {
    listener: TcpListener,
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
    #[error("STILLGROUND_LISTEN ({address}): {error}")]
    Listen {
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
        let store = Store::open(&config.database).await.map_err(|failure| StartFailure::Store { place, failure })?;
        let listener = listen(config.listen).await?;
        Ok(Self { listener, app: App::new(store, config) })
    }

    /// The address at which a browser finds the first page.
    ///
    /// # Errors
    /// The system's own.
    pub fn address(&self) -> std::io::Result<String> {
        Ok(format!("http://{}{}/", self.listener.local_addr()?, self.app.config.base))
    }

    /// The port and address taken.
    ///
    /// # Errors
    /// The system's own.
    pub fn socket(&self) -> std::io::Result<SocketAddr> {
        self.listener.local_addr()
    }

    /// Answers until `stop` is done, then finishes the requests that run and closes the store.
    pub async fn run(self, stop: impl Future<Output = ()>) {
        let store = self.app.store.clone();
        accept::serve(self.listener, router(self.app), stop).await;
        store.close().await;
    }
}

/// The stated address, or else the usual one, or else a free port beside it.
async fn listen(stated: Option<SocketAddr>) -> Result<TcpListener, StartFailure> {
    let address = stated.unwrap_or(DEFAULT_LISTEN);
    match TcpListener::bind(address).await {
        Ok(listener) => Ok(listener),
        Err(error) if stated.is_none() && error.kind() == ErrorKind::AddrInUse => {
            let free = SocketAddr::new(address.ip(), 0);
            TcpListener::bind(free).await.map_err(|error| StartFailure::Listen { address: free, error })
        }
        Err(error) => Err(StartFailure::Listen { address, error }),
    }
}
