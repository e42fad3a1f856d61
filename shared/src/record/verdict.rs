//! What follows from a measurement.

use serde::Serialize;

/// What follows from a measurement.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "verdict", rename_all = "snake_case")]
pub enum Verdict {
    /// As the plan has it.
    Within,
    /// Not as the plan has it; the work goes on after something was done.
    Outside {
        /// What to do, whole sentences.
        what_to_do: String,
    },
    /// The task and all that follow it wait.
    Stop {
        /// What was found, what must not be done, and why, whole sentences.
        why: String,
        /// Whom to ask.
        ask: String,
        /// Whether only a decision ends it, and no better measurement.
        lasting: bool,
    },
}

impl Verdict {
    /// Something to be done.
    pub fn outside(what_to_do: impl Into<String>) -> Self {
        Self::Outside {
            what_to_do: what_to_do.into(),
        }
    }

    /// A stop that ends when the thing is put right and measured again.
    pub fn stop(why: impl Into<String>, ask: impl Into<String>) -> Self {
        Self::Stop {
            why: why.into(),
            ask: ask.into(),
            lasting: false,
        }
    }

    /// A stop that only a decision ends.
    pub fn lasting_stop(why: impl Into<String>, ask: impl Into<String>) -> Self {
        Self::Stop {
            why: why.into(),
            ask: ask.into(),
            lasting: true,
        }
    }

    /// Whether it stops the work.
    pub const fn is_stop(&self) -> bool {
        matches!(self, Self::Stop { .. })
    }

    /// The same, with what was found said first.
    pub(super) fn about(self, found: &str) -> Self {
        match self {
            Self::Within => Self::Within,
            Self::Outside { what_to_do } => Self::Outside {
                what_to_do: format!("{found}: {what_to_do}"),
            },
            Self::Stop { why, ask, lasting } => Self::Stop {
                why: format!("{found}: {why}"),
                ask,
                lasting,
            },
        }
    }
}
