//! What is wrong with an entry, held against the plan's tasks and items.

use super::entry::{Entry, Kind, LONGEST_ID, LONGEST_NAME, LONGEST_TEXT, minutes_of};
use super::item::{Asks, Item, item_of};
use crate::rules::calendar;
use crate::site_plan::commissioning::MeasurementKind;
use crate::stages::materials::Material;
use crate::stages::schedule::MEASURE;
use crate::stages::schedule::Task;
use crate::text::{unfit, unfit_lines};

/// Something wrong with an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Name of the member.
    pub field: &'static str,
    /// What is wrong and what would be right, a whole sentence.
    pub said: String,
}

impl Entry {
    /// Everything that is wrong with it, held against the plan's tasks, items and materials; empty when it may be kept.
    pub fn faults(&self, tasks: &[Task], items: &[Item], materials: &[Material]) -> Vec<Fault> {
        let mut faults = self.word_faults();
        if !tasks.iter().any(|task| task.id == self.task) && self.task != MEASURE {
            faults.push(Fault {
                field: "task",
                said: "The plan as it stands has no such task.".to_owned(),
            });
        }
        match self.kind {
            Kind::Measured => faults.extend(self.unlike(items)),
            Kind::Here | Kind::Missing
                if !materials
                    .iter()
                    .any(|line| Some(line.id) == self.item.as_deref()) =>
            {
                faults.push(Fault {
                    field: "item",
                    said: "The plan's materials have no such line.".to_owned(),
                });
            }
            Kind::Note
                if self
                    .text
                    .as_deref()
                    .is_none_or(|text| text.trim().is_empty()) =>
            {
                faults.push(Fault {
                    field: "text",
                    said: "A note needs its words.".to_owned(),
                });
            }
            Kind::Decided
                if self.decides.is_none()
                    || self
                        .text
                        .as_deref()
                        .is_none_or(|text| text.trim().is_empty()) =>
            {
                faults.push(Fault {
                    field: "text",
                    said: "A decision names the stop that it ends, and says what was decided."
                        .to_owned(),
                });
            }
            _ => {}
        }
        faults
    }

    /// What is wrong with its names and words, whatever the plan; empty when nothing is.
    pub fn word_faults(&self) -> Vec<Fault> {
        let mut faults = Vec::new();
        let mut add = |field, said: String| faults.push(Fault { field, said });
        if !is_name(&self.id) {
            add(
                "id",
                format!(
                    "The entry's name takes 1 to {LONGEST_ID} letters, digits, and - _ . : between them."
                ),
            );
        }
        if self.who.trim().is_empty() {
            add("who", "Say who enters this: a name or initials.".to_owned());
        } else if self.who.chars().count() > LONGEST_NAME || unfit(&self.who).is_some() {
            add(
                "who",
                format!(
                    "The name is longer than {LONGEST_NAME} characters, or has signs that are no letters; initials will do."
                ),
            );
        }
        if let Some(text) = &self.text
            && (text.chars().count() > LONGEST_TEXT || unfit_lines(text).is_some())
        {
            add(
                "text",
                format!(
                    "The text is longer than {LONGEST_TEXT} characters, or has signs that are no letters."
                ),
            );
        }
        for (field, name) in [("supersedes", &self.supersedes), ("decides", &self.decides)] {
            if name.as_deref().is_some_and(|name| !is_name(name)) {
                add(field, "This is no name of an entry.".to_owned());
            }
        }
        faults
    }

    /// What is wrong with a knock, a lean or a pull.
    fn mismeasured(&self, item: &Item, kind: MeasurementKind) -> Option<Fault> {
        let said = match &self.measurement {
            Some(measurement) if measurement.kind() == kind => {
                measurement.problems().into_iter().next()?.said
            }
            _ => format!("{}: its figures are missing.", item.title),
        };
        Some(Fault {
            field: "measurement",
            said,
        })
    }

    /// What a measurement lacks of what its item asks for.
    fn unlike(&self, items: &[Item]) -> Option<Fault> {
        let fault = |field, said: String| Some(Fault { field, said });
        let Some(item) = item_of(self, items) else {
            return fault(
                "item",
                "The plan as it stands asks for no such measurement at this task.".to_owned(),
            );
        };
        if self.measurement.is_some() && !matches!(item.asks, Asks::Measurement { .. }) {
            return fault(
                "measurement",
                format!("{} takes no such figures.", item.title),
            );
        }
        let text = self.text.as_deref().unwrap_or_default().trim();
        match &item.asks {
            Asks::Measurement { kind, .. } => self.mismeasured(item, *kind),
            Asks::Number {
                none: Some(none), ..
            } if self.value.is_none() && text == none.key => None,
            Asks::Number { least, most, .. } => match self.value {
                Some(value) if value.is_finite() && (*least..=*most).contains(&value) => None,
                Some(_) => fault(
                    "value",
                    format!(
                        "{} cannot be this: look at the figure and its unit again.",
                        item.title
                    ),
                ),
                None => fault("value", format!("{}: the figure is missing.", item.title)),
            },
            Asks::Choice(answers) if answers.iter().any(|answer| answer.key == text) => None,
            Asks::Choice(_) => fault(
                "text",
                format!("{}: none of the answers was chosen.", item.title),
            ),
            Asks::Text if !text.is_empty() => None,
            Asks::Text => fault("text", format!("{}: the words are missing.", item.title)),
            Asks::Day { .. } if calendar::days_after(text, 0).is_some() => None,
            Asks::Day { .. } => fault(
                "text",
                format!(
                    "{}: write the day as year, month and day, 2027-04-19.",
                    item.title
                ),
            ),
            Asks::Moment(_) if minutes_of(text).is_some() => None,
            Asks::Moment(_) => fault(
                "text",
                format!("{}: write day and time as 2027-04-19 14:30.", item.title),
            ),
        }
    }
}

/// Whether a text may name an entry.
fn is_name(text: &str) -> bool {
    (1..=LONGEST_ID).contains(&text.len())
        && text
            .bytes()
            .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_' | b'.' | b':'))
}
