//! The description of the HTTP interface, OpenAPI 3.1: made from the engine's own catalogue of the plan and from one
//! table of operations, so that it says what the service does.

mod answers;
mod commissioning;
mod design;
mod fitted;
mod operations;
mod options;
mod plan;
mod record;
mod refusals;
mod shapes;
mod trace;

use std::sync::LazyLock;

use serde_json::{Map, Value, json};
use stillground::design::ENGINE_VERSION;

pub use operations::OPERATIONS;

/// The document for a service at the root; under a base path only `servers` differs.
static DOCUMENT: LazyLock<Value> = LazyLock::new(document);

/// The document.
#[must_use]
pub fn describe(base: &str) -> Value {
    let mut document = DOCUMENT.clone();
    document["servers"] = json!([{ "url": format!("{base}/api/v1") }]);
    document
}

fn document() -> Value {
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Stillground",
            "version": ENGINE_VERSION,
            "summary": "Plans permanent telescope piers.",
            "description": "A plan goes in as JSON, in SI units named in each field; null or a missing field means \"not known\". \
                            Every request names the planner by a host that it was told, or by an address in \
                            figures: another host is answered 421, none or two 400. A design comes out: figures, checks, assumptions, cautions, materials and a schedule. The result is no \
                            substitute for a ground engineer, local codes or licensed practice.",
            "license": { "name": "MIT", "identifier": "MIT" }
        },
        "paths": operations::paths(),
        "components": {
            "schemas": schemas(),
            "responses": answers::refusals(),
            "securitySchemes": {
                "link": {
                    "type": "http",
                    "scheme": "bearer",
                    "description": "The secret of one of a plan's links: edit, record or view."
                }
            }
        }
    })
}

fn schemas() -> Value {
    let mut schemas = Map::new();
    schemas.insert("Plan".to_owned(), plan::schema());
    schemas.insert("Design".to_owned(), design::schema());
    schemas.insert("Options".to_owned(), options::schema());
    schemas.insert("Trace".to_owned(), trace::schema());
    for (name, schema) in answers::schemas() {
        schemas.insert(name.to_owned(), schema);
    }
    Value::Object(schemas)
}
