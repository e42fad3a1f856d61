//! Bringing a store up to date: the steps of the schema that it lacks, each applied once.
//!
//! A store that holds plans is copied before it is changed. Of several services that start at once on one database, one
//! does the work and the others find it done.

use std::path::{Path, PathBuf};

use sqlx::postgres::PgPool;
use sqlx::sqlite::SqliteConnection;
use sqlx::{Connection, Executor};

use super::schema::{
    SCHEMA, alone, postgres_steps, postgres_version, sqlite_steps, sqlite_version,
};
use super::{Outcome, archive};
use crate::config::PostgresServer;

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
        work.execute(sqlx::AssertSqlSafe(format!(
            "PRAGMA user_version = {found}"
        )))
        .await?;
        return Ok(work.rollback().await?);
    }
    if found > 0 {
        archive::keep_file(file, &before(file, found)).await?;
    }
    sqlite_steps(&mut work, found, SCHEMA).await?;
    Ok(work.commit().await?)
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

/// The name of the copy that is made before a store is changed.
fn before(store: &Path, schema: i64) -> PathBuf {
    let name = |n: u32| {
        let number = if n == 0 {
            String::new()
        } else {
            format!("-{n}")
        };
        let mut name = store.as_os_str().to_owned();
        name.push(format!(".before-schema-{}{number}", schema + 1));
        PathBuf::from(name)
    };
    (0..)
        .map(name)
        .find(|name| !name.exists())
        .unwrap_or_else(|| name(0))
}
