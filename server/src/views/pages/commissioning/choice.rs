//! What is chosen of a measurement: direction, what stands on the pier, which swing.

use stillground::site_plan::commissioning::{Direction, MeasurementKind};

use super::Shown;
use crate::forms::commissioning::{DIRECTION, ON_THE_PIER};

/// A choice.
#[derive(Debug, Clone)]
pub struct ChoiceView {
    /// Its name.
    pub name: &'static str,
    /// Its label.
    pub label: &'static str,
    /// Key, words, chosen.
    pub options: Vec<(&'static str, &'static str, bool)>,
    /// Whether one has to be chosen: no direction is assumed.
    pub needed: bool,
    /// What is wrong with it.
    pub error: Option<String>,
}

/// The choices of a measurement, as the form brought them.
#[must_use]
pub fn choices(kind: MeasurementKind, shown: &Shown) -> Vec<ChoiceView> {
    let direction = [Direction::X, Direction::Y].map(|one| (one.key(), one.words()));
    let view = |name: &'static str,
                label: &'static str,
                options: &[(&'static str, &'static str)],
                needed: bool| {
        let chosen = shown.sheet.text(name).unwrap_or_default();
        let nothing = needed.then_some(("", "choose"));
        let mut faults = shown.faults.iter();
        ChoiceView {
            name,
            label,
            options: nothing
                .iter()
                .chain(options)
                .map(|(key, words)| (*key, *words, *key == chosen))
                .collect(),
            needed,
            error: faults
                .find(|(at, _)| at == name)
                .map(|(_, said)| said.clone()),
        }
    };
    let direction = view("direction", DIRECTION, &direction, true);
    match kind {
        MeasurementKind::Lean => Vec::new(),
        MeasurementKind::Pull => vec![direction],
        MeasurementKind::Knock => vec![
            direction,
            view(
                "with_mount",
                ON_THE_PIER,
                &[("yes", "mount and telescope"), ("no", "nothing")],
                true,
            ),
            view(
                "mode",
                "Which swing",
                &[("1", "the slowest"), ("2", "the second slowest")],
                false,
            ),
        ],
    }
}
