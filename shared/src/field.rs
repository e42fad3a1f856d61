//! The answers of the plan as rows: path, what it is, unit, range and the reason for it, beside the field itself.
//!
//! A section of the plan declares its fields with [`section!`]. Each becomes a field of the section's struct and a constant
//! of the same name, its row: `plan.load.mass_kg` is the answer, `Load::mass_kg` the row. A brief asks by the row
//! ([`crate::brief::Ask`]); the form, the interface's description and the range check read the same rows as a list.

mod path;
mod problem;
mod section;

pub use path::Path;
pub use problem::{Problem, Problems};
pub(crate) use section::{choice, maybe, other, section, words};

use std::marker::PhantomData;

use crate::figure::{Measure, Unit, Units};
use crate::site_plan::SitePlan;
use crate::source::Source;

/// How a person is asked for an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Words {
    /// What is asked.
    pub label: &'static str,
    /// How to find the answer; empty where nothing need be said.
    pub hint: &'static str,
    /// What happens when it is not known and the design assumes no value for it by itself; empty where it always does.
    pub not_known: &'static str,
}

/// Why a value is taken for an answer that nobody gave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Because {
    /// Why this value.
    pub why: &'static str,
    /// What in the plan it changes, and which way.
    pub effect: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// A number that a person may give.
#[derive(Debug, Clone, Copy)]
pub struct NumberField {
    /// Path in the plan, for instance `site.frost_depth_m`.
    pub path: Path,
    /// What it is, a sentence from the field's documentation.
    pub what: &'static str,
    /// Unit.
    pub unit: Unit,
    /// Least value taken.
    pub least: f64,
    /// Largest value taken.
    pub most: f64,
    /// Why the range is so.
    pub why: &'static str,
    /// How it is asked for; none where no form asks.
    pub words: Option<Words>,
    /// What is taken where nobody said, if that is always the same.
    pub usual: Option<f64>,
    /// Why something is taken where nobody said; none where nothing is.
    pub because: Option<Because>,
    /// Reads it.
    pub get: fn(&SitePlan) -> Option<f64>,
    /// Writes it; a count is rounded to a whole number.
    pub set: fn(&mut SitePlan, Option<f64>),
}

impl NumberField {
    /// What is wrong with a value outside the range, in the reader's units.
    pub fn out_of_range(&self, value: f64, units: Units) -> Option<Problem> {
        if value.is_finite() && value >= self.least && value <= self.most {
            return None;
        }
        let say = |value| units.say(value, self.unit);
        let said = format!(
            "{} is outside the range of {} to {}: {}.",
            say(value),
            say(self.least),
            say(self.most),
            self.why
        );
        Some(Problem {
            fields: vec![self.path.into()],
            value: value.is_finite().then_some(value),
            said,
        })
    }
}

/// An answer that is no number.
#[derive(Debug, Clone, Copy)]
pub struct OtherField {
    /// Path in the plan, for instance `site.soil`.
    pub path: Path,
    /// What it is, from the field's documentation.
    pub what: &'static str,
    /// What is taken.
    pub kind: Kind,
    /// How it is asked for; none where no form asks.
    pub words: Option<Words>,
    /// Why something is taken where nobody said; none where nothing is.
    pub because: Option<Because>,
    /// Name and words of each answer, where it is one of a few.
    pub answers: &'static [(&'static str, &'static str)],
    /// Reads the name of the answer, where it is one of a few.
    pub key: fn(&SitePlan) -> Option<&'static str>,
    /// Writes the answer of this name, or none; whether there is one of this name.
    pub set_key: fn(&mut SitePlan, Option<&str>) -> bool,
}

/// What a row must say where it is read. The compiler alone asks, in [`crate::brief::usual!`] and [`crate::brief::taken!`].
const fn said_by_the_row<T: Copy>(said: Option<T>) -> T {
    match said {
        Some(said) => said,
        None => panic!("the row says neither what is taken nor why"),
    }
}

/// The row of a number, and as a type the unit that it is given in.
#[derive(Debug, Clone, Copy)]
pub struct Number<M: Measure> {
    /// The row as the lists have it.
    pub row: NumberField,
    measure: PhantomData<M>,
}

impl<M: Measure> Number<M> {
    /// A row of the plan; only [`section!`] writes one.
    pub(crate) const fn new(row: NumberField) -> Self {
        Self {
            row,
            measure: PhantomData,
        }
    }

    /// What is taken where nobody said. Only for [`crate::brief::usual!`], where a row without it does not compile.
    pub(crate) const fn usual(&self) -> f64 {
        said_by_the_row(self.row.usual)
    }

    /// Why. Only for [`crate::brief::taken!`], where a row without it does not compile.
    pub(crate) const fn because(&self) -> Because {
        said_by_the_row(self.row.because)
    }

    /// What the person said, as a quantity.
    pub fn said(&self, plan: &SitePlan) -> Option<M::Quantity> {
        (self.row.get)(plan).map(M::quantity)
    }
}

/// The row of another answer, and as a type what is answered.
#[derive(Debug, Clone, Copy)]
pub struct Other<T: 'static> {
    /// The row as the lists have it.
    pub row: OtherField,
    /// What is taken where nobody said, if that is always the same.
    pub usual: Option<fn() -> T>,
    /// Reads the answer.
    pub get: fn(&SitePlan) -> Option<&T>,
    /// Writes it.
    pub set: fn(&mut SitePlan, Option<T>),
}

impl<T> Other<T> {
    /// What is taken where nobody said. Only for [`crate::brief::usual!`], where a row without it does not compile.
    pub(crate) const fn usual(&self) -> fn() -> T {
        said_by_the_row(self.usual)
    }

    /// Why. Only for [`crate::brief::taken!`], where a row without it does not compile.
    pub(crate) const fn because(&self) -> Because {
        said_by_the_row(self.row.because)
    }
}

/// What an answer that is no number may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// One of these names.
    Choice(&'static [&'static str]),
    /// True or false.
    YesOrNo,
    /// A text.
    Text,
    /// Rows of a table, at most so many.
    Rows(&'static [Cell], usize),
    /// Points, at most so many, each east and north of the pier's axis.
    Points(usize),
}

/// A cell in a row of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cell {
    /// Its name.
    pub name: &'static str,
    /// What it is, with its unit.
    pub what: &'static str,
    /// Whether it is a text; otherwise a number.
    pub is_text: bool,
}

impl Cell {
    /// A number.
    pub const fn number(name: &'static str, what: &'static str) -> Self {
        Self {
            name,
            what,
            is_text: false,
        }
    }

    /// A text.
    pub const fn text(name: &'static str, what: &'static str) -> Self {
        Self {
            name,
            what,
            is_text: true,
        }
    }
}

/// A type of answer that says what it takes.
pub trait Answer: Sized {
    /// What is taken.
    const KIND: Kind;
    /// Name and words of each answer, where it is one of a few.
    const ANSWERS: &'static [(&'static str, &'static str)] = &[];

    /// The answer's name, where it is one of a few.
    fn name(&self) -> Option<&'static str> {
        None
    }

    /// The answer of this name, where it is one of a few.
    fn named(_name: &str) -> Option<Self> {
        None
    }
}

impl Answer for bool {
    const KIND: Kind = Kind::YesOrNo;

    fn name(&self) -> Option<&'static str> {
        Some(if *self { "true" } else { "false" })
    }

    fn named(name: &str) -> Option<Self> {
        name.parse().ok()
    }
}

impl Answer for String {
    const KIND: Kind = Kind::Text;
}
