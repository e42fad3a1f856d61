//! One thing to look at or to measure, with what the plan expects and what follows from each finding.

use serde::Serialize;

use super::entry::{Entry, Kind, minutes_of};
use super::verdict::Verdict;
use crate::figure::{Unit, Units};
use crate::rules::calendar;
use crate::site_plan::commissioning::{Measurement, MeasurementKind};
use crate::source::Source;

/// One thing to look at or to measure.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Item {
    /// Stable name, unique in the plan, for instance `pit_depth` or `torque:3:2`.
    pub id: String,
    /// The task at which it is looked at.
    pub task: &'static str,
    /// What it is.
    pub title: String,
    /// What a finding begins with, the figure or the answer behind it.
    pub lead: String,
    /// What the plan expects, in words.
    pub expected: String,
    /// How to look, and where it stops the work: whole sentences; empty where there is nothing to say.
    pub how: String,
    /// What is asked.
    pub asks: Asks,
    /// Whether it proves the finished pier.
    pub proves: bool,
    /// Whether it must be there before its task is begun or ticked off.
    pub needed: Needed,
    /// Whether it is still asked for; otherwise only what was entered under an earlier version is judged by it.
    pub asked: bool,
    /// Where the limits come from.
    pub source: Source,
}

/// Whether an item must be there, and before what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Needed {
    /// It may be left out.
    No,
    /// Before its task is ticked off.
    BeforeTick,
    /// Before its task is begun: the task is held until then.
    BeforeWork,
}

/// What is asked.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Asks {
    /// A figure.
    Number {
        /// Its unit.
        unit: Unit,
        /// Least figure that can be meant.
        least: f64,
        /// Largest figure that can be meant.
        most: f64,
        /// An answer in place of a figure.
        none: Option<Answer>,
        /// What follows from a figure, lowest first; above the last band the last verdict holds.
        bands: Vec<Band>,
    },
    /// One of these answers.
    Choice(Vec<Answer>),
    /// Words.
    Text,
    /// A day, year-month-day, that must not lie before the day of the work.
    Day {
        /// What follows when it does.
        past: Verdict,
    },
    /// A day and a time of day on the site.
    Moment(Option<Moment>),
    /// A knock, a lean or a pull.
    Measurement {
        /// Which.
        kind: MeasurementKind,
        /// What follows from a swing's frequency with the load on, lowest first; empty where the fit alone says what follows.
        bands: Vec<Band>,
    },
}

/// A moment that must not come too soon after another.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Moment {
    /// The other item.
    pub after: String,
    /// Hours between them, at least.
    pub hours: f64,
    /// What follows when they are fewer.
    pub sooner: Verdict,
}

/// An answer in words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// Its name.
    pub key: &'static str,
    /// As it is shown.
    pub words: String,
    /// What follows from it.
    pub verdict: Verdict,
}

/// Figures up to a limit, and what follows from them.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Band {
    /// Up to this figure, itself included; none: without end.
    pub up_to: Option<f64>,
    /// What follows.
    pub verdict: Verdict,
}

/// The item that an entry speaks of.
pub fn item_of<'a>(entry: &Entry, items: &'a [Item]) -> Option<&'a Item> {
    items
        .iter()
        .find(|item| Some(item.id.as_str()) == entry.item.as_deref() && item.task == entry.task)
}

impl Answer {
    /// An answer as the plan has it, or from which nothing follows.
    pub fn fine(key: &'static str, words: impl Into<String>) -> Self {
        Self {
            key,
            words: words.into(),
            verdict: Verdict::Within,
        }
    }

    /// An answer from which something follows.
    pub fn then(key: &'static str, words: impl Into<String>, verdict: Verdict) -> Self {
        Self {
            key,
            words: words.into(),
            verdict,
        }
    }
}

impl Item {
    /// An item; its source is judgement until another is named.
    pub(super) fn new(
        id: impl Into<String>,
        task: &'static str,
        title: impl Into<String>,
        expected: impl Into<String>,
        asks: Asks,
    ) -> Self {
        let title = title.into();
        Self {
            id: id.into(),
            task,
            lead: title.clone(),
            title,
            expected: expected.into(),
            how: String::new(),
            asks,
            proves: false,
            needed: Needed::No,
            asked: true,
            source: Source::judgement("what a careful site looks at"),
        }
    }

    /// The same with how to look, and where it stops the work.
    pub(super) fn how(mut self, how: impl Into<String>) -> Self {
        self.how = how.into();
        self
    }

    /// The same, with other words before a finding.
    pub(super) fn lead(mut self, lead: impl Into<String>) -> Self {
        self.lead = lead.into();
        self
    }

    /// The same, as a proof of the finished pier.
    pub(super) fn proves(mut self) -> Self {
        self.proves = true;
        self
    }

    /// The same, which must be there before its task is ticked off.
    pub(super) fn needed(mut self) -> Self {
        self.needed = Needed::BeforeTick;
        self
    }

    /// The same, which must be there before its task is begun.
    pub(super) fn first(mut self) -> Self {
        self.needed = Needed::BeforeWork;
        self
    }

    /// The same, kept only for what was entered before.
    pub(super) fn no_longer_asked(mut self) -> Self {
        self.asked = false;
        self
    }

    /// The same, its limits from a source.
    pub(super) fn from(mut self, source: Source) -> Self {
        self.source = source;
        self
    }

    /// What was found, in words.
    pub fn found(&self, entry: &Entry, units: Units) -> String {
        let text = entry.text.as_deref().unwrap_or_default().trim();
        match (&self.asks, entry.value) {
            (Asks::Number { unit, .. }, Some(value)) => units.say(value, *unit),
            (
                Asks::Number {
                    none: Some(none), ..
                },
                None,
            ) if none.key == text => none.words.clone(),
            (Asks::Choice(answers), _) => answers
                .iter()
                .find(|answer| answer.key == text)
                .map_or_else(|| text.to_owned(), |answer| answer.words.clone()),
            (Asks::Moment(_), _) => text.replace('T', " "),
            (Asks::Measurement { .. }, _) => entry
                .measurement
                .as_ref()
                .map_or_else(String::new, |measurement| measurement.says(units)),
            _ => text.to_owned(),
        }
    }

    /// What follows from a measurement; `others` are the plan's other entries, for what is held against an earlier
    /// moment. None for what is no measurement of this item.
    pub fn judge(&self, entry: &Entry, others: &[&Entry], units: Units) -> Option<Verdict> {
        if entry.kind != Kind::Measured || entry.item.as_deref() != Some(self.id.as_str()) {
            return None;
        }
        let text = entry.text.as_deref().unwrap_or_default().trim();
        let verdict = match &self.asks {
            Asks::Number { bands, none, .. } => match entry.value {
                Some(value) => band(bands, value)?,
                None => none
                    .as_ref()
                    .filter(|none| none.key == text)?
                    .verdict
                    .clone(),
            },
            Asks::Choice(answers) => answers
                .iter()
                .find(|answer| answer.key == text)?
                .verdict
                .clone(),
            Asks::Text => Verdict::Within,
            Asks::Day { past } => {
                let day = entry.measured_at.as_deref().and_then(|at| at.get(..10));
                let left = day.and_then(|day| calendar::days_between(day, text));
                if left.is_some_and(|left| left < 0) {
                    past.clone()
                } else {
                    Verdict::Within
                }
            }
            Asks::Moment(after) => after
                .as_ref()
                .and_then(|after| too_soon(after, text, others))
                .unwrap_or(Verdict::Within),
            Asks::Measurement { bands, .. } => match entry.measurement.as_ref()? {
                Measurement::Knock(knock) if knock.with_mount && knock.mode != Some(2) => {
                    band(bands, knock.frequency_hz)?
                }
                _ => return None,
            },
        };
        let found = format!("{} {}", self.lead, self.found(entry, units));
        Some(verdict.about(found.trim_start()))
    }
}

fn band(bands: &[Band], value: f64) -> Option<Verdict> {
    let found = bands
        .iter()
        .find(|band| band.up_to.is_none_or(|most| value <= most + 1e-9));
    found.or(bands.last()).map(|band| band.verdict.clone())
}

/// The verdict when the last entry of the other moment lies fewer hours before this one.
fn too_soon(after: &Moment, text: &str, others: &[&Entry]) -> Option<Verdict> {
    let before = others
        .iter()
        .rev()
        .find(|other| other.item.as_deref() == Some(after.after.as_str()))?;
    let minutes = minutes_of(text)? - minutes_of(before.text.as_deref()?)?;
    ((minutes as f64) < after.hours * 60.0).then(|| after.sooner.clone())
}
