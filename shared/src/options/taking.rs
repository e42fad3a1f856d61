//! Taking a way: its answers written into the plan, those that are sizes marked as the planner's.

use crate::field::Path;
use crate::paths;
use crate::site_plan::SitePlan;
use crate::stages::motion::improvement::NewValue;

use super::Point;

/// The plan with a point's answers in place of what was taken before; what the person said stays as it is.
pub fn taken(plan: &SitePlan, point: &Point) -> SitePlan {
    let open = plan.left_open();
    let mut made = open.clone();
    for new in &point.fields {
        let number = SitePlan::number(&new.field);
        if let (Some(number), NewValue::Number(value)) = (number, &new.value) {
            (number.set)(&mut made, Some(*value));
        }
    }
    let _ = made.pier.fill.get_or_insert(point.pier.fill);
    let _ = made.pier.levelling.get_or_insert(point.pier.levelling);
    made.mark_chosen(&open);
    made
}

/// Answers of a way that are kept together while the others are looked for again.
#[derive(Debug, Clone, Copy)]
pub struct Pin {
    /// Its name in a form.
    pub key: &'static str,
    /// In words.
    pub words: &'static str,
    fields: &'static [Path],
}

/// What can be pinned.
pub const PINS: [Pin; 5] = [
    Pin {
        key: "sides",
        words: "the block's sides",
        fields: paths![block.length_m, block.width_m],
    },
    Pin {
        key: "depth",
        words: "the block's depth",
        fields: paths![block.depth_m],
    },
    Pin {
        key: "tube",
        words: "tube and wall",
        fields: paths![pier.outside_diameter_mm, pier.wall_mm],
    },
    Pin {
        key: "fill",
        words: "what fills the column",
        fields: paths![pier.fill],
    },
    Pin {
        key: "seat",
        words: "nuts or grout",
        fields: paths![pier.levelling],
    },
];

/// The plan with some answers of a point as said by the person, and the others open again.
pub fn pinned(plan: &SitePlan, point: &Point, pin: &Pin) -> SitePlan {
    let mut made = taken(plan, point);
    made.chosen
        .retain(|field| !pin.fields.iter().any(|pinned| pinned == field.as_str()));
    made.left_open()
}
