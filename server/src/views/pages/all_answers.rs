//! Every answer of the plan on one page, step by step: what was said, what is assumed, and what should be looked at again.

use askama::Template;
use stillground::notes::{Check, Verdict};
use stillground::site_plan::SitePlan;

use super::field::{self, Desk};
use super::frame::Frame;
use super::stale;
use super::step::{FaultView, is_asked};
use crate::forms::question::Question;
use crate::forms::questions;
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::views::words;

/// The page.
#[derive(Template)]
#[template(path = "pages/all-answers.html")]
pub struct AllAnswersPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Whether the reader may change an answer.
    pub edit: bool,
    /// What was done.
    pub notice: Option<&'static str>,
    /// Answers that contradict each other.
    pub faults: Vec<FaultView>,
    /// How many are said and how many are assumed.
    pub counted: String,
    /// The steps.
    pub steps: Vec<StepAnswers>,
}

/// The answers of a step.
pub struct StepAnswers {
    /// Its name in an address.
    pub slug: &'static str,
    /// Its title.
    pub title: &'static str,
    /// How much of it is said, in words.
    pub state: String,
    /// Answers that were given, that most people can give, or that should be looked at.
    pub rows: Vec<Answer>,
    /// What is assumed, and few can say better.
    pub rest: Vec<Answer>,
}

/// An answer.
pub struct Answer {
    /// Identifier on the page.
    pub id: String,
    /// What was asked.
    pub label: &'static str,
    /// What was answered, or what is assumed.
    pub says: String,
    /// Why it is assumed; empty where it was said.
    pub why: String,
    /// Whether somebody said it.
    pub said: bool,
    /// A check that hangs on it and does not say yes: its question and its answer.
    pub look: Option<(String, &'static str)>,
    /// Where it is changed.
    pub change: String,
}

impl AllAnswersPage {
    /// All answers of a plan.
    #[must_use]
    pub fn of(
        frame: Frame,
        root: &str,
        edit: bool,
        plan: &SitePlan,
        planned: Option<&Planned>,
    ) -> Self {
        let steps: Vec<StepAnswers> = Step::ALL
            .into_iter()
            .filter(|step| *step != Step::Plan)
            .map(|step| StepAnswers::of(step, root, plan, planned))
            .collect();
        let all = || {
            steps
                .iter()
                .flat_map(|step| step.rows.iter().chain(&step.rest))
        };
        let said = all().filter(|answer| answer.said).count();
        Self {
            frame,
            root: root.to_owned(),
            edit,
            notice: None,
            faults: Vec::new(),
            counted: format!("{said} said, {} assumed", all().count() - said),
            steps,
        }
    }
}

impl StepAnswers {
    fn of(step: Step, root: &str, plan: &SitePlan, planned: Option<&Planned>) -> Self {
        let sheet = Sheet::of(step, plan);
        let desk = Desk::of_plan(&sheet, planned, plan);
        let answers = |questions: &'static [Question]| {
            questions.iter().filter_map(|question| {
                let field = desk.field(question);
                is_asked(question, &field, &desk, plan)
                    .then(|| Answer::of(question, field, step, root, plan, planned))
            })
        };
        let (mut rows, mut rest) = (Vec::new(), Vec::new());
        for topic in questions::topics(step) {
            rows.extend(answers(topic.common));
            let (few, many): (Vec<_>, Vec<_>) =
                answers(topic.rare).partition(|answer| !answer.said && answer.look.is_none());
            rows.extend(many);
            rest.extend(few);
        }
        Self {
            slug: step.slug(),
            title: step.title(),
            state: state(&rows, rest.len()),
            rows,
            rest,
        }
    }
}

/// How a step stands: to be looked at, nothing said, or how much is.
fn state(rows: &[Answer], rest: usize) -> String {
    let count = |which: fn(&Answer) -> bool| rows.iter().filter(|answer| which(answer)).count();
    let said = match count(|answer| answer.said) {
        0 => "nothing said yet".to_owned(),
        said => format!("{said} said, {} assumed", rows.len() + rest - said),
    };
    match count(|answer| answer.look.is_some()) {
        0 => said,
        look => format!("{look} to look at; {said}"),
    }
}

impl Answer {
    fn of(
        question: &'static Question,
        field: field::FieldView,
        step: Step,
        root: &str,
        plan: &SitePlan,
        planned: Option<&Planned>,
    ) -> Self {
        let (says, why, said) = match field.taken {
            Some(taken) => (taken.line, taken.why, false),
            None => (stale::answer(question, plan), String::new(), true),
        };
        Self {
            label: question.words.label,
            says,
            why,
            said,
            look: planned.and_then(|planned| look(question, &planned.design.checks)),
            change: format!(
                "{root}/{}?change={}#{}",
                step.slug(),
                question.path,
                field.id
            ),
            id: field.id,
        }
    }
}

/// A check that hangs on this answer more than on any other, and says no or ask.
fn look(question: &Question, checks: &[Check]) -> Option<(String, &'static str)> {
    let open = |check: &&Check| {
        matches!(check.verdict, Verdict::Fails | Verdict::Unknown)
            && check
                .fields
                .first()
                .is_some_and(|path| *path == question.path)
    };
    checks
        .iter()
        .find(open)
        .map(|check| (check.title.clone(), words::answer(check.verdict)))
}

#[cfg(test)]
mod tests {
    use stillground::halfspace::NoShelf;

    use super::*;

    /// Every question that this plan's way asks, once.
    #[test]
    fn every_question_of_every_step_stands_there_once() {
        for plan in [
            SitePlan::unknown(),
            serde_json::from_str(include_str!("../../../../tests/examples/quarry-lane.json"))
                .unwrap(),
        ] {
            let planned = Planned::of(&plan, &NoShelf)
                .map_err(|problems| problems.to_string())
                .unwrap();
            let steps: Vec<StepAnswers> = Step::ALL
                .into_iter()
                .map(|step| StepAnswers::of(step, "/p/it", &plan, Some(&planned)))
                .collect();
            let mut ids: Vec<&str> = steps
                .iter()
                .flat_map(|step| step.rows.iter().chain(&step.rest))
                .map(|answer| answer.id.as_str())
                .collect();
            let count = ids.len();
            assert!(count > 80, "{count}");
            ids.sort_unstable();
            ids.dedup();
            assert_eq!(ids.len(), count);
            for answer in steps.iter().flat_map(|step| &step.rest) {
                assert!(!answer.said, "{}", answer.label);
            }
        }
    }
}
