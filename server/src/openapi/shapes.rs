//! Schemas that others are put together from.

use serde_json::{Map, Value, json};

pub(super) fn object(members: &[(&str, Value)]) -> Value {
    let names: Vec<_> = members.iter().map(|(name, _)| *name).collect();
    let properties: Map<String, Value> = members
        .iter()
        .map(|(name, schema)| ((*name).to_owned(), schema.clone()))
        .collect();
    json!({ "type": "object", "required": names, "properties": properties })
}

pub(super) fn list(items: Value) -> Value {
    json!({ "type": "array", "items": items })
}

pub(super) fn text(description: &str) -> Value {
    json!({ "type": "string", "description": description })
}

pub(super) fn number() -> Value {
    json!({ "type": "number" })
}

pub(super) fn moment() -> Value {
    json!({ "type": "string", "format": "date-time" })
}

pub(super) fn revision() -> Value {
    json!({ "type": "integer", "minimum": 1, "maximum": u32::MAX })
}

pub(super) fn right() -> Value {
    json!({ "type": "string", "enum": ["edit", "record", "view"] })
}

pub(super) fn secret() -> Value {
    json!({ "type": "string", "pattern": "^[a-z2-7]{32}$", "description": "The secret of a link. The store keeps only its digest." })
}
