//! The store's file on the disk: SQLite goes on writing to a file that was deleted or replaced, and nobody would find
//! what it wrote.

use std::path::{Path, PathBuf};

use super::{Outcome, StoreFailure};

/// A file, and which one it was when the store was opened.
#[derive(Debug, Clone)]
pub(super) struct StoreFile {
    path: PathBuf,
    mark: Mark,
}

/// Tells a file from another at the same place: device and number on Unix, nothing elsewhere, where an open file stays.
type Mark = (u64, u64);

impl StoreFile {
    pub(super) fn at(path: &Path) -> Outcome<Self> {
        Ok(Self {
            path: path.to_owned(),
            mark: mark(path)?,
        })
    }

    /// Nothing, as long as the file that was opened is still the one at its place.
    ///
    /// # Errors
    /// It was deleted, moved or replaced.
    pub(super) fn is_there(&self) -> Outcome<()> {
        match mark(&self.path) {
            Ok(mark) if mark == self.mark => Ok(()),
            _ => Err(StoreFailure::Gone(self.path.display().to_string())),
        }
    }
}

fn mark(path: &Path) -> std::io::Result<Mark> {
    let metadata = std::fs::metadata(path)?;
    #[cfg(unix)]
    let mark = (
        std::os::unix::fs::MetadataExt::dev(&metadata),
        std::os::unix::fs::MetadataExt::ino(&metadata),
    );
    #[cfg(not(unix))]
    let mark = (u64::from(metadata.is_file()), 0);
    Ok(mark)
}
