//! Copies of the whole store: made while the service runs, checked, and put back.
//!
//! A copy is a SQLite file of the same schema, whichever database it was made from, and can be put into either: that is
//! also how a store moves from one to the other.

pub mod copies;
mod file;
mod postgres;
mod table;

use std::path::{Path, PathBuf};
use std::time::Duration;

use sqlx::Connection;

use super::connection::Line;
use super::schema::{RECORD, sqlite_only_ours, sqlite_version};
use super::verify::{On, Verified, verify as read_all};
use super::{Outcome, StoreFailure, private};
use crate::config::{Database, PostgresServer};

/// What stands in a store.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Inventory {
    /// Schema of the store.
    pub schema: i64,
    /// Plans.
    pub plans: i64,
    /// Revisions of all plans.
    pub revisions: i64,
    /// Entries in the records of all plans; none in a store from before there were records.
    pub entries: i64,
    /// Photographs among them.
    pub photos: i64,
}

/// Writes a consistent copy of the store to a new file, while services may be writing, and reads it back: what is damaged
/// in the store is damaged in its copy, and told.
///
/// # Errors
/// No store, a copy that is already there, or a disk that does not take it.
pub async fn backup(database: &Database, file: &Path) -> Outcome<(Inventory, Verified)> {
    if file.exists() {
        return Err(StoreFailure::Exists(file.display().to_string()));
    }
    let part = file::with_ending(file, "part");
    match database {
        Database::Sqlite(store) => {
            let mut connection = file::open_existing(store).await?;
            sqlite_version(&mut connection).await?;
            file::copy(connection, &part).await?;
        }
        Database::Postgres(server) => postgres::copy_out(server, &part).await?,
    }
    let made = async {
        let held = inspect(&part).await?;
        let verified = verify_file(&part).await?;
        file::named(&part, file)?;
        Ok((held, verified))
    };
    made.await.inspect_err(|_| drop(file::remove(&part)))
}

/// Reads all that stands in a copy, and says what of it is damaged.
///
/// # Errors
/// No file, another program's, a newer one, one with tables or triggers that are not ours, or one damaged as a whole.
pub async fn verify_file(file: &Path) -> Outcome<Verified> {
    let mut connection = file::open_existing(file).await?;
    let schema = sqlite_version(&mut connection).await?;
    sqlite_only_ours(&mut connection, schema).await?;
    let found = read_all(
        &mut On::File(Line::Sqlite(&mut connection)),
        schema,
        Duration::ZERO,
    )
    .await?;
    connection.close().await?;
    Ok(found)
}

/// Puts a copy in the store's place. A store that is there is kept aside, and only given up when `force` is said. A copy
/// with damaged rows is taken only when `damaged_too` is said; those rows stay damaged, and are told as such.
///
/// # Errors
/// A copy that is none, is damaged or holds another's tables or triggers; a store that is there or in use.
pub async fn restore(
    database: &Database,
    file: &Path,
    force: bool,
    damaged_too: bool,
) -> Outcome<(Inventory, Option<PathBuf>)> {
    let held = inspect(file).await?;
    let verified = verify_file(file).await?;
    if !verified.damaged.is_empty() && !damaged_too {
        return Err(StoreFailure::Damaged(verified.to_string()));
    }
    let aside = match database {
        Database::Sqlite(store) => file::put_in_place(file, store, force).await?,
        Database::Postgres(server) => postgres::copy_in(server, file, held.schema, force).await?,
    };
    Ok((held, aside))
}

/// What the store holds, when it is whole.
///
/// # Errors
/// No store, another program's, a newer one, or a damaged one.
pub async fn look(database: &Database) -> Outcome<Inventory> {
    match database {
        Database::Sqlite(store) => inspect(store).await,
        Database::Postgres(server) => postgres::look(server).await,
    }
}

/// Reads all that stands in the store, as it stands, and says what of it is damaged.
///
/// # Errors
/// No store, another program's, a newer one, or one damaged as a whole.
pub async fn verify(database: &Database) -> Outcome<Verified> {
    match database {
        Database::Sqlite(store) => verify_file(store).await,
        Database::Postgres(server) => postgres::verify(server).await,
    }
}

/// What a store file holds, when it is whole.
///
/// # Errors
/// No file, another program's, a newer one, or a damaged one.
pub async fn inspect(file: &Path) -> Outcome<Inventory> {
    let mut connection = file::open_existing(file).await?;
    let schema = sqlite_version(&mut connection).await?;
    if schema == 0 {
        return Err(StoreFailure::Foreign("it is empty".to_owned()));
    }
    let sound: String = sqlx::query_scalar("PRAGMA integrity_check(1)")
        .fetch_one(&mut connection)
        .await?;
    if sound != "ok" {
        return Err(StoreFailure::Damaged(sound));
    }
    let held = Inventory::count(Line::Sqlite(&mut connection), schema).await?;
    connection.close().await?;
    Ok(held)
}

const PLANS: &str = "SELECT count(*) FROM plans";

impl Inventory {
    /// Counts what stands in a store of a schema.
    async fn count(mut on: Line<'_>, schema: i64) -> Outcome<Self> {
        let (plans, revisions) = (
            on.number(PLANS).await?,
            on.number("SELECT count(*) FROM revisions").await?,
        );
        let (mut entries, mut photos) = (0, 0);
        if schema >= RECORD {
            entries = on.number("SELECT count(*) FROM entries").await?;
            photos = on.number("SELECT count(*) FROM photos").await?;
        }
        Ok(Self {
            schema,
            plans,
            revisions,
            entries,
            photos,
        })
    }
}

impl std::fmt::Display for Inventory {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} plans in {} revisions", self.plans, self.revisions)?;
        if self.entries > 0 {
            write!(
                f,
                ", {} entries in their records, {} photographs among them",
                self.entries, self.photos
            )?;
        }
        Ok(())
    }
}

/// Copies a store's file before it is changed.
pub(super) async fn keep_file(store: &Path, to: &Path) -> Outcome<()> {
    file::copy(file::open_existing(store).await?, to).await?;
    Ok(file::sync_folder(to)?)
}

/// Copies a database before it is changed.
pub(super) async fn keep_database(server: &PostgresServer, to: &Path) -> Outcome<()> {
    if let Some(folder) = to.parent() {
        private::folder(folder)?;
    }
    postgres::copy_out(server, to).await?;
    Ok(file::sync_folder(to)?)
}
