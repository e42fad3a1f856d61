//! A SQLite file as a whole: copied, put aside, put in place.

use std::fs::{self, File};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use sqlx::Connection;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqliteLockingMode};

use crate::store::connection::sqlite_options;
use crate::store::turn::Turn;
use crate::store::{Outcome, StoreFailure, private};

pub(super) async fn open_existing(file: &Path) -> Outcome<SqliteConnection> {
    if !file.is_file() {
        return Err(StoreFailure::Missing(file.display().to_string()));
    }
    // The journal mode of the file stays as it is: a backup is read without being changed.
    let as_it_is = SqliteConnectOptions::new()
        .filename(file)
        .busy_timeout(std::time::Duration::from_secs(5));
    Ok(SqliteConnection::connect_with(&as_it_is).await?)
}

/// Copies a store that may be in use into a file of its own, which is on the disk afterwards.
pub(super) async fn copy(mut from: SqliteConnection, to: &Path) -> Outcome<()> {
    whole(to, async {
        sqlx::query("VACUUM INTO $1")
            .bind(name(to)?)
            .execute(&mut from)
            .await?;
        Ok(from.close().await?)
    })
    .await
}

/// Makes a file, fills it and sees it onto the disk; one that cannot be filled does not stay.
pub(super) async fn whole(file: &Path, filled: impl Future<Output = Outcome<()>>) -> Outcome<()> {
    make_private_file(file)?;
    let made = async {
        filled.await?;
        Ok(File::open(file)?.sync_all()?)
    };
    made.await.inspect_err(|_| drop(remove(file)))
}

/// Gives a file that is whole its name, on the disk too.
///
/// # Errors
/// Another has the name meanwhile, and keeps it.
pub(super) fn named(part: &Path, file: &Path) -> Outcome<()> {
    match fs::hard_link(part, file) {
        Ok(()) => remove(part)?,
        Err(_) if file.exists() => {
            remove(part)?;
            return Err(StoreFailure::Exists(file.display().to_string()));
        }
        // Some file systems know no second name for a file.
        Err(_) => fs::rename(part, file)?,
    }
    Ok(sync_folder(file)?)
}

fn name(file: &Path) -> Outcome<&str> {
    file.to_str()
        .ok_or_else(|| StoreFailure::Foreign("the copy's name is no Unicode text".to_owned()))
}

/// Puts a copy in the store's place; where the store that was there is now.
pub(super) async fn put_in_place(
    file: &Path,
    store: &Path,
    force: bool,
) -> Outcome<Option<PathBuf>> {
    if store.exists() && !force {
        return Err(StoreFailure::Exists(store.display().to_string()));
    }
    if let Some(folder) = store
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty())
    {
        private::folder(folder)?;
    }
    let _turn = Turn::wait(store).await?;
    let part = with_ending(store, "restoring");
    copy(open_existing(file).await?, &part).await?;
    let aside = if store.exists() {
        Some(put_aside(store).await?)
    } else {
        None
    };
    fs::rename(&part, store)?;
    sync_folder(store)?;
    Ok(aside)
}

/// Moves a store out of the way, when nobody uses it.
async fn put_aside(store: &Path) -> Outcome<PathBuf> {
    let in_use = || StoreFailure::InUse(store.display().to_string());
    let alone = sqlite_options(store)
        .locking_mode(SqliteLockingMode::Exclusive)
        .journal_mode(SqliteJournalMode::Delete);
    // Leaving the write-ahead log behind takes the file for itself; it fails while another has it open.
    let connection = SqliteConnection::connect_with(&alone.busy_timeout(std::time::Duration::ZERO))
        .await
        .map_err(|_| in_use())?;
    connection.close().await.map_err(|_| in_use())?;
    let aside = aside(store);
    fs::rename(store, &aside)?;
    remove(&with_ending(store, "-wal"))?;
    remove(&with_ending(store, "-shm"))?;
    Ok(aside)
}

/// A free name beside a store for one that was replaced.
pub(super) fn aside(store: &Path) -> PathBuf {
    let free = (1..)
        .map(|n| with_ending(store, &format!("replaced-{n}")))
        .find(|aside| !aside.exists());
    free.unwrap_or_else(|| with_ending(store, "replaced"))
}

/// Makes an empty file that only its owner may read, in the place of one that was left by an attempt before.
fn make_private_file(file: &Path) -> std::io::Result<()> {
    remove(file)?;
    private::new_file(file)
}

pub(super) fn remove(file: &Path) -> std::io::Result<()> {
    match fs::remove_file(file) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// A renamed file is safe only when its folder is on the disk too.
pub(super) fn sync_folder(file: &Path) -> std::io::Result<()> {
    let folder = file
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty())
        .unwrap_or(Path::new("."));
    if cfg!(unix) {
        File::open(folder)?.sync_all()
    } else {
        Ok(())
    }
}

/// The file's name with `-wal` or `.part` after it.
pub(super) fn with_ending(file: &Path, ending: &str) -> PathBuf {
    let mut name = file.as_os_str().to_owned();
    if !ending.starts_with('-') {
        name.push(".");
    }
    name.push(ending);
    PathBuf::from(name)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[tokio::test]
    async fn a_file_that_cannot_be_filled_does_not_stay() {
        let folder = tempfile::tempdir().unwrap();
        let part = folder.path().join("copy.sqlite.part");
        let failed = whole(&part, async { Err(StoreFailure::Full) }).await;
        assert!(matches!(failed, Err(StoreFailure::Full)) && !part.exists());
        whole(&part, async { Ok(()) }).await.unwrap();
        assert!(part.exists());
    }

    #[tokio::test]
    async fn a_name_that_was_taken_meanwhile_stays_with_whoever_has_it() {
        let folder = tempfile::tempdir().unwrap();
        let (part, file) = (folder.path().join("copy.part"), folder.path().join("copy"));
        fs::write(&part, "later").unwrap();
        fs::write(&file, "earlier").unwrap();
        assert!(matches!(named(&part, &file), Err(StoreFailure::Exists(_))));
        assert_eq!(fs::read_to_string(&file).unwrap(), "earlier");
        fs::remove_file(&file).unwrap();
        fs::write(&part, "later").unwrap();
        named(&part, &file).unwrap();
        assert_eq!(
            (fs::read_to_string(&file).unwrap().as_str(), part.exists()),
            ("later", false)
        );
    }
}
