//! What is looked at and measured, task by task.

mod bands;
mod bonding;
mod digging;
mod dowels;
mod frost;
mod pouring;
mod proving;
mod standing;
mod tightening;
mod upright;

use super::item::Item;
use crate::brief::Brief;
use crate::design::Design;
use crate::figure::UnitOf;
use crate::stages::schedule::MEASURE;
use crate::units::customary::INCH_MM;

/// What the items are made from.
struct Job<'a> {
    brief: &'a Brief,
    design: &'a Design,
}

impl Job<'_> {
    fn say<Q>(&self, quantity: Q, unit: impl UnitOf<Q>) -> String {
        self.brief.units.say(quantity, unit)
    }

    /// Of two limits, in mm and in inches, the one that a tape of what is sold shows, mm.
    fn limit_mm(&self, millimetres: f64, inches: f64) -> f64 {
        self.brief.stock.value.either(millimetres, inches * INCH_MM)
    }
}

/// Everything that is looked at and measured for a plan, in the order of the work; only for tasks that it has.
pub fn items(brief: &Brief, design: &Design) -> Vec<Item> {
    let job = Job { brief, design };
    let mut items = Vec::new();
    digging::items(&job, &mut items);
    dowels::items(&job, &mut items);
    pouring::items(&job, &mut items);
    frost::items(&job, &mut items);
    bonding::items(&job, &mut items);
    standing::items(&job, &mut items);
    tightening::items(&job, &mut items);
    proving::items(&job, &mut items);
    upright::items(&job, &mut items);
    items.retain(|item| {
        item.task == MEASURE || design.schedule.iter().any(|task| task.id == item.task)
    });
    items
}
