//! An entry of the record, as it was written on the site.

use serde::{Deserialize, Serialize};

use crate::rules::calendar;
use crate::site_plan::commissioning::Measurement;
use crate::stages::schedule::MEASURE;

/// The item of a walk.
pub const WALK: &str = "walk";
/// A decision about a task names it so: that a wait counts as over, or that a task may be ticked off as it is.
pub const TASK_PREFIX: &str = "task:";
/// Longest name of whoever entered something, in characters.
pub const LONGEST_NAME: usize = 100;
/// Longest text, in characters.
pub const LONGEST_TEXT: usize = 2000;
/// Longest name of an entry, in letters, digits and `- _ . :`.
pub const LONGEST_ID: usize = 64;

crate::field::choice! {
    /// What an entry is.
    pub enum Kind {
        /// A task was done.
        Done = "done";
        /// A task that was ticked off is not done after all.
        Reopened = "reopened";
        /// Something was looked at or measured.
        Measured = "measured";
        /// Something to remember.
        Note = "note";
        /// Whoever answers for the plan decided on a stop.
        Decided = "decided";
        /// A photograph, kept under the entry's own name.
        Photo = "photo";
        /// A line of the materials is there.
        Here = "here";
        /// A line of the materials is not there after all.
        Missing = "missing";
    }
}

/// An entry. It is never changed; a correction is a new entry that supersedes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// Its name, made by whoever entered it and unique within the plan: sent twice, it is kept once.
    pub id: String,
    /// Revision of the plan that they had before them.
    pub revision: u32,
    /// The task.
    pub task: String,
    /// What it is.
    pub kind: Kind,
    /// What was measured, or the line of the materials that is there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub item: Option<String>,
    /// The figure, in the item's metric unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// An answer's name, a day, a moment, or words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
    /// A knock, a lean or a pull, which takes more than one figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measurement: Option<Measurement>,
    /// Who entered it.
    pub who: String,
    /// When it was done or measured, as the sender's clock says (RFC 3339); none: when it was received.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured_at: Option<String>,
    /// The entry that this one corrects.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supersedes: Option<String>,
    /// The stop that this decision ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decides: Option<String>,
}

impl Entry {
    /// An entry of a kind, with nothing else said.
    pub fn new(id: &str, task: &str, kind: Kind) -> Self {
        Self {
            id: id.to_owned(),
            revision: 1,
            task: task.to_owned(),
            kind,
            item: None,
            value: None,
            text: None,
            measurement: None,
            who: "somebody".to_owned(),
            measured_at: None,
            supersedes: None,
            decides: None,
        }
    }

    /// A measured figure.
    pub fn measured(id: &str, task: &str, item: &str, value: f64) -> Self {
        Self {
            item: Some(item.to_owned()),
            value: Some(value),
            ..Self::new(id, task, Kind::Measured)
        }
    }

    /// A knock, a lean or a pull of the finished pier.
    pub fn of_pier(id: &str, measurement: Measurement) -> Self {
        Self {
            item: Some(measurement.kind().key().to_owned()),
            measurement: Some(measurement),
            ..Self::new(id, MEASURE, Kind::Measured)
        }
    }

    /// An answer in words.
    pub fn answered(id: &str, task: &str, item: &str, text: &str) -> Self {
        Self {
            item: Some(item.to_owned()),
            text: Some(text.to_owned()),
            ..Self::new(id, task, Kind::Measured)
        }
    }
}

/// The moment so many minutes after the start of the year 1900, written `2027-04-19 14:30`.
pub(super) fn moment_of(minutes: i64) -> Option<String> {
    let day = calendar::days_after("1900-01-01", minutes.div_euclid(24 * 60))?;
    let left = minutes.rem_euclid(24 * 60);
    Some(format!("{day} {:02}:{:02}", left / 60, left % 60))
}

/// Minutes of a moment written `2027-04-19T14:30` or with a space, counted from the start of the year 1900.
pub(super) fn minutes_of(text: &str) -> Option<i64> {
    let (day, time) = text.trim().split_once(['T', ' '])?;
    let days = calendar::days_between("1900-01-01", day)?;
    let (hour, minute) = time.split_once(':')?;
    let number = |text: &str, most: i64| {
        text.parse()
            .ok()
            .filter(|value| (0..=most).contains(value) && text.len() == 2)
    };
    Some((days * 24 + number(hour, 23)?) * 60 + number(minute.get(..2)?, 59)?)
}
