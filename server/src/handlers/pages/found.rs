//! What was found on the site, beside what was planned, and taken into the plan.

use axum::Form;
use axum::extract::{Query, State};
use axum::response::{Html, Redirect};
use serde::Deserialize;

use super::place::Place;
use super::record::writer;
use crate::app::App;
use crate::error::Trouble;
use crate::record::Record;
use crate::views::pages::answer;
use crate::views::pages::found::{Chosen, FoundPage, FoundRow, rows, take};

/// Which finding is looked at, or which revision stood before one was taken.
#[derive(Default, Deserialize)]
pub struct Asked {
    entry: Option<String>,
    before: Option<u32>,
}

/// Which finding is taken, and on top of which revision.
#[derive(Deserialize)]
pub struct Taking {
    entry: String,
    base: u32,
}

/// The findings, and what would change with one of them.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Query(asked): Query<Asked>,
) -> Result<Html<String>, Trouble> {
    let record = Record::load(&app, &writer(&place)).await?;
    let rows = rows(&record, &place.plan);
    let chosen = match asked.entry {
        Some(entry) => chosen(&app, &place, &record, &rows, &entry).await?,
        None => None,
    };
    answer(&FoundPage {
        frame: place.frame("Found and planned"),
        root: place.root.clone(),
        may_edit: place.right.may_edit(),
        base: place.revision,
        before: asked
            .before
            .filter(|before| place.right.may_edit() && (1..place.revision).contains(before)),
        rows,
        chosen,
    })
}

async fn chosen(
    app: &App,
    place: &Place,
    record: &Record,
    rows: &[FoundRow],
    entry: &str,
) -> Result<Option<Chosen>, Trouble> {
    let row = rows.iter().find(|row| row.entry.as_deref() == Some(entry));
    let (Some(row), Some(taken)) = (row, take(record, &place.plan, entry)) else {
        return Ok(None);
    };
    let now = app
        .planned(&taken.plan)
        .await
        .map_err(Trouble::contradictory)?;
    Ok(Some(Chosen::of(
        row,
        entry,
        &place.plan,
        &taken,
        [&record.planned, &now],
    )))
}

/// Writes a finding into the plan, as a revision of its own.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    Form(taking): Form<Taking>,
) -> Result<Redirect, Trouble> {
    let place = place.editing()?;
    let record = Record::load(&app, &writer(&place)).await?;
    let taken = take(&record, &place.plan, &taking.entry).ok_or_else(Trouble::nothing_here)?;
    let to = format!("found?before={}", taking.base);
    place.save(&app, taking.base, &taken.plan, &to).await
}
