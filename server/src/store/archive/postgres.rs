//! A PostgreSQL database as a whole: copied into a file, and filled from one.

use std::path::{Path, PathBuf};
use std::time::Duration;

use futures_util::TryStreamExt;
use sqlx::postgres::PgConnection;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection};
use sqlx::{AssertSqlSafe, Connection, Executor, Postgres, Sqlite};

use super::file::{aside, open_existing, whole};
use super::table::{Load, Table, tables};
use super::{Inventory, PLANS, keep_database};
use crate::config::PostgresServer;
use crate::store::connection::{Line, Row, bound, postgres_options};
use crate::store::schema::{SCHEMA, alone, postgres_steps, postgres_version, sqlite_steps};
use crate::store::verify::{On, Verified, verify as read_all};
use crate::store::{Outcome, StoreFailure};

/// Copies everything as it stands at one moment.
pub(super) async fn copy_out(server: &PostgresServer, to: &Path) -> Outcome<()> {
    let mut connection = connect(server).await?;
    let mut moment = connection
        .begin_with("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY")
        .await?;
    moment.execute("SET LOCAL statement_timeout = 0").await?;
    let schema = existing_version(server, &mut moment).await?;
    whole(to, fill(&mut moment, to, schema)).await
}

/// Fills an empty file with all that one moment shows.
async fn fill(moment: &mut PgConnection, to: &Path, schema: i64) -> Outcome<()> {
    let mut file = SqliteConnection::connect_with(
        &SqliteConnectOptions::new().filename(to).foreign_keys(false),
    )
    .await?;
    let mut work = file.begin().await?;
    sqlite_steps(&mut work, 0, schema).await?;
    for table in tables(&mut work).await? {
        write_table(&table, moment, &mut work).await?;
        let rows: (i64, i64) = (
            count(&table, moment).await?,
            sqlite_count(&table, &mut work).await?,
        );
        all_arrived(&table, rows)?;
    }
    work.commit().await?;
    Ok(file.close().await?)
}

/// Fills the database from a file of a schema that is known here; where the store that was there is kept.
pub(super) async fn copy_in(
    server: &PostgresServer,
    from: &Path,
    schema: i64,
    force: bool,
) -> Outcome<Option<PathBuf>> {
    let mut connection = connect(server).await?;
    let mut work = connection.begin().await?;
    alone(&mut work).await?;
    let aside = clear(server, &mut work, force).await?;
    postgres_steps(&mut work, 0, schema).await?;
    let mut file = open_existing(from).await?;
    for table in tables(&mut file).await? {
        read_table(&table, &mut file, &mut work).await?;
        let rows: (i64, i64) = (
            sqlite_count(&table, &mut file).await?,
            count(&table, &mut work).await?,
        );
        all_arrived(&table, rows)?;
    }
    file.close().await?;
    postgres_steps(&mut work, schema, SCHEMA).await?;
    work.commit().await?;
    Ok(aside)
}

/// What the database holds.
pub(super) async fn look(server: &PostgresServer) -> Outcome<Inventory> {
    let mut connection = connect(server).await?;
    let schema = existing_version(server, &mut connection).await?;
    let held = Inventory::count(Line::Postgres(&mut connection), schema).await?;
    connection.close().await?;
    Ok(held)
}

/// Reads all that stands in the database.
pub(super) async fn verify(server: &PostgresServer) -> Outcome<Verified> {
    let mut connection = connect(server).await?;
    let schema = existing_version(server, &mut connection).await?;
    let found = read_all(
        &mut On::File(Line::Postgres(&mut connection)),
        schema,
        Duration::ZERO,
    )
    .await?;
    connection.close().await?;
    Ok(found)
}

async fn connect(server: &PostgresServer) -> Outcome<PgConnection> {
    Ok(PgConnection::connect_with(&postgres_options(server)?).await?)
}

async fn existing_version(server: &PostgresServer, connection: &mut PgConnection) -> Outcome<i64> {
    match postgres_version(connection).await? {
        0 => Err(StoreFailure::Missing(server.without_password())),
        schema => Ok(schema),
    }
}

/// Takes away what is there, when nobody uses it and it may be; a store with plans is kept aside.
async fn clear(
    server: &PostgresServer,
    work: &mut PgConnection,
    force: bool,
) -> Outcome<Option<PathBuf>> {
    let schema = postgres_version(work).await?;
    if schema == 0 {
        return Ok(None);
    }
    let others = "SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'stillground' \
                  AND pid <> pg_backend_pid()";
    if sqlx::query_scalar::<_, i64>(others)
        .fetch_one(&mut *work)
        .await?
        > 0
    {
        return Err(StoreFailure::InUse(server.without_password()));
    }
    let plans: i64 = sqlx::query_scalar(PLANS).fetch_one(&mut *work).await?;
    if plans > 0 && !force {
        return Err(StoreFailure::Exists(server.without_password()));
    }
    let kept = (plans > 0).then(|| aside(&server.beside()));
    if let Some(kept) = &kept {
        keep_database(server, kept).await?;
    }
    let mut plain = SqliteConnection::connect("sqlite::memory:").await?;
    sqlite_steps(&mut plain, 0, schema).await?;
    for table in tables(&mut plain).await? {
        work.execute(AssertSqlSafe(format!("DROP TABLE {} CASCADE", table.name)))
            .await?;
    }
    Ok(kept)
}

async fn write_table(
    table: &Table,
    from: &mut PgConnection,
    to: &mut SqliteConnection,
) -> Outcome<()> {
    let mut rows = from.fetch(AssertSqlSafe(table.select()));
    let mut load = Load::default();
    while let Some(row) = rows.try_next().await? {
        table.take(&Row::Postgres(row), &mut load)?;
        if load.is_full() {
            send_to_file(table, std::mem::take(&mut load), to).await?;
        }
    }
    send_to_file(table, load, to).await
}

async fn read_table(
    table: &Table,
    from: &mut SqliteConnection,
    to: &mut PgConnection,
) -> Outcome<()> {
    let mut rows = from.fetch(AssertSqlSafe(table.select()));
    let mut load = Load::default();
    while let Some(row) = rows.try_next().await? {
        table.take(&Row::Sqlite(row), &mut load)?;
        if load.is_full() {
            send_to_database(table, std::mem::take(&mut load), to).await?;
        }
    }
    send_to_database(table, load, to).await
}

async fn send_to_file(table: &Table, load: Load, to: &mut SqliteConnection) -> Outcome<()> {
    if !load.is_empty() {
        bound::<Sqlite>(AssertSqlSafe(table.insert(&load)), &load.values())
            .execute(to)
            .await?;
    }
    Ok(())
}

async fn send_to_database(table: &Table, load: Load, to: &mut PgConnection) -> Outcome<()> {
    if !load.is_empty() {
        bound::<Postgres>(AssertSqlSafe(table.insert(&load)), &load.values())
            .execute(to)
            .await?;
    }
    Ok(())
}

async fn count(table: &Table, on: &mut PgConnection) -> Outcome<i64> {
    Ok(sqlx::query_scalar(AssertSqlSafe(table.count()))
        .fetch_one(on)
        .await?)
}

async fn sqlite_count(table: &Table, on: &mut SqliteConnection) -> Outcome<i64> {
    Ok(sqlx::query_scalar(AssertSqlSafe(table.count()))
        .fetch_one(on)
        .await?)
}

fn all_arrived(table: &Table, (sent, arrived): (i64, i64)) -> Outcome<()> {
    match sent == arrived {
        true => Ok(()),
        false => Err(StoreFailure::Damaged(format!(
            "of {sent} rows of {} only {arrived} arrived",
            table.name
        ))),
    }
}
