//! The plan's first page, and what its chapters are filled with.

use askama::Template;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::notes::{Question, When};

use super::beside::Beside;
use super::deeper;
use super::drawn::DrawingView;
use super::field;
use super::figures::{self, FigureLine};
use super::frame::Frame;
use super::number::Number;
use super::panel::{CautionView, CheckView};
use super::printed::Printed;
use super::short::Short;
use super::step::FaultView;
use super::working::{self, Group};
use crate::drawing;
use crate::forms::chapter::Chapter;
use crate::forms::questions;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::views::engineer::{self, Checking};
use crate::views::money;
use crate::views::proof::Proof;
use crate::views::words;

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
    /// What to say of the sheet whose code led here.
    pub printed: Option<Printed>,
    /// Entries in the record of the work.
    pub entered: usize,
    /// What a way to build it or a change that was just taken made of the revision before it.
    pub made: Option<Printed>,
    /// The plan in short; none when the answers contradict each other.
    pub body: Option<Short>,
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
    /// Version with which the plan was saved, where it is another.
    pub saved_with: Option<String>,
}

/// What the chapters are filled with.
pub struct PlanBody {
    /// Drawings: name, title, SVG.
    pub drawings: Vec<DrawingView>,
    /// Drawings of what the star does.
    pub star: Vec<DrawingView>,
    /// What was measured beside what was foreseen.
    pub agreement: Option<DrawingView>,
    /// The map of the floor as planned, and as this pier was measured.
    pub maps: Vec<DrawingView>,
    /// What stands beside the figures.
    pub beside: Beside,
    /// Subjects that lie deeper, by chapter, each with its name on the page.
    pub subjects: Vec<(Chapter, Subject)>,
    /// Whether the schedule has days of the calendar.
    pub dated: bool,
    /// Checks by the question that they answer.
    pub checks: Vec<(&'static str, Vec<CheckView>)>,
    /// Figures by step.
    pub figures: Vec<(&'static str, Vec<FigureLine>)>,
    /// What was taken.
    pub assumptions: Vec<AssumptionView>,
    /// Why nothing is to be ordered yet; none where the ground is known.
    pub judge_first: Option<&'static str>,
    /// What to order.
    pub materials: Vec<MaterialView>,
    /// What it comes to, and what has to be said beside it; none without a price.
    pub cost: Option<(String, Vec<String>)>,
    /// What to do.
    pub schedule: Vec<TaskView>,
    /// What can hurt, by part of the work.
    pub cautions: Vec<CautionsView>,
    /// How the figures were found.
    pub workings: Vec<Group>,
    /// The studs for the checking engineer; none without studs.
    pub engineer: Option<Checking>,
    /// What was measured of the finished pier, and what it says.
    pub proof: Option<Proof>,
}

/// The cautions of a part of the work.
pub struct CautionsView {
    /// Name of the part on the page.
    pub part: &'static str,
    /// Heading.
    pub title: &'static str,
    /// The cautions.
    pub cautions: Vec<CautionView>,
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
    /// The part of the work whose cautions it shares; none where there are none.
    pub cautions: Option<&'static str>,
}

/// A subject of a chapter: its name in an address, its title, what is said.
pub type Subject = (&'static str, &'static str, Vec<deeper::Chapter>);

impl PlanBody {
    /// The subjects of a chapter.
    #[must_use]
    pub fn of_chapter(&self, chapter: Chapter) -> Vec<&Subject> {
        let ours = self.subjects.iter().filter(|(of, _)| *of == chapter);
        ours.map(|(_, subject)| subject).collect()
    }

    /// The parts of a planned plan; `root` is the address below which its steps stand.
    #[must_use]
    pub fn of(planned: &Planned, root: &str) -> Self {
        let (design, units) = (&planned.design, planned.brief.units);
        let figures = Step::ALL
            .into_iter()
            .map(|step| (step.title(), figures::of(step, planned, units)));
        Self {
            drawings: drawings(planned, Chapter::Drawings),
            star: drawings(planned, Chapter::Stillness),
            agreement: DrawingView::of("agreement", planned),
            maps: ["tilt-map", "tilt-map-pier"]
                .into_iter()
                .filter_map(|name| DrawingView::of(name, planned))
                .collect(),
            beside: Beside::of(planned),
            subjects: subjects(planned),
            dated: planned.brief.work.start_date.is_some(),
            checks: checks(planned),
            figures: figures.filter(|(_, lines)| !lines.is_empty()).collect(),
            assumptions: assumptions(design, units, root),
            judge_first: design
                .ground
                .ask_an_engineer
                .is_some()
                .then_some(words::JUDGE_FIRST),
            materials: materials(design, units),
            cost: (!design.costs.is_empty()).then(|| {
                (
                    money::amount(&design.costs, design.costs.total),
                    money::remarks(design),
                )
            }),
            schedule: schedule(design, units),
            cautions: cautions(design),
            workings: working::groups(&design.workings, units),
            engineer: engineer::checking(&planned.brief, design),
            proof: Proof::of(&planned.brief, design),
        }
    }
}

/// Checks under the question that they answer.
fn checks(planned: &Planned) -> Vec<(&'static str, Vec<CheckView>)> {
    let of = |question| {
        let checks = planned.design.checks.iter();
        checks
            .filter(|check| check.question == question)
            .map(|check| CheckView::of(check, planned))
            .collect()
    };
    [
        ("Build it?", of(Question::Build)),
        ("Still when left alone?", of(Question::Still)),
    ]
    .into_iter()
    .filter(|(_, checks): &(_, Vec<CheckView>)| !checks.is_empty())
    .collect()
}

fn subjects(planned: &Planned) -> Vec<(Chapter, Subject)> {
    let (motion, units) = (&planned.design.motion, planned.brief.units);
    let all = [
        (
            Chapter::Days,
            ("north", "True north on the day", deeper::north(planned)),
        ),
        (
            Chapter::Stillness,
            ("star", "The star", deeper::star(motion, units)),
        ),
        (
            Chapter::Stillness,
            ("people", "People on the floor", deeper::people(planned)),
        ),
        (
            Chapter::Stillness,
            (
                "hold",
                "The ground and the block",
                deeper::of(Step::Footing, planned),
            ),
        ),
        (
            Chapter::Studs,
            (
                "nuts",
                "Tightening the nuts",
                deeper::of(Step::Anchors, planned),
            ),
        ),
        (
            Chapter::Studs,
            (
                "codes",
                "The studs by both codes, and the torque of 180",
                deeper::shown(Step::Anchors, planned),
            ),
        ),
    ];
    all.into_iter()
        .filter(|(_, (_, _, said))| !said.is_empty())
        .collect()
}

fn drawings(planned: &Planned, chapter: Chapter) -> Vec<DrawingView> {
    drawing::NAMES
        .iter()
        .filter(|name| Chapter::with_drawing(name) == chapter)
        .filter_map(|name| DrawingView::of(name, planned))
        .collect()
}

fn assumptions(design: &Design, units: Units, root: &str) -> Vec<AssumptionView> {
    let view = |taken: &stillground::notes::Assumption| {
        let about = questions::about(&taken.field);
        AssumptionView {
            label: questions::label(&taken.field).to_owned(),
            href: about
                .map(|(step, _)| format!("{root}/{}#{}", step.slug(), field::id(&taken.field))),
            value: questions::answer_words(taken, units),
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
        note: [
            material.note.clone(),
            money::lengths_sentence(&design.costs, material),
        ]
        .into_iter()
        .filter(|said| !said.is_empty())
        .collect::<Vec<_>>()
        .join(". "),
    };
    design.materials.iter().map(view).collect()
}

fn schedule(design: &Design, units: Units) -> Vec<TaskView> {
    let view = |task: &stillground::stages::schedule::Task| TaskView {
        title: task.title.clone(),
        earliest: task.earliest.clone(),
        lasts: words::lasting(task.lasts_h, units),
        wait: task.wait,
        why: task.why.clone(),
        cautions: design
            .cautions
            .iter()
            .any(|caution| caution.when == task.part)
            .then(|| words::part(task.part)),
    };
    design.schedule.iter().map(view).collect()
}

fn cautions(design: &Design) -> Vec<CautionsView> {
    let of = |when| {
        design
            .cautions
            .iter()
            .filter(|caution| caution.when == when)
            .map(CautionView::of)
            .collect()
    };
    let view = |when| CautionsView {
        part: words::part(when),
        title: words::when(when),
        cautions: of(when),
    };
    // Those for whoever measures stand where it is done, in the site set and on the sheet of proof.
    words::WHENS
        .into_iter()
        .filter(|when| *when != When::Measuring)
        .map(view)
        .filter(|view| !view.cautions.is_empty())
        .collect()
}
