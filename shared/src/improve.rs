//! What would help most: the plan changed in one way after another, and the star looked at again.
//!
//! Each change is a change of the plan's own fields; its effect is what the stages find for the changed plan, so that
//! whoever makes the change finds it again. It is kept out of [`crate::design::design`], which runs in a fraction of the
//! time, and comes with [`crate::design::design_plan`].

mod change;

use serde::Serialize;

use crate::brief::{Brief, resolve};
use crate::design::Design;
use crate::figure::Unit;
use crate::halfspace::{Shelf, SmallShelf};
use crate::site_plan::{SitePlan, Stand};
use crate::stages::motion::{self, Disturbance};
use crate::stages::{block, floor, ground, ground_stiffness, pier, room};

pub use change::Change;

/// Improvements that are listed.
const MOST: usize = 8;
/// Effects smaller than this are not worth a line.
const LEAST_RATIO: f64 = 0.01;
/// Shapes of block that are tried at once.
const SHAPES: usize = 6;

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
}

/// A figure to hold before against after: its name, its size, and what it is allowed.
#[derive(Debug, Clone, Copy)]
struct Measure {
    id: &'static str,
    size: f64,
    allowed: f64,
    unit: Unit,
}

/// Finds what would help most, most first.
#[must_use]
pub fn find(plan: &SitePlan, brief: &Brief, design: &Design, shelf: &dyn Shelf) -> Vec<Improvement> {
    let kept = Beside { outer: shelf, inner: SmallShelf::holding(SHAPES) };
    if let Some(solved) = &design.ground_stiffness.solved {
        kept.inner.put(&solved.shape, std::sync::Arc::clone(solved));
    }
    let budget = &design.motion.budget;
    let settle = design.motion.bump.and_then(|bump| bump.worst_settle_s);
    let before = measures(&design.motion.disturbances, settle, (budget.arcsec, budget.settle_s));
    let mut found: Vec<(f64, Improvement)> = change::all(plan, brief, design)
        .into_iter()
        .filter_map(|change| {
            let (disturbances, settle) = again(&change.plan, &kept)?;
            improvement(change, &before, &measures(&disturbances, settle, (budget.arcsec, budget.settle_s)))
        })
        .collect();
    found.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    found.into_iter().take(MOST).map(|(_, improvement)| improvement).collect()
}

/// The stages again, as far as the star needs them.
fn again(plan: &SitePlan, shelf: &dyn Shelf) -> Option<(Vec<Disturbance>, Option<f64>)> {
    let brief = resolve(plan).ok()?;
    let ground = ground::stage(&brief).value;
    let room = room::room(&brief, &ground);
    let block = block::stage(&brief, &ground, &room).value;
    let stiffness = ground_stiffness::stage(&brief, &ground, &block, shelf).value;
    let pier = pier::stage(&brief, &block).value;
    let floor = floor::stage(&brief, &ground, &block, &pier).value;
    Some(motion::disturbances(&brief, &ground, &block, &stiffness, &pier, &floor))
}

fn measures(disturbances: &[Disturbance], settle_s: Option<f64>, (arcsec, seconds): (f64, f64)) -> Vec<Measure> {
    // The second walker only doubles the first.
    let own = disturbances.iter().filter(|one| one.id != "second_person");
    let mut all: Vec<Measure> =
        own.filter_map(|one| Some(Measure { id: one.id, size: one.worst_arcsec?, allowed: arcsec, unit: Unit::Arcsecond })).collect();
    all.extend(settle_s.map(|size| Measure { id: "settle", size, allowed: seconds, unit: Unit::Second }));
    all
}

/// The figure that the change takes most from, in parts of what is allowed.
fn improvement(change: Change, before: &[Measure], after: &[Measure]) -> Option<(f64, Improvement)> {
    let (saved, old, new) = before
        .iter()
        .filter_map(|old| {
            let new = after.iter().find(|new| new.id == old.id)?;
            Some(((old.size - new.size) / old.allowed, old, new))
        })
        .max_by(|(a, ..), (b, ..)| a.total_cmp(b))?;
    let effect_ratio = new.size / old.size - 1.0;
    (saved > 0.0 && effect_ratio.is_finite() && effect_ratio < -LEAST_RATIO).then(|| {
        let Change { words, fields, .. } = change;
        (saved, Improvement { change: words, fields, effect_ratio, what: old.id, before: old.size, after: new.size, unit: old.unit })
    })
}

/// A shelf of one's own before the one that was brought, so that a shape is solved once even where nothing is kept.
struct Beside<'a> {
    outer: &'a dyn Shelf,
    inner: SmallShelf,
}

impl Shelf for Beside<'_> {
    fn get(&self, shape: &crate::halfspace::Shape) -> Option<std::sync::Arc<crate::halfspace::Solved>> {
        self.inner.get(shape).or_else(|| self.outer.get(shape))
    }

    fn put(&self, shape: &crate::halfspace::Shape, solved: std::sync::Arc<crate::halfspace::Solved>) {
        self.inner.put(shape, std::sync::Arc::clone(&solved));
        self.outer.put(shape, solved);
    }
}
