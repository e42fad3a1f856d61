//! Bringing a store up to date: numbered steps, each applied once, the number kept in the database.
//!
//! A store that holds plans is copied before it is changed. Of several services that start at once on one database, one
//! does the work and the others find it done.

use std::path::{Path, PathBuf};

use sqlx::postgres::{PgConnection, PgPool};
use sqlx::sqlite::SqliteConnection;
use sqlx::{Connection, Executor};

use super::{Outcome, StoreFailure, archive};
use crate::config::PostgresServer;

/// A step in the words of each database.
struct Step {
    sqlite: &'static str,
    postgres: &'static str,
}

/// The step of this name.
macro_rules! step {
    ($name:literal) => {
        Step {
            sqlite: include_str!(concat!("../../migrations/sqlite/", $name, ".sql")),
            postgres: include_str!(concat!("../../migrations/postgres/", $name, ".sql")),
        }
    };
}

/// The steps, in order; a step that was released is never changed.
const STEPS: &[Step] = &[step!("0001_plans"), step!("0002_record"), step!("0003_access")];
/// Newest schema known here.
pub const SCHEMA: i64 = STEPS.len() as i64;
/// Marks a store as Stillground's: "Stil" in ASCII.
const MARK: i64 = 0x5374_696c;

/// The steps between two schemas.
fn steps(from: i64, to: i64) -> impl Iterator<Item = &'static Step> {
    let (from, to) = (usize::try_from(from).unwrap_or(0), usize::try_from(to).unwrap_or(0));
    STEPS.iter().take(to).skip(from)
}

/// Applies the steps that a file lacks, all or none.
///
/// # Errors
/// A file of a newer version or of another program; a disk without room for the copy that is made first.
pub(super) async fn sqlite(connection: &mut SqliteConnection, file: &Path) -> Outcome<()> {
    // The write lock is taken first, so that of two services started at once one migrates and the other finds it done.
    let mut work = connection.begin_with("BEGIN IMMEDIATE").await?;
    let found = sqlite_version(&mut work).await?;
    if found == SCHEMA {
        // A file that may only be read opens as well as any: this finds out, and changes nothing.
        work.execute(sqlx::AssertSqlSafe(format!("PRAGMA user_version = {found}"))).await?;
        return Ok(work.rollback().await?);
    }
    if found > 0 {
        archive::keep_file(file, &before(file, found)).await?;
    }
    sqlite_steps(&mut work, found, SCHEMA).await?;
    Ok(work.commit().await?)
}

/// Applies the steps from one schema to another and writes down the second.
pub(super) async fn sqlite_steps(work: &mut SqliteConnection, from: i64, to: i64) -> Outcome<()> {
    for step in steps(from, to) {
        work.execute(step.sqlite).await?;
    }
    work.execute(sqlx::AssertSqlSafe(format!("PRAGMA application_id = {MARK}; PRAGMA user_version = {to}"))).await?;
    Ok(())
}

/// The schema of a file, when it is one of ours and not newer than this program; 0 for an empty one.
///
/// # Errors
/// A file of a newer version or of another program.
pub(super) async fn sqlite_version(connection: &mut SqliteConnection) -> Outcome<i64> {
    let application: i64 = sqlx::query_scalar("PRAGMA application_id").fetch_one(&mut *connection).await?;
    let found: i64 = sqlx::query_scalar("PRAGMA user_version").fetch_one(&mut *connection).await?;
    let tables: i64 = sqlx::query_scalar("SELECT count(*) FROM sqlite_schema").fetch_one(&mut *connection).await?;
    match (application, found) {
        (0, 0) if tables == 0 => Ok(0),
        (MARK, found) if found > SCHEMA => Err(StoreFailure::Newer { found, known: SCHEMA }),
        (MARK, found) if found > 0 => Ok(found),
        _ => Err(StoreFailure::Foreign("it holds another program's tables".to_owned())),
    }
}

/// Applies the steps that a database lacks, all or none.
///
/// # Errors
/// A database of a newer version or with another program's tables; no room for the copy that is made first.
pub(super) async fn postgres(pool: &PgPool, server: &PostgresServer) -> Outcome<()> {
    let mut connection = pool.acquire().await?;
    // The lock comes before the first look: another's new tables would be seen one by one.
    let mut work = connection.begin().await?;
    alone(&mut work).await?;
    let found = postgres_version(&mut work).await?;
    if found == SCHEMA {
        return Ok(work.rollback().await?);
    }
    if found > 0 {
        archive::keep_database(server, &before(&server.beside(), found)).await?;
    }
    postgres_steps(&mut work, found, SCHEMA).await?;
    Ok(work.commit().await?)
}

/// Waits until no other service brings this database up to date; they wait for this one until its transaction ends.
pub(super) async fn alone(work: &mut PgConnection) -> Outcome<()> {
    work.execute("SET LOCAL lock_timeout = '600s'; SET LOCAL statement_timeout = '600s'").await?;
    sqlx::query("SELECT pg_advisory_xact_lock($1)").bind(MARK).execute(&mut *work).await?;
    Ok(())
}

/// Applies the steps from one schema to another and writes down the second.
pub(super) async fn postgres_steps(work: &mut PgConnection, from: i64, to: i64) -> Outcome<()> {
    if from == to {
        return Ok(());
    }
    work.execute("CREATE TABLE IF NOT EXISTS stillground_schema (version BIGINT NOT NULL)").await?;
    for step in steps(from, to) {
        work.execute(step.postgres).await?;
    }
    work.execute("DELETE FROM stillground_schema").await?;
    sqlx::query("INSERT INTO stillground_schema (version) VALUES ($1)").bind(to).execute(work).await?;
    Ok(())
}

/// The schema of a database, when it is not newer than this program; 0 when it holds no store.
///
/// # Errors
/// A database of a newer version or one in which another program has a table of plans.
pub(super) async fn postgres_version(connection: &mut PgConnection) -> Outcome<i64> {
    let ours: bool = sqlx::query_scalar("SELECT to_regclass('stillground_schema') IS NOT NULL").fetch_one(&mut *connection).await?;
    let plans: bool = sqlx::query_scalar("SELECT to_regclass('plans') IS NOT NULL").fetch_one(&mut *connection).await?;
    if !ours {
        return if plans { Err(StoreFailure::Foreign("another program has a table of plans there".to_owned())) } else { Ok(0) };
    }
    let found: i64 = sqlx::query_scalar("SELECT max(version) FROM stillground_schema").fetch_one(connection).await?;
    if found > SCHEMA { Err(StoreFailure::Newer { found, known: SCHEMA }) } else { Ok(found) }
}

/// The name of the copy that is made before a store is changed.
fn before(store: &Path, schema: i64) -> PathBuf {
    let name = |n: u32| {
        let number = if n == 0 { String::new() } else { format!("-{n}") };
        let mut name = store.as_os_str().to_owned();
        name.push(format!(".before-schema-{}{number}", schema + 1));
        PathBuf::from(name)
    };
    (0..).map(name).find(|name| !name.exists()).unwrap_or_else(|| name(0))
}
