//! A PostgreSQL database, which several instances of the service may share.

use std::time::Duration;

use sqlx::Connection;
use sqlx::postgres::{PgConnection, PgPool, PgPoolOptions};

use crate::config::PostgresServer;
use crate::store::connection::postgres_options;
use crate::store::{Outcome, StoreFailure, migration};

/// Connections of one instance; a server takes a hundred unless it is told otherwise.
const CONNECTIONS: u32 = 12;
/// How long a request waits for a connection before it is told that the store does not answer.
const PATIENCE: Duration = Duration::from_secs(3);
/// A connection that was idle for longer is asked whether it still lives.
const ASLEEP: Duration = Duration::from_secs(1);

/// Longest that a server may be silent; it gives a statement up by itself before.
const SILENCE: Duration = Duration::from_secs(10);

/// Opens the database and brings it up to date.
pub(super) async fn open(server: &PostgresServer) -> Outcome<PgPool> {
    let pool = PgPoolOptions::new()
        .max_connections(CONNECTIONS)
        // One stays open: a service that is at rest is still seen by whoever would restore a copy.
        .min_connections(1)
        .acquire_timeout(PATIENCE)
        .test_before_acquire(false)
        .before_acquire(|connection, known| Box::pin(is_alive(connection, known.idle_for)))
        .after_connect(|connection, _| Box::pin(durable(connection)))
        .connect_with(postgres_options(server)?)
        .await?;
    migration::postgres(&pool, server).await?;
    Ok(pool)
}

async fn is_alive(connection: &mut PgConnection, idle_for: Duration) -> sqlx::Result<bool> {
    Ok(idle_for < ASLEEP || connection.ping().await.is_ok())
}

/// A save is acknowledged when it is on the disk, whatever the server is set to do for others.
async fn durable(connection: &mut PgConnection) -> sqlx::Result<()> {
    let setting = "SELECT set_config('synchronous_commit', 'on', false) WHERE current_setting('synchronous_commit') = 'off'";
    sqlx::query(setting).execute(connection).await.map(drop)
}

/// What the server answers; a server that is silent for too long is counted as lost.
pub(super) async fn within<T>(work: impl Future<Output = sqlx::Result<T>>) -> Outcome<T> {
    match tokio::time::timeout(SILENCE, work).await {
        Ok(answer) => Ok(answer?),
        Err(_) => Err(StoreFailure::Away(format!(
            "it was silent for {} s",
            SILENCE.as_secs()
        ))),
    }
}
