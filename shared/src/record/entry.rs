//! An entry of the record, as it was written on the site.

use serde::{Deserialize, Serialize};

use super::item::{Asks, Item};
use crate::rules::calendar;
use crate::stages::schedule::Task;

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
        Done = "done",
        /// A task that was ticked off is not done after all.
        Reopened = "reopened",
        /// Something was looked at or measured.
        Measured = "measured",
        /// Something to remember.
        Note = "note",
        /// Whoever answers for the plan decided on a stop.
        Decided = "decided",
        /// A photograph, kept under the entry's own name.
        Photo = "photo",
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
    /// What was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub item: Option<String>,
    /// The figure, in the item's metric unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// An answer's name, a day, a moment, or words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
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

/// Something wrong with an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Name of the member.
    pub field: &'static str,
    /// What is wrong and what would be right, a whole sentence.
    pub said: String,
}

impl Entry {
    /// An entry of a kind, with nothing else said.
    #[must_use]
    pub fn new(id: &str, task: &str, kind: Kind) -> Self {
        Self {
            id: id.to_owned(),
            revision: 1,
            task: task.to_owned(),
            kind,
            item: None,
            value: None,
            text: None,
            who: "somebody".to_owned(),
            measured_at: None,
            supersedes: None,
            decides: None,
        }
    }

    /// A measured figure.
    #[must_use]
    pub fn measured(id: &str, task: &str, item: &str, value: f64) -> Self {
        Self { item: Some(item.to_owned()), value: Some(value), ..Self::new(id, task, Kind::Measured) }
    }

    /// An answer in words.
    #[must_use]
    pub fn answered(id: &str, task: &str, item: &str, text: &str) -> Self {
        Self { item: Some(item.to_owned()), text: Some(text.to_owned()), ..Self::new(id, task, Kind::Measured) }
    }

    /// Everything that is wrong with it, held against the plan's tasks and items; empty when it may be kept.
    #[must_use]
    pub fn faults(&self, tasks: &[Task], items: &[Item]) -> Vec<Fault> {
        let mut faults = Vec::new();
        let mut add = |field, said: String| faults.push(Fault { field, said });
        if !is_name(&self.id) {
            add("id", format!("The entry's name takes 1 to {LONGEST_ID} letters, digits, and - _ . : between them."));
        }
        if !tasks.iter().any(|task| task.id == self.task) {
            add("task", "The plan as it stands has no such task.".to_owned());
        }
        if self.who.trim().is_empty() {
            add("who", "Say who enters this: a name or initials.".to_owned());
        } else if self.who.chars().count() > LONGEST_NAME || self.who.chars().any(char::is_control) {
            add("who", format!("The name is longer than {LONGEST_NAME} characters, or has signs that are no letters; initials will do."));
        }
        if let Some(text) = &self.text
            && (text.chars().count() > LONGEST_TEXT || text.chars().any(|c| c.is_control() && !matches!(c, '\n' | '\r' | '\t')))
        {
            add("text", format!("The text is longer than {LONGEST_TEXT} characters, or has signs that are no letters."));
        }
        for (field, name) in [("supersedes", &self.supersedes), ("decides", &self.decides)] {
            if name.as_deref().is_some_and(|name| !is_name(name)) {
                add(field, "This is no name of an entry.".to_owned());
            }
        }
        match self.kind {
            Kind::Measured => faults.extend(self.unlike(items)),
            Kind::Note if self.text.as_deref().is_none_or(|text| text.trim().is_empty()) => {
                faults.push(Fault { field: "text", said: "A note needs its words.".to_owned() });
            }
            Kind::Decided if self.decides.is_none() || self.text.as_deref().is_none_or(|text| text.trim().is_empty()) => {
                faults.push(Fault { field: "text", said: "A decision names the stop that it ends, and says what was decided.".to_owned() });
            }
            _ => {}
        }
        faults
    }

    /// What a measurement lacks of what its item asks for.
    fn unlike(&self, items: &[Item]) -> Option<Fault> {
        let fault = |field, said: String| Some(Fault { field, said });
        let Some(item) = super::item_of(self, items) else {
            return fault("item", "The plan as it stands asks for no such measurement at this task.".to_owned());
        };
        let text = self.text.as_deref().unwrap_or_default().trim();
        match &item.asks {
            Asks::Number { none: Some(none), .. } if self.value.is_none() && text == none.key => None,
            Asks::Number { least, most, .. } => match self.value {
                Some(value) if value.is_finite() && (*least..=*most).contains(&value) => None,
                Some(_) => fault("value", format!("{} cannot be this: look at the figure and its unit again.", item.title)),
                None => fault("value", format!("{}: the figure is missing.", item.title)),
            },
            Asks::Choice(answers) if answers.iter().any(|answer| answer.key == text) => None,
            Asks::Choice(_) => fault("text", format!("{}: none of the answers was chosen.", item.title)),
            Asks::Text if !text.is_empty() => None,
            Asks::Text => fault("text", format!("{}: the words are missing.", item.title)),
            Asks::Day { .. } if calendar::days_after(text, 0).is_some() => None,
            Asks::Day { .. } => fault("text", format!("{}: write the day as year, month and day, 2027-04-19.", item.title)),
            Asks::Moment(_) if minutes_of(text).is_some() => None,
            Asks::Moment(_) => fault("text", format!("{}: write day and time as 2027-04-19 14:30.", item.title)),
        }
    }
}

/// Whether a text may name an entry.
fn is_name(text: &str) -> bool {
    (1..=LONGEST_ID).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_' | b'.' | b':'))
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
    let number = |text: &str, most: i64| text.parse().ok().filter(|value| (0..=most).contains(value) && text.len() == 2);
    Some((days * 24 + number(hour, 23)?) * 60 + number(minute.get(..2)?, 59)?)
}
