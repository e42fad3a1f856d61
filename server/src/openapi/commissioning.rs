//! What was measured of a pier that stands: the names that stay.

use serde_json::{Map, Value, json};
use stillground::site_plan::commissioning::{
    Bound, Direction, MOST, OF_KNOCK, OF_LEAN, OF_PULL, OF_SYMPTOMS,
};

/// All of it.
pub(super) fn schema() -> Value {
    let knock = measurement(
        &OF_KNOCK,
        &["frequency_hz"],
        &[
            ("direction", direction()),
            (
                "with_mount",
                json!({ "type": "boolean", "description": "Whether mount and telescope were on the pier; otherwise nothing was." }),
            ),
        ],
    );
    let lean = measurement(&OF_LEAN, &["x_m", "y_m", "mass_kg", "tilt_arcsec"], &[]);
    let pull = measurement(
        &OF_PULL,
        &["height_m", "force_n", "tilt_arcsec"],
        &[("direction", direction())],
    );
    let mut symptoms = numbers(&OF_SYMPTOMS, &[]);
    for (name, said) in [
        ("in_wind", "It trembles in the wind."),
        ("at_steps", "It trembles when somebody steps near it."),
        ("at_touch", "It trembles when it is touched."),
        ("at_slew", "It trembles when the mount slews."),
    ] {
        symptoms.insert(
            name.to_owned(),
            json!({ "type": ["boolean", "null"], "description": said }),
        );
    }
    let rows = |row: Value| json!({ "type": "array", "maxItems": MOST, "items": row });
    json!({
        "type": "object",
        "additionalProperties": false,
        "default": {},
        "description": "What was measured of a pier that stands. A design then has `fitted`, what it says of the pier.",
        "properties": {
            "knocks": rows(knock),
            "leans": rows(lean),
            "pulls": rows(pull),
            "symptoms": { "type": "object", "additionalProperties": false, "properties": symptoms }
        }
    })
}

fn direction() -> Value {
    json!({ "type": "string", "enum": Direction::KEYS, "description": "East and west, or north and south." })
}

fn measurement(bounds: &[Bound], needed: &[&str], others: &[(&str, Value)]) -> Value {
    let mut properties = numbers(bounds, needed);
    let mut required: Vec<&str> = needed.to_vec();
    for (name, schema) in others {
        properties.insert((*name).to_owned(), schema.clone());
        required.push(name);
    }
    json!({ "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

fn numbers(bounds: &[Bound], needed: &[&str]) -> Map<String, Value> {
    bounds
        .iter()
        .map(|bound| {
            let kind = if bound.name == "mode" {
                "integer"
            } else {
                "number"
            };
            let kind = if needed.contains(&bound.name) {
                json!(kind)
            } else {
                json!([kind, "null"])
            };
            let schema = json!({
                "type": kind,
                "minimum": bound.least,
                "maximum": bound.most,
                "description": format!("{} {}", bound.unit, bound.why).trim()
            });
            (bound.name.to_owned(), schema)
        })
        .collect()
}
