//! The entries read in the order in which they were received: which count, what follows from each, which stops stand.

use super::entry::{Entry, Kind};
use super::item::{Item, item_of};
use super::verdict::Verdict;
use crate::figure::Units;

/// An entry, and what became of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading<'a> {
    /// The entry.
    pub entry: &'a Entry,
    /// The item that it measures, when the plan still asks for it.
    pub item: Option<&'a Item>,
    /// What follows from it; none for what is no measurement.
    pub verdict: Option<Verdict>,
    /// The entry that took its place.
    pub superseded_by: Option<&'a str>,
    /// The entry that ended the stop: a decision, or a better measurement.
    pub ended_by: Option<&'a str>,
}

impl Reading<'_> {
    /// Whether it is a stop that nobody has ended.
    pub fn stands(&self) -> bool {
        self.counts()
            && self.ended_by.is_none()
            && self.verdict.as_ref().is_some_and(Verdict::is_stop)
    }

    /// Whether nothing took its place.
    pub const fn counts(&self) -> bool {
        self.superseded_by.is_none()
    }
}

/// Reads the entries, which stand in the order in which they were received.
pub fn readings<'a>(entries: &'a [Entry], items: &'a [Item], units: Units) -> Vec<Reading<'a>> {
    let mut readings: Vec<Reading<'a>> = Vec::with_capacity(entries.len());
    for (place, entry) in entries.iter().enumerate() {
        let item =
            item_of(entry, items).filter(|_| !matches!(entry.kind, Kind::Here | Kind::Missing));
        let superseded_by = superseding(entry, &entries[place + 1..]);
        readings.push(Reading {
            entry,
            item,
            verdict: None,
            superseded_by,
            ended_by: None,
        });
    }
    let counted: Vec<&Entry> = readings
        .iter()
        .filter(|reading| reading.counts())
        .map(|reading| reading.entry)
        .collect();
    for reading in &mut readings {
        reading.verdict = reading
            .item
            .and_then(|item| item.judge(reading.entry, &counted, units));
    }
    let ends: Vec<Option<&'a str>> = (0..readings.len())
        .map(|place| ended_by(&readings, place))
        .collect();
    for (reading, end) in readings.iter_mut().zip(ends) {
        reading.ended_by = end;
    }
    readings
}

/// The later entry of the same kind about the same thing that names this one as what it corrects.
fn superseding<'a>(entry: &Entry, later: &'a [Entry]) -> Option<&'a str> {
    let corrects = |other: &&Entry| {
        other.supersedes.as_deref() == Some(entry.id.as_str())
            && other.task == entry.task
            && other.kind == entry.kind
            && other.item == entry.item
    };
    later.iter().find(corrects).map(|other| other.id.as_str())
}

fn ended_by<'a>(readings: &[Reading<'a>], place: usize) -> Option<&'a str> {
    let stop = &readings[place];
    let Some(Verdict::Stop { lasting, .. }) = &stop.verdict else {
        return None;
    };
    let ends = |later: &&Reading<'a>| {
        let decided = later.entry.kind == Kind::Decided
            && later.entry.decides.as_deref() == Some(stop.entry.id.as_str());
        let better = !lasting
            && later.entry.item == stop.entry.item
            && later.entry.task == stop.entry.task
            && later
                .verdict
                .as_ref()
                .is_some_and(|verdict| !verdict.is_stop());
        later.counts() && (decided || better)
    };
    readings[place + 1..]
        .iter()
        .find(ends)
        .map(|later| later.entry.id.as_str())
}
