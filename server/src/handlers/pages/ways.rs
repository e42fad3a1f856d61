//! Three ways to build it: looked for, shown, and taken.

use axum::Form;
use axum::extract::State;
use axum::response::{Html, Redirect};
use serde::Deserialize;
use stillground::options::taking::taken;

use super::place::Place;
use crate::app::App;
use crate::error::Trouble;
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::ways::{WaysPage, by_key};

/// Which way is taken, and on top of which revision.
#[derive(Deserialize)]
pub struct Take {
    way: String,
    base: u32,
}

/// The three ways.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let options = app.options(&place.plan).await?;
    answer(&WaysPage::of(
        place.frame("Three ways to build it"),
        &place.root,
        place.right.may_edit(),
        place.revision,
        &place.plan,
        &options,
    ))
}

/// Writes a way's answers into the plan, as a revision of its own.
pub async fn take(
    State(app): State<App>,
    place: Place,
    Form(take): Form<Take>,
) -> Result<Redirect, Trouble> {
    let place = place.editing()?;
    let options = app.options(&place.plan).await?;
    let (_, point) = by_key(&options, &take.way).ok_or_else(Trouble::nothing_here)?;
    let made = taken(&place.plan, point);
    match app.store.save(&place.plan_id, take.base, &made).await? {
        Save::Done(_) => Ok(Redirect::to(&format!(
            "{}/plan?before={}",
            place.root, take.base
        ))),
        Save::Stale { current } => Err(Trouble::stale(&current)),
    }
}
