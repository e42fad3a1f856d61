//! An improvement: a change of the plan's own fields, and what it does to the star.

use serde::Serialize;

use crate::field::Path;
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
    pub field: Path,
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
    /// Change of the figure that it is judged by, over that figure: −0.45 is 45 per cent less. Of a disturbance that is the
    /// star's growth, where the eye looks its movement.
    pub effect_ratio: f64,
    /// What it helps most: the `id` of an entry of `motion.disturbances`, or `settle` for the time a bump takes to die.
    pub what: &'static str,
    /// Growth of the star by it, at worst; null for the time of a bump and where the eye's movement is judged.
    pub star_growth: Option<Grown>,
    /// The movement or the time before, at worst.
    pub before: f64,
    /// The same after.
    pub after: f64,
    /// Unit of both.
    pub unit: Unit,
    /// What else changes by a fiftieth or more, for better or worse, the largest change first.
    pub also: Vec<SideEffect>,
}

/// Growth of the star's width, at worst.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Grown {
    /// Before the change.
    pub before_ratio: f64,
    /// After it.
    pub after_ratio: f64,
}

/// What a change does besides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SideEffect {
    /// The `id` of a disturbance, or `settle`.
    pub what: &'static str,
    /// Change of the figure that it is judged by, over that figure.
    pub effect_ratio: f64,
}
