//! A plan's revisions.

use axum::extract::{Form, State};
use axum::response::{Html, Redirect};
use serde::Deserialize;

use super::place::{self, Place};
use crate::app::App;
use crate::error::Trouble;
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::revisions::{RevisionView, RevisionsPage};
use crate::views::words;

/// Which revision to save again.
#[derive(Deserialize)]
pub struct Again {
    number: u32,
}

/// The revisions of a plan.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let place = place.editing()?;
    let revisions = app.store.revisions(&place.plan_id).await?;
    let view = |revision: &crate::store::Revision| RevisionView {
        number: revision.revision,
        title: place::title(revision.title.as_deref()),
        saved: words::moment(revision.saved_at),
        newest: revision.revision == place.revision,
    };
    answer(&RevisionsPage {
        revisions: revisions.iter().map(view).collect(),
        frame: place.frame("Revisions"),
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
    match app
        .store
        .save(&place.plan_id, place.revision, &old.plan)
        .await?
    {
        Save::Done(_) => Ok(Redirect::to(&format!("{}/revisions", place.root))),
        Save::Stale { current } => Err(Trouble::stale(&current)),
    }
}
