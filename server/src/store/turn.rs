//! Services that start at once on one file open it one after another.
//!
//! A file is switched to its write-ahead log under a lock that SQLite waits for nobody to give up, and what comes after
//! may be a copy and a migration of minutes. A lock beside the file, which the system takes back from whoever dies, puts
//! them in a row.

use std::fs::{File, OpenOptions, TryLockError};
use std::io::ErrorKind;
use std::path::Path;
use std::time::{Duration, Instant};

use super::{Outcome, StoreFailure};

/// Longest wait: those before may copy and change a large store.
const LONGEST: Duration = Duration::from_mins(10);
/// Between two looks at the lock.
const PAUSE: Duration = Duration::from_millis(20);

/// The right to open a store's file, until it is dropped. The file of the lock stays: another may wait at it.
pub(super) struct Turn(
    #[expect(dead_code, reason = "the lock lasts as long as its file is open")] Option<File>,
);

impl Turn {
    /// Waits for those who are opening the same file.
    ///
    /// # Errors
    /// A folder that cannot be written; somebody who does not get ready.
    pub(super) async fn wait(store: &Path) -> Outcome<Self> {
        let file = beside(store)?;
        let begun = Instant::now();
        loop {
            match file.try_lock() {
                Ok(()) => return Ok(Self(Some(file))),
                // Some network file systems know no locks: there, SQLite's own have to do.
                Err(TryLockError::Error(error)) if error.kind() == ErrorKind::Unsupported => {
                    return Ok(Self(None));
                }
                Err(TryLockError::Error(error)) => return Err(error.into()),
                Err(TryLockError::WouldBlock) if begun.elapsed() > LONGEST => {
                    return Err(StoreFailure::Busy);
                }
                Err(TryLockError::WouldBlock) => tokio::time::sleep(PAUSE).await,
            }
        }
    }
}

fn beside(store: &Path) -> std::io::Result<File> {
    let mut name = store.as_os_str().to_owned();
    name.push(".lock");
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(false);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn the_second_waits_until_the_first_is_done() {
        let folder = tempfile::tempdir().unwrap();
        let store = folder.path().join("plans.sqlite");
        let first = Turn::wait(&store).await.unwrap();
        let second = tokio::time::timeout(PAUSE * 5, Turn::wait(&store)).await;
        assert!(second.is_err(), "it did not wait");
        drop(first);
        let second = tokio::time::timeout(LONGEST, Turn::wait(&store)).await;
        assert!(second.is_ok_and(|turn| turn.is_ok()));
    }
}
