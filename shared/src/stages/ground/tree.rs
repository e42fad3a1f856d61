//! Trees: how far one dries the ground, and what follows for clay.

use crate::brief::Brief;
use crate::brief::site::ASSUMED_TREE_HEIGHT_M;
use crate::figure::Unit;
use crate::notes::{Check, Notes};
use crate::paths;
use crate::rules::tree_reach;
use crate::site_plan::site::{Soil, WaterDemand};
use crate::stages::ground::Ground;
use crate::stages::ground::soil_table::Group;

/// The check of stillness that asks where a tree moves the ground.
pub const SEASONS: &str = "motion.tree";
/// A tree near the pier.
pub struct Tree {
    /// Distance from the pier's axis.
    pub distance_m: f64,
    /// Its height.
    pub height_m: f64,
    /// How far it dries the ground.
    pub reach_m: f64,
}

/// The tree that was stated.
pub fn tree(brief: &Brief) -> Option<Tree> {
    let stated = &brief.site.stated;
    let height_m = stated.tree_height_m.unwrap_or(ASSUMED_TREE_HEIGHT_M);
    let demand = stated.tree_water_demand.unwrap_or(WaterDemand::High);
    Some(Tree {
        distance_m: stated.tree_distance_m?,
        height_m,
        reach_m: height_m * tree_reach::over_height_ratio(demand),
    })
}

/// Whether the ground may shrink where a tree dries it: clay, and silt that is not known to be lean.
pub fn may_shrink(soil: Soil, group: Group) -> bool {
    matches!(group, Group::Clay | Group::Silt) || soil == Soil::ShrinkingClay
}

/// Why no figure of bearing or stillness is sure here; none where no tree reaches ground that may shrink.
pub fn unsure(brief: &Brief, soil: Soil, group: Group) -> Option<String> {
    let tree = tree(brief)?;
    if !may_shrink(soil, group) || tree.distance_m > tree.reach_m {
        return None;
    }
    let usual = if tree.distance_m <= 0.5 * tree.reach_m {
        " Moving the pier is the usual answer: one part in a thousand of the block's width is more than three minutes of arc, every season."
    } else {
        ""
    };
    Some(format!(
        "A tree {} high stands {} away and may dry the ground out to {}: clay that shrinks moves with the seasons, so no figure of bearing or \
         stillness is sure here. Move the pier, or have the clay's plasticity tested and the place looked at.{usual}",
        brief.units.say(tree.height_m, Unit::Metre),
        brief.units.say(tree.distance_m, Unit::Metre),
        brief.units.say(tree.reach_m, Unit::Metre),
    ))
}

/// Adds the check.
pub fn notes(brief: &Brief, ground: &Ground, notes: &mut Notes) {
    let Some(tree) = tree(brief) else { return };
    let shrinks = may_shrink(ground.soil, ground.group);
    if shrinks {
        let check = Check::at_least(
            "ground.tree",
            "Is the pier out of reach of the tree's roots?",
            tree.distance_m,
            tree.reach_m,
            Unit::Metre,
            tree_reach::SOURCE,
        )
        .asks_beyond()
        .note(ground.unsure.clone().unwrap_or_else(|| {
            "A tree dries clay within its reach, and the clay moves with the seasons. Felled trees count with the height that they had."
                .to_owned()
        }))
        .moved_by(paths![
            site.tree_distance_m,
            site.tree_height_m,
            site.tree_water_demand,
            site.soil,
        ]);
        if ground.unsure.is_some() {
            notes.check(still(&check));
        }
        notes.check(check);
    }
}

/// The same for stillness: what the tree does to the clay moves the pier with nobody there.
fn still(check: &Check) -> Check {
    let mut still = check.clone().of_stillness();
    still.id = SEASONS;
    still.title = "Does the ground stay as it is through the seasons?".into();
    still
}
