//! What a stage has to say besides its figures: checks, assumptions, cautions and the workings behind each number.

use serde::Serialize;

use crate::figure::Unit;
use crate::source::Source;

/// What a check found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// The demand is within the capacity.
    Holds,
    /// Within it by less than a tenth.
    Close,
    /// The demand exceeds the capacity.
    Fails,
    /// It could not be found; the check's note says why.
    Unknown,
}

/// Utilisation above which a check that holds is called close.
pub const CLOSE_RATIO: f64 = 0.9;

impl Verdict {
    /// The verdict on a demand over its capacity.
    #[must_use]
    pub fn of(utilisation: f64) -> Self {
        match utilisation {
            ratio if !ratio.is_finite() => Self::Unknown,
            ratio if ratio <= CLOSE_RATIO => Self::Holds,
            ratio if ratio <= 1.0 => Self::Close,
            _ => Self::Fails,
        }
    }
}

/// A demand held against a capacity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// Stable name, `stage.what`, for instance `block.bearing`.
    pub id: &'static str,
    /// What is checked, in a customer's words.
    pub title: String,
    /// What is asked of it, in `unit`; null when unknown.
    pub demand: Option<f64>,
    /// What it can give, in `unit`; null when unknown.
    pub capacity: Option<f64>,
    /// Unit of both.
    pub unit: Unit,
    /// Demand over capacity; null when unknown. For a least value (depth below frost) it is required over given.
    pub utilisation: Option<f64>,
    /// What was found.
    pub verdict: Verdict,
    /// Where the rule comes from.
    pub source: Source,
    /// One or two sentences: what it means, and what to change when it fails.
    pub note: String,
    /// Paths of the plan's fields that move it most, for instance `block.depth_m`.
    pub fields: &'static [&'static str],
}

impl Check {
    /// A demand against a capacity that it must not exceed. A value that is not finite makes the verdict unknown.
    #[must_use]
    pub fn at_most(
        id: &'static str,
        title: impl Into<String>,
        demand: f64,
        capacity: f64,
        unit: Unit,
        source: Source,
    ) -> Self {
        let utilisation = (capacity > 0.0)
            .then(|| demand / capacity)
            .filter(|ratio| ratio.is_finite());
        Self::judged(
            id,
            title.into(),
            demand,
            capacity,
            unit,
            utilisation,
            source,
        )
    }

    /// A value given against the least that is needed; utilisation is needed over given.
    #[must_use]
    pub fn at_least(
        id: &'static str,
        title: impl Into<String>,
        given: f64,
        needed: f64,
        unit: Unit,
        source: Source,
    ) -> Self {
        let utilisation = (given > 0.0)
            .then(|| needed / given)
            .filter(|ratio| ratio.is_finite());
        Self::judged(id, title.into(), needed, given, unit, utilisation, source)
    }

    /// A check that cannot be made; `why` says so.
    #[must_use]
    pub fn unknown(
        id: &'static str,
        title: impl Into<String>,
        unit: Unit,
        source: Source,
        why: impl Into<String>,
    ) -> Self {
        Self {
            id,
            title: title.into(),
            demand: None,
            capacity: None,
            unit,
            utilisation: None,
            verdict: Verdict::Unknown,
            source,
            note: why.into(),
            fields: &[],
        }
    }

    fn judged(
        id: &'static str,
        title: String,
        demand: f64,
        capacity: f64,
        unit: Unit,
        utilisation: Option<f64>,
        source: Source,
    ) -> Self {
        let verdict = match utilisation {
            _ if !demand.is_finite() || !capacity.is_finite() => Verdict::Unknown,
            Some(ratio) => Verdict::of(ratio),
            None if demand <= 0.0 => Verdict::Holds,
            _ => Verdict::Fails,
        };
        let finite = |value: f64| value.is_finite().then_some(value);
        Self {
            id,
            title,
            demand: finite(demand),
            capacity: finite(capacity),
            unit,
            utilisation,
            verdict,
            source,
            note: String::new(),
            fields: &[],
        }
    }

    /// The same check with a note.
    #[must_use]
    pub fn note(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
        self
    }

    /// The same check with the fields that move it.
    #[must_use]
    pub fn moved_by(mut self, fields: &'static [&'static str]) -> Self {
        self.fields = fields;
        self
    }
}

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
    pub field: &'static str,
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
    #[must_use]
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
    #[must_use]
    pub fn with(mut self, symbol: &'static str, value: f64, unit: Unit) -> Self {
        self.inputs.push(Input {
            symbol,
            value,
            unit,
        });
        self
    }

    /// Ends it with the result.
    #[must_use]
    pub fn gives(mut self, symbol: &'static str, value: f64, unit: Unit) -> Self {
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

    /// Takes over what another stage noted.
    pub fn take(&mut self, other: Self) {
        self.checks.extend(other.checks);
        self.assumptions.extend(other.assumptions);
        self.cautions.extend(other.cautions);
        self.workings.extend(other.workings);
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
