//! What is said to a connection of either database, and what it answers: values in, rows out.

mod value;

use std::path::Path;
use std::time::Duration;

use sqlx::postgres::{PgConnectOptions, PgConnection, PgRow};
use sqlx::sqlite::{
    SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqliteRow, SqliteSynchronous,
};
use sqlx::{Decode, Postgres, Row as _, Sqlite, Type};

pub(super) use value::{Value, bound, values};

use super::{Outcome, StoreFailure};
use crate::config::PostgresServer;

/// How long a writer waits for another before it says that the store is busy.
pub(super) const BUSY: Duration = Duration::from_secs(5);

/// A connection of its own, beside those of a service.
pub(super) enum Line<'c> {
    Sqlite(&'c mut SqliteConnection),
    Postgres(&'c mut PgConnection),
}

/// A row of an answer.
pub(super) enum Row {
    Sqlite(SqliteRow),
    Postgres(PgRow),
}

impl Line<'_> {
    /// Reads rows.
    pub(super) async fn rows(
        &mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<Vec<Row>> {
        Ok(match self {
            Self::Sqlite(line) => {
                let rows = bound::<Sqlite>(sql, values).fetch_all(&mut **line).await?;
                rows.into_iter().map(Row::Sqlite).collect()
            }
            Self::Postgres(line) => {
                let rows = bound::<Postgres>(sql, values)
                    .fetch_all(&mut **line)
                    .await?;
                rows.into_iter().map(Row::Postgres).collect()
            }
        })
    }

    /// Changes rows.
    pub(super) async fn run(&mut self, sql: &'static str, values: &[Value<'_>]) -> Outcome<()> {
        match self {
            Self::Sqlite(line) => {
                bound::<Sqlite>(sql, values).execute(&mut **line).await?;
            }
            Self::Postgres(line) => {
                bound::<Postgres>(sql, values).execute(&mut **line).await?;
            }
        }
        Ok(())
    }

    /// Reads one whole number.
    pub(super) async fn number(&mut self, sql: &'static str) -> Outcome<i64> {
        Ok(match self {
            Self::Sqlite(line) => sqlx::query_scalar(sql).fetch_one(&mut **line).await?,
            Self::Postgres(line) => sqlx::query_scalar(sql).fetch_one(&mut **line).await?,
        })
    }
}

impl Row {
    /// The value in a column, counted from 0: `String`, `i64`, `f64`, `Vec<u8>`, or an `Option` of one.
    pub(super) fn get<'r, T>(&'r self, column: usize) -> Outcome<T>
    where
        T: Decode<'r, Sqlite> + Type<Sqlite> + Decode<'r, Postgres> + Type<Postgres>,
    {
        match self {
            Self::Sqlite(row) => Ok(row.try_get(column)?),
            Self::Postgres(row) => Ok(row.try_get(column)?),
        }
    }
}

/// How a store's file is opened.
pub(super) fn sqlite_options(path: &Path) -> SqliteConnectOptions {
    SqliteConnectOptions::new()
        .filename(path)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .busy_timeout(BUSY)
}

/// How the database is reached: as its URL says, with a name for its lists and an end to what takes too long.
pub(super) fn postgres_options(server: &PostgresServer) -> Outcome<PgConnectOptions> {
    let options: PgConnectOptions = server.url().parse().map_err(StoreFailure::from)?;
    let limits = [
        ("statement_timeout", "8s"),
        ("lock_timeout", "5s"),
        ("idle_in_transaction_session_timeout", "30s"),
    ];
    Ok(options.application_name("stillground").options(limits))
}
