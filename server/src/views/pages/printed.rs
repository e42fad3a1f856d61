//! What is said first to whoever comes by the code of a printed sheet: whether it is superseded, and what changed.

use stillground::site_plan::prices::lines::LINES;
use stillground::site_plan::{Prices, SitePlan, State};

use super::record::figures;
use super::stale::answer;
use crate::forms::prices::{each, entry};
use crate::forms::questions;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::store::Saved;
use crate::views::words;

/// Tasks whose figures are compared, each kind once.
const COMPARED: [&str; 12] = [
    "set_out", "form", "pour", "cure", "backfill", "harden", "drill", "bond", "level", "torque",
    "floor", "wire",
];

/// A printed sheet.
#[derive(Debug, Clone)]
pub struct Printed {
    /// Its revision.
    pub revision: u32,
    /// When that was saved, in words; empty for the newest.
    pub saved: String,
    /// The revision that stands, when it is another.
    pub current: Option<u32>,
    /// Answers that changed.
    pub answers: Vec<Change>,
    /// Figures for the work that changed.
    pub figures: Vec<Change>,
    /// Prices that changed.
    pub prices: Vec<Change>,
}

/// Something that changed.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What.
    pub label: String,
    /// As it was on the sheet.
    pub was: String,
    /// As it is.
    pub is: String,
}

impl Printed {
    /// A sheet of the revision that stands.
    #[must_use]
    pub const fn newest(revision: u32) -> Self {
        Self {
            revision,
            saved: String::new(),
            current: None,
            answers: Vec::new(),
            figures: Vec::new(),
            prices: Vec::new(),
        }
    }

    /// A sheet of an older revision; `planned` is what was found then and now, where both hold together.
    #[must_use]
    pub fn superseded(
        old: &Saved,
        plan: &SitePlan,
        current: u32,
        planned: Option<(&Planned, &Planned)>,
    ) -> Self {
        Self {
            revision: old.revision,
            saved: words::moment(old.saved_at),
            current: Some(current),
            answers: answers(&old.plan, plan),
            figures: planned
                .map(|(then, now)| changed(then, now))
                .unwrap_or_default(),
            prices: prices(&old.plan.prices, &plan.prices),
        }
    }
}

/// The questions whose answers differ.
#[must_use]
pub fn answers(old: &SitePlan, new: &SitePlan) -> Vec<Change> {
    let questions = Step::ALL.into_iter().flat_map(questions::of);
    let change = |question: &'static crate::forms::question::Question| {
        let (was, is) = (answer(question, old), answer(question, new));
        (was != is).then(|| Change {
            label: question.words.label.to_owned(),
            was,
            is,
        })
    };
    questions
        .filter_map(change)
        .chain(measured(old, new))
        .collect()
}

/// What was measured, and whether the pier stands, where that differs.
fn measured(old: &SitePlan, new: &SitePlan) -> Vec<Change> {
    let units = new.units.unwrap_or_default();
    let [was, is] = [old, new].map(|plan| plan.commissioning.says(units));
    let gone = was.iter().filter(|said| !is.contains(said));
    let come = is.iter().filter(|said| !was.contains(said));
    let change = |was: String, is: String| Change {
        label: "Measured".to_owned(),
        was,
        is,
    };
    let none = || "not there".to_owned();
    let mut changes: Vec<Change> = Vec::new();
    let stands = |plan: &SitePlan| match plan.state {
        Some(State::Standing) => "it stands already",
        Some(State::Planned) | None => "it is planned",
    };
    if stands(old) != stands(new) {
        changes.push(Change {
            label: "The pier".to_owned(),
            was: stands(old).to_owned(),
            is: stands(new).to_owned(),
        });
    }
    changes.extend(gone.map(|said| change(said.clone(), none())));
    changes.extend(come.map(|said| change(none(), said.clone())));
    changes
}

fn prices(old: &Prices, new: &Prices) -> Vec<Change> {
    let say = |prices: &Prices, id: &str| match prices.of(id) {
        Some(price) => format!("{} {}", entry(price), each(&price.per)),
        None => "none".to_owned(),
    };
    let change = |label: &str, was: String, is: String| {
        (was != is).then(|| Change {
            label: label.to_owned(),
            was,
            is,
        })
    };
    let currency = |prices: &Prices| prices.currency.clone().unwrap_or_else(|| "none".to_owned());
    let lines = LINES
        .iter()
        .filter_map(|line| change(line.what, say(old, line.id), say(new, line.id)));
    change("Currency", currency(old), currency(new))
        .into_iter()
        .chain(lines)
        .collect()
}

/// The figures of the work that differ.
#[must_use]
pub fn changed(then: &Planned, now: &Planned) -> Vec<Change> {
    let mut changes: Vec<Change> = Vec::new();
    for task in COMPARED {
        let of = |planned: &Planned| figures::of(task, planned, now.brief.units);
        let (old, new) = (of(then), of(now));
        let added = new
            .iter()
            .filter(|(label, _)| old.iter().all(|(known, _)| known != label));
        let added: Vec<_> = added
            .map(|(label, _)| (*label, "not there".to_owned()))
            .collect();
        for (label, was) in old.into_iter().chain(added) {
            let is = new
                .iter()
                .find(|(known, _)| *known == label)
                .map_or_else(|| "no longer".to_owned(), |(_, figure)| figure.clone());
            let change = Change {
                label: label.to_owned(),
                was,
                is,
            };
            if change.was != change.is && !changes.contains(&change) {
                changes.push(change);
            }
        }
    }
    changes
}
