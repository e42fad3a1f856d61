//! The materials as a page to tick. Ticks are entries of the record, so that every link and every telephone sees them.

use axum::Json;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use serde::Deserialize;
use serde_json::json;
use stillground::record::{Entry, Kind};
use stillground::site_plan::prices::lines::LINES;

use super::contradictory::unless_contradictory;
use super::place::Place;
use super::record::{form_name, writer};
use super::sent::{self, Sent};
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::{Trouble, asks_for_json};
use crate::forms::sheet::Sheet;
use crate::record::{self, Record, Writer, examine};
use crate::views::pages::answer;
use crate::views::pages::materials::{MaterialsPage, Order};

/// The task that the ticks belong to.
const TASK: &str = "order";

/// What a redirect tells the page it leads to.
#[derive(Default, Deserialize)]
pub struct Said {
    kept: Option<u32>,
}

/// The page.
pub async fn show(
    State(app): State<App>,
    place: Place,
    jar: CookieJar,
    Query(said): Query<Said>,
) -> Result<Html<String>, Trouble> {
    let notice = said.kept.map(|count| match count {
        0 => "Nothing was ticked that was not ticked before.".to_owned(),
        1 => "One tick was kept.".to_owned(),
        count => format!("{count} ticks were kept."),
    });
    let page = page(&app, &place, who::name(&jar), None, Vec::new()).await?;
    answer(&MaterialsPage { notice, ..page })
}

/// Keeps what was ticked since the page was shown, and what was not any more; what others ticked meanwhile stands.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    jar: CookieJar,
    headers: HeaderMap,
    sent: Sent,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
    let sheet = sent::sheet(sent)?;
    let writer = writer(&place);
    let entries = new(&app, &writer, entries(&app, &place, &sheet).await?).await?;
    let script = asks_for_json(&headers);
    let wrong = examine(&app, &writer, &entries).await?;
    let mut faults: Vec<String> = wrong
        .iter()
        .flat_map(|(_, trouble)| &trouble.errors)
        .map(|error| error.detail.clone())
        .collect();
    faults.dedup();
    if !faults.is_empty() && script {
        return Ok((
            StatusCode::UNPROCESSABLE_ENTITY,
            Json(json!({ "refused": faults })),
        )
            .into_response());
    }
    let name = sheet.text("who").unwrap_or_default();
    if !faults.is_empty() {
        let page = page(&app, &place, name.to_owned(), Some(&sheet), faults).await?;
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response());
    }
    for entry in &entries {
        record::keep(&app, &writer, entry).await?;
    }
    let count = entries.len();
    let jar = if count > 0 {
        who::with(&app, &asker.0, jar, name)
    } else {
        jar
    };
    if script {
        return Ok((jar, Json(json!({ "kept": count }))).into_response());
    }
    Ok((
        jar,
        Redirect::to(&format!("{}/materials?kept={count}", place.root)),
    )
        .into_response())
}

/// What changed on the form since it was shown, each with what the line was called on that revision. An entry is named by
/// form, line and answer: sent twice, it is kept once.
async fn entries(app: &App, place: &Place, sheet: &Sheet) -> Result<Vec<Entry>, Trouble> {
    let revision = sheet
        .text("revision")
        .and_then(|revision| revision.trim().parse().ok())
        .unwrap_or(0);
    let then = match revision == place.revision {
        true => Some(place.plan.clone()),
        false => app
            .store
            .revision(&place.plan_id, revision)
            .await?
            .map(|saved| saved.plan),
    };
    let planned = match then {
        Some(plan) => unless_contradictory(app.planned(&plan).await)?,
        None => None,
    };
    let materials = planned
        .as_ref()
        .map(|planned| planned.design.materials.as_slice())
        .unwrap_or_default();
    let item = |id: &str| {
        materials
            .iter()
            .find(|line| line.id == id)
            .map(|line| line.item.clone())
    };
    let text = |name: &str| sheet.text(name).unwrap_or_default().trim().to_owned();
    let changed = LINES.iter().filter_map(|line| {
        let (here, was) = (
            sheet.ticked(&format!("here~{}", line.id)),
            sheet.ticked(&format!("was~{}", line.id)),
        );
        (here != was).then_some((line.id, if here { Kind::Here } else { Kind::Missing }))
    });
    let entry = |(id, kind): (&str, Kind)| Entry {
        item: Some(id.to_owned()),
        text: item(id),
        revision,
        who: text("who"),
        measured_at: Some(text("at")).filter(|at| !at.is_empty()),
        ..Entry::new(&format!("{}.{id}.{}", text("form"), kind.key()), TASK, kind)
    };
    Ok(changed.map(entry).collect())
}

/// Those that change something, or were sent before under the same name: what another telephone ticked meanwhile is not
/// ticked again.
async fn new(app: &App, writer: &Writer, entries: Vec<Entry>) -> Result<Vec<Entry>, Trouble> {
    let record = Record::load(app, writer)
        .await
        .map_err(Trouble::contradictory)?;
    let board = record.board();
    let known = |entry: &Entry| record.entries.iter().any(|kept| kept.id == entry.id);
    let here = |entry: &Entry| {
        entry
            .item
            .as_deref()
            .is_some_and(|line| board.here(line).is_some())
    };
    Ok(entries
        .into_iter()
        .filter(|entry| known(entry) || here(entry) != (entry.kind == Kind::Here))
        .collect())
}

async fn page(
    app: &App,
    place: &Place,
    who: String,
    sent: Option<&Sheet>,
    faults: Vec<String>,
) -> Result<MaterialsPage, Trouble> {
    let example = place.secret.is_empty();
    let ticked = |id: &str| sent.map(|sheet| sheet.ticked(&format!("here~{id}")));
    let kept = if example {
        Vec::new()
    } else {
        app.store.entries(&place.plan_id).await?
    };
    let order = unless_contradictory(app.planned(&place.plan).await)?.map(|planned| {
        let record = Record::of(planned, kept);
        Order::of(&record.planned, &record.board(), &ticked)
    });
    Ok(MaterialsPage {
        frame: place.frame("Materials to tick"),
        root: place.root.clone(),
        plan_id: place.plan_id.clone(),
        revision: place.revision,
        example,
        may_record: place.right.may_record(),
        may_edit: place.right.may_edit(),
        who,
        form: form_name()?,
        notice: None,
        faults,
        order,
    })
}
