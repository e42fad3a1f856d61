//! `stillground serve`: the planner, until it is told to stop.

use tokio::signal;

use super::{Failure, say};
use crate::config::Config;
use crate::journal;
use crate::server::Server;

/// Starts the planner, prints its address, and answers until it is told to stop.
pub(super) fn serve(config: Config) -> Result<(), Failure> {
    journal::start(config.json_log);
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(Failure::fault)?;
    runtime.block_on(async {
        let server = Server::prepare(config).await.map_err(Failure::fault)?;
        say(server.address().map_err(Failure::fault)?)?;
        server.run(told_to_stop()).await;
        Ok(())
    })
}

/// Ends when the system says that it is time to stop.
pub(super) async fn told_to_stop() {
    let interrupt = async {
        signal::ctrl_c()
            .await
            .unwrap_or_else(|_| tracing::warn!("the interrupt signal cannot be heard"))
    };
    #[cfg(unix)]
    let terminate = async {
        match signal::unix::signal(signal::unix::SignalKind::terminate()) {
            Ok(mut signals) => drop(signals.recv().await),
            Err(_) => std::future::pending().await,
        }
    };
    #[cfg(not(unix))]
    let terminate = std::future::pending::<()>();
    tokio::select! { () = interrupt => (), () = terminate => () }
}
