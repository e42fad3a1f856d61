//! The panel of a step as text, with the cautions that stand elsewhere on the page.

use std::fmt;
use std::sync::Arc;

use askama::Template;

use super::panel::{CautionView, Panel};
use crate::app::Planned;
use crate::forms::step::Step;

/// What stands beside a step's questions.
#[derive(Debug)]
pub struct Side {
    /// What can hurt at this step.
    pub cautions: Vec<CautionView>,
    text: Result<String, askama::Error>,
}

impl Side {
    /// A step's, kept with the design; `None`: the answers contradict each other.
    #[must_use]
    pub fn of(step: Step, planned: Option<&Planned>) -> Arc<Self> {
        planned.map_or_else(|| Arc::new(Self::write(step, None)), |planned| planned.side(step))
    }

    /// Writes it.
    #[must_use]
    pub fn write(step: Step, planned: Option<&Planned>) -> Self {
        let panel = Panel::of(step, planned);
        Self { text: panel.render(), cautions: panel.cautions }
    }
}

/// The panel; a template's fault is one of the page that shows it.
impl fmt::Display for Side {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.text.as_ref().map_err(|_| fmt::Error)?)
    }
}
