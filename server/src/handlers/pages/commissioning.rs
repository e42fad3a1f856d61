//! Commissioning: what was measured of a pier that stands, and what it says.

use axum::body::Body;
use axum::extract::{FromRequest, Multipart, Request, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use http_body_util::BodyExt;
use stillground::trace::{self, Asked, Kind};

use super::place::Place;
use super::sent::{self, Sent, unread};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::commissioning::read;
use crate::forms::sheet::Sheet;
use crate::turns::Work;
use crate::views::pages::answer;
use crate::views::pages::commissioning::{CommissioningPage, Heard, Shown};

/// The page.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    answer(&page(&app, &place, &Shown::default()).await?)
}

/// Takes a measurement into the plan, or out of it.
pub async fn keep(State(app): State<App>, place: Place, sent: Sent) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let sheet = sent::sheet(sent)?;
    let base = sheet
        .text("base")
        .and_then(|base| base.parse().ok())
        .unwrap_or(place.revision);
    match read(&place.plan, &sheet) {
        Ok(plan) => Ok(place
            .save(&app, base, &plan, "commissioning#said")
            .await?
            .into_response()),
        Err(faults) => {
            let shown = Shown {
                sheet,
                faults,
                ..Shown::default()
            };
            let page = page(&app, &place, &shown).await?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response())
        }
    }
}

/// Reads a record and shows what is found in it, to be corrected before it is taken.
pub async fn record(
    State(app): State<App>,
    place: Place,
    request: Request,
) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let (file, asked) = arrived(request).await.ok_or_else(unread)?;
    let kind = asked.kind.unwrap_or(Kind::Knock);
    let read = app
        .work(Work::Design, move || trace::read(&file, &asked))
        .await?;
    let (status, heard) = match read {
        Ok(found) => (StatusCode::OK, Heard::of(&found)),
        Err(refusal) => (
            StatusCode::UNPROCESSABLE_ENTITY,
            Heard::refused(kind, &refusal.to_string()),
        ),
    };
    let shown = Shown {
        sheet: heard.sheet(),
        heard: Some(heard),
        ..Shown::default()
    };
    let page = page(&app, &place, &shown).await?;
    Ok((status, answer(&page)?).into_response())
}

/// The file of a form and what is said of it.
async fn arrived(request: Request) -> Option<(Vec<u8>, Asked)> {
    let (parts, body) = request.into_parts();
    let whole = body.collect().await.ok()?.to_bytes();
    let request = Request::from_parts(parts, Body::from(whole));
    let mut form = Multipart::from_request(request, &()).await.ok()?;
    let (mut file, mut asked) = (Vec::new(), Asked::default());
    while let Some(field) = form.next_field().await.ok()? {
        let name = field.name().unwrap_or_default().to_owned();
        if name == "file" {
            file = field.bytes().await.ok()?.to_vec();
            continue;
        }
        let text = field.text().await.ok()?;
        let text = text.trim();
        let number = || text.replace(',', ".").parse().ok();
        match name.as_str() {
            "kind" => {
                asked.kind = Some(if text == "lean" {
                    Kind::Lean
                } else {
                    Kind::Knock
                })
            }
            "rate" => asked.rate_hz = number(),
            "time" if !text.is_empty() => asked.time = Some(text.to_owned()),
            "value" if !text.is_empty() => asked.value = Some(text.to_owned()),
            "scale" => asked.scale_arcsec_per_unit = number(),
            "at" => {
                let times = text.split([';', ' ']).filter(|at| !at.is_empty());
                asked.at_s = times
                    .filter_map(|at| at.replace(',', ".").parse().ok())
                    .collect();
            }
            _ => {}
        }
    }
    Some((file, asked))
}

async fn page(app: &App, place: &Place, shown: &Shown) -> Result<CommissioningPage, Trouble> {
    let planned = if place.plan.commissioning.is_measured() {
        super::contradictory::unless_contradictory(app.improved(&place.plan).await)?
    } else {
        None
    };
    let mut frame = place.frame("Commissioning");
    if let Some(step) = frame.plan.as_mut().and_then(|plan| plan.steps.last_mut()) {
        step.current = true;
    }
    let sheet: &Sheet = &shown.sheet;
    Ok(CommissioningPage::of(
        frame,
        place.root.clone(),
        place.right.may_edit(),
        place.revision,
        &place.plan,
        planned.as_deref(),
        shown,
        sheet,
    ))
}
