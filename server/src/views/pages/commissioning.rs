//! The page of measurements: what was found, what it says of the pier, what would help; and a page for each way to measure.

pub mod choice;
pub mod heard;
pub mod measure;
pub mod remedy;
pub mod ways;

use askama::Template;
use stillground::figure::{Units, digits};
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{Commissioning, OF_SYMPTOMS, State};

use super::frame::Frame;
use super::panel::CautionView;
use crate::forms::commissioning::Wrong;
use crate::forms::sheet::Sheet;
use crate::planned::Planned;
use crate::views::proof::Proof;
use heard::Heard;
use measure::BoxView;
use remedy::RemedyView;
use ways::Way;

/// What a form brought.
#[derive(Default)]
pub struct Shown {
    /// What was typed, or found in a file.
    pub sheet: Sheet,
    /// What has to be put right.
    pub faults: Vec<Wrong>,
    /// What a file said.
    pub heard: Option<Heard>,
}

/// A measurement of the plan.
pub struct RowView {
    /// In words.
    pub words: String,
    /// Its list.
    pub list: &'static str,
    /// Its place there.
    pub row: usize,
}

/// A measurement that was entered in the record.
#[derive(Debug, Clone)]
pub struct EnteredView {
    /// Name of its entry.
    pub entry: String,
    /// In words.
    pub words: String,
    /// Who entered it, and when.
    pub by: String,
    /// What the plan foresees for it; empty where that is not known.
    pub foreseen: String,
    /// Whether the plan has it.
    pub taken: bool,
}

/// The page.
#[derive(Template)]
#[template(path = "pages/commissioning.html")]
pub struct CommissioningPage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// Whether the reader may change it.
    pub may_edit: bool,
    /// The revision.
    pub base: u32,
    /// Whether the pier stands already, whoever built it.
    pub stands: bool,
    /// What has to be put right.
    pub faults: Vec<Wrong>,
    /// The revision before a remedy or a measurement was taken.
    pub before: Option<u32>,
    /// The ways to measure.
    pub ways: [Way; 5],
    /// What was measured.
    pub rows: Vec<RowView>,
    /// What helpers entered.
    pub entered: Vec<EnteredView>,
    /// How it trembles: name, label, ticked.
    pub symptoms: Vec<(&'static str, &'static str, bool)>,
    /// How long and how far.
    pub boxes: Vec<BoxView>,
    /// What the measurements say.
    pub proof: Option<Proof>,
    /// Whether the plan has measurements that cannot be compared, since the ground is not known.
    pub needs_ground: bool,
    /// What would help.
    pub remedies: Vec<RemedyView>,
    /// What can hurt at that.
    pub cautions: Vec<CautionView>,
    /// The drawing of what was measured beside what was foreseen.
    pub drawing: Option<super::drawn::DrawingView>,
}

/// What a page is made from besides its frame.
pub struct Parts<'a> {
    /// Where the plan's pages stand.
    pub root: &'a str,
    /// Whether the reader may change it.
    pub may_edit: bool,
    /// The revision.
    pub base: u32,
    /// The revision before something was taken.
    pub before: Option<u32>,
    /// The plan.
    pub plan: &'a SitePlan,
    /// What was found; none where its answers contradict each other.
    pub planned: Option<&'a Planned>,
    /// What helpers entered.
    pub entered: Vec<EnteredView>,
    /// What a form brought.
    pub shown: &'a Shown,
}

impl CommissioningPage {
    /// The page of a plan.
    #[must_use]
    pub fn of(frame: Frame, parts: Parts<'_>) -> Self {
        let Parts { plan, planned, .. } = parts;
        let said = &plan.commissioning;
        let units = plan.units.unwrap_or_default();
        let proof = planned.and_then(|planned| Proof::of(&planned.brief, &planned.design));
        let ticks = &said.symptoms;
        let symptoms = [
            ("in_wind", "in the wind", ticks.in_wind),
            ("at_steps", "when somebody steps near it", ticks.at_steps),
            ("at_touch", "when it is touched", ticks.at_touch),
            ("at_slew", "when the mount slews", ticks.at_slew),
        ];
        Self {
            frame,
            root: parts.root.to_owned(),
            may_edit: parts.may_edit,
            base: parts.base,
            stands: plan.state == Some(State::Standing),
            faults: parts.shown.faults.clone(),
            before: parts.before,
            ways: Way::ALL,
            rows: rows(said, units),
            entered: parts.entered,
            symptoms: symptoms
                .map(|(name, label, ticked)| (name, label, ticked == Some(true)))
                .to_vec(),
            boxes: symptom_boxes(said, units, parts.shown),
            needs_ground: planned.is_some() && said.is_measured() && proof.is_none(),
            remedies: planned
                .map(|planned| remedy::lines(&planned.brief, &planned.design))
                .unwrap_or_default(),
            cautions: planned.map(cautions).unwrap_or_default(),
            drawing: planned
                .and_then(|planned| super::drawn::DrawingView::of("agreement", planned)),
            proof,
        }
    }
}

/// The boxes of how long it trembles and how far.
fn symptom_boxes(said: &Commissioning, units: Units, shown: &Shown) -> Vec<BoxView> {
    let values = [said.symptoms.lasts_s, said.symptoms.moves_arcsec];
    OF_SYMPTOMS
        .iter()
        .zip(values)
        .map(|(bound, value)| {
            let kept = value.map_or_else(String::new, digits);
            let typed = shown.sheet.text(bound.name).map_or(kept, str::to_owned);
            let mut faults = shown.faults.iter();
            let fault = faults.find(|(at, _)| *at == bound.name);
            BoxView::of(bound, units, typed, fault.map(|(_, said)| said.clone()))
        })
        .collect()
}

/// What can hurt whoever works on a pier that stands.
fn cautions(planned: &Planned) -> Vec<CautionView> {
    let cautions = planned.design.cautions.iter();
    cautions
        .filter(|caution| matches!(caution.id, "mend.unload" | "mend.undermine"))
        .map(CautionView::of)
        .collect()
}

fn rows(said: &Commissioning, units: Units) -> Vec<RowView> {
    let row = |list, row, words| RowView { words, list, row };
    let knocks = said.knocks.iter().enumerate();
    let leans = said.leans.iter().enumerate();
    let pulls = said.pulls.iter().enumerate();
    knocks
        .map(|(at, knock)| row("knocks", at, knock.says(units)))
        .chain(leans.map(|(at, lean)| row("leans", at, lean.says(units))))
        .chain(pulls.map(|(at, pull)| row("pulls", at, pull.says(units))))
        .collect()
}
