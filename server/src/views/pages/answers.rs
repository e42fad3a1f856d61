//! A step for those who may only look: what was answered, and what was taken where nothing was.

use askama::Template;
use stillground::site_plan::SitePlan;

use super::field::{self, Desk};
use super::frame::Frame;
use super::side::Side;
use super::stale;
use crate::forms::question::Topic;
use crate::forms::questions;
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use crate::planned::Planned;

/// The page.
#[derive(Template)]
#[template(path = "pages/answers.html")]
pub struct AnswersPage {
    /// The frame.
    pub frame: Frame,
    /// The step's title.
    pub title: &'static str,
    /// Headings and answers.
    pub topics: Vec<(&'static str, Vec<AnswerView>)>,
    /// The step that comes next.
    pub next: Step,
    /// Its address.
    pub next_href: String,
    /// The panel.
    pub panel: Side,
}

/// An answer.
pub struct AnswerView {
    /// Identifier on the page.
    pub id: String,
    /// What was asked.
    pub label: &'static str,
    /// What was answered, or what is taken.
    pub said: String,
}

impl AnswersPage {
    /// The answers of a step.
    #[must_use]
    pub fn of(
        frame: Frame,
        step: Step,
        root: &str,
        plan: &SitePlan,
        planned: Option<&Planned>,
        panel: Side,
    ) -> Self {
        let sheet = Sheet::of(step, plan);
        let desk = Desk::of_plan(&sheet, planned, plan);
        let answers = |topic: &'static Topic| {
            let view = |question: &'static crate::forms::question::Question| AnswerView {
                id: field::id(&question.path),
                label: question.words.label,
                said: desk
                    .field(question)
                    .taken
                    .map(|taken| format!("{}. {}", taken.line.trim_end_matches('.'), taken.why))
                    .unwrap_or_else(|| stale::answer(question, plan)),
            };
            (topic.heading, topic.questions().map(view).collect())
        };
        let next = step.next();
        Self {
            frame,
            title: step.title(),
            topics: questions::topics(step).iter().map(answers).collect(),
            next,
            next_href: format!("{root}/{}", next.slug()),
            panel,
        }
    }
}
