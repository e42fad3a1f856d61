//! The plan's page and its drawings.

use axum::extract::{Path, Query, State};
use axum::response::{Html, Response};
use stillground::design::ENGINE_VERSION;

use super::contradictory::{contradictions, unless_contradictory};
use super::place::Place;
use super::record;
use crate::app::App;
use crate::client::{Asker, Client};
use crate::error::Trouble;
use crate::forms::step::Step;
use crate::handlers::print::{self, Asked, Issue, Print, check_link, print};
use crate::planned::Planned;
use crate::store::Right;
use crate::views::pages::answer;
use crate::views::pages::card::CardPage;
use crate::views::pages::plan::{Marks, PlanBody, PlanPage};
use crate::views::pages::printed::Printed;
use crate::views::pages::step::FaultView;

/// The plan.
pub async fn show(app: &App, place: &Place, rev: Option<u32>) -> Result<Html<String>, Trouble> {
    let planned = unless_contradictory(app.improved(&place.plan).await)?;
    // Of a revision that there never was, nothing is said.
    let printed = match rev.filter(|rev| (1..=place.revision).contains(rev)) {
        Some(rev) => printed(app, place, rev, planned.as_deref()).await?,
        None => None,
    };
    let log = record::log(app, place, planned.as_ref()).await?;
    let faults = contradictions(&place.plan);
    let marks = Marks {
        revision: place.revision_words(),
        saved: place.saved.clone(),
        engine: ENGINE_VERSION,
    };
    answer(&PlanPage {
        frame: place.frame("Plan"),
        root: place.root.clone(),
        example: place.secret.is_empty(),
        marks,
        printed,
        log,
        faults: faults
            .iter()
            .map(|fault| FaultView::of(fault, Step::Plan, &place.root))
            .collect(),
        body: planned.map(|planned| PlanBody::of(&planned, &place.root)),
    })
}

/// What to say of a sheet of a revision: whether it is still the newest, and what changed since.
async fn printed(
    app: &App,
    place: &Place,
    rev: u32,
    now: Option<&Planned>,
) -> Result<Option<Printed>, Trouble> {
    if rev == place.revision {
        return Ok(Some(Printed::newest(rev)));
    }
    let Some(old) = app.store.revision(&place.plan_id, rev).await? else {
        return Ok(None);
    };
    let then = unless_contradictory(app.planned(&old.plan).await)?;
    Ok(Some(Printed::superseded(
        &old,
        &place.plan,
        place.revision,
        then.as_deref().zip(now),
    )))
}

/// The card for the wall.
pub async fn card(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let planned = unless_contradictory(app.planned(&place.plan).await)?;
    answer(&CardPage::of(
        place.frame("While an exposure runs"),
        &place.root,
        planned.as_deref(),
    ))
}

/// One of the plan's drawings by itself.
pub async fn drawing(
    State(app): State<App>,
    place: Place,
    Path(path): Path<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let file = path
        .iter()
        .find(|(name, _)| name == "file")
        .map(|(_, file)| file.as_str())
        .unwrap_or_default();
    print::drawing(&*app.planned(&place.plan).await?, file)
}

/// The whole set of sheets.
pub async fn pdf(
    State(app): State<App>,
    place: Place,
    Query(asked): Query<Asked>,
    asker: Asker,
) -> Result<Response, Trouble> {
    print(
        &app,
        Print::Plan,
        app.improved(&place.plan).await?,
        issue(&app, &place, &asker.0).await,
        &asked,
    )
    .await
}

/// The drilling template.
pub async fn template(
    State(app): State<App>,
    place: Place,
    Query(asked): Query<Asked>,
    asker: Asker,
) -> Result<Response, Trouble> {
    print(
        &app,
        Print::Template,
        app.planned(&place.plan).await?,
        issue(&app, &place, &asker.0).await,
        &asked,
    )
    .await
}

/// Plate and drilling jig, for a workshop.
pub async fn workshop(State(app): State<App>, place: Place) -> Result<Response, Trouble> {
    print::workshop(&*app.planned(&place.plan).await?)
}

/// What stands on a print of this plan. Only a link that lets its holder do no more than read is printed as a code; the
/// code that says whether the sheet is superseded opens nothing, and stands on every sheet.
async fn issue(app: &App, place: &Place, client: &Client) -> Issue {
    let saved = !place.secret.is_empty();
    let opens = (place.right == Right::View && saved)
        .then(|| format!("{}/plan?rev={}", place.root, place.revision));
    Issue {
        revision: saved.then(|| i64::from(place.revision)),
        date: saved.then(|| place.saved.trim_start_matches("saved ").to_owned()),
        view_link: opens.and_then(|path| client.link(&path)),
        check_link: if saved {
            check_link(app, client, &place.plan_id, place.revision).await
        } else {
            None
        },
        letterhead: place.letterhead(),
    }
}
