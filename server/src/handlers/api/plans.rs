//! Stored plans: create, read, replace, list their revisions.

use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::header::LOCATION;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::json;

use super::body::PlanBody;
use super::holder::{Asked, Holder, Seen, bearer};
use super::precondition::{etag, not_modified, one_revision, replaces, with_etag};
use crate::access;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::lookup::source;
use crate::store::{Deed, Save, Saved};

/// The header that holds the code of an invitation.
pub const INVITATION: &str = "stillground-invitation";

/// Keeps a new plan; the answer holds the only copy of its links' secrets.
pub async fn create(
    State(app): State<App>,
    asker: Asker,
    headers: HeaderMap,
    PlanBody(plan): PlanBody,
) -> Result<Response, Trouble> {
    plan.validate()
        .and_then(|()| source::check(None, &plan))
        .map_err(|problems| Trouble::answers(&problems))?;
    let text = |name: &str| headers.get(name).and_then(|value| value.to_str().ok());
    let organiser = access::is_organisers_program(&app, &asker.0, bearer(&headers))?;
    let created = access::begin(
        &app,
        &plan,
        access::Coming {
            code: text(INVITATION),
            organiser,
        },
    )
    .await?;
    let links = json!({
        "edit": created.links.edit.reveal(),
        "record": created.links.record.reveal(),
        "view": created.links.view.reveal(),
    });
    let body = json!({ "id": created.id, "revision": 1, "links": links });
    let location = app.config.link(&format!("/api/v1/plans/{}", created.id));
    Ok(with_etag(
        (StatusCode::CREATED, [(LOCATION, location)], Json(body)).into_response(),
        &etag(1),
    ))
}

/// The plan as it stands.
pub async fn read(holder: Holder, headers: HeaderMap) -> Response {
    let tag = etag(holder.0.saved.revision);
    not_modified(&headers, &tag)
        .unwrap_or_else(|| with_etag(Json(&holder.0.saved.plan).into_response(), &tag))
}

/// Replaces the plan, when the request names the revision that stands.
///
/// The link is looked up before the body is read. Then a save with which all is well is one errand to the database, its
/// link and its revision included: only one that was not kept is looked at again, for what was wrong with it.
pub async fn replace(
    State(app): State<App>,
    _: Seen,
    asked: Asked,
    headers: HeaderMap,
    body: Result<PlanBody, Trouble>,
) -> Result<Response, Trouble> {
    if let (Ok(PlanBody(plan)), Some(base)) = (&body, one_revision(&headers))
        && plan.validate().is_ok()
        && !source::is_claimed(plan)
        && let Some(revision) = app
            .store
            .save_by_link(&asked.secret, &asked.id, base, plan)
            .await?
    {
        return Ok(replaced(&asked.id, revision));
    }
    let look = asked.look(&app).await?.editing()?;
    let PlanBody(plan) = body?;
    if !replaces(&headers, look.revision)? {
        let current = app
            .store
            .revision(&look.plan_id, look.revision)
            .await?
            .ok_or_else(Trouble::no_such_link)?;
        return Err(Trouble::stale(&current));
    }
    let standing = || app.store.revision(&look.plan_id, look.revision);
    let standing = match source::is_claimed(&plan) {
        true => standing().await?.map(|saved| saved.plan),
        false => None,
    };
    plan.validate()
        .and_then(|()| source::check(standing.as_ref(), &plan))
        .map_err(|problems| Trouble::answers(&problems))?;
    match app.store.save(&look.plan_id, look.revision, &plan).await? {
        Save::Done(revision) => Ok(replaced(&look.plan_id, revision)),
        Save::Stale { current } => Err(Trouble::stale(&current)),
    }
}

fn replaced(id: &str, revision: u32) -> Response {
    with_etag(
        Json(json!({ "id": id, "revision": revision })).into_response(),
        &etag(revision),
    )
}

/// Where a list of revisions goes on.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Below {
    below: Option<u32>,
}

/// The plan's revisions, newest first, a hundred at a time; `next` is the `below` of the next hundred.
pub async fn revisions(
    State(app): State<App>,
    holder: Holder,
    Query(Below { below }): Query<Below>,
) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::ReadRevisions)?;
    let revisions = app.store.revisions(&opened.plan_id, below).await?;
    let next = revisions
        .last()
        .map(|last| last.revision)
        .filter(|&last| last > 1);
    Ok(Json(json!({ "revisions": revisions, "next": next })).into_response())
}

/// One revision of the plan.
pub async fn revision(
    State(app): State<App>,
    holder: Holder,
    Path((_, number)): Path<(String, String)>,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let opened = holder.who_may(Deed::ReadRevisions)?;
    let number = number.parse().map_err(|_| Trouble::nothing_here())?;
    let found = app.store.revision(&opened.plan_id, number).await?;
    let Saved { revision, plan, .. } = found.ok_or_else(Trouble::nothing_here)?;
    let tag = etag(revision);
    Ok(
        not_modified(&headers, &tag)
            .unwrap_or_else(|| with_etag(Json(&plan).into_response(), &tag)),
    )
}
