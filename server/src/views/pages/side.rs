//! The panel of a step as text, with the cautions that stand elsewhere on the page.

use std::fmt;
use std::sync::Arc;

use askama::Template;

use super::panel::{self, CautionView, Panel};
use crate::forms::step::Step;
use crate::planned::Planned;

/// What stands beside a step's questions.
#[derive(Debug)]
pub struct Side {
    /// What can hurt at this step.
    pub cautions: Vec<CautionView>,
    text: Result<Arc<str>, askama::Error>,
}

impl Side {
    /// A step's, its text kept with the design; `None`: the answers contradict each other.
    #[must_use]
    pub fn of(step: Step, planned: Option<&Planned>) -> Self {
        let Some(planned) = planned else {
            return Self {
                cautions: Vec::new(),
                text: Panel::stopped().render().map(Arc::from),
            };
        };
        let text = planned.panel(step, |planned| Panel::of(step, planned).render());
        Self {
            cautions: panel::cautions(step, &planned.design),
            text,
        }
    }
}

/// The panel; a template's fault is one of the page that shows it.
impl fmt::Display for Side {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.text.as_ref().map_err(|_| fmt::Error)?)
    }
}
