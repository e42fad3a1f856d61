//! A plan's links: which there are, replace one, revoke one.

use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};

use super::holder::Holder;
use crate::app::App;
use crate::error::Trouble;
use crate::store::{Deed, LinkState, Right};

/// Which links are alive.
pub async fn list(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::Share)?;
    let line = |state: &LinkState| json!({ "opens": state.right, "made_at": state.made_at, "opened_at": state.opened_at });
    let links: Vec<Value> = app
        .store
        .links(&opened.plan_id)
        .await?
        .iter()
        .map(line)
        .collect();
    Ok(Json(json!({ "links": links })).into_response())
}

/// Makes a new link of a right; the old one opens nothing from now on.
pub async fn replace(
    State(app): State<App>,
    holder: Holder,
    Path((_, right)): Path<(String, String)>,
) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::Share)?;
    let right = Right::from_key(&right).ok_or_else(Trouble::nothing_here)?;
    let secret = app.store.replace_link(&opened.plan_id, right).await?;
    Ok((
        StatusCode::CREATED,
        Json(json!({ "opens": right, "secret": secret.reveal() })),
    )
        .into_response())
}

/// Revokes the link of a right.
pub async fn revoke(
    State(app): State<App>,
    holder: Holder,
    Path((_, right)): Path<(String, String)>,
) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::Share)?;
    let right = Right::from_key(&right).ok_or_else(Trouble::nothing_here)?;
    app.store.revoke(&opened.plan_id, right).await?;
    Ok(StatusCode::NO_CONTENT.into_response())
}
