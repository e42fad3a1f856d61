//! A plan with other answers written into it: those of a change that would help, of a remedy, of a way to build it.

use crate::path;
use crate::site_plan::SitePlan;
use crate::stages::motion::improvement::{NewField, NewValue};

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
    use crate::field::Path;
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
