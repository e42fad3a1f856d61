//! What lies deeper than a step's figures: chapters of words and tables, the same beside the questions and on the plan.

mod floor;
mod torque;

use stillground::figure::{Unit, Units};
use stillground::units::Spread;

use crate::app::Planned;
use crate::forms::step::Step;

/// Something worth a closer look.
#[derive(Debug, Clone)]
pub struct Chapter {
    /// Heading.
    pub title: &'static str,
    /// What a step says beside its questions anyway, and what is said here only where the chapter stands alone.
    pub told: Vec<String>,
    /// Sentences before the table.
    pub words: Vec<String>,
    /// The figures; none where words say it all.
    pub table: Option<Table>,
    /// Sentences behind the table.
    pub after: Vec<String>,
}

/// Figures in rows, each row with its name.
#[derive(Debug, Clone)]
pub struct Table {
    /// What the names are.
    pub names: &'static str,
    /// Headings of the figures' columns.
    pub columns: Vec<String>,
    /// A row's name and figures.
    pub rows: Vec<(String, Vec<String>)>,
}

impl Table {
    /// Each figure of a row with the heading of its column.
    #[must_use]
    pub fn cells<'a>(&'a self, row: &'a (String, Vec<String>)) -> Vec<(&'a str, &'a str)> {
        self.columns.iter().map(String::as_str).zip(row.1.iter().map(String::as_str)).collect()
    }
}

/// The chapters of a step.
#[must_use]
pub fn of(step: Step, planned: &Planned) -> Vec<Chapter> {
    match step {
        Step::Floor => floor::chapters(planned),
        Step::Anchors => torque::chapters(planned),
        Step::Site | Step::Excavation | Step::Footing | Step::Pier | Step::Plan => Vec::new(),
    }
}

/// Figures in the softest ground thought likely, the typical and the stiffest.
fn by_ground(spread: Option<Spread<f64>>, unit: Unit, units: Units) -> Vec<String> {
    match spread {
        Some(spread) => [spread.low, spread.typical, spread.high].map(|value| units.say(value, unit)).to_vec(),
        None => vec!["not known".to_owned(); 3],
    }
}

/// Headings of what [`by_ground`] says.
fn grounds() -> Vec<String> {
    ["Soft ground", "Typical", "Stiff"].map(str::to_owned).to_vec()
}
