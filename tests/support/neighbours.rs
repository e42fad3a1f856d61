//! What holds between a plan and its neighbour, whatever the plan: one answer is moved, and what must not get better by it
//! does not; or it is moved by very little, and nothing jumps.

pub mod figures;
mod jumps;
mod laws;
mod steps;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::notes::AssumedValue;
use stillground::site_plan::SitePlan;
use stillground::units::{metre, millimetre};

pub use jumps::{Jump, Search, is_shaped, movable};
pub use laws::{LAWS, Law, broken};
pub use steps::{STEPS, rule_of};

/// Sizes of the studs that the engine chooses by other answers.
const STUDS: [&str; 5] = [
    "anchors.count",
    "anchors.length_mm",
    "anchors.embedment_mm",
    "anchors.circle_diameter_mm",
    "anchors.hole_diameter_mm",
];

/// Sizes of which the others follow.
const CHIEF: [&str; 5] = [
    "block.length_m",
    "block.width_m",
    "block.depth_m",
    "pier.outside_diameter_mm",
    "pier.wall_mm",
];

/// A plan whose sizes are all said, so that a neighbour differs in the one answer alone; none where the sizes of block or tube that
/// were chosen contradict what the plan says once they are said themselves.
#[must_use]
pub fn pinned(plan: &SitePlan, brief: &Brief, found: &Design) -> Option<SitePlan> {
    let mut plan = plan.clone();
    // Before the studs' other sizes, which hang on it.
    try_with(&mut plan, |plan| {
        plan.anchors.size.get_or_insert(brief.anchors.size.value);
    });
    try_with(&mut plan, |plan| {
        let remedy = found.block.side_frost.remedy;
        plan.block.frost_remedy.get_or_insert(remedy);
    });
    for (path, value) in [
        ("block.length_m", metre::get(found.block.length)),
        ("block.width_m", metre::get(found.block.width)),
        ("block.depth_m", metre::get(found.block.depth)),
        ("block.upstand_m", metre::get(found.block.upstand)),
        ("block.side_contact_from_m", 0.0),
        ("block.side_contact_to_m", metre::get(found.block.depth)),
        (
            "pier.outside_diameter_mm",
            millimetre::get(found.pier.outside_diameter),
        ),
        ("pier.wall_mm", millimetre::get(found.pier.wall)),
        ("floor.level_m", metre::get(brief.floor.level.value)),
    ] {
        say(&mut plan, path, value);
    }
    for assumption in &brief.assumptions {
        let chosen = assumption.field.starts_with("pier.") || STUDS.contains(&&*assumption.field);
        if let (true, AssumedValue::Number(value)) = (chosen, &assumption.value) {
            say(&mut plan, &assumption.field, *value);
        }
    }
    let said = |path: &&str| {
        SitePlan::numbers().any(|field| field.path == *path && (field.get)(&plan).is_some())
    };
    let chief = CHIEF.iter().filter(|path| {
        // A tube that is named has its sizes.
        !(path.starts_with("pier.") && plan.pier.tube.is_some())
    });
    chief.copied().all(|path| said(&path)).then_some(plan)
}

/// Changes a plan unless it contradicts itself then.
fn try_with(plan: &mut SitePlan, change: impl Fn(&mut SitePlan)) {
    let mut other = plan.clone();
    change(&mut other);
    if other.validate().is_ok() {
        *plan = other;
    }
}

/// Says what is not said yet and contradicts nothing.
fn say(plan: &mut SitePlan, path: &str, value: f64) {
    if let Some(field) = SitePlan::numbers().find(|field| field.path == path)
        && (field.get)(plan).is_none()
    {
        try_with(plan, |plan| {
            (field.set)(plan, Some(value.clamp(field.least, field.most)))
        });
    }
}
