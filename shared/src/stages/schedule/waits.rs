//! How long a wait lasts at another temperature than the planned one, by the same rules.

use crate::brief::Brief;
use crate::brief::anchors::product;
use crate::stages::anchors::setting;
use crate::stages::block;
use crate::units::{day, hour};

/// Hours of a wait if the work's temperature, or for the resin that of the concrete, were so many °C; none for a wait that follows
/// no temperature, and where the resin has no time at it.
pub fn wait_hours(brief: &Brief, task: &str, temperature_c: f64) -> Option<f64> {
    let mut other = brief.clone();
    other.work.temperature_c.value = temperature_c;
    let hours = match task {
        "cure" => 24.0 * day::get(block::days(&other).curing),
        "harden" => 24.0 * day::get(block::days(&other).drill),
        "full_strength" => 24.0 * day::get(block::days(&other).load),
        "resin_cures" => {
            let bare = product::cure_at(brief, temperature_c)?;
            hour::get(setting::cure_in_hole(brief, bare))
        }
        _ => return None,
    };
    Some(super::quarters(hours))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief::resolve;
    use crate::design::design;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;

    /// One rule: at the planned temperature a wait lasts what the schedule has, and colder is never quicker.
    #[test]
    fn at_the_planned_temperature_the_waits_are_the_schedules() {
        for temperature in [6.0, 10.0, 20.0] {
            let mut plan = SitePlan::unknown();
            plan.work.temperature_c = Some(temperature);
            plan.anchors.concrete_temperature_c = Some(temperature);
            let brief = resolve(&plan).unwrap();
            let schedule = design(&brief, &NoShelf).schedule;
            for id in ["cure", "harden", "full_strength", "resin_cures"] {
                let task = schedule.iter().find(|task| task.id == id).unwrap();
                assert_eq!(
                    wait_hours(&brief, id, temperature),
                    Some(task.lasts_h),
                    "{id}"
                );
                let colder = wait_hours(&brief, id, temperature - 1.0);
                assert!(colder.is_none_or(|colder| colder >= task.lasts_h), "{id}");
            }
        }
    }
}
