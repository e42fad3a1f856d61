//! Schemas of the record.

use serde_json::{Value, json};
use stillground::record::Kind;
use stillground::record::entry::{LONGEST_ID, LONGEST_NAME, LONGEST_TEXT};

use super::plan::{LINES, PRINTABLE};
use super::shapes::{list, moment, object, revision};

fn id() -> Value {
    json!({ "type": "string", "pattern": format!("^[A-Za-z0-9_.:-]{{1,{LONGEST_ID}}}$") })
}

fn or_null(mut schema: Value) -> Value {
    schema["type"] = json!([schema["type"], "null"]);
    schema
}

fn said(schema: Value, description: &str) -> Value {
    let mut schema = schema;
    schema["description"] = description.into();
    schema
}

/// What is sent.
pub(super) fn entry() -> Value {
    let word = json!({ "type": "string" });
    json!({
        "type": "object",
        "required": ["id", "revision", "task", "kind", "who"],
        "additionalProperties": false,
        "properties": {
            "id": said(id(), "The entry's name, made by its sender and unique within the plan: sent twice, it is kept once."),
            "revision": said(revision(), "Revision of the plan that its writer had before them."),
            "task": said(word.clone(), "A task of the schedule, by its id."),
            "kind": { "type": "string", "enum": Kind::KEYS },
            "item": said(or_null(word), "What was measured, for instance pit_depth or torque:3:2; for here and missing a line of the materials, by its id."),
            "value": said(or_null(json!({ "type": "number" })), "The figure, in the item's metric unit."),
            "text": or_null(json!({ "type": "string", "maxLength": LONGEST_TEXT, "pattern": LINES })),
            "measurement": super::commissioning::one(),
            "who": { "type": "string", "minLength": 1, "maxLength": LONGEST_NAME, "pattern": PRINTABLE },
            "measured_at": said(or_null(moment()), "When it was done or measured; left out: when it is received."),
            "supersedes": said(or_null(id()), "The entry that this one corrects."),
            "decides": said(or_null(id()), "The stop that this decision ends, or task: and a task's id where a wait is to count as over or the task may be ticked off without what is missing; takes the edit link.")
        }
    })
}

/// What is kept.
pub(super) fn kept() -> Value {
    let mut schema = entry();
    let judgement = json!({
        "type": ["object", "null"],
        "description": "What follows from a measurement, held against the plan as it stands; null for what is none.",
        "required": ["verdict"],
        "properties": {
            "verdict": { "type": "string", "enum": ["within", "outside", "stop"] },
            "what_to_do": { "type": "string" },
            "why": { "type": "string" },
            "ask": { "type": "string", "description": "Whom to ask." },
            "lasting": { "type": "boolean", "description": "Whether only a decision ends it." }
        }
    });
    let word = json!({ "type": ["string", "null"] });
    for (name, of) in [
        ("received_at", moment()),
        ("judgement", judgement),
        (
            "superseded_by",
            said(word.clone(), "The entry that took its place."),
        ),
        ("ended_by", said(word, "The entry that ended the stop.")),
    ] {
        schema["properties"][name] = of;
    }
    schema["required"] = json!([
        "id",
        "revision",
        "task",
        "kind",
        "who",
        "received_at",
        "judgement",
        "superseded_by",
        "ended_by"
    ]);
    schema
}

/// The entries that have a photograph.
pub(super) fn photos() -> Value {
    object(&[(
        "photos",
        list(json!({ "$ref": "#/components/schemas/Entry" })),
    )])
}

/// What the address of a new photograph says of it.
pub(super) fn about_photo() -> Vec<Value> {
    let Value::Object(fields) = entry()["properties"].clone() else {
        return Vec::new();
    };
    let said = [
        ("id", true),
        ("revision", true),
        ("task", true),
        ("who", true),
        ("text", false),
        ("measured_at", false),
    ];
    let describe = |(name, required): (&str, bool)| {
        let mut schema = fields.get(name).cloned().unwrap_or_default();
        if !required {
            schema["type"] = "string".into();
        }
        json!({ "name": name, "in": "query", "required": required, "schema": schema })
    };
    said.into_iter().map(describe).collect()
}

/// The record.
pub(super) fn entries() -> Value {
    let state = json!({ "type": "string", "enum": ["done", "held", "now", "later"] });
    let tasks = json!({ "type": "object", "additionalProperties": state, "description": "How each task stands." });
    let waits = json!({
        "type": "object",
        "additionalProperties": { "type": ["string", "null"] },
        "description": "When each wait is over by the record, in universal time; null while what it counts from is not in the record. Nothing that follows it is ticked off before, without a decision."
    });
    let needs = json!({
        "type": "object",
        "additionalProperties": list(json!({ "type": "string" })),
        "description": "For each task the items that must be in the record before it is ticked off, and are not yet."
    });
    let here = json!({
        "type": "object",
        "additionalProperties": { "type": "string" },
        "description": "The lines of the materials that are there, each with the entry that says so."
    });
    object(&[
        (
            "entries",
            list(json!({ "$ref": "#/components/schemas/Entry" })),
        ),
        ("tasks", tasks),
        ("waits", waits),
        ("needs", needs),
        ("materials", here),
    ])
}
