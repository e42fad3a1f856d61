//! Files and folders that only their owner may read.

use std::fs::{DirBuilder, OpenOptions};
use std::io::{ErrorKind, Result};
use std::path::Path;

/// Makes an empty file; one that is there is left as it is.
pub(super) fn file(path: &Path) -> Result<()> {
    match new_file(path) {
        Err(error) if error.kind() == ErrorKind::AlreadyExists => Ok(()),
        made => made,
    }
}

/// Makes an empty file; one that is there is an error.
pub(super) fn new_file(path: &Path) -> Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path).map(drop)
}

/// Makes a folder, and those above it; one that is there is left as it is.
pub(super) fn folder(path: &Path) -> Result<()> {
    let mut builder = DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(path)
}
