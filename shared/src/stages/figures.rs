//! A figure that the plan shows: what it is called, how it is read, and the calculation behind it.
//!
//! Each stage lists its figures in its `figures.rs`. Page, sheet and record choose from these lists and say no label of
//! their own, so that one thing has one name wherever it stands.

use crate::brief::Brief;
use crate::design::Design;
use crate::figure::{Amount, UnitOf, Units};
use crate::units::Spread;

/// What a plan has not found.
const NOT_KNOWN: &str = "not known";

/// A named figure of a design.
#[derive(Debug, Clone, Copy)]
pub struct Figure {
    /// Name of the calculation behind it, `stage.quantity`; there may be none of that name.
    pub id: &'static str,
    /// What it is, in a customer's words.
    pub label: &'static str,
    /// Reads it.
    pub of: fn(&Brief, &Design) -> Shown,
}

/// What a figure shows.
#[derive(Debug, Clone, PartialEq)]
pub enum Shown {
    /// One number.
    One(Amount),
    /// A range with its middle.
    Range(Spread<Amount>),
    /// Two sides of a rectangle.
    Sides([Amount; 2]),
    /// Several numbers of one kind.
    List(Vec<Amount>),
    /// Words, as of a class.
    Words(String),
    /// Nothing was found; the words say why.
    Missing(&'static str),
}

impl Figure {
    /// A figure.
    pub const fn new(
        id: &'static str,
        label: &'static str,
        of: fn(&Brief, &Design) -> Shown,
    ) -> Self {
        Self { id, label, of }
    }
}

impl Shown {
    /// In words, in the reader's units.
    pub fn say(&self, units: Units) -> String {
        let say = |amount: &Amount| units.say(amount.value, amount.unit);
        match self {
            Self::One(amount) => say(amount),
            Self::Range(spread) => format!(
                "{}, between {} and {}",
                say(&spread.typical),
                say(&spread.low),
                say(&spread.high)
            ),
            Self::Sides([length, width]) => format!("{} × {}", say(length), say(width)),
            Self::List(amounts) => amounts.iter().map(say).collect::<Vec<_>>().join(", "),
            Self::Words(words) => words.clone(),
            Self::Missing(why) => (*why).to_owned(),
        }
    }
}

/// A quantity in its unit.
pub fn one<Q>(quantity: Q, unit: impl UnitOf<Q>) -> Shown {
    Shown::One(Amount::of(quantity, unit))
}

/// A quantity that may not have been found; then the words say why.
pub fn one_or<Q>(quantity: Option<Q>, unit: impl UnitOf<Q>, missing: &'static str) -> Shown {
    quantity.map_or(Shown::Missing(missing), |quantity| one(quantity, unit))
}

/// The same where nothing more is to be said about it.
pub fn known<Q>(quantity: Option<Q>, unit: impl UnitOf<Q>) -> Shown {
    one_or(quantity, unit, NOT_KNOWN)
}

/// A range of a quantity.
pub fn range<Q: Copy>(spread: Option<Spread<Q>>, unit: impl UnitOf<Q>) -> Shown {
    spread.map_or(Shown::Missing(NOT_KNOWN), |spread| {
        Shown::Range(spread.map(|quantity| Amount::of(quantity, unit)))
    })
}

/// Length and width.
pub fn sides<Q>(length: Q, width: Q, unit: impl UnitOf<Q>) -> Shown {
    Shown::Sides([length, width].map(|side| Amount::of(side, unit)))
}

/// Words.
pub fn words(words: impl Into<String>) -> Shown {
    Shown::Words(words.into())
}
