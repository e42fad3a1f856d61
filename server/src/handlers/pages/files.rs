//! Lists to take away: materials for a spreadsheet, the schedule for a calendar.

use axum::extract::State;
use axum::http::HeaderValue;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};

use super::place::Place;
use crate::app::App;
use crate::error::Trouble;
use crate::handlers::print;
use crate::views::csv;

/// The materials.
pub async fn materials(State(app): State<App>, place: Place) -> Result<Response, Trouble> {
    let planned = app.planned(&place.plan).await?;
    Ok(file(
        csv::materials(&planned.design, planned.brief.units),
        "text/csv; charset=utf-8",
        "attachment; filename=\"materials.csv\"",
    ))
}

/// The schedule, for a plan that says on which day it begins.
pub async fn calendar(State(app): State<App>, place: Place) -> Result<Response, Trouble> {
    let planned = app.planned(&place.plan).await?;
    let id = if place.plan_id.is_empty() {
        "example"
    } else {
        &place.plan_id
    };
    print::schedule(&app, &planned, id, place.revision).await
}

fn file(text: String, kind: &'static str, name: &'static str) -> Response {
    (
        [
            (CONTENT_TYPE, HeaderValue::from_static(kind)),
            (CONTENT_DISPOSITION, HeaderValue::from_static(name)),
        ],
        text,
    )
        .into_response()
}
