//! The plan in short, its chapters, and its drawings.

use std::sync::Arc;

use axum::extract::{Path, Query, State};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum::routing::{MethodRouter, get};
use stillground::design::ENGINE_VERSION;

use super::contradictory::{contradictions, unless_contradictory};
use super::place::Place;
use super::record;
use crate::app::App;
use crate::client::{Asker, Client};
use crate::error::Trouble;
use crate::forms::chapter::Chapter;
use crate::forms::step::Step;
use crate::handlers::print::{self, Asked, Issue, built, check_link, print};
use crate::planned::Planned;
use crate::prints::Print;
use crate::store::Right;
use crate::views::pages::answer;
use crate::views::pages::card::CardPage;
use crate::views::pages::chapter::ChapterPage;
use crate::views::pages::plan::{Marks, PlanBody, PlanPage};
use crate::views::pages::printed::Printed;
use crate::views::pages::short::{Reader, Short, chapters};
use crate::views::pages::step::FaultView;

/// The plan in short.
pub async fn show(
    app: &App,
    place: &Place,
    rev: Option<u32>,
    before: Option<u32>,
) -> Result<Html<String>, Trouble> {
    let planned = unless_contradictory(app.planned(&place.plan).await)?;
    // Of a revision that there never was, nothing is said.
    let printed = match rev.filter(|rev| (1..=place.revision).contains(rev)) {
        Some(rev) => printed(app, place, rev, planned.as_deref()).await?,
        None => None,
    };
    let before =
        before.filter(|before| place.right.may_edit() && (1..place.revision).contains(before));
    let made = match before {
        Some(before) => compared(app, place, before, planned.as_deref()).await?,
        None => None,
    };
    let entered = record::log(app, place, planned.as_ref())
        .await?
        .map_or(0, |log| log.count);
    let faults = contradictions(&place.plan);
    let worth = match &planned {
        Some(_) => app.worth(&place.plan).await?,
        None => Arc::default(),
    };
    let reader = Reader {
        root: &place.root,
        edit: place.right.may_edit(),
        entered,
        worth: worth.first(),
    };
    answer(&PlanPage {
        frame: place.frame("Plan"),
        root: place.root.clone(),
        example: place.secret.is_empty(),
        marks: marks(place),
        printed,
        faults: faults
            .iter()
            .map(|fault| FaultView::of(fault, Step::Plan, &place.root))
            .collect(),
        entered,
        made,
        body: planned.map(|planned| Short::of(&planned, reader)),
    })
}

/// A chapter of the plan. While the answers contradict each other there is none but what was recorded.
pub async fn chapter(
    State(app): State<App>,
    place: Place,
    Path(path): Path<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let chapter = path
        .iter()
        .find(|(name, _)| name == "chapter")
        .and_then(|(_, slug)| Chapter::from_slug(slug))
        .ok_or_else(Trouble::nothing_here)?;
    // Only these look for what would help and what was measured, which takes longest.
    let found = match chapter {
        Chapter::Stillness | Chapter::Proof => app.improved(&place.plan).await,
        _ => app.planned(&place.plan).await,
    };
    let planned = unless_contradictory(found)?;
    let log = record::log(&app, &place, planned.as_ref()).await?;
    let entered = log.as_ref().map_or(0, |log| log.count);
    let there = match &planned {
        Some(planned) => chapters(planned, entered),
        None if entered > 0 => vec![Chapter::Recorded],
        None => Vec::new(),
    };
    if !there.contains(&chapter) {
        return Ok(Redirect::to(&format!("{}/plan", place.root)).into_response());
    }
    let page = answer(&ChapterPage {
        frame: place.frame(chapter.title()),
        root: place.root.clone(),
        example: place.secret.is_empty(),
        edit: place.right.may_edit(),
        base: place.revision,
        marks: marks(&place),
        chapter,
        others: there.into_iter().filter(|one| *one != chapter).collect(),
        log,
        body: planned.map(|planned| PlanBody::of(&planned, &place.root)),
    })?;
    Ok(page.into_response())
}

fn marks(place: &Place) -> Marks {
    Marks {
        revision: place.revision_words(),
        saved: place.saved.clone(),
        engine: ENGINE_VERSION,
        saved_with: saved_with(place.engine.as_deref()),
    }
}

/// The version with which it was saved, where that is not today's.
fn saved_with(engine: Option<&str>) -> Option<String> {
    engine
        .filter(|engine| *engine != ENGINE_VERSION)
        .map(str::to_owned)
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
    compared(app, place, rev, now).await
}

/// An older revision beside the one that stands.
async fn compared(
    app: &App,
    place: &Place,
    rev: u32,
    now: Option<&Planned>,
) -> Result<Option<Printed>, Trouble> {
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
    let found = if place.plan.commissioning.is_measured() {
        app.improved(&place.plan).await
    } else {
        app.planned(&place.plan).await
    };
    let planned = unless_contradictory(found)?;
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
    // What was measured is compared only where what would help is looked for.
    let planned = if file.starts_with("agreement") || file.starts_with("tilt-map-pier") {
        app.improved(&place.plan).await?
    } else {
        app.planned(&place.plan).await?
    };
    print::drawing(&planned, file)
}

/// A set of sheets.
pub fn sheets(which: Print) -> MethodRouter<App> {
    get(
        async move |State(app): State<App>,
                    place: Place,
                    Query(asked): Query<Asked>,
                    asker: Asker| {
            let issue = issue(&app, &place, &asker.0).await;
            print(&app, which, &place.plan, issue, &asked).await
        },
    )
}

/// Everything that can be checked.
pub async fn file(
    State(app): State<App>,
    place: Place,
    Query(asked): Query<Asked>,
    asker: Asker,
) -> Result<Response, Trouble> {
    let mut issue = issue(&app, &place, &asker.0).await;
    if !place.secret.is_empty() {
        issue.built = built(&app, &record::writer(&place)).await?;
    }
    print(&app, Print::File, &place.plan, issue, &asked).await
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
        built: Vec::new(),
    }
}
