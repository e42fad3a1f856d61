//! A lost edit link, for programs: a code is made while the link is there, and gives a new link when it is not.

use axum::Json;
use axum::body::Bytes;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::json;

use super::body::{document, is_json};
use super::holder::Holder;
use crate::app::App;
use crate::error::Trouble;
use crate::store::{Deed, Right};

/// A recovery code, as it is sent.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Code {
    code: String,
}

/// Makes the plan's recovery code; an older one is over.
pub async fn make(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::Share)?;
    let code = app.store.recovery_code(&opened.plan_id).await?;
    Ok((StatusCode::CREATED, Json(json!({ "code": code.reveal() }))).into_response())
}

/// Takes a code: it is used up, and the old edit link opens nothing from now on.
pub async fn recover(
    State(app): State<App>,
    headers: HeaderMap,
    body: Bytes,
) -> Result<Response, Trouble> {
    if !is_json(&headers) {
        return Err(Trouble::media_type());
    }
    let sent: Code = document(&body)?;
    let code = sent.code.trim().to_ascii_lowercase();
    let secret = app
        .store
        .recover(&code)
        .await?
        .ok_or_else(Trouble::no_such_code)?;
    Ok((
        StatusCode::CREATED,
        Json(json!({ "opens": Right::Edit, "secret": secret.reveal() })),
    )
        .into_response())
}
