//! Copies that are made now and then while the planner runs.

use std::num::NonZeroUsize;
use std::path::PathBuf;
use std::time::Duration;

use super::Settings;
use super::read::{self, Reading};

/// How often a copy is made, and how many are kept, when nothing else is said.
const USUAL: (Duration, usize) = (Duration::from_secs(24 * 3600), 14);

/// Where copies go, how often one is made, and how many are kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Copying {
    /// The folder.
    pub folder: PathBuf,
    /// From one to the next.
    pub every: Duration,
    /// Good ones that stay; the oldest go when there are more.
    pub keep: usize,
}

impl Copying {
    pub(super) fn read(reading: &mut Reading, settings: &Settings) -> Option<Self> {
        let every = reading.optional(
            "STILLGROUND_COPIES_EVERY",
            settings.copies_every.as_deref(),
            read::stretch,
        );
        let keep = reading.optional(
            "STILLGROUND_COPIES_KEPT",
            settings.copies_kept.as_deref(),
            read::copies,
        );
        let folder = settings
            .copies
            .clone()
            .filter(|folder| !folder.as_os_str().is_empty());
        if folder.is_none() && (every.is_some() || keep.is_some()) {
            let said = "no copies are made without a folder: name one in STILLGROUND_COPIES";
            let name = if every.is_some() {
                "STILLGROUND_COPIES_EVERY"
            } else {
                "STILLGROUND_COPIES_KEPT"
            };
            let _: Option<()> = reading.take(name, Err(said.to_owned()));
        }
        Some(Self {
            folder: folder?,
            every: every.unwrap_or(USUAL.0),
            keep: keep.map_or(USUAL.1, NonZeroUsize::get),
        })
    }
}
