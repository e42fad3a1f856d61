//! Copies of the whole store: made while the service runs, checked, and put back.

use std::fs::{self, File};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use sqlx::Connection;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqliteLockingMode};

use super::migration::version;
use super::sqlite::{make_private_folder, options};
use super::{Outcome, StoreFailure};
use crate::config::Database;

/// What stands in a store.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Inventory {
    /// Schema of the file.
    pub schema: i64,
    /// Plans.
    pub plans: i64,
    /// Revisions of all plans.
    pub revisions: i64,
}

/// Writes a consistent copy of the store to a new file, while a service may be writing.
///
/// # Errors
/// No store, a copy that is already there, or a disk that does not take it.
pub async fn backup(database: &Database, file: &Path) -> Outcome<Inventory> {
    let Database::Sqlite(store) = database;
    if file.exists() {
        return Err(StoreFailure::Exists(file.display().to_string()));
    }
    let mut connection = open_existing(store).await?;
    version(&mut connection).await?;
    let part = with_ending(file, "part");
    copy(connection, &part).await?;
    let held = inspect(&part).await?;
    fs::rename(&part, file)?;
    sync_folder(file)?;
    Ok(held)
}

/// Puts a copy in the store's place. A store that is there is kept beside it, and only given up when `force` is said.
///
/// # Errors
/// A copy that is none or is damaged, a store that is there or in use.
pub async fn restore(database: &Database, file: &Path, force: bool) -> Outcome<(Inventory, Option<PathBuf>)> {
    let Database::Sqlite(store) = database;
    let held = inspect(file).await?;
    if store.exists() && !force {
        return Err(StoreFailure::Exists(store.display().to_string()));
    }
    if let Some(folder) = store.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        make_private_folder(folder)?;
    }
    let part = with_ending(store, "restoring");
    remove(&part)?;
    copy(open_existing(file).await?, &part).await?;
    let aside = if store.exists() { Some(put_aside(store).await?) } else { None };
    fs::rename(&part, store)?;
    sync_folder(store)?;
    Ok((held, aside))
}

/// What a store file holds, when it is whole.
///
/// # Errors
/// No file, another program's, a newer one, or a damaged one.
pub async fn inspect(file: &Path) -> Outcome<Inventory> {
    let mut connection = open_existing(file).await?;
    let schema = version(&mut connection).await?;
    if schema == 0 {
        return Err(StoreFailure::Foreign("it is empty".to_owned()));
    }
    let sound: String = sqlx::query_scalar("PRAGMA integrity_check(1)").fetch_one(&mut connection).await?;
    if sound != "ok" {
        return Err(StoreFailure::Damaged(sound));
    }
    let plans = sqlx::query_scalar("SELECT count(*) FROM plans").fetch_one(&mut connection).await?;
    let revisions = sqlx::query_scalar("SELECT count(*) FROM revisions").fetch_one(&mut connection).await?;
    connection.close().await?;
    Ok(Inventory { schema, plans, revisions })
}

async fn open_existing(file: &Path) -> Outcome<SqliteConnection> {
    if !file.is_file() {
        return Err(StoreFailure::Missing(file.display().to_string()));
    }
    // The journal mode of the file stays as it is: a backup is read without being changed.
    let as_it_is = SqliteConnectOptions::new().filename(file).busy_timeout(std::time::Duration::from_secs(5));
    Ok(SqliteConnection::connect_with(&as_it_is).await?)
}

async fn copy(mut from: SqliteConnection, to: &Path) -> Outcome<()> {
    let name = to.to_str().ok_or_else(|| StoreFailure::Foreign("the copy's name is no Unicode text".to_owned()))?;
    remove(to)?;
    make_private_file(to)?;
    sqlx::query("VACUUM INTO $1").bind(name).execute(&mut from).await?;
    from.close().await?;
    Ok(File::open(to)?.sync_all()?)
}

/// Moves a store out of the way, when nobody uses it.
async fn put_aside(store: &Path) -> Outcome<PathBuf> {
    let in_use = || StoreFailure::InUse(store.display().to_string());
    let alone = options(store).locking_mode(SqliteLockingMode::Exclusive).journal_mode(SqliteJournalMode::Delete);
    // Leaving the write-ahead log behind takes the file for itself; it fails while another has it open.
    let connection = SqliteConnection::connect_with(&alone.busy_timeout(std::time::Duration::ZERO)).await.map_err(|_| in_use())?;
    connection.close().await.map_err(|_| in_use())?;
    let aside = (1..).map(|n| with_ending(store, &format!("replaced-{n}"))).find(|aside| !aside.exists());
    let aside = aside.unwrap_or_else(|| with_ending(store, "replaced"));
    fs::rename(store, &aside)?;
    remove(&with_ending(store, "-wal"))?;
    remove(&with_ending(store, "-shm"))?;
    Ok(aside)
}

fn make_private_file(file: &Path) -> std::io::Result<()> {
    let mut options = fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(file).map(drop)
}

fn remove(file: &Path) -> std::io::Result<()> {
    match fs::remove_file(file) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// A renamed file is safe only when its folder is on the disk too.
fn sync_folder(file: &Path) -> std::io::Result<()> {
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    if cfg!(unix) { File::open(folder)?.sync_all() } else { Ok(()) }
}

/// The file's name with `-wal` or `.part` after it.
fn with_ending(file: &Path, ending: &str) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    if !ending.starts_with('-') {
        name.push(".");
    }
    name.push(ending);
    PathBuf::from(name)
}
