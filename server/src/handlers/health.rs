//! Whether the service lives, and whether it can do its work.

use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};
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
        Ok(()) => Json(ready_with(&app)).into_response(),
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

/// A copy that failed makes nobody unready who asks for a page: it is told, and stands among the figures.
fn ready_with(app: &App) -> Value {
    let mut said = json!({ "status": "ready", "version": ENGINE_VERSION });
    if app.config.copying.is_some() {
        let copies = app.copies.told();
        said["copies"] = json!({
            "status": if copies.failed.is_some() { "the last copy failed: the log says why" } else { "well" },
            "last_good": copies.last_good,
        });
    }
    said
}
