//! The page of one way to measure: its drawing, how it is done, what can hurt, and where the figures are entered.

use askama::Template;
use stillground::figure::Units;
use stillground::record::{MEASURE, WALK};
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::{Bound, Measurement, MeasurementKind, State};

use super::choice::{ChoiceView, choices};
use super::ways::Way;
use super::{EnteredView, Shown};
use crate::forms::commissioning::{Wrong, boxes, range};
use crate::forms::record::box_of;
use crate::planned::Planned;
use crate::record::Record;
use crate::views::pages::drawn::DrawingView;
use crate::views::pages::frame::Frame;
use crate::views::pages::panel::CautionView;
use crate::views::pages::record::log;

/// A box.
#[derive(Debug, Clone)]
pub struct BoxView {
    /// Its name.
    pub name: &'static str,
    /// Its label.
    pub label: &'static str,
    /// Unit of a bare figure.
    pub unit: &'static str,
    /// What may stand in it.
    pub hint: String,
    /// What stands in it.
    pub typed: String,
    /// What is wrong with it.
    pub error: Option<String>,
}

/// An item of the record that is entered there: its task, box, title, what the plan foresees, unit.
#[derive(Debug, Clone)]
pub struct ItemView {
    /// Its task.
    pub task: &'static str,
    /// Name of its box.
    pub name: String,
    /// What is measured.
    pub title: String,
    /// What the plan foresees.
    pub expected: String,
    /// How to look.
    pub how: String,
    /// Unit of a bare figure.
    pub unit: &'static str,
    /// Answers to choose from; empty for a figure.
    pub answers: Vec<(&'static str, String)>,
}

/// The page.
#[derive(Template)]
#[template(path = "pages/measure.html")]
pub struct MeasurePage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// The plan's name in the store, under which the browser keeps what is not sent.
    pub plan_id: String,
    /// The way.
    pub way: Way,
    /// Whether the pier stands already, whoever built it.
    pub stands: bool,
    /// Whether the reader may change the plan.
    pub may_edit: bool,
    /// Whether the reader may enter into the record.
    pub may_record: bool,
    /// The revision.
    pub base: u32,
    /// A name for the form, so that it is kept once however often it is sent.
    pub form: String,
    /// Who entered something last in this browser.
    pub who: String,
    /// What was kept just now.
    pub notice: Option<&'static str>,
    /// What has to be put right.
    pub faults: Vec<Wrong>,
    /// What a file said.
    pub remarks: Vec<String>,
    /// Whether it said a figure.
    pub found: bool,
    /// What its other direction said, and the boxes filled with that.
    pub other: Option<(String, String)>,
    /// How it is done.
    pub steps: Vec<String>,
    /// What can hurt.
    pub cautions: Vec<CautionView>,
    /// Its drawing.
    pub drawing: Option<DrawingView>,
    /// Its boxes.
    pub boxes: Vec<BoxView>,
    /// What is chosen: direction, what is on the pier, which swing.
    pub choices: Vec<ChoiceView>,
    /// What is entered in the record by itself, by task.
    pub items: Vec<(&'static str, Vec<ItemView>)>,
    /// What was entered so far.
    pub entered: Vec<EnteredView>,
}

/// What a page is made from besides its frame.
pub struct Parts<'a> {
    /// Where the plan's pages stand.
    pub root: &'a str,
    /// The plan's name in the store.
    pub plan_id: &'a str,
    /// The way.
    pub way: Way,
    /// Whether the reader may change the plan, and enter into the record.
    pub may: [bool; 2],
    /// The revision.
    pub base: u32,
    /// A name for the form.
    pub form: String,
    /// Who entered something last.
    pub who: String,
    /// Whether something was kept just now.
    pub kept: bool,
    /// The plan.
    pub plan: &'a SitePlan,
    /// Its record; none where its answers contradict each other.
    pub record: Option<&'a Record>,
    /// What a form brought.
    pub shown: &'a Shown,
}

impl MeasurePage {
    /// The page of a way to measure a plan's pier.
    #[must_use]
    pub fn of(frame: Frame, parts: Parts<'_>) -> Self {
        let Parts {
            way,
            shown,
            plan,
            record,
            ..
        } = parts;
        let units = plan.units.unwrap_or_default();
        let planned = record.map(|record| record.planned.as_ref());
        Self {
            frame,
            root: parts.root.to_owned(),
            plan_id: parts.plan_id.to_owned(),
            way,
            stands: plan.state == Some(State::Standing),
            may_edit: parts.may[0],
            may_record: parts.may[1],
            base: parts.base,
            form: parts.form,
            who: parts.who,
            notice: parts
                .kept
                .then_some("It was kept. Whoever has the edit link takes it into the plan."),
            faults: shown.faults.clone(),
            remarks: shown
                .heard
                .as_ref()
                .map(|heard| heard.remarks.clone())
                .unwrap_or_default(),
            found: shown
                .heard
                .as_ref()
                .is_some_and(|heard| !heard.found.is_empty()),
            other: shown
                .heard
                .as_ref()
                .and_then(|heard| heard.other.as_ref())
                .map(|other| (other.words.clone(), other.query.clone())),
            steps: way.steps(units, plan.state == Some(State::Standing)),
            cautions: planned
                .map(|planned| cautions(way, planned))
                .unwrap_or_default(),
            drawing: planned.and_then(|planned| DrawingView::of(way.drawing(), planned)),
            boxes: way
                .kind()
                .map(|kind| box_views(kind, units, shown))
                .unwrap_or_default(),
            choices: way
                .kind()
                .map(|kind| choices(kind, shown))
                .unwrap_or_default(),
            items: record.map(|record| items(way, record)).unwrap_or_default(),
            entered: record
                .map(|record| entered(record, plan))
                .unwrap_or_default()
                .into_iter()
                .filter(|(of, _)| way.kind() == Some(of.kind()))
                .map(|(_, view)| view)
                .collect(),
        }
    }
}

fn cautions(way: Way, planned: &Planned) -> Vec<CautionView> {
    let cautions = planned.design.cautions.iter();
    cautions
        .filter(|caution| caution.id == way.caution())
        .map(CautionView::of)
        .collect()
}

fn box_views(kind: MeasurementKind, units: Units, shown: &Shown) -> Vec<BoxView> {
    let is_sent = shown.sheet.text("what") == Some(kind.key());
    boxes(kind)
        .map(|bound| {
            let typed = shown.sheet.text(bound.name).filter(|_| is_sent);
            let mut faults = shown.faults.iter();
            let fault = faults.find(|(at, _)| is_sent && *at == bound.name);
            let typed = typed.unwrap_or_default().to_owned();
            BoxView::of(bound, units, typed, fault.map(|(_, said)| said.clone()))
        })
        .collect()
}

impl BoxView {
    /// The box of a number.
    #[must_use]
    pub fn of(bound: &Bound, units: Units, typed: String, error: Option<String>) -> Self {
        Self {
            name: bound.name,
            label: bound.asks,
            unit: units.convert(1.0, bound.unit).1,
            hint: range(bound, units),
            typed,
            error,
        }
    }
}

/// What is entered as single figures: the walk's trail, or how level plate and column stand.
fn items(way: Way, record: &Record) -> Vec<(&'static str, Vec<ItemView>)> {
    let tasks: &[&'static str] = match way {
        Way::Walk => &[MEASURE],
        Way::Level => &["level", "floor", MEASURE],
        Way::Knock | Way::Lean | Way::Pull => &[],
    };
    let units = record.planned.brief.units;
    // A walk is measured of the finished pier, and so is all that is looked at on a pier that stood already.
    let is_ours = |item: &&stillground::record::Item| {
        (item.task != MEASURE || (item.id == WALK) == (way == Way::Walk))
            && item.asked
            && item.proves
            && !matches!(item.asks, stillground::record::Asks::Measurement { .. })
    };
    let view = |item: &stillground::record::Item| {
        let (unit, answers) = match &item.asks {
            stillground::record::Asks::Number { unit, .. } => {
                (units.convert(1.0, *unit).1, Vec::new())
            }
            stillground::record::Asks::Choice(answers) => {
                let pairs = answers.iter();
                (
                    "",
                    pairs
                        .map(|answer| (answer.key, answer.words.clone()))
                        .collect(),
                )
            }
            _ => ("", Vec::new()),
        };
        ItemView {
            task: item.task,
            name: box_of(&item.id),
            title: item.title.clone(),
            expected: item.expected.clone(),
            how: item.how.clone(),
            unit,
            answers,
        }
    };
    tasks
        .iter()
        .map(|task| {
            let of_task = record.items.iter().filter(|item| item.task == *task);
            (*task, of_task.filter(is_ours).map(view).collect())
        })
        .filter(|(_, items): &(_, Vec<ItemView>)| !items.is_empty())
        .collect()
}

/// The measurements in the record, each with what it is of. What was corrected since is left out.
#[must_use]
pub fn entered(record: &Record, plan: &SitePlan) -> Vec<(Measurement, EnteredView)> {
    let board = record.board();
    let units = record.planned.brief.units;
    let view = |reading: &stillground::record::Reading<'_>| {
        let design = &record.planned.design;
        let measurement = stillground::record::taking::measurement(reading.entry, design)?;
        let kept = record
            .kept
            .iter()
            .find(|kept| kept.entry.id == reading.entry.id);
        let mut said = plan.commissioning.clone();
        let view = EnteredView {
            entry: reading.entry.id.clone(),
            words: measurement.says(units),
            by: log::by(&reading.entry.who, kept),
            foreseen: reading
                .item
                .map(|item| item.expected.clone())
                .unwrap_or_default(),
            taken: !measurement.put(&mut said),
        };
        Some((measurement, view))
    };
    board
        .readings
        .iter()
        .filter(|reading| reading.counts())
        .filter_map(view)
        .collect()
}
