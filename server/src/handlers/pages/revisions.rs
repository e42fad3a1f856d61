//! A plan's revisions.

use axum::extract::{Form, Query, State};
use axum::response::{Html, Redirect};
use serde::Deserialize;

use super::place::{self, Place};
use crate::app::App;
use crate::error::Trouble;
use crate::store::Deed;
use crate::views::pages::answer;
use crate::views::pages::revisions::{RevisionView, RevisionsPage};
use crate::views::words;

/// Which revision to save again.
#[derive(Deserialize)]
pub struct Again {
    number: u32,
}

/// Where the list goes on.
#[derive(Deserialize)]
pub struct Below {
    below: Option<u32>,
}

/// The revisions of a plan, a hundred at a time.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Query(Below { below }): Query<Below>,
) -> Result<Html<String>, Trouble> {
    let place = place.who_may(Deed::ReadRevisions)?;
    let revisions = app.store.revisions(&place.plan_id, below).await?;
    let last = revisions.last().map(|last| last.revision);
    let view = |revision: &crate::store::Revision| RevisionView {
        number: revision.revision,
        title: place::title(revision.title.as_deref()),
        saved: words::moment(revision.saved_at),
        engine: revision.engine.clone().unwrap_or_default(),
        newest: revision.revision == place.revision,
    };
    answer(&RevisionsPage {
        revisions: revisions.iter().map(view).collect(),
        older: last
            .filter(|&last| last > 1)
            .map(|last| format!("{}/revisions?below={last}", place.root)),
        frame: place.frame("Revisions"),
        root: place.root.clone(),
    })
}

/// Saves an old revision as the newest.
pub async fn again(
    State(app): State<App>,
    place: Place,
    Form(again): Form<Again>,
) -> Result<Redirect, Trouble> {
    let place = place.editing()?;
    let old = app
        .store
        .revision(&place.plan_id, again.number)
        .await?
        .ok_or_else(Trouble::nothing_here)?;
    place
        .save(&app, place.revision, &old.plan, "revisions")
        .await
}
