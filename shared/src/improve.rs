//! What would help most: the plan changed in one way after another, and the star looked at again.
//!
//! Each change is a change of the plan's own fields; its effect is what the stages find for the changed plan, so that
//! whoever makes the change finds it again. It is kept out of [`crate::design::design`], which runs in a fraction of the
//! time, and comes with [`crate::decided::design_plan`].

pub(crate) mod change;

use crate::brief::{Brief, resolve};
use crate::figure::Unit;
use crate::halfspace::{Shelf, SmallShelf};
use crate::site_plan::SitePlan;
use crate::stages::block::Block;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::motion::growth::Cost;
use crate::stages::motion::improvement::{Grown, Improvement, SideEffect};
use crate::stages::motion::{self, Budget, Disturbance, Motion};
use crate::stages::{block, floor, ground, ground_stiffness, loads, pier, room};

pub use change::Change;

/// Improvements that are listed.
const MOST: usize = 10;
/// Effects smaller than this are not worth a line.
const LEAST_RATIO: f64 = 0.02;
/// Shapes of block that are tried at once.
const SHAPES: usize = 6;

/// A figure to hold before against after.
#[derive(Debug, Clone, Copy)]
struct Measure {
    id: &'static str,
    /// What it uses of what is asked, at worst: the verdict's own measure, and the order of the list.
    used_ratio: f64,
    /// Growth of the star at worst; none where growth is not what it is judged by.
    growth_ratio: Option<f64>,
    /// Its size at worst.
    size: f64,
    unit: Unit,
}

impl Measure {
    /// The figure that it is judged by.
    fn judged(&self) -> f64 {
        self.growth_ratio.unwrap_or(self.size)
    }
}

/// What was found for the plan as it is.
#[derive(Debug, Clone, Copy)]
pub struct Before<'a> {
    /// The footing.
    pub block: &'a Block,
    /// The ground below it.
    pub stiffness: &'a GroundStiffness,
    /// What the star does.
    pub motion: &'a Motion,
}

/// Finds what would help most, most first.
pub fn find(
    plan: &SitePlan,
    brief: &Brief,
    found: Before<'_>,
    shelf: &dyn Shelf,
) -> Vec<Improvement> {
    let inner = SmallShelf::holding(SHAPES);
    if let Some(solved) = &found.stiffness.pure {
        inner.put(&solved.shape, std::sync::Arc::clone(solved));
    }
    let kept = inner.before(shelf);
    let budget = &found.motion.budget;
    let settle = found.motion.bump.and_then(|bump| bump.worst_settle_s);
    let before = measures(&found.motion.disturbances, settle, budget);
    let mut helps: Vec<(f64, Improvement)> = change::all(plan, brief, found.block)
        .into_iter()
        .filter_map(|change| {
            let (disturbances, settle) = again(&change.plan, &kept)?;
            improvement(change, &before, &measures(&disturbances, settle, budget))
        })
        .collect();
    helps.sort_by(|(a, _), (b, _)| b.total_cmp(a));
    helps
        .into_iter()
        .take(MOST)
        .map(|(_, improvement)| improvement)
        .collect()
}

/// The stages again, as far as the star needs them.
fn again(plan: &SitePlan, shelf: &dyn Shelf) -> Option<(Vec<Disturbance>, Option<f64>)> {
    let brief = resolve(plan).ok()?;
    let ground = ground::stage(&brief).value;
    let room = room::room(&brief, &ground);
    let loads = loads::stage(&brief).value;
    let block = block::stage(&brief, &ground, &room, &loads).value;
    let stiffness = ground_stiffness::stage(&brief, &ground, &block, shelf).value;
    let pier = pier::stage(&brief, &block, &loads).value;
    let floor = floor::stage(&brief, &ground, &block, &pier).value;
    Some(motion::disturbances(
        &brief, &ground, &block, &stiffness, &pier, &floor,
    ))
}

fn measures(disturbances: &[Disturbance], settle_s: Option<f64>, budget: &Budget) -> Vec<Measure> {
    // The second walker only doubles the first.
    let own = disturbances.iter().filter(|one| one.id != "second_person");
    let mut all: Vec<Measure> = own
        .filter_map(|one| {
            let (size, star_growth_ratio) = (one.worst_arcsec?, one.star_growth_ratio?);
            let cost = Cost {
                star_growth_ratio,
                peak_left_ratio: one.peak_left_ratio?,
            };
            let by_growth = budget.measure != motion::Measure::EyeMovement;
            Some(Measure {
                id: one.id,
                used_ratio: budget.used_ratio(&cost, size),
                growth_ratio: by_growth.then_some(star_growth_ratio.worst),
                size,
                unit: Unit::Arcsecond,
            })
        })
        .collect();
    all.extend(settle_s.map(|size| Measure {
        id: "settle",
        used_ratio: size / budget.settle_s,
        growth_ratio: None,
        size,
        unit: Unit::Second,
    }));
    all
}

/// What the change takes most from, in parts of what is asked, and what else it changes.
fn improvement(
    change: Change,
    before: &[Measure],
    after: &[Measure],
) -> Option<(f64, Improvement)> {
    let pairs: Vec<(&Measure, &Measure)> = before
        .iter()
        .filter_map(|old| Some((old, after.iter().find(|new| new.id == old.id)?)))
        .collect();
    let saved = |(old, new): (&Measure, &Measure)| old.used_ratio - new.used_ratio;
    let &(old, new) = pairs
        .iter()
        .max_by(|&&a, &&b| saved(a).total_cmp(&saved(b)))?;
    let effect_ratio = new.judged() / old.judged() - 1.0;
    let Change { words, fields, .. } = change;
    (saved((old, new)) > 0.0 && effect_ratio.is_finite() && effect_ratio < -LEAST_RATIO).then(
        || {
            let also = side_effects(&pairs, old.id);
            let told = Improvement {
                change: words,
                fields,
                effect_ratio,
                what: old.id,
                star_growth: old.growth_ratio.zip(new.growth_ratio).map(
                    |(before_ratio, after_ratio)| Grown {
                        before_ratio,
                        after_ratio,
                    },
                ),
                before: old.size,
                after: new.size,
                unit: old.unit,
                also,
            };
            (saved((old, new)), told)
        },
    )
}

fn side_effects(pairs: &[(&Measure, &Measure)], main: &str) -> Vec<SideEffect> {
    let mut also: Vec<SideEffect> = pairs
        .iter()
        .filter(|(old, _)| old.id != main)
        .map(|(old, new)| SideEffect {
            what: old.id,
            effect_ratio: new.judged() / old.judged() - 1.0,
        })
        .filter(|effect| {
            effect.effect_ratio.is_finite() && effect.effect_ratio.abs() >= LEAST_RATIO
        })
        .collect();
    also.sort_by(|a, b| b.effect_ratio.abs().total_cmp(&a.effect_ratio.abs()));
    also
}
