//! How long the plan's waits last at the temperatures that were recorded: by the plan's own rules, with the recorded figure in
//! place of the planned one.

use super::reading::Reading;
use crate::brief::Brief;
use crate::figure::Celsius;
use crate::stages::schedule::{self, Task};

/// A wait as the record leaves it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Wait {
    /// The task's name.
    pub(super) id: &'static str,
    /// Hours.
    pub(super) hours: f64,
    /// The recorded temperature in words; none where the planned one holds.
    pub(super) at: Option<String>,
}

/// The last recorded figure of an item.
fn recorded(readings: &[Reading<'_>], task: &str, item: &str) -> Option<f64> {
    readings
        .iter()
        .rev()
        .filter(|reading| reading.counts() && reading.entry.task == task)
        .filter(|reading| reading.entry.item.as_deref() == Some(item))
        .find_map(|reading| reading.entry.value)
}

/// The waits of a schedule, each by the recorded temperature where there is one.
pub(super) fn all(brief: &Brief, tasks: &[Task], readings: &[Reading<'_>]) -> Vec<Wait> {
    let concrete = recorded(readings, "pour", "air_temperature");
    let resin = recorded(readings, "bond", "bond_temperature");
    let say = |value: f64| format!("at the recorded {}", brief.units.say(value, Celsius));
    let wait = |task: &Task| {
        let measured = if task.id == "resin_cures" {
            resin
        } else {
            concrete
        };
        let found =
            measured.and_then(|value| Some((value, schedule::wait_hours(brief, task.id, value)?)));
        Wait {
            id: task.id,
            hours: found.map_or(task.lasts_h, |(_, hours)| hours),
            at: found.map(|(value, _)| say(value)),
        }
    };
    tasks.iter().filter(|task| task.wait).map(wait).collect()
}
