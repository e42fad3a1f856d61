//! What is wrong with a plan.

use serde::Serialize;

use super::Path;

/// Something wrong with a plan: which fields, what was found, what is right.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Problem {
    /// Paths of the fields; more than one where answers contradict each other.
    pub fields: Vec<String>,
    /// The value found, in the first field's unit.
    pub value: Option<f64>,
    /// What is wrong and what would be right, a whole sentence.
    pub said: String,
}

impl Problem {
    /// A contradiction between answers.
    pub fn between(fields: &[Path], said: impl Into<String>) -> Self {
        Self {
            fields: fields.iter().map(|&field| field.into()).collect(),
            value: None,
            said: said.into(),
        }
    }
}

/// All that is wrong with a plan, never empty.
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[error("{}", self.0.iter().map(|problem| format!("{}: {}", problem.fields.join(", "), problem.said)).collect::<Vec<_>>().join("; "))]
pub struct Problems(pub Vec<Problem>);
