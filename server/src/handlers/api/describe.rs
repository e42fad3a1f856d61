//! The description of the interface.

use axum::Json;
use axum::extract::State;
use serde_json::Value;

use crate::app::App;
use crate::openapi;

/// The OpenAPI document.
pub async fn describe(State(app): State<App>) -> Json<Value> {
    Json(openapi::describe(&app.config.base))
}
