//! Somebody saved in between: both versions stand side by side, and the person chooses.

use askama::Template;

use super::frame::Frame;
use crate::forms::question::{Kind, Question};
use crate::forms::questions;
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use stillground::site_plan::SitePlan;

/// The page.
#[derive(Template)]
#[template(path = "pages/stale.html")]
pub struct StalePage {
    /// The frame.
    pub frame: Frame,
    /// Where the choice is sent.
    pub action: String,
    /// The step.
    pub step: Step,
    /// The revision that stands now.
    pub current: u32,
    /// When it was saved.
    pub saved_at: String,
    /// Units in which the answers are shown.
    pub shown_in: &'static str,
    /// Answers that differ.
    pub differences: Vec<Difference>,
    /// The answers of the one who came second, as they were typed.
    pub carried: Vec<(String, String)>,
}

/// An answer that differs.
#[derive(Debug, Clone)]
pub struct Difference {
    /// Name in the form.
    pub path: &'static str,
    /// What is asked.
    pub label: &'static str,
    /// The answer that stands.
    pub theirs: String,
    /// The answer that came second.
    pub mine: String,
    /// Whether the second is the one that changed it.
    pub keep_mine: bool,
}

/// Answers of a step in which two plans differ; `base` is the one that both began from.
#[must_use]
pub fn differences(
    step: Step,
    base: &SitePlan,
    mine: &SitePlan,
    theirs: &SitePlan,
) -> Vec<Difference> {
    let difference = |question: &'static Question| {
        let [old, mine, theirs] = [base, mine, theirs].map(|plan| answer(question, plan));
        (mine != theirs).then(|| Difference {
            path: question.path.as_str(),
            label: question.words.label,
            keep_mine: mine != old,
            theirs,
            mine,
        })
    };
    questions::of(step).filter_map(difference).collect()
}

/// An answer in words.
#[must_use]
pub fn answer(question: &'static Question, plan: &SitePlan) -> String {
    let units = plan.units.unwrap_or_default();
    let said = match &question.kind {
        Kind::Number => question
            .number()
            .and_then(|field| Some(units.say((field.get)(plan)?, field.unit))),
        Kind::Choice { answers, get, .. } => get(plan)
            .and_then(|key| answers.iter().find(|(known, _)| *known == key))
            .map(|(_, words)| (*words).to_owned()),
        Kind::Table { get, .. } => get(plan).map(|rows| crate::forms::table::write(&rows)),
        Kind::Text { get, .. } => get(plan).cloned(),
        Kind::Stands => plan.floor.stands.as_ref().map(|stands| {
            let say = |value, unit| units.say(value, unit);
            let one = |stand: &stillground::site_plan::Stand| {
                use stillground::figure::Unit::{Kilogram, Metre};
                format!(
                    "{} ({} east, {} north, {})",
                    stand.name,
                    say(stand.x_m, Metre),
                    say(stand.y_m, Metre),
                    say(stand.mass_kg, Kilogram)
                )
            };
            none_or(stands.iter().map(one).collect())
        }),
        Kind::Points { get, .. } => get(plan).map(|points| {
            use stillground::figure::Unit::Metre;
            none_or(
                points
                    .iter()
                    .map(|[x, y]| {
                        format!(
                            "{} east, {} north",
                            units.say(*x, Metre),
                            units.say(*y, Metre)
                        )
                    })
                    .collect(),
            )
        }),
    };
    said.unwrap_or_else(|| "not known".to_owned())
}

fn none_or(list: Vec<String>) -> String {
    if list.is_empty() {
        "none".to_owned()
    } else {
        list.join("; ")
    }
}

/// What is carried to the next page: the sheet without what the page writes itself.
#[must_use]
pub fn carried(sheet: &Sheet) -> Vec<(String, String)> {
    let own = |name: &str| {
        matches!(name, "base" | "go" | "shown_in" | "keep") || name.starts_with("keep~")
    };
    sheet
        .pairs()
        .filter(|(name, _)| !own(name))
        .map(|(name, text)| (name.to_owned(), text.to_owned()))
        .collect()
}
