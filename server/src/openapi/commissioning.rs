//! What was measured of a pier that stands: the names that stay.

use serde_json::{Map, Value, json};
use stillground::site_plan::commissioning::{
    Bound, Direction, MOST, OF_KNOCK, OF_LEAN, OF_PULL, OF_SYMPTOMS,
};

/// A knock, a lean and a pull by their names.
fn kinds() -> [(&'static str, Value); 3] {
    let knock = measurement(
        &OF_KNOCK,
        &[
            ("direction", direction()),
            (
                "with_mount",
                json!({ "type": "boolean", "description": "Whether mount and telescope were on the pier; otherwise nothing was." }),
            ),
        ],
    );
    let lean = measurement(&OF_LEAN, &[]);
    let pull = measurement(&OF_PULL, &[("direction", direction())]);
    [("knock", knock), ("lean", lean), ("pull", pull)]
}

/// One of them, as an entry of the record has it.
pub(super) fn one() -> Value {
    let one = |(name, schema): (&'static str, Value)| {
        json!({
            "type": "object",
            "additionalProperties": false,
            "required": [name],
            "properties": { name: schema }
        })
    };
    let mut any: Vec<Value> = kinds().into_iter().map(one).collect();
    any.push(json!({ "type": "null" }));
    json!({
        "oneOf": any,
        "description": "A knock, a lean or a pull of the finished pier; its item is knock, lean or pull, its task measure."
    })
}

/// All of it.
pub(super) fn schema() -> Value {
    let [(_, knock), (_, lean), (_, pull)] = kinds();
    let mut symptoms = numbers(&OF_SYMPTOMS);
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

fn measurement(bounds: &[Bound], others: &[(&str, Value)]) -> Value {
    let mut properties = numbers(bounds);
    let needed = bounds.iter().filter(|bound| bound.needed);
    let mut required: Vec<&str> = needed.map(|bound| bound.name).collect();
    for (name, schema) in others {
        properties.insert((*name).to_owned(), schema.clone());
        required.push(name);
    }
    json!({ "type": "object", "additionalProperties": false, "required": required, "properties": properties })
}

fn numbers(bounds: &[Bound]) -> Map<String, Value> {
    bounds
        .iter()
        .map(|bound| {
            // Only what is chosen from a list has no box.
            let kind = if bound.asks.is_empty() {
                "integer"
            } else {
                "number"
            };
            let kind = if bound.needed {
                json!(kind)
            } else {
                json!([kind, "null"])
            };
            let what = [bound.asks, bound.unit.symbol(), bound.why];
            let what: Vec<&str> = what.into_iter().filter(|said| !said.is_empty()).collect();
            let schema = json!({
                "type": kind,
                "minimum": bound.least,
                "maximum": bound.most,
                "description": what.join("; ")
            });
            (bound.name.to_owned(), schema)
        })
        .collect()
}
