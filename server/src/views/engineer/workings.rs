//! Calculations as a table: what is found, by which formula, with which numbers.

use stillground::design::Design;
use stillground::figure::Units;
use stillground::notes::{Stage, Working};

use super::Listing;
use crate::views::words::inputs;

/// Whether a calculation stands on the checking engineer's page.
#[must_use]
pub fn of_the_studs(working: &Working) -> bool {
    matches!(working.stage(), Stage::Anchors | Stage::Joint)
        || working.id == "pier.base_joint_stiffness"
}

/// What is neither by one code nor by the other: actions, torque, plate, weld, flexure, stiffness.
pub(super) fn foot(design: &Design, units: Units) -> Listing {
    let common = |working: &&Working| {
        of_the_studs(working)
            && !["anchors.eurocode.", "anchors.aci."]
                .iter()
                .any(|prefix| working.id.starts_with(prefix))
    };
    calculations(
        "Actions, torque, plate, weld and joint".to_owned(),
        design.workings.iter().filter(common),
        units,
    )
}

pub(super) fn calculations<'a>(
    title: String,
    workings: impl Iterator<Item = &'a Working>,
    units: Units,
) -> Listing {
    let row = |working: &Working| {
        let inputs = inputs(working, units);
        vec![
            working.title.clone(),
            working.formula.to_owned(),
            if inputs.is_empty() {
                "–".to_owned()
            } else {
                inputs.join(", ")
            },
            format!(
                "{}\u{a0}=\u{a0}{}",
                working.symbol,
                units.say(working.value, working.unit)
            ),
            working.source.to_string(),
        ]
    };
    Listing {
        title,
        heads: vec![
            ("What is found", 1.3),
            ("Formula", 1.7),
            ("With", 1.8),
            ("Result", 1.1),
            ("Clause and standing", 1.3),
        ],
        rows: workings.map(row).collect(),
    }
}
