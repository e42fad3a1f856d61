//! Copies one after another in a folder: each a whole store that was read back, the oldest gone only after a good new one.

use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use jiff::Timestamp;

use super::file::remove;
use super::{Inventory, backup};
use crate::config::Database;
use crate::store::{Outcome, StoreFailure, private};

/// What a copy's name begins and ends with; between them stands the moment.
const ENDS: (&str, &str) = ("plans-", ".sqlite");
/// Where a copy of a store with damaged rows goes. It is one of no row, and a later one takes its place.
const DAMAGED: &str = "damaged.sqlite";
/// What was left of a copy that broke off is taken away after so long: another planner may be at its own.
const BROKEN_OFF: Duration = Duration::from_secs(6 * 3600);

/// A good copy that was made.
#[derive(Debug, Clone)]
pub struct Made {
    /// The file.
    pub file: PathBuf,
    /// What stands in it.
    pub held: Inventory,
    /// How many good ones there are now.
    pub kept: usize,
}

/// Makes one more copy, and lets the oldest go when there are more than `keep` good ones.
///
/// # Errors
/// No good copy could be made: then none goes. Or an old one could not be taken away.
pub async fn one_more(database: &Database, folder: &Path, keep: usize) -> Outcome<Made> {
    private::folder(folder)?;
    sweep(folder);
    let mut file = folder.join(name());
    if file.exists() {
        // One of this very second, of another planner or of one that ended just now.
        tokio::time::sleep(Duration::from_secs(1)).await;
        file = folder.join(name());
    }
    let (held, verified) = backup(database, &file).await?;
    if !verified.damaged.is_empty() {
        fs::rename(&file, folder.join(DAMAGED))?;
        return Err(StoreFailure::Damaged(format!(
            "{verified}; this copy is {DAMAGED}, and no older one went"
        )));
    }
    let mut good = copies(folder)?;
    let gone = good.len().saturating_sub(keep.max(1));
    for old in good.drain(..gone) {
        remove(&old)?;
    }
    Ok(Made {
        file,
        held,
        kept: good.len(),
    })
}

/// The name of a copy that is made now.
fn name() -> String {
    let moment = Timestamp::now().strftime("%Y%m%dT%H%M%SZ");
    format!("{}{moment}{}", ENDS.0, ENDS.1)
}

/// How long until the next copy is due, by the youngest that is there.
#[must_use]
pub fn until_due(folder: &Path, every: Duration) -> Duration {
    let youngest = copies(folder).ok().and_then(|good| good.last().cloned());
    let age = youngest
        .and_then(|file| fs::metadata(file).ok()?.modified().ok())
        .and_then(|made| SystemTime::now().duration_since(made).ok());
    age.map_or(Duration::ZERO, |age| every.saturating_sub(age))
}

/// The good copies, the oldest first. A file of another name is none of ours and stays.
fn copies(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let mut found: Vec<PathBuf> = fs::read_dir(folder)?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| {
            path.file_name()
                .and_then(OsStr::to_str)
                .is_some_and(is_ours)
        })
        .collect();
    found.sort_unstable();
    Ok(found)
}

fn is_ours(name: &str) -> bool {
    let moment = name
        .strip_prefix(ENDS.0)
        .and_then(|rest| rest.strip_suffix(ENDS.1));
    moment.is_some_and(|moment| {
        moment.len() == 16
            && moment.bytes().enumerate().all(|(i, byte)| match i {
                8 => byte == b'T',
                15 => byte == b'Z',
                _ => byte.is_ascii_digit(),
            })
    })
}

/// Takes away what was left of copies that broke off long ago.
fn sweep(folder: &Path) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for path in entries.filter_map(|entry| Some(entry.ok()?.path())) {
        let name = path.file_name().and_then(OsStr::to_str).unwrap_or_default();
        let whole = name.split(".part").next().unwrap_or_default();
        let is_old = || {
            let age = fs::metadata(&path).ok()?.modified().ok()?.elapsed().ok()?;
            Some(age > BROKEN_OFF)
        };
        if whole != name && is_ours(whole) && is_old() == Some(true) {
            let _ = remove(&path);
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn only_files_of_our_own_naming_are_ever_taken_away() {
        assert!(is_ours("plans-20270301T020304Z.sqlite"));
        for other in [
            "plans-2027-03-01.sqlite",
            "plans-20270301T020304Z.sqlite.part",
            "before-plans-20270301T020304Z.sqlite",
            "plans-2027030xT020304Z.sqlite",
            "plans-20270301T020304é.sqlite",
            "damaged.sqlite",
        ] {
            assert!(!is_ours(other), "{other}");
        }
    }
}
