//! Taking a way: its answers written into the plan, marked as the planner's.

use crate::site_plan::SitePlan;
use crate::stages::motion::improvement::NewValue;

use super::Point;

/// The plan with a point's answers in place of what was taken before; what the person said stays as it is.
#[must_use]
pub fn taken(plan: &SitePlan, point: &Point) -> SitePlan {
    let open = plan.left_open();
    let mut made = open.clone();
    for new in &point.fields {
        let number = SitePlan::numbers().find(|number| number.path == new.field);
        if let (Some(number), NewValue::Number(value)) = (number, &new.value) {
            (number.set)(&mut made, Some(*value));
        }
    }
    made.pier.fill.get_or_insert(point.pier.fill);
    made.pier.levelling.get_or_insert(point.pier.levelling);
    made.mark_chosen(&open);
    made
}
