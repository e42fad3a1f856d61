//! `stillground backup FILE` and `stillground restore FILE`.

use std::path::Path;

use super::{Failure, block_on, say};
use crate::config::Config;
use crate::store::archive;

/// Writes a copy of the store; the service may go on meanwhile.
pub(super) fn backup(config: &Config, file: &Path) -> Result<(), Failure> {
    let held = block_on(archive::backup(&config.database, file))?.map_err(Failure::fault)?;
    say(format_args!("{}: {held}", file.display()))
}

/// Puts a copy in the store's place.
pub(super) fn restore(config: &Config, file: &Path, force: bool) -> Result<(), Failure> {
    use crate::store::StoreFailure::Exists;
    let restored = block_on(archive::restore(&config.database, file, force))?;
    let (held, aside) = restored.map_err(|failure| match failure {
        Exists(store) => {
            Failure::fault(format!("{store} is already there; --force puts the backup in its place and keeps the old one beside it"))
        }
        failure => Failure::fault(format!("{}: {failure}", file.display())),
    })?;
    say(format_args!("{held} restored"))?;
    aside.map_or(Ok(()), |aside| {
        say(format_args!(
            "the store that was there is now {}",
            aside.display()
        ))
    })
}
