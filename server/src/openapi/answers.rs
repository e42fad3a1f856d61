//! Schemas of the smaller answers, and the refusals that many operations share.

use serde_json::{Value, json};

use super::record;
use super::shapes::{list, moment, number, object, revision, right, secret, text};
use crate::error::PROBLEM_JSON;

/// Schemas by name.
pub(super) fn schemas() -> Vec<(&'static str, Value)> {
    vec![
        ("Problem", problem()),
        (
            "Created",
            object(&[
                ("id", text("The plan's name in the store; no secret.")),
                ("revision", revision()),
                (
                    "links",
                    object(&[("edit", secret()), ("record", secret()), ("view", secret())]),
                ),
            ]),
        ),
        (
            "Replaced",
            object(&[
                ("id", text("The plan's name in the store.")),
                ("revision", revision()),
            ]),
        ),
        (
            "Revisions",
            object(&[
                (
                    "revisions",
                    list(object(&[
                        ("revision", revision()),
                        ("title", json!({ "type": ["string", "null"] })),
                        ("saved_at", moment()),
                        (
                            "engine",
                            json!({
                                "type": ["string", "null"],
                                "description": "Version of the engine with which it was saved; null where it was not kept.",
                            }),
                        ),
                    ])),
                ),
                (
                    "next",
                    json!({
                        "type": ["integer", "null"],
                        "description": "The `below` with which the next hundred are asked for; null after the first revision.",
                    }),
                ),
            ]),
        ),
        (
            "Links",
            object(&[(
                "links",
                list(object(&[
                    ("opens", right()),
                    (
                        "made_at",
                        json!({ "type": ["string", "null"], "format": "date-time" }),
                    ),
                    (
                        "opened_at",
                        json!({
                            "type": ["string", "null"],
                            "format": "date-time",
                            "description": "When the link was last used, noted once a day.",
                        }),
                    ),
                ])),
            )]),
        ),
        ("NewEntry", record::entry()),
        ("Entry", record::kept()),
        ("Entries", record::entries()),
        ("Photos", record::photos()),
        ("Recovery", object(&[("code", secret())])),
        ("Code", code()),
        ("Link", object(&[("opens", right()), ("secret", secret())])),
    ]
}

/// What is sent to find a plan again.
fn code() -> Value {
    let code = text("The recovery code, as it was shown when it was made.");
    json!({ "type": "object", "required": ["code"], "additionalProperties": false, "properties": { "code": code } })
}

/// Refusals by name.
pub(super) fn refusals() -> Value {
    let refusals = [
        ("NotJson", "The body is not JSON or broke off."),
        ("Malformed", "What was asked cannot be read."),
        ("NoSecret", "The secret of a link is missing."),
        (
            "NotWithThisLink",
            "The link opens the plan, but not for this.",
        ),
        (
            "NoSuchLink",
            "No plan opens with this link; a wrong, a revoked and an unknown one are answered alike.",
        ),
        (
            "NoSuchCode",
            "No plan is found again with this code: it is wrong, used up or over.",
        ),
        (
            "NothingHere",
            "There is nothing at this address, or no plan opens with this link.",
        ),
        ("TooSlow", "The body took too long to arrive."),
        (
            "Stale",
            "The plan was saved by someone else since; `current` holds what stands now.",
        ),
        ("TooLarge", "The body is too large."),
        (
            "MediaType",
            "The body is of another kind than the one named.",
        ),
        (
            "Answers",
            "Answers are out of range, contradict each other, or the document is no plan; `errors` names the fields.",
        ),
        (
            "NotKept",
            "Another entry has this name, the record is full, or the plan contradicts itself just now.",
        ),
        ("NoPrecondition", "If-Match is missing."),
        (
            "NotInvited",
            "A plan begins here with a code of the organiser's or by the organiser only, or no more plans are kept.",
        ),
        (
            "TooOften",
            "Too many requests came from this address; Retry-After says when to come back.",
        ),
        (
            "NotJustNow",
            "The service is crowded or its store cannot be reached; nothing was changed.",
        ),
    ];
    let details = json!({ PROBLEM_JSON: { "schema": { "$ref": "#/components/schemas/Problem" } } });
    let refusal = |(name, said): (&str, &str)| {
        (
            name.to_owned(),
            json!({ "description": said, "content": details }),
        )
    };
    Value::Object(refusals.into_iter().map(refusal).collect())
}

/// Problem details, RFC 9457.
fn problem() -> Value {
    let range = object(&[
        ("least", number()),
        ("most", number()),
        ("unit", json!({ "type": "string" })),
    ]);
    let error = json!({
        "type": "object",
        "required": ["path", "detail", "value", "range"],
        "properties": {
            "path": text("Path of the field, for instance site.frost_depth_m."),
            "detail": text("What is wrong and what would be right."),
            "value": { "type": ["number", "null"] },
            "range": { "oneOf": [range, { "type": "null" }] },
            "with": list(text("Another field that contradicts this one."))
        }
    });
    let current = json!({
        "type": "object",
        "description": "The plan that stands now, when a save was refused for it.",
        "properties": { "revision": revision(), "saved_at": moment(), "plan": { "$ref": "#/components/schemas/Plan" } }
    });
    json!({
        "type": "object",
        "required": ["type", "title", "status", "code", "detail"],
        "properties": {
            "type": { "type": "string", "format": "uri-reference" },
            "title": { "type": "string" },
            "status": { "type": "integer" },
            "code": text("A short name that programs may rely on."),
            "detail": text("What happened and what to do."),
            "errors": list(error),
            "current": current
        }
    })
}
