//! The plan itself: for the customer, the digger, the driller, and whoever checks the figures.

use askama::Template;
use stillground::design::Design;
use stillground::figure::Units;

use super::beside::Beside;
use super::field;
use super::figures::{self, FigureLine};
use super::frame::Frame;
use super::number::Number;
use super::panel::{CautionView, CheckView};
use super::step::FaultView;
use super::summary;
use super::words;
use super::working::WorkingView;
use crate::app::Planned;
use crate::drawing;
use crate::forms::questions;
use crate::forms::step::Step;
use crate::views::svg;

/// The plan's page.
#[derive(Template)]
#[template(path = "pages/plan.html")]
pub struct PlanPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages and files stand.
    pub root: String,
    /// Whether it is the built-in example.
    pub example: bool,
    /// Revision, date, engine.
    pub marks: Marks,
    /// Contradictions, when nothing can be worked out.
    pub faults: Vec<FaultView>,
    /// What was found; none when the answers contradict each other.
    pub body: Option<PlanBody>,
}

/// What says which plan this is.
#[derive(Debug, Clone)]
pub struct Marks {
    /// The revision.
    pub revision: String,
    /// When it was saved.
    pub saved: String,
    /// Version of the engine.
    pub engine: &'static str,
}

/// The plan's parts.
pub struct PlanBody {
    /// In a customer's words.
    pub summary: Vec<String>,
    /// Drawings: name, title, SVG.
    pub drawings: Vec<DrawingView>,
    /// What stands beside the figures.
    pub beside: Beside,
    /// Whether the schedule has days of the calendar.
    pub dated: bool,
    /// Checks.
    pub checks: Vec<CheckView>,
    /// Figures by step.
    pub figures: Vec<(&'static str, Vec<FigureLine>)>,
    /// What was taken.
    pub assumptions: Vec<AssumptionView>,
    /// What to order.
    pub materials: Vec<MaterialView>,
    /// What to do.
    pub schedule: Vec<TaskView>,
    /// What can hurt, by part of the work.
    pub cautions: Vec<(&'static str, Vec<CautionView>)>,
    /// How the figures were found.
    pub workings: Vec<WorkingView>,
}

/// A drawing on the page.
#[derive(Debug, Clone)]
pub struct DrawingView {
    /// Its name.
    pub name: &'static str,
    /// Its title.
    pub title: String,
    /// The drawing.
    pub svg: String,
}

/// Something taken because it was not known.
#[derive(Debug, Clone)]
pub struct AssumptionView {
    /// The question.
    pub label: String,
    /// Address of the question.
    pub href: Option<String>,
    /// What was taken.
    pub value: String,
    /// Why.
    pub why: String,
    /// What it changes.
    pub effect: String,
    /// Where it comes from.
    pub source: String,
}

/// A line of the order.
#[derive(Debug, Clone)]
pub struct MaterialView {
    /// What.
    pub item: String,
    /// How much.
    pub quantity: Number,
    /// What for.
    pub purpose: String,
    /// Waste, stock length, hire.
    pub note: String,
}

/// A task.
#[derive(Debug, Clone)]
pub struct TaskView {
    /// What is done.
    pub title: String,
    /// When it may start.
    pub earliest: String,
    /// How long it takes.
    pub lasts: String,
    /// Whether it is a wait.
    pub wait: bool,
    /// Why then and so long.
    pub why: String,
}

impl PlanBody {
    /// The parts of a planned plan; `root` is the address below which its steps stand.
    #[must_use]
    pub fn of(planned: &Planned, root: &str) -> Self {
        let (design, units) = (&planned.design, planned.brief.units);
        let figures = Step::ALL.into_iter().map(|step| (step.title(), figures::of(step, design, units)));
        Self {
            summary: summary::of(planned),
            drawings: drawings(planned),
            beside: Beside::of(planned),
            dated: planned.brief.work.start_date.is_some(),
            checks: design.checks.iter().map(|check| CheckView::of(check, planned)).collect(),
            figures: figures.filter(|(_, lines)| !lines.is_empty()).collect(),
            assumptions: assumptions(design, units, root),
            materials: materials(design, units),
            schedule: schedule(design, units),
            cautions: cautions(design),
            workings: design.workings.iter().map(|working| WorkingView::of(working, units)).collect(),
        }
    }
}

fn drawings(planned: &Planned) -> Vec<DrawingView> {
    let drawn = drawing::NAMES.iter().filter_map(|name| drawing::by_name(name, &planned.brief, &planned.design));
    drawn.map(|drawing| DrawingView { name: drawing.name, title: drawing.title.clone(), svg: svg::write(&drawing) }).collect()
}

fn assumptions(design: &Design, units: Units, root: &str) -> Vec<AssumptionView> {
    let view = |taken: &stillground::notes::Assumption| {
        let about = questions::about(taken.field);
        AssumptionView {
            label: about.map_or_else(|| taken.field.to_owned(), |(_, question)| question.label.to_owned()),
            href: about.map(|(step, _)| format!("{root}/{}#{}", step.slug(), field::id(taken.field))),
            value: field::value_words(taken, units),
            why: words::sentence(&taken.why),
            effect: words::sentence(&taken.effect),
            source: taken.source.to_string(),
        }
    };
    design.assumptions.iter().map(view).collect()
}

fn materials(design: &Design, units: Units) -> Vec<MaterialView> {
    let view = |material: &stillground::stages::materials::Material| MaterialView {
        item: material.item.clone(),
        quantity: Number::of(Some(material.quantity), material.unit, units),
        purpose: material.purpose.clone(),
        note: material.note.clone(),
    };
    design.materials.iter().map(view).collect()
}

fn schedule(design: &Design, units: Units) -> Vec<TaskView> {
    let view = |task: &stillground::stages::schedule::Task| TaskView {
        title: task.title.clone(),
        earliest: task.earliest.clone(),
        lasts: lasting(task.lasts_h, units),
        wait: task.wait,
        why: task.why.clone(),
    };
    design.schedule.iter().map(view).collect()
}

/// A length of time in the unit that one would say it in.
fn lasting(hours: f64, units: Units) -> String {
    use stillground::figure::Unit::{Day, Hour, Minute};
    match hours {
        hours if hours < 1.0 => units.say(hours * 60.0, Minute),
        hours if hours < 48.0 => units.say(hours, Hour),
        hours => units.say(hours / 24.0, Day),
    }
}

fn cautions(design: &Design) -> Vec<(&'static str, Vec<CautionView>)> {
    let of = |when| design.cautions.iter().filter(|caution| caution.when == when).map(CautionView::of).collect::<Vec<_>>();
    words::WHENS.into_iter().map(|when| (words::when(when), of(when))).filter(|(_, cautions)| !cautions.is_empty()).collect()
}
