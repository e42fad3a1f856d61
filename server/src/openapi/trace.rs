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
            "The column that was measured: its name or number from one.",
        ),
        (
            "scale",
            json!({ "type": "number" }),
            "Seconds of arc in one unit of the column.",
        ),
        (
            "at",
            text,
            "When somebody stepped there and away in turn, seconds from the first row, with commas between.",
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
        ("drift_per_s", number()),
        (
            "remarks",
            list(text(
                "How the file was read, and what is not to be trusted; where there is no answer, the first says why.",
            )),
        ),
    ])
}
