//! Bringing a store up to date: numbered steps, each applied once, the number kept in the file.

use sqlx::sqlite::SqliteConnection;
use sqlx::{Connection, Executor};

use super::StoreFailure;

/// The steps, in order; a step that was released is never changed.
const STEPS: &[&str] = &[include_str!("../../migrations/sqlite/0001_plans.sql")];
/// Newest schema known here.
pub const SCHEMA: i64 = STEPS.len() as i64;
/// Marks the file as Stillground's: "Stil" in ASCII.
const APPLICATION_ID: i64 = 0x5374_696c;

/// Applies the steps that a file lacks, all or none.
///
/// # Errors
/// A file of a newer version or of another program.
pub(super) async fn run(connection: &mut SqliteConnection) -> Result<(), StoreFailure> {
    // The write lock is taken first, so that of two services started at once one migrates and the other finds it done.
    let mut transaction = connection.begin_with("BEGIN IMMEDIATE").await?;
    let found = version(&mut transaction).await?;
    if found == SCHEMA {
        return Ok(transaction.rollback().await?);
    }
    for step in STEPS.iter().skip(usize::try_from(found).unwrap_or(0)) {
        transaction.execute(*step).await?;
    }
    transaction.execute(sqlx::AssertSqlSafe(format!("PRAGMA application_id = {APPLICATION_ID}; PRAGMA user_version = {SCHEMA}"))).await?;
    Ok(transaction.commit().await?)
}

/// The schema of a file, when it is one of ours and not newer than this program; 0 for an empty one.
///
/// # Errors
/// A file of a newer version or of another program.
pub(super) async fn version(connection: &mut SqliteConnection) -> Result<i64, StoreFailure> {
    let application: i64 = sqlx::query_scalar("PRAGMA application_id").fetch_one(&mut *connection).await?;
    let found: i64 = sqlx::query_scalar("PRAGMA user_version").fetch_one(&mut *connection).await?;
    let tables: i64 = sqlx::query_scalar("SELECT count(*) FROM sqlite_schema").fetch_one(&mut *connection).await?;
    match (application, found) {
        (0, 0) if tables == 0 => Ok(0),
        (APPLICATION_ID, found) if found > SCHEMA => Err(StoreFailure::Newer { found, known: SCHEMA }),
        (APPLICATION_ID, found) if found > 0 => Ok(found),
        _ => Err(StoreFailure::Foreign("it holds another program's tables".to_owned())),
    }
}
