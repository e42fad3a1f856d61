//! Whether the service lives, and whether it can do its work.

use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde_json::json;
use stillground::design::ENGINE_VERSION;

use crate::app::App;

/// The process answers.
pub async fn live() -> Response {
    Json(json!({ "status": "live", "version": ENGINE_VERSION })).into_response()
}

/// The store answers too.
pub async fn ready(State(app): State<App>) -> Response {
    match app.store.ping().await {
        // The sound plans go on; whoever watches has to know, and bring back what is damaged from a copy.
        Ok(()) if app.store.damaged_rows() > 0 => (
            StatusCode::SERVICE_UNAVAILABLE,
            Json(json!({
                "status": "what was kept is damaged: run `stillground verify`",
                "damaged": app.store.damaged_rows(),
            })),
        )
            .into_response(),
        Ok(()) => Json(json!({ "status": "ready", "version": ENGINE_VERSION })).into_response(),
        Err(failure) => {
            tracing::warn!(error = %failure, "the store does not answer");
            (
                StatusCode::SERVICE_UNAVAILABLE,
                Json(json!({ "status": "the store does not answer" })),
            )
                .into_response()
        }
    }
}
