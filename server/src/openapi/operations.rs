//! The operations, one line each.

use serde_json::{Map, Value, json};

use super::refusals::{
    BEGIN, BODY, EDIT, EDIT_QUERY, ENTER, PHOTO, PRINT, READ, RECOVER, REPLACE, SHEET, TABLE,
};

/// An operation of the interface.
pub struct Operation {
    /// Address below `/api/v1`.
    pub path: &'static str,
    /// Method, in lower case.
    pub method: &'static str,
    id: &'static str,
    summary: &'static str,
    /// What it takes, besides the address.
    takes: Takes,
    answer: Answer,
    refusals: &'static [(u16, &'static str)],
}

/// What an operation takes.
#[derive(Clone, Copy, PartialEq)]
enum Takes {
    Nothing,
    Plan,
    PlanOnRevision,
    Entry,
    /// A picture, with its entry in the address.
    Picture,
    /// A table of samples, with what its file does not say in the address.
    Table,
    /// A recovery code.
    Code,
    /// A size of paper.
    Paper,
    /// The revision below which a list goes on.
    Below,
}

/// What an operation answers.
enum Answer {
    /// JSON of a schema, with a status.
    Json(u16, &'static str),
    /// The same, with an ETag.
    Tagged(u16, &'static str),
    /// A file of a media type.
    File(&'static str),
    /// No body.
    Nothing,
    /// This document.
    Description,
}

/// Every operation.
#[rustfmt::skip]
pub const OPERATIONS: &[Operation] = &[
    Operation { path: "/design", method: "post", id: "design", summary: "Design a plan and keep nothing", takes: Takes::Plan, answer: Answer::Json(200, "Design"), refusals: BODY },
    Operation { path: "/options", method: "post", id: "options", summary: "Look at all the piers that fit the plan's pit, and keep nothing: what digging less costs the star, three ways to build it, and what is worth measuring", takes: Takes::Plan, answer: Answer::Json(200, "Options"), refusals: BODY },
    Operation { path: "/trace", method: "post", id: "trace", summary: "Read a record of a knock, or of a star while somebody steps, and keep nothing: frequencies and damping, or steps, each with its standard deviation", takes: Takes::Table, answer: Answer::Json(200, "Trace"), refusals: TABLE },
    Operation { path: "/plans", method: "post", id: "createPlan", summary: "Keep a new plan; the answer holds the only copy of its links' secrets", takes: Takes::Plan, answer: Answer::Tagged(201, "Created"), refusals: BEGIN },
    Operation { path: "/plans/{id}", method: "get", id: "readPlan", summary: "The plan as it stands", takes: Takes::Nothing, answer: Answer::Tagged(200, "Plan"), refusals: READ },
    Operation { path: "/plans/{id}", method: "put", id: "replacePlan", summary: "Replace the plan, naming the revision that it was read at", takes: Takes::PlanOnRevision, answer: Answer::Tagged(200, "Replaced"), refusals: REPLACE },
    Operation { path: "/plans/{id}/revisions", method: "get", id: "listRevisions", summary: "The plan's revisions, newest first, a hundred at a time; takes the edit link", takes: Takes::Below, answer: Answer::Json(200, "Revisions"), refusals: EDIT_QUERY },
    Operation { path: "/plans/{id}/revisions/{number}", method: "get", id: "readRevision", summary: "The plan as it stood at a revision; takes the edit link", takes: Takes::Nothing, answer: Answer::Tagged(200, "Plan"), refusals: EDIT },
    Operation { path: "/plans/{id}/design", method: "get", id: "readDesign", summary: "The plan's design", takes: Takes::Nothing, answer: Answer::Tagged(200, "Design"), refusals: SHEET },
    Operation { path: "/plans/{id}/plan.pdf", method: "get", id: "printPlan", summary: "The site set: what is carried to the site, one side a day", takes: Takes::Paper, answer: Answer::File("application/pdf"), refusals: PRINT },
    Operation { path: "/plans/{id}/file.pdf", method: "get", id: "printFile", summary: "Everything that can be checked, on sheets", takes: Takes::Paper, answer: Answer::File("application/pdf"), refusals: PRINT },
    Operation { path: "/plans/{id}/template.pdf", method: "get", id: "printTemplate", summary: "The drilling template, 1:1", takes: Takes::Paper, answer: Answer::File("application/pdf"), refusals: PRINT },
    Operation { path: "/plans/{id}/template.dxf", method: "get", id: "workshopDrawing", summary: "Base plate and drilling jig as DXF, for a workshop", takes: Takes::Nothing, answer: Answer::File("image/vnd.dxf"), refusals: READ },
    Operation { path: "/plans/{id}/materials.csv", method: "get", id: "readMaterials", summary: "What to order or hire, as a table", takes: Takes::Nothing, answer: Answer::File("text/csv"), refusals: SHEET },
    Operation { path: "/plans/{id}/schedule.ics", method: "get", id: "readSchedule", summary: "The work as a calendar; there is none without a start day", takes: Takes::Nothing, answer: Answer::File("text/calendar"), refusals: SHEET },
    Operation { path: "/plans/{id}/drawings/{name}.svg", method: "get", id: "readDrawing", summary: "A drawing to scale", takes: Takes::Nothing, answer: Answer::File("image/svg+xml"), refusals: SHEET },
    Operation { path: "/plans/{id}/links", method: "get", id: "listLinks", summary: "Which links are alive; takes the edit link", takes: Takes::Nothing, answer: Answer::Json(200, "Links"), refusals: EDIT },
    Operation { path: "/plans/{id}/links/{right}", method: "post", id: "replaceLink", summary: "Make a new link; the old one opens nothing from then on", takes: Takes::Nothing, answer: Answer::Json(201, "Link"), refusals: EDIT },
    Operation { path: "/plans/{id}/links/{right}", method: "delete", id: "revokeLink", summary: "Revoke a link", takes: Takes::Nothing, answer: Answer::Nothing, refusals: EDIT },
    Operation { path: "/plans/{id}/recovery", method: "post", id: "makeRecoveryCode", summary: "Make the code that replaces a lost edit link, once; an older one is over, and this answer holds its only copy", takes: Takes::Nothing, answer: Answer::Json(201, "Recovery"), refusals: EDIT },
    Operation { path: "/plans/{id}/entries", method: "get", id: "listEntries", summary: "The record of the work, each measurement held against the plan as it stands, and how each task stands", takes: Takes::Nothing, answer: Answer::Json(200, "Entries"), refusals: SHEET },
    Operation { path: "/plans/{id}/entries", method: "post", id: "enter", summary: "Add an entry to the record, with the record or the edit link; sent again under its name it is kept once, and answered with 200", takes: Takes::Entry, answer: Answer::Json(201, "Entry"), refusals: ENTER },
    Operation { path: "/plans/{id}/photos", method: "get", id: "listPhotos", summary: "The entries that have a photograph", takes: Takes::Nothing, answer: Answer::Json(200, "Photos"), refusals: SHEET },
    Operation { path: "/plans/{id}/photos", method: "post", id: "addPhoto", summary: "Add a photograph to the record, with the record or the edit link; it is written anew as a JPEG without what the camera wrote into it, and sent again under its name it is kept once, and answered with 200", takes: Takes::Picture, answer: Answer::Json(201, "Entry"), refusals: PHOTO },
    Operation { path: "/plans/{id}/photos/{photo}", method: "get", id: "readPhoto", summary: "A photograph, by the name of its entry", takes: Takes::Nothing, answer: Answer::File("image/jpeg"), refusals: READ },
    Operation { path: "/recover", method: "post", id: "recover", summary: "A new edit link for a recovery code, which is used up by it; the old edit link opens nothing from then on", takes: Takes::Code, answer: Answer::Json(201, "Link"), refusals: RECOVER },
    Operation { path: "/openapi.json", method: "get", id: "describe", summary: "This document", takes: Takes::Nothing, answer: Answer::Description, refusals: &[] },
];

/// The operations by path and method.
pub(super) fn paths() -> Value {
    let mut paths = Map::new();
    for operation in OPERATIONS {
        let path = paths.entry(operation.path).or_insert_with(|| json!({}));
        path[operation.method] = operation.describe();
    }
    Value::Object(paths)
}

impl Takes {
    /// The schema of the body.
    const fn schema(self) -> Option<&'static str> {
        match self {
            Self::Plan | Self::PlanOnRevision => Some("Plan"),
            Self::Entry => Some("NewEntry"),
            Self::Code => Some("Code"),
            Self::Nothing | Self::Paper | Self::Below | Self::Picture | Self::Table => None,
        }
    }
}

impl Operation {
    fn describe(&self) -> Value {
        let mut described = json!({
            "operationId": self.id,
            "summary": self.summary,
            "parameters": self.parameters(),
            "responses": self.responses(),
            "security": if self.path.contains("{id}") { json!([{ "link": [] }]) } else { json!([]) }
        });
        if let Some(schema) = self.takes.schema() {
            let body = json!({ "schema": { "$ref": format!("#/components/schemas/{schema}") } });
            described["requestBody"] =
                json!({ "required": true, "content": { "application/json": body } });
        }
        if self.takes == Takes::Picture {
            let kinds =
                ["image/jpeg", "image/png", "image/webp"].map(|kind| (kind.to_owned(), json!({})));
            described["requestBody"] =
                json!({ "required": true, "content": Map::from_iter(kinds) });
        }
        if self.takes == Takes::Table {
            described["requestBody"] = super::trace::body();
        }
        if matches!(self.takes, Takes::Entry | Takes::Picture) {
            described["responses"]["200"] = described["responses"]["201"].clone();
        }
        described
    }

    fn parameters(&self) -> Value {
        let known = [
            (
                "{id}",
                "id",
                json!({ "type": "string", "pattern": "^[a-z2-7]{16}$" }),
                "The plan's name in the store.",
            ),
            (
                "{number}",
                "number",
                json!({ "type": "integer", "minimum": 1 }),
                "Number of the revision.",
            ),
            (
                "{name}",
                "name",
                json!({ "type": "string", "enum": crate::drawing::NAMES }),
                "Name of the drawing.",
            ),
            (
                "{right}",
                "right",
                json!({ "type": "string", "enum": ["edit", "record", "view"] }),
                "What the link opens for.",
            ),
            (
                "{photo}",
                "photo",
                json!({ "type": "string" }),
                "Name of the photograph's entry.",
            ),
        ];
        let in_path = known
            .into_iter()
            .filter(|(place, ..)| self.path.contains(place));
        let mut parameters: Vec<Value> = in_path
            .map(|(_, name, schema, said)| json!({ "name": name, "in": "path", "required": true, "schema": schema, "description": said }))
            .collect();
        if self.takes == Takes::Below {
            parameters.push(json!({
                "name": "below",
                "in": "query",
                "required": false,
                "schema": { "type": "integer", "minimum": 0, "maximum": u32::MAX },
                "description": "Revisions below this number only: the `next` of the list before."
            }));
        }
        if self.takes == Takes::PlanOnRevision {
            parameters.push(json!({
                "name": "If-Match",
                "in": "header",
                "required": true,
                "schema": { "type": "string" },
                "description": "The ETag that the plan was read with."
            }));
        }
        if self.id == "createPlan" {
            parameters.push(json!({
                "name": "Stillground-Invitation",
                "in": "header",
                "required": false,
                "schema": { "type": "string" },
                "description": "The code of an invitation, where plans begin by invitation; the organiser's password as a bearer does too."
            }));
        }
        if self.takes == Takes::Picture {
            parameters.extend(super::record::about_photo());
        }
        if self.takes == Takes::Table {
            parameters.extend(super::trace::parameters());
        }
        if self.takes == Takes::Paper {
            let sizes =
                json!({ "type": "string", "enum": ["a4", "letter", "a3", "a2", "a1", "a0"] });
            let said = "Size of paper; left out: by the plan's units.";
            parameters.push(
                json!({ "name": "paper", "in": "query", "schema": sizes, "description": said }),
            );
        }
        Value::Array(parameters)
    }

    fn responses(&self) -> Value {
        let schema = |name: &str| json!({ "application/json": { "schema": { "$ref": format!("#/components/schemas/{name}") } } });
        let tag = json!({ "ETag": { "schema": { "type": "string" }, "description": "Names this state; send it as If-Match or If-None-Match." } });
        let mut responses = Map::new();
        let mut put = |status: u16, response| responses.insert(status.to_string(), response);
        match self.answer {
            Answer::Json(status, name) => put(
                status,
                json!({ "description": self.summary, "content": schema(name) }),
            ),
            Answer::Tagged(status, name) => put(
                status,
                json!({ "description": self.summary, "content": schema(name), "headers": tag }),
            ),
            Answer::File(kind) => put(
                200,
                json!({ "description": self.summary, "content": { kind: { "schema": { "type": "string" } } } }),
            ),
            Answer::Nothing => put(204, json!({ "description": "Done." })),
            Answer::Description => put(
                200,
                json!({ "description": self.summary, "content": { "application/json": { "schema": { "type": "object" } } } }),
            ),
        };
        if self.method == "get" && matches!(self.answer, Answer::Tagged(..)) {
            put(
                304,
                json!({ "description": "Not changed since the ETag in If-None-Match." }),
            );
        }
        for (status, name) in self.refusals {
            put(
                *status,
                json!({ "$ref": format!("#/components/responses/{name}") }),
            );
        }
        Value::Object(responses)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The router's routes, read from its text: what is routed is described, and the other way round.
    #[test]
    fn every_route_of_the_interface_is_described() {
        let text = include_str!("../router.rs");
        let api = text
            .split_once("fn api()")
            .and_then(|(_, rest)| rest.split_once("\n}"))
            .map(|(api, _)| api)
            .unwrap_or_default();
        let mut routed: Vec<_> = api
            .split(".route(")
            .skip(1)
            .filter_map(|rest| rest.trim_start().strip_prefix('"')?.split('"').next())
            .collect();
        let mut described: Vec<_> = OPERATIONS
            .iter()
            .map(|operation| route_of(operation.path))
            .collect();
        routed.sort_unstable();
        described.sort_unstable();
        described.dedup();
        assert_eq!(routed, described);
    }

    /// One route answers all drawings.
    fn route_of(path: &'static str) -> &'static str {
        match path {
            "/plans/{id}/drawings/{name}.svg" => "/plans/{id}/drawings/{file}",
            path => path,
        }
    }
}
