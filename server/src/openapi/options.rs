//! The schema of all the piers that fit: the names that stay, and room for more.

use serde_json::{Value, json};

use super::shapes::{list, number, object, text};

/// The answer.
pub(super) fn schema() -> Value {
    object(&[
        ("looked_at", counted("Candidates whose stages were run.")),
        (
            "skipped",
            counted(
                "Candidates that cannot be better than one that was looked at; with the others the whole lattice.",
            ),
        ),
        (
            "not_reached",
            counted(
                "Candidates that there was no time for; where there are any, the front is that of what was looked at.",
            ),
        ),
        ("front", list(point())),
        (
            "by_cost",
            or_null(object(&[
                ("front", list(point())),
                ("cheapest", or_null(point())),
                ("looked_at", counted("Candidates whose cost was reckoned.")),
                ("skipped", counted("Candidates that cannot be built.")),
                (
                    "not_reached",
                    counted("Candidates that there was no time for."),
                ),
            ])),
        ),
        (
            "named",
            object(&[
                ("least_digging", or_null(point())),
                ("middle", or_null(point())),
                ("stillest", or_null(point())),
            ]),
        ),
        (
            "in_the_way",
            list(object(&[
                (
                    "what",
                    text("What stands in the way of a pier that is still."),
                ),
                ("would_do", json!({ "type": ["number", "null"] })),
                ("says", text("The same in a sentence.")),
            ])),
        ),
        (
            "worth_measuring",
            list(object(&[
                ("field", text("An answer that is assumed.")),
                ("how", text("How to find it out on site.")),
                (
                    "star_growth_ratio_from",
                    json!({ "type": ["number", "null"] }),
                ),
                (
                    "star_growth_ratio_to",
                    json!({ "type": ["number", "null"] }),
                ),
                ("verdict_from", json!({ "type": "object" })),
                ("verdict_to", json!({ "type": "object" })),
            ])),
        ),
    ])
}

fn counted(description: &str) -> Value {
    json!({ "type": "integer", "minimum": 0, "description": description })
}

fn point() -> Value {
    object(&[
        ("block", json!({ "type": "object" })),
        ("pier", json!({ "type": "object" })),
        ("anchors", json!({ "type": "object" })),
        ("dig_volume_m3", number()),
        ("order_volume_m3", number()),
        ("cost", json!({ "type": ["number", "null"] })),
        (
            "star_growth_ratio",
            or_null(object(&[("expected", number()), ("worst", number())])),
        ),
        ("frequency_hz", json!({ "type": ["number", "null"] })),
        ("quiet_distance_m", json!({ "type": ["number", "null"] })),
        ("quiet_anywhere", json!({ "type": "boolean" })),
        ("fails", list(json!({ "type": "string" }))),
    ])
}

/// The same, or nothing.
fn or_null(schema: Value) -> Value {
    json!({ "anyOf": [schema, { "type": "null" }] })
}
