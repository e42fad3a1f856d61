//! The schema of a design: the names that stay, and room for more.

use serde_json::{Map, Value, json};

/// Sections of figures and the names in them that stay. A name may be null where nothing can be said.
pub(super) const FIGURES: &[(&str, &[&str])] = &[
    ("ground", &["unit_weight_kn_m3", "poisson_ratio"]),
    (
        "excavation",
        &[
            "length_m",
            "width_m",
            "depth_m",
            "volume_m3",
            "spoil_volume_m3",
        ],
    ),
    (
        "block",
        &[
            "length_m",
            "width_m",
            "depth_m",
            "volume_m3",
            "mass_kg",
            "bearing_pressure_kpa",
        ],
    ),
    (
        "ground_stiffness",
        &[
            "vertical_n_per_m",
            "horizontal_x_n_per_m",
            "horizontal_y_n_per_m",
            "rocking_x_n_m_per_rad",
            "rocking_y_n_m_per_rad",
            "torsion_n_m_per_rad",
            "coupling_x_ry_n_per_rad",
            "coupling_y_rx_n_per_rad",
        ],
    ),
    (
        "pier",
        &[
            "mass_kg",
            "bending_stiffness_n_m2",
            "base_joint_stiffness_n_m_per_rad",
            "top_stiffness_n_per_m",
        ],
    ),
    ("anchors", &["resin_volume_ml"]),
    ("floor", &[]),
    (
        "motion",
        &[
            "wind_arcsec",
            "thermal_arcsec",
            "thermal_difference_k",
            "settle_s",
            "budget_arcsec",
            "quiet_distance_m",
        ],
    ),
];

/// Values with a low, typical and high end.
pub(super) const RANGES: &[(&str, &[&str])] = &[
    ("ground", &["shear_modulus_mpa", "shear_wave_speed_m_s"]),
    ("anchors", &["preload_kn"]),
];

/// Lists and the names in each of their lines.
pub(super) const LISTS: &[(&str, &[&str])] = &[
    (
        "loads",
        &["id", "shear_n", "moment_n_m", "axial_n", "roof", "factor"],
    ),
    (
        "checks",
        &[
            "id",
            "question",
            "title",
            "demand",
            "capacity",
            "unit",
            "utilisation",
            "verdict",
            "source",
        ],
    ),
    ("assumptions", &["field", "value", "why", "effect"]),
    ("cautions", &["id", "text", "when", "source"]),
    (
        "parts",
        &["part", "field", "stock_row", "sold", "says", "source"],
    ),
    (
        "materials",
        &["id", "item", "quantity", "unit", "for", "note", "stock_row"],
    ),
    (
        "schedule",
        &["id", "title", "after", "earliest", "lasts_h", "why"],
    ),
    (
        "workings",
        &[
            "id", "title", "formula", "inputs", "symbol", "value", "unit", "source",
        ],
    ),
    (
        "opinions",
        &[
            "of",
            "title",
            "says",
            "calculation",
            "verdict_words",
            "source",
        ],
    ),
];

/// Names that always have what another name has, and that other one. They stay for programs that read them; a new one reads
/// the second.
pub(super) const REPEATED: [(&str, &str); 7] = [
    ("block.order_volume_m3", "block.concrete.volume_m3"),
    (
        "pier.base_joint_stiffness_n_m_per_rad",
        "anchors.joint.stiffness_n_m_per_rad.typical",
    ),
    ("motion.budget_arcsec", "motion.budget.arcsec"),
    ("motion.quiet_distance_m", "motion.quiet.distance_m"),
    ("motion.settle_s", "motion.bump.settle_s"),
    ("motion.thermal_arcsec", "motion.thermal.arcsec"),
    ("motion.wind_arcsec", "motion.wind.gust_arcsec"),
];

/// The design's schema.
pub(super) fn schema() -> Value {
    let mut properties = Map::new();
    properties.insert("engine_version".to_owned(), json!({ "type": "string" }));
    for (section, names) in FIGURES {
        let figures = names
            .iter()
            .map(|&name| (name.to_owned(), json!({ "type": ["number", "null"] })));
        let ranged = RANGES
            .iter()
            .filter(|(place, _)| place == section)
            .flat_map(|(_, names)| *names);
        let ranges = ranged.map(|&name| (name.to_owned(), range()));
        let members: Map<String, Value> = figures.chain(ranges).collect();
        properties.insert(
            (*section).to_owned(),
            json!({ "type": "object", "properties": members }),
        );
    }
    for (list, names) in LISTS {
        let line = json!({ "type": "object", "required": names });
        properties.insert(
            (*list).to_owned(),
            json!({ "type": "array", "items": line }),
        );
    }
    properties.insert("verdict".to_owned(), verdict());
    properties.insert("fitted".to_owned(), super::fitted::schema());
    if let Some(motion) = properties.get_mut("motion") {
        motion["properties"]["conduct"] = conduct();
        motion["properties"]["improvements"] = improvements();
    }
    for (name, other) in REPEATED {
        let (section, name) = name.split_once('.').unwrap_or((name, ""));
        if let Some(section) = properties.get_mut(section) {
            section["properties"][name] = json!({
                "type": ["number", "null"],
                "deprecated": true,
                "description": format!("Always the same as {other}, which is to be read instead.")
            });
        }
    }
    let required: Vec<_> = properties.keys().cloned().collect();
    json!({
        "type": "object",
        "description": "What was found. Units stand in the names. Further members may be added; these keep their names.",
        "required": required,
        "properties": properties
    })
}

/// The three questions and their answers.
fn verdict() -> Value {
    let ids = json!({ "type": "array", "items": { "type": "string" } });
    json!({
        "type": "object",
        "required": ["build", "still", "conduct_rule"],
        "properties": {
            "build": {
                "type": "object",
                "description": "Whether it may be built: no where a check of building fails, ask where one needs somebody to look.",
                "required": ["says", "because"],
                "properties": { "says": { "enum": ["yes", "no", "ask"] }, "because": ids }
            },
            "still": {
                "type": "object",
                "description": "Growth of the star's width over one exposure with nobody near; judged by the worst.",
                "required": ["star_growth_ratio", "peak_left_ratio", "asked_ratio", "says", "because"],
                "properties": {
                    "star_growth_ratio": outcome(),
                    "peak_left_ratio": outcome(),
                    "asked_ratio": { "type": "number" },
                    "says": { "enum": ["within", "over", null] },
                    "because": ids
                }
            },
            "conduct_rule": { "type": "string", "description": "What people may do while the telescope exposes." }
        }
    })
}

/// What people do and what each of it costs.
fn conduct() -> Value {
    json!({
        "type": "array",
        "description": "What people do while the telescope exposes; it never fails a pier.",
        "items": {
            "type": "object",
            "required": ["id", "event", "star_growth_ratio", "peak_left_ratio", "tilt_arcsec", "rule"],
            "properties": {
                "id": { "type": "string" },
                "event": { "type": "string" },
                "star_growth_ratio": outcome(),
                "peak_left_ratio": outcome(),
                "tilt_arcsec": { "type": ["number", "null"] },
                "rule": { "type": "string" }
            }
        }
    })
}

/// Names in an improvement.
const IMPROVEMENT: [&str; 8] = [
    "change",
    "fields",
    "effect_ratio",
    "what",
    "star_growth",
    "before",
    "after",
    "unit",
];
/// Names in what an improvement does to the star's growth.
const GROWN: [&str; 2] = ["before_ratio", "after_ratio"];

/// What would help most.
fn improvements() -> Value {
    let ratio = json!({ "type": "number" });
    json!({
        "type": "array",
        "description": "Changes of the plan that would help most, the best first. Empty where nothing was asked of it.",
        "items": {
            "type": "object",
            "required": IMPROVEMENT,
            "properties": {
                "change": { "type": "string" },
                "fields": {
                    "type": "array",
                    "description": "Fields of the plan and what to put there.",
                    "items": {
                        "type": "object",
                        "required": ["field", "value"],
                        "properties": { "field": { "type": "string" } }
                    }
                },
                "effect_ratio": {
                    "type": "number",
                    "description": "Change of the figure that it is judged by, over that figure: -0.45 is 45 per cent less."
                },
                "what": {
                    "type": "string",
                    "description": "What it helps most: the id of a disturbance, or settle for the time a bump takes to die."
                },
                "star_growth": {
                    "type": ["object", "null"],
                    "description": "Growth of the star's width by it at worst, before the change and after it; null for the time of a bump and where the eye's movement is judged.",
                    "required": GROWN,
                    "properties": { "before_ratio": ratio, "after_ratio": ratio }
                },
                "before": { "type": "number", "description": "The movement or the time before, at worst." },
                "after": { "type": "number", "description": "The same after." },
                "unit": { "type": "string" }
            }
        }
    })
}

/// What is expected and the unfavourable end.
fn outcome() -> Value {
    let ratio = json!({ "type": ["number", "null"] });
    json!({
        "type": ["object", "null"],
        "required": ["expected", "worst"],
        "properties": { "expected": ratio, "worst": ratio }
    })
}

fn range() -> Value {
    let end = json!({ "type": ["number", "null"] });
    json!({
        "type": ["object", "null"],
        "required": ["low", "typical", "high"],
        "properties": { "low": end, "typical": end, "high": end }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::planned::Planned;
    use crate::shelf::MemoryShelf;
    use stillground::site_plan::SitePlan;

    fn named<'a>(design: &'a Value, path: &str) -> &'a Value {
        path.split('.').fold(design, |value, name| &value[name])
    }

    #[test]
    fn what_is_said_to_repeat_another_does() {
        let shelf = MemoryShelf::new();
        let mut windy = SitePlan::unknown();
        windy.site.shear_wave_speed_m_s = Some(90.0);
        windy.load.settle_s = Some(2.0);
        let mut compared = 0;
        for plan in [SitePlan::unknown(), windy] {
            let design = Planned::of(&plan, &shelf).unwrap().design;
            let design = serde_json::to_value(&design).unwrap();
            for (name, other) in REPEATED {
                assert!(named(&design, name).is_number(), "{name}");
                assert_eq!(named(&design, name), named(&design, other), "{name}");
                compared += 1;
            }
        }
        assert_eq!(compared, 14);
    }

    #[test]
    fn a_design_has_every_name_that_the_schema_promises() {
        let shelf = MemoryShelf::new();
        let planned = Planned::of(&SitePlan::unknown(), &shelf)
            .map(|planned| planned.improve(&shelf))
            .map_err(|problems| problems.to_string());
        let design = planned
            .map(|planned| serde_json::to_value(&planned.design).unwrap_or_default())
            .unwrap_or_default();
        for (section, names) in FIGURES.iter().chain(RANGES) {
            for name in *names {
                assert!(design[section].get(name).is_some(), "{section}.{name}");
            }
        }
        for (list, names) in LISTS {
            for line in design[list]
                .as_array()
                .unwrap_or_else(|| panic!("{list} is no list"))
            {
                for name in *names {
                    assert!(line.get(name).is_some(), "{list}: {name} in {line}");
                }
            }
        }
        let improvements = design["motion"]["improvements"].as_array();
        let improvements = improvements.map(Vec::as_slice).unwrap_or_default();
        assert!(improvements.len() >= 3, "{}", improvements.len());
        let mut grown = 0;
        for improvement in improvements {
            for name in IMPROVEMENT {
                assert!(improvement.get(name).is_some(), "{name} in {improvement}");
            }
            if let Some(growth) = improvement["star_growth"].as_object() {
                grown += 1;
                assert!(GROWN.iter().all(|name| growth[*name].is_number()));
            }
        }
        assert!(grown > 0);
    }
}
