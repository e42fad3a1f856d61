//! The schema of a store: numbered steps in the words of each database, and the number, which the database keeps.

use sqlx::postgres::PgConnection;
use sqlx::sqlite::SqliteConnection;
use sqlx::{Connection, Executor};

use super::connection::Line;
use super::digest::fill;
use super::{Outcome, StoreFailure};

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
const STEPS: &[Step] = &[
    step!("0001_plans"),
    step!("0002_record"),
    step!("0003_access"),
    step!("0004_digests"),
    step!("0005_engine"),
    step!("0006_sizes"),
    step!("0007_link_openings"),
];
/// The first schema with a record.
pub(super) const RECORD: i64 = 2;
/// The first schema in which rows have digests.
pub(super) const DIGESTS: i64 = 4;
/// Newest schema known here.
pub const SCHEMA: i64 = STEPS.len() as i64;
/// Marks a store as Stillground's: "Stil" in ASCII.
const MARK: i64 = 0x5374_696c;

/// The steps between two schemas.
fn steps(from: i64, to: i64) -> impl Iterator<Item = &'static Step> {
    let (from, to) = (
        usize::try_from(from).unwrap_or(0),
        usize::try_from(to).unwrap_or(0),
    );
    STEPS.iter().take(to).skip(from)
}

/// Applies the steps from one schema to another and writes down the second.
pub(super) async fn sqlite_steps(work: &mut SqliteConnection, from: i64, to: i64) -> Outcome<()> {
    for step in steps(from, to) {
        work.execute(step.sqlite).await?;
    }
    if from < DIGESTS && to >= DIGESTS {
        fill(&mut Line::Sqlite(work)).await?;
    }
    work.execute(sqlx::AssertSqlSafe(format!(
        "PRAGMA application_id = {MARK}; PRAGMA user_version = {to}"
    )))
    .await?;
    Ok(())
}

/// The schema of a file, when it is one of ours and not newer than this program; 0 for an empty one.
///
/// # Errors
/// A file of a newer version or of another program.
pub(super) async fn sqlite_version(connection: &mut SqliteConnection) -> Outcome<i64> {
    let application: i64 = sqlx::query_scalar("PRAGMA application_id")
        .fetch_one(&mut *connection)
        .await?;
    let found: i64 = sqlx::query_scalar("PRAGMA user_version")
        .fetch_one(&mut *connection)
        .await?;
    let tables: i64 = sqlx::query_scalar("SELECT count(*) FROM sqlite_schema")
        .fetch_one(&mut *connection)
        .await?;
    match (application, found) {
        (0, 0) if tables == 0 => Ok(0),
        (MARK, found) if found > SCHEMA => Err(StoreFailure::Newer {
            found,
            known: SCHEMA,
        }),
        (MARK, found) if found > 0 => Ok(found),
        _ => Err(StoreFailure::Foreign(
            "it holds another program's tables".to_owned(),
        )),
    }
}

/// Nothing, when a file has the tables of its schema and nothing else: no trigger, no view, no column of another's that
/// would change what is read or kept.
///
/// # Errors
/// [`StoreFailure::Foreign`] with what does not belong there.
pub(super) async fn sqlite_only_ours(file: &mut SqliteConnection, schema: i64) -> Outcome<()> {
    let mut plain = SqliteConnection::connect("sqlite::memory:").await?;
    sqlite_steps(&mut plain, 0, schema).await?;
    let (ours, found) = (made(&mut plain).await?, made(file).await?);
    plain.close().await?;
    if let Some((kind, name, _)) = found.iter().find(|one| !ours.contains(one)) {
        return Err(StoreFailure::Foreign(format!(
            "its {kind} {name} is not one of Stillground's"
        )));
    }
    match ours.iter().find(|one| !found.contains(one)) {
        Some((kind, name, _)) => Err(StoreFailure::Foreign(format!(
            "its {kind} {name} is missing"
        ))),
        None => Ok(()),
    }
}

/// All that stands in a file's schema: kind, name, and the words that made it, their white space folded.
async fn made(file: &mut SqliteConnection) -> Outcome<Vec<(String, String, String)>> {
    let sql = "SELECT type, name, coalesce(sql, '') FROM sqlite_schema WHERE name <> 'sqlite_sequence' ORDER BY name";
    let rows: Vec<(String, String, String)> = sqlx::query_as(sql).fetch_all(file).await?;
    let folded = |sql: String| sql.split_whitespace().collect::<Vec<_>>().join(" ");
    Ok(rows
        .into_iter()
        .map(|(kind, name, sql)| (kind, name, folded(sql)))
        .collect())
}

/// Waits until no other service brings this database up to date; they wait for this one until its transaction ends.
pub(super) async fn alone(work: &mut PgConnection) -> Outcome<()> {
    work.execute("SET LOCAL lock_timeout = '600s'; SET LOCAL statement_timeout = '600s'")
        .await?;
    sqlx::query("SELECT pg_advisory_xact_lock($1)")
        .bind(MARK)
        .execute(&mut *work)
        .await?;
    Ok(())
}

/// Applies the steps from one schema to another and writes down the second.
pub(super) async fn postgres_steps(work: &mut PgConnection, from: i64, to: i64) -> Outcome<()> {
    if from == to {
        return Ok(());
    }
    work.execute("CREATE TABLE IF NOT EXISTS stillground_schema (version BIGINT NOT NULL)")
        .await?;
    for step in steps(from, to) {
        work.execute(step.postgres).await?;
    }
    if from < DIGESTS && to >= DIGESTS {
        fill(&mut Line::Postgres(work)).await?;
    }
    work.execute("DELETE FROM stillground_schema").await?;
    sqlx::query("INSERT INTO stillground_schema (version) VALUES ($1)")
        .bind(to)
        .execute(work)
        .await?;
    Ok(())
}

/// The schema of a database, when it is not newer than this program; 0 when it holds no store.
///
/// # Errors
/// A database of a newer version or one in which another program has a table of plans.
pub(super) async fn postgres_version(connection: &mut PgConnection) -> Outcome<i64> {
    let ours: bool = sqlx::query_scalar("SELECT to_regclass('stillground_schema') IS NOT NULL")
        .fetch_one(&mut *connection)
        .await?;
    let plans: bool = sqlx::query_scalar("SELECT to_regclass('plans') IS NOT NULL")
        .fetch_one(&mut *connection)
        .await?;
    if !ours {
        return if plans {
            Err(StoreFailure::Foreign(
                "another program has a table of plans there".to_owned(),
            ))
        } else {
            Ok(0)
        };
    }
    let found: i64 = sqlx::query_scalar("SELECT max(version) FROM stillground_schema")
        .fetch_one(connection)
        .await?;
    if found > SCHEMA {
        Err(StoreFailure::Newer {
            found,
            known: SCHEMA,
        })
    } else {
        Ok(found)
    }
}
