//! What the measurements of a finished pier say: the names that stay, and room for more.

use serde_json::{Map, Value, json};

/// Unknowns and shares, each with its low, typical and high end.
const RANGES: [(&str, &str); 6] = [
    ("shear_modulus_mpa", "How stiff the ground is."),
    (
        "side_contact_ratio",
        "Share of the block's sides that the ground holds, from the base up.",
    ),
    (
        "base_joint_stiffness_n_m_per_rad",
        "The joint under the column.",
    ),
    (
        "column_stiffness_ratio",
        "The column with its fill, over the plan's.",
    ),
    ("mount_stiffness_n_m_per_rad", "The mount."),
    ("frequency_hz", "First frequency with mount and telescope."),
];
/// Parts of the first swing's strain energy.
const SHARES: [&str; 4] = ["ground", "joint", "column", "mount"];
/// Names in an agreement.
const AGREEMENT: [&str; 11] = [
    "measurement",
    "measured",
    "sd_ratio",
    "foreseen",
    "foreseen_between",
    "fitted",
    "fitted_between",
    "surprise",
    "left_out",
    "unit",
    "says",
];
/// Names in a suspect.
const SUSPECT: [&str; 3] = ["field", "shift", "says"];
/// Names in a remedy.
const REMEDY: [&str; 9] = [
    "id",
    "says",
    "frequency_from_hz",
    "frequency_to_hz",
    "stiffer_ratio",
    "tilt_from_arcsec",
    "tilt_to_arcsec",
    "fields",
    "not_in_plan",
];
/// Names in what a symptom points to.
const SYMPTOM: [&str; 4] = ["symptom", "points_to", "agrees", "says"];
/// Names in two unknowns that are bound to each other.
const TOGETHER: [&str; 4] = ["first", "second", "correlation", "says"];

/// The schema.
pub(super) fn schema() -> Value {
    let number = json!({ "type": ["number", "null"] });
    let pair = json!({ "type": ["array", "null"], "items": { "type": "number" }, "minItems": 2, "maxItems": 2 });
    let words = json!({ "type": "string" });
    let mut properties = Map::new();
    for (name, said) in RANGES {
        properties.insert(name.to_owned(), range(said));
    }
    let shares: Map<String, Value> = SHARES
        .iter()
        .map(|name| ((*name).to_owned(), range("")))
        .collect();
    let agreement = list(
        "Each measurement beside what was foreseen and what the fitted pier shows.",
        &AGREEMENT,
        json!({
            "measurement": words, "measured": number, "foreseen": number, "fitted": number, "unit": words, "says": words,
            "sd_ratio": { "type": "number", "description": "Standard deviation over the figure, with what the model is wrong by." },
            "foreseen_between": pair,
            "fitted_between": pair,
            "surprise": { "type": "number", "description": "How far it lies from what was foreseen, in standard deviations of all that is uncertain." },
            "left_out": { "type": ["number", "null"], "description": "The same from what all other measurements say." }
        }),
    );
    let suspects = list(
        "What is unlikely to be right of what was said or assumed, most suspicious first.",
        &SUSPECT,
        json!({
            "field": { "type": "string", "description": "The plan's answer, or commissioning where a measurement is suspected." },
            "shift": { "type": "number" },
            "says": words
        }),
    );
    let remedies = list(
        "What would help, most first, each worked out on the fitted pier.",
        &REMEDY,
        json!({
            "id": words, "says": words,
            "frequency_from_hz": { "type": "number" },
            "frequency_to_hz": { "type": "number" },
            "stiffer_ratio": { "type": "number", "description": "How many times less a push at the telescope turns it." },
            "tilt_from_arcsec": { "type": ["number", "null"], "description": "Tilt under a person at the worst place as it stands; null where the remedy is for the swing." },
            "tilt_to_arcsec": { "type": ["number", "null"], "description": "The same afterwards." },
            "fields": {
                "type": "array",
                "description": "The plan's answers that it changes; empty where it is done on the pier and no answer says it.",
                "items": { "type": "object", "required": ["field", "value"], "properties": { "field": words } }
            },
            "not_in_plan": { "type": ["string", "null"], "description": "What is done on the pier and stands in no answer of the plan." }
        }),
    );
    let symptoms = list(
        "What each symptom points to.",
        &SYMPTOM,
        json!({
            "symptom": words,
            "points_to": { "type": "array", "items": words },
            "agrees": { "type": ["boolean", "null"], "description": "Whether the fit says the same; null where it cannot tell." },
            "says": words
        }),
    );
    let together = list(
        "Unknowns that cannot be told apart, those that go together most first.",
        &TOGETHER,
        json!({
            "first": words, "second": words, "says": words,
            "correlation": { "type": "number", "minimum": -1, "maximum": 1 }
        }),
    );
    for (name, schema) in [
        ("symptoms", symptoms),
        ("together", together),
        (
            "holds",
            json!({ "type": "boolean", "description": "Whether there is an answer; otherwise the measurements contradict each other." }),
        ),
        (
            "shares",
            json!({ "type": "object", "required": SHARES, "properties": shares }),
        ),
        ("agreement", agreement),
        (
            "chance_ratio",
            json!({ "type": ["number", "null"], "description": "How often a pier of this plan would differ as much as all measurements together do." }),
        ),
        ("says", json!({ "type": "array", "items": words })),
        ("suspects", suspects),
        ("not_told", json!({ "type": "array", "items": words })),
        (
            "next",
            json!({ "type": ["object", "null"], "description": "The one further measurement that would decide most.", "required": ["id", "says"], "properties": { "id": words, "says": words } }),
        ),
        ("remedies", remedies),
        (
            "motion",
            json!({ "type": ["object", "null"], "description": "What the star does on the fitted pier, with the names of `motion`. The planned figures stay in `motion`." }),
        ),
    ] {
        properties.insert(name.to_owned(), schema);
    }
    let required: Vec<_> = properties.keys().cloned().collect();
    json!({
        "type": ["object", "null"],
        "description": "What the plan's `commissioning` says of the finished pier; null where nothing was measured or the ground is not known.",
        "required": required,
        "properties": properties
    })
}

fn range(said: &str) -> Value {
    let end = json!({ "type": ["number", "null"] });
    json!({
        "type": "object",
        "description": said,
        "required": ["low", "typical", "high", "told"],
        "properties": {
            "low": end, "typical": end, "high": end,
            "told": { "type": "boolean", "description": "Whether the measurements told of it; where not, this is what the plan said." }
        }
    })
}

fn list(said: &str, names: &[&str], properties: Value) -> Value {
    json!({
        "type": "array",
        "description": said,
        "items": { "type": "object", "required": names, "properties": properties }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::planned::Planned;
    use crate::shelf::MemoryShelf;
    use stillground::site_plan::SitePlan;
    use stillground::site_plan::commissioning::{Direction, Knock};

    #[test]
    fn a_measured_design_has_every_name_that_the_schema_promises() {
        let mut plan = SitePlan::unknown();
        plan.commissioning.knocks.push(Knock {
            direction: Direction::X,
            with_mount: true,
            frequency_hz: 14.0,
            frequency_sd_hz: None,
            damping_ratio: None,
            mode: None,
        });
        let shelf = MemoryShelf::new();
        let fitted = Planned::of(&plan, &shelf)
            .map(|planned| planned.improve(&shelf))
            .map(|planned| serde_json::to_value(&planned.design.fitted).unwrap_or_default())
            .map_err(|problems| problems.to_string())
            .unwrap();
        let schema = schema();
        let names = schema["required"].as_array().unwrap();
        assert!(names.len() > 14, "{names:?}");
        for name in names {
            let name = name.as_str().unwrap();
            assert!(fitted.get(name).is_some(), "fitted.{name}");
        }
        for (place, wanted) in [("agreement", &AGREEMENT[..]), ("remedies", &REMEDY[..])] {
            let first = &fitted[place][0];
            for name in wanted {
                assert!(first.get(name).is_some(), "{place}: {name} in {first}");
            }
        }
        for (name, _) in RANGES {
            assert!(fitted[name]["told"].is_boolean(), "{name}");
        }
    }
}
