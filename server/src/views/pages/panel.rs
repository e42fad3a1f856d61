//! The panel beside a step's questions: what is decided, what it does to stillness, what is next.

use askama::Template;
use stillground::design::Design;
use stillground::field::Path;
use stillground::figure::Units;
use stillground::notes::{Caution, Check, Question, Stage, Verdict, When};

use super::deeper::{self, Chapter};
use super::drawn::DrawingView;
use super::figures::{self, FigureLine};
use super::number::Number;
use super::remarks::{self, Remark};
use crate::forms;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::views::{caution_lines, verdict, words};

/// The panel.
#[derive(Template)]
#[template(path = "pages/panel.html")]
pub struct Panel {
    /// What is wrong with the answers together, when nothing can be worked out.
    pub stopped: bool,
    /// The drawing.
    pub drawing: Option<DrawingView>,
    /// Further drawings of the step, which a chapter has: address and title.
    pub further: Vec<(String, String)>,
    /// What the engine says of the step's subject in words.
    pub remarks: Vec<Remark>,
    /// The figures that the step moves.
    pub figures: Vec<FigureLine>,
    /// Checks that it moves and that say yes.
    pub held: usize,
    /// The others that it moves.
    pub checks: Vec<CheckView>,
    /// What is explained in any case.
    pub shown: Vec<Chapter>,
    /// What lies deeper.
    pub chapters: Vec<Chapter>,
    /// What it does to the star.
    pub stillness: Vec<FigureLine>,
    /// What is next: questions of this step that most people can answer and nobody has, address and label.
    pub unanswered: Vec<(String, &'static str)>,
    /// Checks of building elsewhere in the plan that say no or ask, each with its answer.
    pub failing: Vec<String>,
}

/// A check in words.
#[derive(Debug, Clone)]
pub struct CheckView {
    /// What is checked.
    pub title: String,
    /// The verdict in words.
    pub verdict: String,
    /// The verdict's mark.
    pub mark: &'static str,
    /// What is asked of it.
    pub demand: Number,
    /// What it can give.
    pub capacity: Number,
    /// Share of the capacity that is used, as a percentage.
    pub used: String,
    /// Length of the bar, in hundredths of the capacity, none when unknown.
    pub bar: Option<u32>,
    /// What it means.
    pub note: String,
    /// Where the rule comes from.
    pub source: String,
    /// Anchor of the calculation behind it.
    pub how: Option<String>,
}

/// A caution in words.
#[derive(Debug, Clone)]
pub struct CautionView {
    /// The danger and what is worn or done, in a line.
    pub line: String,
    /// What can hurt, and what to do.
    pub text: String,
    /// Where it comes from.
    pub source: String,
}

impl CheckView {
    /// A check in the reader's units.
    #[must_use]
    pub fn of(check: &Check, planned: &Planned) -> Self {
        let units = planned.brief.units;
        Self {
            title: check.title.clone(),
            verdict: words::verdict(check),
            mark: words::mark(check.verdict),
            demand: Number::of(check.demand, check.unit, units),
            capacity: Number::of(check.capacity, check.unit, units),
            used: check.utilisation.map_or_else(String::new, |used| {
                units.say(used * 100.0, stillground::figure::Unit::PerCent)
            }),
            bar: check
                .utilisation
                .map(|used| (used * 100.0).clamp(1.0, 120.0).round() as u32),
            note: check.note.clone(),
            source: check.source.to_string(),
            how: super::working::find(&planned.design.workings, check.id),
        }
    }
}

impl CautionView {
    /// A caution.
    #[must_use]
    pub fn of(caution: &Caution) -> Self {
        Self {
            line: caution_lines::line(caution).to_owned(),
            text: caution.text.clone(),
            source: caution.source.to_string(),
        }
    }
}

impl Panel {
    /// The panel of a step.
    #[must_use]
    pub fn of(step: Step, planned: &Planned) -> Self {
        let (design, units) = (&planned.design, planned.brief.units);
        let stillness = if step == Step::Floor {
            Vec::new()
        } else {
            stillness(planned, units)
        };
        let (held, mut open): (Vec<&Check>, Vec<&Check>) = design
            .checks
            .iter()
            .filter(|check| concerns(check, step))
            .partition(|check| check.verdict == Verdict::Holds);
        // Those that fail come first: the page shows a few, and leads to the rest.
        open.sort_by_key(|check| check.verdict != Verdict::Fails);
        Self {
            stopped: false,
            drawing: DrawingView::of(picture(step), planned),
            further: further(step)
                .iter()
                .filter_map(|name| {
                    let chapter = forms::chapter::Chapter::with_drawing(name).slug();
                    let title = planned.drawing(name)?.title.clone();
                    Some((format!("plan/{chapter}#drawing-{name}"), title))
                })
                .collect(),
            remarks: remarks::of(step, planned),
            figures: figures::of(step, planned, units),
            held: held.len(),
            checks: open
                .into_iter()
                .map(|check| CheckView::of(check, planned))
                .collect(),
            shown: deeper::shown(step, planned),
            chapters: deeper::of(step, planned),
            stillness,
            unanswered: unanswered(step, planned),
            failing: design
                .checks
                .iter()
                .filter(|check| stands_open(check) && !concerns(check, step))
                .map(verdict::named)
                .collect(),
        }
    }

    /// The panel where the answers contradict each other.
    #[must_use]
    pub fn stopped() -> Self {
        Self {
            stopped: true,
            drawing: None,
            further: Vec::new(),
            remarks: Vec::new(),
            figures: Vec::new(),
            held: 0,
            checks: Vec::new(),
            shown: Vec::new(),
            chapters: Vec::new(),
            stillness: Vec::new(),
            unanswered: Vec::new(),
            failing: Vec::new(),
        }
    }
}

/// The step's common questions for which a value had to be taken.
fn unanswered(step: Step, planned: &Planned) -> Vec<(String, &'static str)> {
    let common = crate::forms::questions::topics(step)
        .iter()
        .flat_map(|topic| topic.common);
    let taken = |path: &str| {
        planned
            .design
            .assumptions
            .iter()
            .any(|assumption| assumption.field == path)
    };
    common
        .filter(|question| taken(&question.path))
        .map(|question| (super::field::id(&question.path), question.words.label))
        .collect()
}

/// What the plan as a whole does to the star.
fn stillness(planned: &Planned, units: Units) -> Vec<FigureLine> {
    let lines = figures::of(Step::Floor, planned, units).into_iter();
    lines.filter(|line| !line.number.words).take(4).collect()
}

/// The drawing that a step moves.
const fn picture(step: Step) -> &'static str {
    match step {
        Step::Site | Step::Footing | Step::Plan => "section",
        Step::Excavation => "pit",
        Step::Pier => "column",
        Step::Anchors => "studs",
        Step::Floor => "floor",
    }
}

/// Further drawings that a step moves.
const fn further(step: Step) -> &'static [&'static str] {
    match step {
        Step::Site | Step::Excavation | Step::Footing | Step::Plan => &[],
        Step::Pier => &["modes", "budget"],
        Step::Anchors => &["torque", "stud-detail", "flexure", "breakout"],
        Step::Floor => &["tilt-map", "budget", "trail", "history", "spectrum"],
    }
}

/// The engine's stages that a step shows.
const fn stages(step: Step) -> &'static [Stage] {
    match step {
        Step::Site => &[Stage::Ground],
        Step::Excavation => &[Stage::Excavation],
        Step::Footing => &[Stage::Block, Stage::GroundStiffness],
        Step::Pier => &[Stage::Pier],
        Step::Anchors => &[Stage::Anchors, Stage::Joint],
        Step::Floor => &[Stage::Floor, Stage::Motion],
        Step::Plan => &[],
    }
}

/// Parts of the work whose dangers a step has.
#[must_use]
pub const fn whens(step: Step) -> &'static [When] {
    match step {
        Step::Site => &[When::Planning],
        Step::Excavation => &[When::Digging],
        Step::Footing => &[When::Pouring],
        Step::Pier => &[When::Lifting, When::Wiring],
        Step::Anchors => &[When::Drilling, When::Bonding, When::Tightening],
        Step::Floor => &[When::Flooring, When::Observing],
        Step::Plan => &words::WHENS,
    }
}

/// What can hurt at a step.
#[must_use]
pub fn cautions(step: Step, design: &Design) -> Vec<CautionView> {
    design
        .cautions
        .iter()
        .filter(|caution| endangers(caution, step))
        .map(CautionView::of)
        .collect()
}

/// Whether a caution stands at a step. What has to be thought of while planning stands where that thing is decided; what
/// concerns no step by itself stands at the first.
fn endangers(caution: &Caution, step: Step) -> bool {
    if caution.when != When::Planning || step == Step::Plan {
        return whens(step).contains(&caution.when);
    }
    step == match caution.stage() {
        Stage::Excavation => Step::Excavation,
        Stage::Block => Step::Footing,
        Stage::Pier => Step::Pier,
        Stage::Anchors => Step::Anchors,
        Stage::Floor | Stage::Motion => Step::Floor,
        _ => Step::Site,
    }
}

/// Whether a check of building says no or ask.
fn stands_open(check: &Check) -> bool {
    check.question == Question::Build && matches!(check.verdict, Verdict::Fails | Verdict::Unknown)
}

/// Whether a step moves a check: it is of its stage, or one of its questions is among the fields that move it.
fn concerns(check: &Check, step: Step) -> bool {
    let asked =
        |field: &Path| crate::forms::questions::about(field).is_some_and(|(of, _)| of == step);
    stages(step).contains(&check.stage()) || check.fields.iter().any(asked)
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::decided::design_plan;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    #[test]
    fn each_caution_stands_at_one_step_and_where_its_danger_is() {
        let design = design_plan(&SitePlan::unknown(), &NoShelf).unwrap();
        let steps = |caution: &Caution| {
            Step::ALL
                .into_iter()
                .filter(|step| *step != Step::Plan && endangers(caution, *step))
                .collect::<Vec<_>>()
        };
        assert!(design.cautions.len() > 30, "{}", design.cautions.len());
        for caution in &design.cautions {
            let steps = steps(caution);
            // Those for whoever measures stand on the pages of measuring.
            let wanted = usize::from(caution.when != When::Measuring);
            assert_eq!(steps.len(), wanted, "{}", caution.id);
            match caution.id {
                "column.welding" => assert_eq!(steps, [Step::Pier]),
                "block.frost_and_concrete" => assert_eq!(steps, [Step::Footing]),
                "plan.codes" => assert_eq!(steps, [Step::Site]),
                _ => {}
            }
        }
    }
}
