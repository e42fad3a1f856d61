//! Lines of calculation that a figure links to.

use stillground::figure::Units;
use stillground::notes::{Stage, Working};

/// A line of calculation.
#[derive(Debug, Clone)]
pub struct WorkingView {
    /// Its anchor on the page.
    pub anchor: String,
    /// What is found.
    pub title: String,
    /// The formula.
    pub formula: &'static str,
    /// Inputs, each a symbol and a figure.
    pub inputs: Vec<(&'static str, String)>,
    /// The result's symbol.
    pub symbol: &'static str,
    /// The result.
    pub result: String,
    /// Where the formula comes from.
    pub source: String,
}

impl WorkingView {
    /// A working in the reader's units.
    #[must_use]
    pub fn of(working: &Working, units: Units) -> Self {
        Self {
            anchor: anchor(working.id),
            title: crate::views::words::sentence(&working.title)
                .trim_end_matches('.')
                .to_owned(),
            formula: working.formula,
            inputs: working
                .inputs
                .iter()
                .map(|input| (input.symbol, units.say(input.value, input.unit)))
                .collect(),
            symbol: working.symbol,
            result: units.say(working.value, working.unit),
            source: working.source.to_string(),
        }
    }
}

/// The anchor of a working.
#[must_use]
pub fn anchor(id: &str) -> String {
    format!(
        "how-{}",
        id.replace(|c: char| !c.is_ascii_alphanumeric(), "-")
    )
}

/// The anchor of the working behind a quantity: the one of its name, or the first whose name begins so.
#[must_use]
pub fn find(workings: &[Working], quantity: &str) -> Option<String> {
    let exact = workings.iter().find(|working| working.id == quantity);
    let begins = || {
        workings
            .iter()
            .find(|working| working.id.starts_with(quantity))
    };
    exact.or_else(begins).map(|working| anchor(working.id))
}

/// The calculations of a stage.
#[derive(Debug, Clone)]
pub struct Group {
    /// What they are about.
    pub title: &'static str,
    /// The calculations.
    pub workings: Vec<WorkingView>,
}

/// What the calculations of a stage are about.
const fn about(stage: Stage) -> &'static str {
    match stage {
        Stage::Loads => "Loads at the column’s foot",
        Stage::Ground => "Ground",
        Stage::Excavation => "Pit and spoil",
        Stage::Block => "Footing",
        Stage::GroundStiffness => "Stiffness of the ground under the footing",
        Stage::Pier => "Column",
        Stage::Joint => "Joint at the column’s foot",
        Stage::Anchors => "Studs",
        Stage::Floor => "Floor",
        Stage::Motion => "Motion of the star",
        Stage::North => "True north",
        Stage::Work => "Others",
    }
}

/// The calculations by stage; those of no stage come last, so that none is lost.
#[must_use]
pub fn groups(workings: &[Working], units: Units) -> Vec<Group> {
    let group = |stage| Group {
        title: about(stage),
        workings: workings
            .iter()
            .filter(|working| working.stage() == stage)
            .map(|working| WorkingView::of(working, units))
            .collect(),
    };
    Stage::ALL
        .into_iter()
        .chain([Stage::Work])
        .map(group)
        .filter(|group| !group.workings.is_empty())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::figure::One;
    use stillground::source::Source;

    #[test]
    fn no_calculation_is_lost_in_the_groups() {
        let working = |id| {
            Working::new(id, "what", "a = b", Source::judgement("a test")).gives("a", 1.0, One)
        };
        let all = [
            working("block.mass"),
            working("new.thing"),
            working("ground.unit_weight"),
            working("block.volume"),
        ];
        let groups = groups(&all, Units::Metric);
        let found: Vec<_> = groups
            .iter()
            .map(|group| (group.title, group.workings.len()))
            .collect();
        assert_eq!(found, [("Ground", 1), ("Footing", 2), ("Others", 1)]);
    }
}
