//! The complete inputs of a design: every unknown answer decided, and how.
//!
//! [`resolve`] is the only place where a missing answer becomes a value. Each decision leaves an
//! [`Assumption`] that says what was taken, why, and what it changes. A section's file holds
//! the resolved answers and the decisions that lead to them.

pub mod anchors;
pub mod block;
pub mod excavation;
pub mod floor;
pub mod load;
pub mod pier;
pub mod site;
pub mod work;

use serde::Serialize;

use crate::field::{Answer, Because, Number, NumberField, Other, Path, Problems};
use crate::figure::{Measure, Unit, Units};
use crate::notes::{AssumedValue, Assumption};
use crate::row;
use crate::site_plan::{Code, Prices, SitePlan, Use, Yard};
use crate::source::Source;
use crate::stock::Stock;

/// Where an answer came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Origin {
    /// The person said so.
    Said,
    /// It was not known, and a value was taken.
    Assumed,
    /// It was measured on the finished pier.
    Measured,
}

/// An answer, and where it came from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Given<T> {
    /// The answer.
    pub value: T,
    /// Where it came from.
    pub origin: Origin,
}

impl<T> Given<T> {
    /// An answer of the person's.
    pub fn said(value: T) -> Self {
        Self {
            value,
            origin: Origin::Said,
        }
    }

    /// A value that was taken.
    pub fn assumed(value: T) -> Self {
        Self {
            value,
            origin: Origin::Assumed,
        }
    }
}

/// Complete inputs of a design.
#[derive(Debug, Clone, PartialEq)]
pub struct Brief {
    /// What the plan is called.
    pub title: String,
    /// Units for words; figures inside are always SI.
    pub units: Units,
    /// What the telescope is for.
    pub purpose: Given<Use>,
    /// Code that judges the anchors.
    pub code: Given<Code>,
    /// Which parts are sold where the pier is built.
    pub stock: Given<Stock>,
    /// Site and soil.
    pub site: site::Site,
    /// Excavation.
    pub excavation: excavation::Excavation,
    /// Footing.
    pub block: block::Block,
    /// Pier.
    pub pier: pier::Pier,
    /// Load.
    pub load: load::Load,
    /// Anchors.
    pub anchors: anchors::Anchors,
    /// Observing floor.
    pub floor: floor::Floor,
    /// Work.
    pub work: work::Work,
    /// Which rows of the catalogue are kept where the parts come from.
    pub yard: Yard,
    /// What the reader was quoted.
    pub prices: Prices,
    /// What was taken where nothing was said.
    pub assumptions: Vec<Assumption>,
}

/// Decides every unknown answer of a plan.
///
/// # Errors
/// Every field out of range and every contradiction between answers.
pub fn resolve(plan: &SitePlan) -> Result<Brief, Problems> {
    plan.validate()?;
    let units = plan.units.unwrap_or_default();
    let mut ask = Ask {
        plan,
        units,
        stock: plan.family(),
        assumptions: Vec::new(),
    };
    let purpose = usual!(&mut ask, row!(use));
    let code = usual!(&mut ask, row!(code));
    let family = ask.stock;
    let stock = ask.choice(
        row!(stock),
        family,
        Taken::new(
            units.either(
                "parts in millimetres are sold where metres are read",
                "parts in inches are sold where feet are read",
            ),
            "which tube, plate, rod, concrete and bags the plan chooses",
            Source::judgement("the family that readers of these units buy from"),
        ),
    );
    let load = load::resolve(plan, &mut ask);
    let floor = floor::resolve(plan, &mut ask);
    let pier = pier::resolve(plan, &load, &floor, &mut ask);
    let anchors = anchors::resolve(plan, &pier, &mut ask);
    Ok(Brief {
        title: plan
            .title
            .clone()
            .filter(|title| !title.trim().is_empty())
            .unwrap_or_else(|| "Untitled pier".to_owned()),
        units: ask.units,
        purpose,
        code,
        stock,
        site: site::resolve(plan, &mut ask),
        excavation: excavation::resolve(plan, &mut ask),
        load,
        pier,
        anchors,
        block: block::resolve(plan, &mut ask),
        floor,
        work: work::resolve(plan, &mut ask),
        yard: plan.yard.clone(),
        prices: plan.prices.clone(),
        assumptions: ask.assumptions,
    })
}

/// Why a value was taken and what it changes.
#[derive(Debug, Clone)]
pub struct Taken {
    /// Why this value.
    pub why: String,
    /// What in the plan it changes, and which way.
    pub effect: String,
    /// Where it comes from.
    pub source: Source,
}

impl Taken {
    /// From plain words.
    pub fn new(why: impl Into<String>, effect: impl Into<String>, source: Source) -> Self {
        Self {
            why: why.into(),
            effect: effect.into(),
            source,
        }
    }
}

impl From<Because> for Taken {
    fn from(row: Because) -> Self {
        Self::new(row.why, row.effect, row.source)
    }
}

/// Asks by a row that says which value is taken where nobody said, and why; one that does not say both does not compile.
macro_rules! usual {
    ($ask:expr, $row:expr) => {
        $row.ask_usual($ask, const { $row.usual() }, const { $row.because() })
    };
}

/// Asks by a row that says why a value is taken, which hangs on other answers; or only reads why.
macro_rules! taken {
    ($row:expr) => {
        $crate::brief::Taken::from(const { $row.because() })
    };
    ($ask:expr, $row:expr, $value:expr) => {
        $row.ask($ask, $value, const { $row.because() })
    };
}

pub(crate) use {taken, usual};

impl<M: Measure> Number<M> {
    /// Asks the plan; only for [`usual!`].
    pub(crate) fn ask_usual(
        self,
        ask: &mut Ask,
        value: f64,
        because: Because,
    ) -> Given<M::Quantity> {
        self.ask(ask, value, because)
    }

    /// Asks the plan; only for [`taken!`].
    pub(crate) fn ask(self, ask: &mut Ask, value: f64, because: Because) -> Given<M::Quantity> {
        ask.number(self, value, because.into())
    }
}

impl<T: Answer + Copy> Other<T> {
    /// Asks the plan; only for [`usual!`].
    pub(crate) fn ask_usual(self, ask: &mut Ask, value: fn() -> T, because: Because) -> Given<T> {
        self.ask(ask, value(), because)
    }

    /// Asks the plan; only for [`taken!`].
    pub(crate) fn ask(self, ask: &mut Ask, value: T, because: Because) -> Given<T> {
        ask.choice(self, value, because.into())
    }
}

/// Asks the plan one question after another and writes down what had to be assumed.
#[derive(Debug)]
pub struct Ask<'a> {
    /// Who is asked.
    pub plan: &'a SitePlan,
    /// Units for words.
    pub units: Units,
    /// Which parts are chosen from.
    pub stock: Stock,
    assumptions: Vec<Assumption>,
}

impl Ask<'_> {
    /// A number; `value`, in the row's unit, is assumed when nothing was said.
    pub fn number<M: Measure>(
        &mut self,
        row: Number<M>,
        value: f64,
        taken: Taken,
    ) -> Given<M::Quantity> {
        self.number_from(row, row.said(self.plan), value, taken)
    }

    /// The same where the answer may stand in another of the plan's answers too.
    pub fn number_from<M: Measure>(
        &mut self,
        row: Number<M>,
        said: Option<M::Quantity>,
        value: f64,
        taken: Taken,
    ) -> Given<M::Quantity> {
        match said {
            Some(said) => Given::said(said),
            None => {
                let value = self.stock.round(row.row.unit, value);
                self.note_number(row.row, value, taken);
                Given::assumed(M::quantity(value))
            }
        }
    }

    /// A choice; `value` is assumed when nothing was said.
    pub fn choice<T: Answer + Copy>(&mut self, row: Other<T>, value: T, taken: Taken) -> Given<T> {
        match (row.get)(self.plan) {
            Some(said) => Given::said(*said),
            None => {
                let name = value.name().unwrap_or_default().to_owned();
                self.note_text(row.row.path, name, taken);
                Given::assumed(value)
            }
        }
    }

    /// Writes down that a number was assumed, in the row's unit.
    pub fn note_number(&mut self, row: NumberField, value: f64, taken: Taken) {
        self.note(row.path, AssumedValue::Number(value), row.unit, taken);
    }

    /// Writes down that a choice or a few words were assumed.
    pub fn note_text(&mut self, path: Path, text: String, taken: Taken) {
        self.note(path, AssumedValue::Text(text), Unit::One, taken);
    }

    fn note(&mut self, path: Path, value: AssumedValue, unit: Unit, taken: Taken) {
        self.assumptions.push(Assumption {
            field: path,
            value,
            unit,
            why: taken.why,
            effect: taken.effect,
            source: taken.source,
        });
    }
}
