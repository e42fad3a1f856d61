//! An improvement: a change of the plan's own fields, and what it does to the star.

use serde::Serialize;

use crate::figure::Unit;
use crate::site_plan::Stand;

/// A field's new value.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum NewValue {
    /// A number in the field's unit.
    Number(f64),
    /// A choice's name.
    Text(String),
    /// Places where people stand.
    Stands(Vec<Stand>),
    /// Corners of the path.
    Path(Vec<[f64; 2]>),
    /// No answer any more.
    Nothing,
}

/// A field of the plan and its new value.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NewField {
    /// Path in the plan.
    pub field: &'static str,
    /// What to put there.
    pub value: NewValue,
}

/// One change and what it does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Improvement {
    /// The change in words, for instance `the column's wall 6.3 mm → 8 mm`.
    pub change: String,
    /// The fields that make it.
    pub fields: Vec<NewField>,
    /// Change of the figure over the figure: −0.45 is 45 per cent less.
    pub effect_ratio: f64,
    /// What it helps most: the `id` of an entry of `motion.disturbances`, or `settle` for the time a bump takes to die.
    pub what: &'static str,
    /// The figure before, for the softest ground thought likely.
    pub before: f64,
    /// The figure after.
    pub after: f64,
    /// Unit of both.
    pub unit: Unit,
    /// What else changes by a fiftieth or more, for better or worse, the largest change first.
    pub also: Vec<SideEffect>,
}

/// What a change does besides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SideEffect {
    /// The `id` of a disturbance, or `settle`.
    pub what: &'static str,
    /// Change of the figure over the figure.
    pub effect_ratio: f64,
}
