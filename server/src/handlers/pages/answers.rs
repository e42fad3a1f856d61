//! Every answer of the plan on one page, to check before it is built by.

use axum::extract::{Query, State};
use axum::response::Html;
use serde::Deserialize;

use super::contradictory::{contradictions, planned};
use super::place::Place;
use crate::app::App;
use crate::error::Trouble;
use crate::forms::step::Step;
use crate::views::pages::all_answers::AllAnswersPage;
use crate::views::pages::answer;
use crate::views::pages::step::FaultView;

/// What a redirect tells the page.
#[derive(Deserialize)]
pub struct Said {
    saved: Option<String>,
}

/// The page.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Query(said): Query<Said>,
) -> Result<Html<String>, Trouble> {
    let planned = planned(&app, &place.plan).await?;
    let faults = match planned {
        Some(_) => Vec::new(),
        None => contradictions(&place.plan),
    };
    let edit = place.right.may_edit();
    let title = if edit {
        "Check your answers"
    } else {
        "All answers"
    };
    answer(&AllAnswersPage {
        notice: said.saved.map(|_| "Saved."),
        faults: faults
            .iter()
            .map(|fault| FaultView::of(fault, Step::Plan, &place.root))
            .collect(),
        ..AllAnswersPage::of(
            place.frame(title),
            &place.root,
            edit,
            &place.plan,
            planned.as_deref(),
        )
    })
}
