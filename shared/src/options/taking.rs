//! Taking a way or a change: its answers written into the plan, those that are sizes marked as the planner's.

use crate::field::Path;
use crate::site_plan::SitePlan;
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::{path, paths};

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

/// The plan with the answers of a change. `sized` is the same plan with the sizes that were chosen together for it: the change
/// was worked out on those, so that they are written down with it. None where a field is not one that a change can name.
pub fn changed(plan: &SitePlan, sized: &SitePlan, fields: &[NewField]) -> Option<SitePlan> {
    let mut made = sized.clone();
    for new in fields {
        put(&mut made, new)?;
    }
    made.mark_chosen(plan);
    Some(made)
}

fn put(plan: &mut SitePlan, new: &NewField) -> Option<()> {
    match &new.value {
        NewValue::Number(value) => {
            let number = SitePlan::number(&new.field)?;
            (number.set)(plan, Some(*value));
        }
        NewValue::Text(key) => write(plan, new, Some(key))?,
        NewValue::Stands(stands) => plan.floor.stands = Some(stands.clone()),
        NewValue::Path(places) if new.field == path!(floor.supports) => {
            plan.floor.supports = Some(places.clone());
        }
        NewValue::Path(path) => plan.floor.walk = Some(path.clone()),
        NewValue::Nothing => write(plan, new, None)?,
    }
    Some(())
}

/// Writes the answer of a name, or none.
fn write(plan: &mut SitePlan, new: &NewField, key: Option<&str>) -> Option<()> {
    (SitePlan::other(&new.field)?.set_key)(plan, key).then_some(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::floor::Soles;

    fn new(field: Path, value: NewValue) -> NewField {
        NewField { field, value }
    }

    #[test]
    fn a_change_is_written_with_the_sizes_that_it_was_worked_out_on() {
        let mut plan = SitePlan::unknown();
        plan.pier.tube = Some("CHS 168.3 x 6.3".to_owned());
        let mut sized = plan.clone();
        sized.block.depth_m = Some(0.9);
        let fields = [
            new(path!(pier.tube), NewValue::Nothing),
            new(path!(pier.outside_diameter_mm), NewValue::Number(219.1)),
            new(path!(pier.wall_mm), NewValue::Number(8.0)),
            new(path!(floor.soles), NewValue::Text("soft".to_owned())),
        ];
        let made = changed(&plan, &sized, &fields).unwrap();
        assert_eq!(made.pier.tube, None);
        assert_eq!(made.floor.soles, Some(Soles::Soft));
        let chosen = ["block.depth_m", "pier.outside_diameter_mm", "pier.wall_mm"];
        assert_eq!(made.chosen, chosen, "soles are no size");
        assert!(made.validate().is_ok());
    }

    #[test]
    fn what_no_change_names_is_written_by_none() {
        let plan = SitePlan::unknown();
        let refused = [
            new(path!(pier.fill), NewValue::Number(1.0)),
            new(path!(floor.soles), NewValue::Text("iron".to_owned())),
            new(path!(site.soil), NewValue::Text("cheese".to_owned())),
            new(path!(block.depth_m), NewValue::Nothing),
        ];
        for field in refused {
            assert_eq!(changed(&plan, &plan, &[field]), None);
        }
    }
}
