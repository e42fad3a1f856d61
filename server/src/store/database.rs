//! One way to speak to either database: the same SQL text with `$1`, values in, rows out.
//!
//! SQL that both understand: `$1` parameters, `INSERT … ON CONFLICT`, `RETURNING`, `LIMIT $1`, no function that only one
//! of them has; whole numbers are 64 bits, times are microseconds. Of the aggregates, `count`, `min` and `max` give whole
//! numbers; a `sum` is one only as `CAST(sum(…) AS BIGINT)`.

mod postgres;
mod sqlite;
mod writer;

use sqlx::postgres::PgPool;
use sqlx::{Executor, Postgres, Sqlite, Transaction};

pub(super) use super::connection::{Row, Value, values};
pub(super) use sqlite::SqlitePools;

use super::connection::bound;
use super::{Outcome, StoreFailure};
use crate::config::Database;

/// An open database. Cheap to clone.
#[derive(Clone)]
pub(super) enum Db {
    Sqlite(SqlitePools),
    Postgres(PgPool),
}

/// A transaction: all of it is kept by [`Work::commit`], or nothing.
pub(super) enum Work {
    Sqlite(writer::WriteGuard),
    Postgres(Transaction<'static, Postgres>),
}

impl Db {
    /// Opens the database and brings it up to date; a SQLite file is made when it is not there.
    pub(super) async fn open(database: &Database) -> Outcome<Self> {
        match database {
            Database::Sqlite(path) => Ok(Self::Sqlite(SqlitePools::open(path).await?)),
            Database::Postgres(server) => Ok(Self::Postgres(postgres::open(server).await?)),
        }
    }

    /// Reads rows.
    pub(super) async fn rows(&self, sql: &'static str, values: &[Value<'_>]) -> Outcome<Vec<Row>> {
        match self {
            Self::Sqlite(pools) => Ok(collect(
                bound::<Sqlite>(sql, values)
                    .fetch_all(&pools.readers)
                    .await?,
                Row::Sqlite,
            )),
            Self::Postgres(pool) => postgres_rows(pool, sql, values).await,
        }
    }

    /// Reads the first row, when there is one.
    pub(super) async fn row(
        &self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<Option<Row>> {
        Ok(self.rows(sql, values).await?.into_iter().next())
    }

    /// Changes rows by one statement, which is a transaction by itself; how many. It is on the disk when this returns.
    ///
    /// # Errors
    /// [`StoreFailure::Unsure`] when the database was lost before it said whether it kept it.
    pub(super) async fn run(&self, sql: &'static str, values: &[Value<'_>]) -> Outcome<u64> {
        match self {
            Self::Sqlite(pools) => pools.run(sql, values).await,
            Self::Postgres(pool) => {
                let mut connection = postgres::within(pool.acquire()).await?;
                let ran =
                    postgres::within(bound::<Postgres>(sql, values).execute(&mut *connection))
                        .await;
                Ok(ran.map_err(StoreFailure::at_commit)?.rows_affected())
            }
        }
    }

    /// Begins to write.
    pub(super) async fn begin(&self) -> Outcome<Work> {
        match self {
            Self::Sqlite(pools) => Ok(Work::Sqlite(pools.begin().await?)),
            Self::Postgres(pool) => Ok(Work::Postgres(postgres::within(pool.begin()).await?)),
        }
    }

    /// Whether it answers, and is still the one that was opened.
    pub(super) async fn ping(&self) -> Outcome<()> {
        if let Self::Sqlite(pools) = self {
            pools.is_there()?;
        }
        self.rows("SELECT count(*) FROM plans WHERE id = $1", values![""])
            .await
            .map(drop)
    }

    /// Finishes what runs and closes the connections.
    pub(super) async fn close(&self) {
        match self {
            Self::Sqlite(pools) => pools.close().await,
            Self::Postgres(pool) => pool.close().await,
        }
    }
}

impl Work {
    /// Changes rows; how many.
    pub(super) async fn run(&mut self, sql: &'static str, values: &[Value<'_>]) -> Outcome<u64> {
        match self {
            Self::Sqlite(guard) => guard.run(sql, values).await,
            Self::Postgres(work) => Ok(postgres::within(
                bound::<Postgres>(sql, values).execute(&mut **work),
            )
            .await?
            .rows_affected()),
        }
    }

    /// Reads rows as they stand within the transaction.
    pub(super) async fn rows(
        &mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<Vec<Row>> {
        match self {
            Self::Sqlite(guard) => Ok(collect(guard.rows(sql, values).await?, Row::Sqlite)),
            Self::Postgres(work) => postgres_rows(&mut **work, sql, values).await,
        }
    }

    /// Reads the first row, when there is one.
    pub(super) async fn row(
        &mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<Option<Row>> {
        Ok(self.rows(sql, values).await?.into_iter().next())
    }

    /// Keeps what was done. It is on the disk when this returns.
    ///
    /// # Errors
    /// [`StoreFailure::Unsure`] when the database was lost before it said whether it kept it.
    pub(super) async fn commit(self) -> Outcome<()> {
        match self {
            Self::Sqlite(guard) => guard.last("COMMIT", &[]).await.map(drop),
            Self::Postgres(work) => postgres::within(work.commit())
                .await
                .map_err(StoreFailure::at_commit),
        }
    }

    /// Gives it up at once; one that is dropped is given up a little later, in a file with its connection.
    pub(super) async fn give_up(self) -> Outcome<()> {
        match self {
            Self::Sqlite(guard) => guard.last("ROLLBACK", &[]).await.map(drop),
            Self::Postgres(work) => postgres::within(work.rollback()).await,
        }
    }
}

async fn postgres_rows<'c, E: Executor<'c, Database = Postgres>>(
    on: E,
    sql: &'static str,
    values: &[Value<'_>],
) -> Outcome<Vec<Row>> {
    Ok(collect(
        postgres::within(bound::<Postgres>(sql, values).fetch_all(on)).await?,
        Row::Postgres,
    ))
}

fn collect<R>(rows: Vec<R>, wrap: fn(R) -> Row) -> Vec<Row> {
    rows.into_iter().map(wrap).collect()
}
