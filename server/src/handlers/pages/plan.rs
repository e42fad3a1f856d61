//! The plan's page and its drawings.

use axum::extract::{Path, Query, State};
use axum::http::HeaderMap;
use axum::response::{Html, Response};
use stillground::design::ENGINE_VERSION;

use super::place::Place;
use super::step::{contradictions, unless_contradictory};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::step::Step;
use crate::handlers::print::{self, Asked, Issue, Print, address, print};
use crate::store::Right;
use crate::views::pages::answer;
use crate::views::pages::card::CardPage;
use crate::views::pages::plan::{Marks, PlanBody, PlanPage};
use crate::views::pages::step::FaultView;

/// The plan.
pub async fn show(app: &App, place: &Place) -> Result<Html<String>, Trouble> {
    let planned = unless_contradictory(app.improved(&place.plan).await)?;
    let faults = contradictions(&place.plan);
    let marks = Marks { revision: place.revision_words(), saved: place.saved.clone(), engine: ENGINE_VERSION };
    answer(&PlanPage {
        frame: place.frame("Plan"),
        root: place.root.clone(),
        example: place.secret.is_empty(),
        marks,
        faults: faults.iter().map(|fault| FaultView::of(fault, Step::Plan, &place.root)).collect(),
        body: planned.map(|planned| PlanBody::of(&planned, &place.root)),
    })
}

/// The card for the wall.
pub async fn card(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let planned = unless_contradictory(app.planned(&place.plan).await)?;
    answer(&CardPage::of(place.frame("While an exposure runs"), &place.root, planned.as_deref()))
}

/// One of the plan's drawings by itself.
pub async fn drawing(State(app): State<App>, place: Place, Path(path): Path<Vec<(String, String)>>) -> Result<Response, Trouble> {
    let file = path.iter().find(|(name, _)| name == "file").map(|(_, file)| file.as_str()).unwrap_or_default();
    print::drawing(&*app.planned(&place.plan).await?, file)
}

/// The whole set of sheets.
pub async fn pdf(State(app): State<App>, place: Place, Query(asked): Query<Asked>, headers: HeaderMap) -> Result<Response, Trouble> {
    print(Print::Plan, app.planned(&place.plan).await?, issue(&place, &headers), &asked).await
}

/// The drilling template.
pub async fn template(State(app): State<App>, place: Place, Query(asked): Query<Asked>, headers: HeaderMap) -> Result<Response, Trouble> {
    print(Print::Template, app.planned(&place.plan).await?, issue(&place, &headers), &asked).await
}

/// What stands on a print of this plan. Only a link that lets its holder do no more than read is printed as a code.
fn issue(place: &Place, headers: &HeaderMap) -> Issue {
    let saved = !place.secret.is_empty();
    Issue {
        revision: saved.then(|| i64::from(place.revision)),
        date: saved.then(|| place.saved.trim_start_matches("saved ").to_owned()),
        view_link: (place.right == Right::View).then(|| address(headers, &place.root)).flatten(),
    }
}
