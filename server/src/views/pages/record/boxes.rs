//! The boxes of a task: what is asked, what the plan expects, what was found so far.

use stillground::record::{Asks, Item};

use super::desk::Desk;
use super::log::verdict;
use super::means::{self, Meaning};
use crate::forms::record::box_of;
use crate::forms::sheet::Sheet;

/// A box.
#[derive(Debug, Clone)]
pub struct BoxView {
    /// Its name in the form.
    pub name: String,
    /// Its name on the page.
    pub id: String,
    /// What is measured.
    pub title: String,
    /// What the plan expects.
    pub expected: String,
    /// How to look; empty where the box before says the same.
    pub how: String,
    /// What each finding would mean; empty where the box before says the same.
    pub means: Vec<Meaning>,
    /// `number`, `choice`, `text`, `date` or `datetime-local`; `page` where it is entered on a page of its own.
    pub kind: &'static str,
    /// The page on which it is entered; empty where it is entered here.
    pub way: &'static str,
    /// Unit of a bare figure.
    pub unit: &'static str,
    /// Answers to choose from: name, words, whether it is chosen.
    pub options: Vec<(&'static str, String, bool)>,
    /// The answer in place of a figure, and whether it is ticked.
    pub none: Option<(String, bool)>,
    /// What is typed.
    pub typed: String,
    /// What is wrong with it.
    pub error: Option<String>,
    /// Readings of an ambiguous text: what to write, and how it reads.
    pub readings: Vec<(String, String)>,
    /// What was found so far, the last one last.
    pub found: Vec<FoundView>,
    /// Name of the last entry, which a correction supersedes.
    pub last: Option<String>,
}

/// What was found.
#[derive(Debug, Clone)]
pub struct FoundView {
    /// The figure or answer.
    pub found: String,
    /// What follows, in words.
    pub verdict: &'static str,
    /// By whom and when.
    pub by: String,
}

/// The boxes of a task.
pub(super) fn boxes(desk: &Desk<'_>, task: &str, sheet: Option<&Sheet>) -> Vec<BoxView> {
    let mut views: Vec<BoxView> = Vec::new();
    let mut before = "";
    let mut meant: Vec<Meaning> = Vec::new();
    let asked = |item: &&Item| item.task == task && item.asked;
    for item in desk.record.items.iter().filter(asked) {
        let mut view = one(desk, item, sheet);
        if item.how == before {
            view.how = String::new();
        }
        before = &item.how;
        if view.means == meant {
            view.means.clear();
        } else {
            meant.clone_from(&view.means);
        }
        views.push(view);
    }
    views
}

fn one(desk: &Desk<'_>, item: &Item, sheet: Option<&Sheet>) -> BoxView {
    let name = box_of(&item.id);
    let typed = sheet
        .and_then(|sheet| sheet.text(&name))
        .unwrap_or_default()
        .to_owned();
    let fault = sheet.and_then(|_| desk.typed.faults.iter().find(|fault| fault.name == name));
    let units = desk.record.planned.brief.units;
    let (kind, unit, options, none) = match &item.asks {
        Asks::Number { unit, none, .. } => {
            let ticked = sheet.is_some_and(|sheet| sheet.ticked(&format!("{name}~none")));
            (
                "number",
                units.convert(1.0, *unit).1,
                Vec::new(),
                none.as_ref().map(|none| (none.words.clone(), ticked)),
            )
        }
        Asks::Choice(answers) => {
            let option = |answer: &stillground::record::Answer| {
                (answer.key, answer.words.clone(), answer.key == typed)
            };
            ("choice", "", answers.iter().map(option).collect(), None)
        }
        Asks::Text => ("text", "", Vec::new(), None),
        Asks::Day { .. } => ("date", "", Vec::new(), None),
        Asks::Moment(_) => ("datetime-local", "", Vec::new(), None),
        Asks::Measurement { .. } => ("page", "", Vec::new(), None),
    };
    let found = found(desk, item);
    BoxView {
        id: format!("{}-{}", item.task, item.id.replace(':', "-")),
        title: item.title.clone(),
        expected: item.expected.clone(),
        how: item.how.clone(),
        means: means::of(item, units),
        error: fault.map(|fault| fault.said.clone()),
        readings: fault
            .map(|fault| fault.readings.clone())
            .unwrap_or_default(),
        last: desk
            .board
            .readings
            .iter()
            .rev()
            .find(|reading| reading.counts() && speaks(reading, item))
            .map(|reading| reading.entry.id.clone()),
        name,
        way: match &item.asks {
            Asks::Measurement { kind, .. } => kind.key(),
            _ => "",
        },
        kind,
        unit,
        options,
        none,
        typed,
        found,
    }
}

fn found(desk: &Desk<'_>, item: &Item) -> Vec<FoundView> {
    let units = desk.record.planned.brief.units;
    let readings = desk
        .board
        .readings
        .iter()
        .filter(|reading| reading.counts() && speaks(reading, item));
    let view = |reading: &stillground::record::Reading<'_>| FoundView {
        found: item.found(reading.entry, units),
        verdict: verdict(reading.verdict.as_ref(), reading.ended_by.is_some()),
        by: desk.by(&reading.entry.id, &reading.entry.who),
    };
    readings.map(view).collect()
}

fn speaks(reading: &stillground::record::Reading<'_>, item: &Item) -> bool {
    reading
        .item
        .is_some_and(|known| known.id == item.id && known.task == item.task)
}
