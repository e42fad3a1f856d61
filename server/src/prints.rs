//! Prints that were made, kept by all that they depend on.

use axum::body::Bytes;
use moka::sync::Cache;

use crate::views::pdf::{Built, Paper};

/// Which print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Print {
    /// The site set.
    Plan,
    /// Everything that can be checked.
    File,
    /// The drilling template.
    Template,
}

/// Prints that are kept, so that one that is asked for again, or only for its head, is not made again. Cheap to clone.
#[derive(Clone)]
pub struct Prints(pub Cache<Printed, Bytes>);

/// Most bytes of prints that are kept.
const MOST_KEPT: u64 = 24 * 1024 * 1024;

/// All that a print depends on besides the settings, which stay as they are while the service runs.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Printed {
    /// Which print.
    pub which: Print,
    /// Its paper.
    pub paper: Paper,
    /// The plan, by its digest.
    pub plan: [u8; 32],
    /// Whether what would help is in it.
    pub improved: bool,
    /// The revision it names.
    pub revision: Option<i64>,
    /// The day it names.
    pub date: Option<String>,
    /// The addresses on it.
    pub links: [Option<String>; 2],
    /// How the pier was built, as the record has it.
    pub built: Vec<Built>,
}

impl Default for Prints {
    fn default() -> Self {
        let weight = |_: &Printed, print: &Bytes| u32::try_from(print.len()).unwrap_or(u32::MAX);
        Self(
            Cache::builder()
                .max_capacity(MOST_KEPT)
                .weigher(weight)
                .build(),
        )
    }
}
