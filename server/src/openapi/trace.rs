//! What a record of samples says: the table that is sent, and the answer.

use serde_json::{Map, Value, json};

use super::shapes::{list, number, object, text};
use crate::handlers::api::trace::KINDS;

/// The body.
pub(super) fn body() -> Value {
    let kinds = KINDS.map(|kind| (kind.to_owned(), json!({ "schema": { "type": "string" } })));
    json!({ "required": true, "content": Map::from_iter(kinds) })
}

/// What the file does not say.
pub(super) fn parameters() -> Vec<Value> {
    let positive = json!({ "type": "number", "minimum": 0.01, "maximum": 100_000 });
    let text = json!({ "type": "string" });
    [
        (
            "kind",
            json!({ "type": "string", "enum": ["knock", "lean"] }),
            "What it shows; left out: by the file.",
        ),
        (
            "rate",
            positive,
            "Samples a second, where the file has no times.",
        ),
        (
            "time",
            text.clone(),
            "The column of times: its name or number from one, with :s or :ms to say its unit.",
        ),
        (
            "value",
            text.clone(),
            "The column that was measured: its name or number from one; several with commas between.",
        ),
        (
            "scale",
            json!({ "type": "number" }),
            "Seconds of arc in one unit of the column.",
        ),
        (
            "at",
            text.clone(),
            "When somebody stepped there and away in turn, seconds from the first row, with commas between.",
        ),
        (
            "towards",
            text,
            "Bearings towards which the top leans where a lean's first and second column grow, degrees from north, with a comma between.",
        ),
    ]
    .map(|(name, schema, said)| {
        json!({ "name": name, "in": "query", "required": false, "schema": schema, "description": said })
    })
    .to_vec()
}

/// The answer.
pub(super) fn schema() -> Value {
    object(&[
        (
            "kind",
            json!({ "type": "string", "enum": ["knock", "lean"] }),
        ),
        (
            "modes",
            list(object(&[
                ("frequency_hz", number()),
                ("frequency_sd_hz", number()),
                ("damping_ratio", number()),
                ("damping_sd", number()),
            ])),
        ),
        (
            "steps",
            list(object(&[
                ("at_s", number()),
                ("size", number()),
                ("sd", number()),
            ])),
        ),
        (
            "together",
            or_null(object(&[
                ("size", number()),
                ("sd", number()),
                ("angle_deg", or_null(number())),
                ("angle_sd_deg", or_null(number())),
                ("bearing_deg", or_null(number())),
            ])),
        ),
        (
            "columns",
            list(object(&[
                ("name", text("Its name, or its number from one.")),
                (
                    "along",
                    json!({ "type": ["string", "null"], "enum": ["x", "y", "z", null],
                            "description": "East and west, north and south, up and down; null where no name says it." }),
                ),
                ("used", json!({ "type": "boolean" })),
            ])),
        ),
        (
            "direction",
            json!({ "type": ["string", "null"], "enum": ["x", "y", null],
                    "description": "Which way the swing goes; null where no column's name says it." }),
        ),
        ("drift_per_s", number()),
        (
            "remarks",
            list(text(
                "How the file was read, and what is not to be trusted; where there is no answer, the first says why.",
            )),
        ),
    ])
}

fn or_null(schema: Value) -> Value {
    json!({ "anyOf": [schema, { "type": "null" }] })
}
