//! `stillground backup FILE` and `stillground restore FILE`.

use std::path::Path;

use super::serve::told_to_stop;
use super::{Failure, block_on, say};
use crate::config::{Config, Copying};
use crate::copies::Copies;
use crate::journal;
use crate::store::archive;
use crate::store::verify::Verified;

/// Writes a copy of the store; the service may go on meanwhile.
pub(super) fn backup(config: &Config, file: &Path) -> Result<(), Failure> {
    let (held, verified) =
        block_on(archive::backup(&config.database, file))?.map_err(Failure::fault)?;
    say(format_args!("{}: {held}", file.display()))?;
    sound(&verified)
}

/// Writes one copy after another until it is told to stop. The first has to be made; of later ones that are not, the log
/// and the exit status tell.
pub(super) fn copies(config: Config, copying: Copying) -> Result<(), Failure> {
    journal::start(config.json_log);
    let copies = Copies::default();
    block_on(async {
        let first = copies.one(&config.database, &copying).await;
        let made = first.map_err(Failure::fault)?;
        say(format_args!("{}: {}", made.file.display(), made.held))?;
        let going_on = copies.clone().for_ever(config.database, copying);
        tokio::select! { () = going_on => {}, () = told_to_stop() => {} }
        copies.told().failed.map_or(Ok(()), |failed| {
            Err(Failure::fault(format!("the last copy failed: {failed}")))
        })
    })?
}

/// Reads everything in the store, or in a copy, and says what is damaged.
pub(super) fn verify(config: &Config, file: Option<&Path>) -> Result<(), Failure> {
    let verified = block_on(async {
        match file {
            Some(file) => archive::verify_file(file).await,
            None => archive::verify(&config.database).await,
        }
    })?
    .map_err(Failure::fault)?;
    sound(&verified)?;
    say(verified)
}

/// Damage is a failure, whatever else went well, and each damaged row has a line of its own.
fn sound(verified: &Verified) -> Result<(), Failure> {
    if verified.damaged.is_empty() {
        return Ok(());
    }
    for what in &verified.damaged {
        say(format_args!("damaged: {what}"))?;
    }
    Err(Failure::fault(format!(
        "{} of what was kept is damaged; all else was read and is sound",
        verified.damaged.len()
    )))
}

/// Puts a copy in the store's place.
pub(super) fn restore(
    config: &Config,
    file: &Path,
    force: bool,
    damaged_too: bool,
) -> Result<(), Failure> {
    use crate::store::StoreFailure::Exists;
    let restored = block_on(archive::restore(&config.database, file, force, damaged_too))?;
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
