//! Lines of calculation that a figure links to.

use stillground::figure::Units;
use stillground::notes::Working;

/// A line of calculation.
#[derive(Debug, Clone)]
pub struct WorkingView {
    /// Its anchor on the page.
    pub anchor: String,
    /// What is found.
    pub title: String,
    /// The formula.
    pub formula: &'static str,
    /// Inputs, each a symbol and a figure.
    pub inputs: Vec<(&'static str, String)>,
    /// The result's symbol.
    pub symbol: &'static str,
    /// The result.
    pub result: String,
    /// Where the formula comes from.
    pub source: String,
}

impl WorkingView {
    /// A working in the reader's units.
    #[must_use]
    pub fn of(working: &Working, units: Units) -> Self {
        Self {
            anchor: anchor(working.id),
            title: super::words::sentence(&working.title).trim_end_matches('.').to_owned(),
            formula: working.formula,
            inputs: working.inputs.iter().map(|input| (input.symbol, units.say(input.value, input.unit))).collect(),
            symbol: working.symbol,
            result: units.say(working.value, working.unit),
            source: working.source.to_string(),
        }
    }
}

/// The anchor of a working.
#[must_use]
pub fn anchor(id: &str) -> String {
    format!("how-{}", id.replace(|c: char| !c.is_ascii_alphanumeric(), "-"))
}

/// The anchor of the working behind a quantity: the one of its name, or the first whose name begins so.
#[must_use]
pub fn find(workings: &[Working], quantity: &str) -> Option<String> {
    let exact = workings.iter().find(|working| working.id == quantity);
    let begins = || workings.iter().find(|working| working.id.starts_with(quantity));
    exact.or_else(begins).map(|working| anchor(working.id))
}
