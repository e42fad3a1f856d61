//! A step's page: questions for those who may edit, answers for those who may only look.

use axum::extract::{Query, State};
use axum::response::Html;
use serde::Deserialize;

use super::contradictory::{contradictions, planned};
use super::place::Place;
use super::plan;
use crate::app::App;
use crate::error::Trouble;
use crate::forms::questions;
use crate::forms::reading::Fault;
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::views::pages::answer;
use crate::views::pages::answers::AnswersPage;
use crate::views::pages::field::Desk;
use crate::views::pages::side::Side;
use crate::views::pages::step::{FaultView, FloorPlan, StepPage, TopicView, intro};

/// What a redirect tells the page it leads to.
#[derive(Deserialize)]
pub struct Said {
    saved: Option<String>,
    /// Revision on the sheet whose code led here.
    rev: Option<String>,
    /// Revision before a way to build it was taken.
    before: Option<u32>,
    /// The question that is changed from the list of all answers.
    change: Option<String>,
}

/// Shows a step, or the plan.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Query(said): Query<Said>,
) -> Result<Html<String>, Trouble> {
    let step = place.step.ok_or_else(Trouble::nothing_here)?;
    if step == Step::Plan {
        let printed = said.rev.and_then(|rev| rev.parse().ok());
        return plan::show(&app, &place, printed, said.before).await;
    }
    let of_here = |saved: &str| saved == "yes" || saved.split('-').next() == Some(step.slug());
    let notice = said.saved.filter(|saved| of_here(saved)).map(|_| "Saved.");
    let planned = planned(&app, &place.plan).await?;
    if !place.right.may_edit() {
        let panel = Side::of(step, planned.as_deref());
        return answer(&AnswersPage::of(
            place.frame(step.title()),
            step,
            &place.root,
            &place.plan,
            planned.as_deref(),
            panel,
        ));
    }
    // A plan that was designed does not contradict itself.
    let faults = match planned {
        Some(_) => Vec::new(),
        None => contradictions(&place.plan),
    };
    let (mut sheet, base) = (Sheet::of(step, &place.plan), place.revision);
    if let Some(change) = said.change {
        sheet.put(CHANGE, change);
    }
    answer(&page(
        &place,
        step,
        &Shown {
            sheet: &sheet,
            faults: &faults,
            planned: planned.as_deref(),
            base,
            notice,
            typed: false,
        },
    ))
}

/// The question that the list of all answers sent the reader to, as the form carries it.
const CHANGE: &str = "change";

/// The same, where it is a question of this step.
pub fn changed(step: Step, sheet: &Sheet) -> Option<&'static str> {
    let (of, question) = questions::about(sheet.text(CHANGE)?)?;
    (of == step).then(|| question.path.as_str())
}

/// What a step's page is filled with.
pub struct Shown<'a> {
    /// What the boxes hold.
    pub sheet: &'a Sheet,
    /// What has to be put right.
    pub faults: &'a [Fault],
    /// The design, where there is one.
    pub planned: Option<&'a Planned>,
    /// The revision that the answers began from.
    pub base: u32,
    /// What was done.
    pub notice: Option<&'static str>,
    /// Whether the boxes hold what was sent and is not kept.
    pub typed: bool,
}

/// The page of a step.
pub fn page(place: &Place, step: Step, shown: &Shown<'_>) -> StepPage {
    let units = match shown.sheet.text("shown_in") {
        Some("imperial") => stillground::figure::Units::Imperial,
        Some("metric") => stillground::figure::Units::Metric,
        _ => place.plan.units.unwrap_or_default(),
    };
    let desk = Desk {
        sheet: shown.sheet,
        faults: shown.faults,
        planned: shown.planned,
        units,
    };
    let change = changed(step, shown.sheet);
    StepPage {
        change,
        frame: place.frame(step.title()),
        title: step.title(),
        slug: step.slug(),
        typed: shown.typed,
        intro: intro(step),
        action: format!("{}/{}", place.root, step.slug()),
        next: step.next(),
        faults: shown
            .faults
            .iter()
            .map(|fault| FaultView::of(fault, step, &place.root))
            .collect(),
        keep: elsewhere(step, shown.faults),
        base: shown.base,
        shown_in: if units == stillground::figure::Units::Imperial {
            "imperial"
        } else {
            "metric"
        },
        climate: place.climate(step),
        house: place.house(step),
        notice: shown.notice,
        topics: TopicView::all(step, &desk, &place.plan, change),
        panel: Side::of(step, shown.planned),
        floor: shown
            .planned
            .and_then(|planned| FloorPlan::of(step, planned, units)),
    }
}

/// The other step of a contradiction, when nothing else is wrong.
pub fn elsewhere(step: Step, faults: &[Fault]) -> Option<Step> {
    let other = |fault: &Fault| {
        fault
            .fields
            .iter()
            .filter_map(|field| questions::about(field))
            .map(|(of, _)| of)
            .find(|of| *of != step)
    };
    let others: Vec<Option<Step>> = faults.iter().map(other).collect();
    others
        .iter()
        .all(Option::is_some)
        .then(|| others.first().copied().flatten())
        .flatten()
}
