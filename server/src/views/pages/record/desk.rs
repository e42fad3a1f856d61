//! What lies before whoever fills in the helper's page.

use stillground::record::Board;

use super::log;
use crate::record::Record;
use crate::views::pages::record::Typed;

/// What the tasks are made from.
pub(super) struct Desk<'a> {
    pub(super) record: &'a Record,
    pub(super) board: &'a Board<'a>,
    pub(super) typed: &'a Typed<'a>,
    /// The day and the time of day in universal time, as `2027-04-19 14:30`.
    pub(super) now: &'a str,
}

impl Desk<'_> {
    /// The day.
    pub(super) fn today(&self) -> &str {
        self.now.split(' ').next().unwrap_or_default()
    }

    /// By whom an entry is, and when.
    pub(super) fn by(&self, id: &str, who: &str) -> String {
        log::by(
            who,
            self.record.kept.iter().find(|kept| kept.entry.id == id),
        )
    }
}
