//! A photograph as an answer, for pages and programs alike.

use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};

use crate::app::App;
use crate::error::Trouble;

/// A photograph as it was kept, by the name of its entry.
pub async fn photograph(app: &App, plan_id: &str, id: &str) -> Result<Response, Trouble> {
    let picture = app
        .store
        .photo(plan_id, id)
        .await?
        .ok_or_else(Trouble::nothing_here)?;
    let head = [
        (CONTENT_TYPE, HeaderValue::from_static("image/jpeg")),
        (
            CONTENT_DISPOSITION,
            HeaderValue::from_static("inline; filename=\"photograph.jpg\""),
        ),
        (CACHE_CONTROL, HeaderValue::from_static("private, no-store")),
    ];
    Ok((head, picture).into_response())
}
