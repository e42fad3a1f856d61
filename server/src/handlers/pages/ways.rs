//! Three ways to build it: looked for, shown, taken, and held against another revision.

use axum::Form;
use axum::extract::{Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;
use stillground::options::Point;
use stillground::options::taking::{PINS, pinned, taken};
use stillground::site_plan::SitePlan;

use super::place::Place;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::guard::Kind;
use crate::planned::digest;
use crate::searches::Looked;
use crate::store::Deed;
use crate::turns::Work;
use crate::views::pages::answer;
use crate::views::pages::beside_each_other::BesidePage;
use crate::views::pages::ways::{GoingPage, WaysPage, by_key};

/// What the address says.
#[derive(Deserialize)]
pub struct Asked {
    /// Go on with a search that was cut short.
    more: Option<String>,
    /// The revision that this one is held against.
    with: Option<u32>,
}

/// Which way is taken, or which of its answers is pinned, and on top of which revision.
#[derive(Deserialize)]
pub struct Take {
    way: String,
    pin: Option<String>,
    base: u32,
}

/// The three ways, or how far the search for them is.
pub async fn show(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    if let Some(with) = asked.with {
        return beside(&app, place, with).await;
    }
    let looked = look(&app, &place.plan, &asker, asked.more.is_some()).await?;
    let frame = place.frame("Three ways to build it");
    let page = match looked {
        Looked::Going(reached) => answer(&GoingPage::of(frame, &place.root, reached))?,
        Looked::Found(options) => answer(&WaysPage::of(
            frame,
            &place.root,
            place.right.may_edit(),
            place.revision,
            &place.plan,
            &options,
        ))?,
    };
    Ok(page.into_response())
}

/// What is kept of the search, or the search itself; beginning one is counted.
async fn look(app: &App, plan: &SitePlan, asker: &Asker, more: bool) -> Result<Looked, Trouble> {
    let open = plan.left_open();
    let key = digest(&open);
    let goes_on = app.searches.goes_on(&key);
    // While it goes on again, what was found before is no answer to whoever wants more.
    if let Some(kept) = app.searches.kept(&key, more || goes_on) {
        return Ok(Looked::Found(kept));
    }
    if !goes_on {
        app.guard.take(&asker.0, Kind::Search)?;
    }
    app.searches.look(key, open).await
}

/// Two revisions side by side.
async fn beside(app: &App, place: Place, with: u32) -> Result<Response, Trouble> {
    let place = place.who_may(Deed::ReadRevisions)?;
    let other = app.store.revision(&place.plan_id, with).await?;
    let other = other.ok_or_else(Trouble::nothing_here)?;
    let (then, now) = (
        app.planned(&other.plan).await?,
        app.planned(&place.plan).await?,
    );
    let shelf = app.shelf.clone();
    let points = Box::pin(app.work(Work::Design, move || {
        [then, now].map(|planned| Point::of(&planned.brief, Vec::new(), &shelf))
    }));
    let page = answer(&BesidePage::of(
        place.frame("Two revisions side by side"),
        &place.root,
        [with, place.revision],
        [&other.plan, &place.plan],
        &points.await?,
    ))?;
    Ok(page.into_response())
}

/// Writes a way's answers into the plan as chosen, or one of them as said, as a revision of its own.
pub async fn take(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    Form(take): Form<Take>,
) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let Looked::Found(options) = look(&app, &place.plan, &asker, false).await? else {
        return Ok(Redirect::to(&format!("{}/ways", place.root)).into_response());
    };
    let (_, point) = by_key(&options, &take.way).ok_or_else(Trouble::nothing_here)?;
    let (made, to) = match take.pin.as_deref() {
        None => (
            taken(&place.plan, point),
            format!("plan?before={}", take.base),
        ),
        Some(pin) => {
            let pin = PINS.iter().find(|known| known.key == pin);
            let pin = pin.ok_or_else(Trouble::nothing_here)?;
            (pinned(&place.plan, point, pin), "ways".to_owned())
        }
    };
    let saved = place.save(&app, take.base, &made, &to).await?;
    Ok(saved.into_response())
}
