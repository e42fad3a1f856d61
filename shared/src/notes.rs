//! What a stage has to say besides its figures: checks, assumptions, cautions and the workings behind each number.

mod ask;
mod check;
mod line;
mod obstacle;
mod opinion;
mod stage;

use serde::Serialize;

use crate::field::Path;
use crate::figure::{Amount, Unit, UnitOf};
use crate::source::Source;

pub use check::{CLOSE_RATIO, Check, Question, Verdict, exceeds};
pub use line::{Line, Worked};
pub use obstacle::Obstacle;
pub use opinion::Opinion;
pub use stage::Stage;

/// A value that the person did not give.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum AssumedValue {
    /// A number, in the field's own unit.
    Number(f64),
    /// A choice's name or a few words.
    Text(String),
}

/// A value that was taken because the person did not know it, or left it to the tool.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Assumption {
    /// Path of the plan's field.
    pub field: Path,
    /// What was taken.
    pub value: AssumedValue,
    /// Its unit.
    pub unit: Unit,
    /// Why this value.
    pub why: String,
    /// What in the plan it changes, and which way.
    pub effect: String,
    /// Where the value comes from.
    pub source: Source,
}

/// Where in the work a caution belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// While planning and ordering.
    Planning,
    /// Before and while digging.
    Digging,
    /// Shuttering, reinforcement and pouring.
    Pouring,
    /// Drilling the holes.
    Drilling,
    /// Injecting resin and setting studs.
    Bonding,
    /// Lifting and setting the column.
    Lifting,
    /// Tightening nuts.
    Tightening,
    /// Building the observing floor.
    Flooring,
    /// Wiring and earthing.
    Wiring,
    /// Measuring the finished pier, and mending it.
    Measuring,
    /// Using the finished pier.
    Observing,
}

/// A warning that stands where the danger is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Caution {
    /// Stable name.
    pub id: &'static str,
    /// What can hurt, and what to do.
    pub text: String,
    /// At which part of the work.
    pub when: When,
    /// Where it comes from.
    pub source: Source,
}

/// An input of a working: symbol, value, unit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Input {
    /// Symbol as in the formula.
    pub symbol: &'static str,
    /// Value, in `unit`.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
}

/// One line of calculation that anyone can follow: formula, inputs, result, source.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Working {
    /// Stable name, `stage.quantity`; the page links a number to it.
    pub id: &'static str,
    /// What is found.
    pub title: String,
    /// The formula in symbols.
    pub formula: &'static str,
    /// The inputs.
    pub inputs: Vec<Input>,
    /// The result's symbol.
    pub symbol: &'static str,
    /// The result, in `unit`.
    pub value: f64,
    /// The result's unit.
    pub unit: Unit,
    /// Where the formula comes from.
    pub source: Source,
}

impl Working {
    /// Starts a working.
    pub fn new(
        id: &'static str,
        title: impl Into<String>,
        formula: &'static str,
        source: Source,
    ) -> Self {
        Self {
            id,
            title: title.into(),
            formula,
            inputs: Vec::new(),
            symbol: "",
            value: f64::NAN,
            unit: Unit::One,
            source,
        }
    }

    /// Adds an input.
    pub fn with<Q>(mut self, symbol: &'static str, quantity: Q, unit: impl UnitOf<Q>) -> Self {
        let Amount { value, unit } = Amount::of(quantity, unit);
        self.inputs.push(Input {
            symbol,
            value,
            unit,
        });
        self
    }

    /// Ends it with the result.
    pub fn gives<Q>(mut self, symbol: &'static str, quantity: Q, unit: impl UnitOf<Q>) -> Self {
        let Amount { value, unit } = Amount::of(quantity, unit);
        self.symbol = symbol;
        self.value = value;
        self.unit = unit;
        self
    }
}

/// All that a stage has to say besides its figures.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct Notes {
    /// Demands held against capacities.
    pub checks: Vec<Check>,
    /// Values taken because they were not given.
    pub assumptions: Vec<Assumption>,
    /// Warnings.
    pub cautions: Vec<Caution>,
    /// Lines of calculation.
    pub workings: Vec<Working>,
    /// What others say of the same.
    pub opinions: Vec<Opinion>,
}

impl Notes {
    /// Adds a check.
    pub fn check(&mut self, check: Check) {
        self.checks.push(check);
    }

    /// Adds a caution.
    pub fn caution(
        &mut self,
        id: &'static str,
        when: When,
        text: impl Into<String>,
        source: Source,
    ) {
        self.cautions.push(Caution {
            id,
            text: text.into(),
            when,
            source,
        });
    }

    /// Adds a working; one whose result is not finite is left out.
    pub fn working(&mut self, working: Working) {
        if working.value.is_finite() && working.inputs.iter().all(|input| input.value.is_finite()) {
            self.workings.push(working);
        }
    }

    /// Adds another opinion.
    pub fn opinion(&mut self, opinion: Opinion) {
        self.opinions.push(opinion);
    }

    /// Takes over what another stage noted.
    pub fn take(&mut self, other: Self) {
        self.checks.extend(other.checks);
        self.assumptions.extend(other.assumptions);
        self.cautions.extend(other.cautions);
        self.workings.extend(other.workings);
        self.opinions.extend(other.opinions);
    }
}

/// A stage's figures, and what it has to say about them.
#[derive(Debug, Clone, PartialEq)]
pub struct Found<T> {
    /// The figures.
    pub value: T,
    /// The notes.
    pub notes: Notes,
}

impl<T> Found<T> {
    /// The figures, the notes put with the others.
    pub fn noted(self, notes: &mut Notes) -> T {
        notes.take(self.notes);
        self.value
    }
}
