//! The ways to measure a pier, each on a page of its own. With the edit link a measurement goes into the plan, with the
//! record link into the record, from which the plan takes it.

use axum::body::Body;
use axum::extract::{FromRequest, Multipart, Path, Query, Request, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use http_body_util::BodyExt;
use serde::Deserialize;
use stillground::record::Entry;
use stillground::site_plan::commissioning::{Measurement, MeasurementKind};
use stillground::trace::{self, Asked, Kind};

use super::place::Place;
use super::record::{form_name, writer};
use super::sent::{self, Sent, unread};
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::forms::commissioning::{measurement, read};
use crate::forms::sheet::Sheet;
use crate::record::{Record, take};
use crate::turns::Work;
use crate::views::pages::answer;
use crate::views::pages::commissioning::measure::{MeasurePage, Parts};
use crate::views::pages::commissioning::ways::Way;
use crate::views::pages::commissioning::{Heard, Shown};

/// What a redirect tells the page it leads to.
#[derive(Default, Deserialize)]
pub struct Said {
    kept: Option<u32>,
}

type Parameters = Path<Vec<(String, String)>>;

fn way(path: &Parameters) -> Result<Way, Trouble> {
    let way = path.iter().find(|(name, _)| name == "way");
    way.and_then(|(_, slug)| Way::from_slug(slug))
        .ok_or_else(Trouble::nothing_here)
}

/// The page.
pub async fn show(
    State(app): State<App>,
    place: Place,
    path: Parameters,
    jar: CookieJar,
    Query(said): Query<Said>,
) -> Result<Html<String>, Trouble> {
    let shown = Shown::default();
    let asked = Page {
        way: way(&path)?,
        who: who::name(&jar),
        kept: said.kept.is_some(),
        shown: &shown,
    };
    answer(&asked.made(&app, &place).await?)
}

/// Takes a measurement: into the plan with the link that edits, else into the record.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    path: Parameters,
    asker: Asker,
    jar: CookieJar,
    sent: Sent,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
    let way = way(&path)?;
    let kind = way.kind().ok_or_else(Trouble::nothing_here)?;
    let sheet = sent::sheet(sent)?;
    let units = place.plan.units.unwrap_or_default();
    let faults = if place.right.may_edit() {
        match read(&place.plan, &sheet, units) {
            Ok(plan) => {
                let base = sheet
                    .text("base")
                    .and_then(|base| base.parse().ok())
                    .unwrap_or(place.revision);
                let to = "commissioning#said";
                return Ok(place.save(&app, base, &plan, to).await?.into_response());
            }
            Err(faults) => faults,
        }
    } else {
        match measurement(kind, &sheet, units) {
            Ok(found) => match into_record(&app, &place, &sheet, kind, found).await {
                Ok(()) => {
                    let name = sheet.text("who").unwrap_or_default();
                    let jar = who::with(&app, &asker.0, jar, name);
                    let to = format!("{}/measure/{}?kept=1", place.root, way.slug());
                    return Ok((jar, Redirect::to(&to)).into_response());
                }
                Err(trouble) if trouble.errors.is_empty() => return Err(trouble),
                Err(trouble) => {
                    let errors = trouble.errors.iter();
                    errors
                        .map(|error| (error.path.clone(), error.detail.clone()))
                        .collect()
                }
            },
            Err(faults) => faults,
        }
    };
    let who = sheet
        .text("who")
        .map_or_else(|| who::name(&jar), str::to_owned);
    let shown = Shown {
        sheet,
        faults,
        ..Shown::default()
    };
    let page = Page {
        way,
        who,
        kept: false,
        shown: &shown,
    };
    let page = page.made(&app, &place).await?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response())
}

async fn into_record(
    app: &App,
    place: &Place,
    sheet: &Sheet,
    kind: MeasurementKind,
    found: Measurement,
) -> Result<(), Trouble> {
    let text = |name: &str| sheet.text(name).unwrap_or_default().trim().to_owned();
    let entry = Entry {
        revision: text("base").parse().unwrap_or(place.revision),
        who: text("who"),
        measured_at: Some(text("at")).filter(|at| !at.is_empty()),
        ..Entry::of_pier(&format!("{}.{}", text("form"), kind.key()), found)
    };
    take(app, &writer(place), &entry).await.map(drop)
}

/// Reads a record of samples and shows what is found in it, to be corrected before it is taken.
pub async fn trace(
    State(app): State<App>,
    place: Place,
    jar: CookieJar,
    request: Request,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
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
    let page = Page {
        way: if kind == Kind::Lean {
            Way::Lean
        } else {
            Way::Knock
        },
        who: who::name(&jar),
        kept: false,
        shown: &shown,
    };
    let page = page.made(&app, &place).await?;
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
            "kind" if text == "lean" => asked.kind = Some(Kind::Lean),
            "kind" => asked.kind = Some(Kind::Knock),
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

/// What a page shows.
struct Page<'a> {
    way: Way,
    who: String,
    kept: bool,
    shown: &'a Shown,
}

impl Page<'_> {
    async fn made(self, app: &App, place: &Place) -> Result<MeasurePage, Trouble> {
        let planned = super::contradictory::unless_contradictory(app.planned(&place.plan).await)?;
        let kept = if place.secret.is_empty() {
            Vec::new()
        } else {
            app.store.entries(&place.plan_id).await?
        };
        let record = planned.map(|planned| Record::of(planned, kept));
        Ok(MeasurePage::of(
            place.frame(self.way.title()),
            Parts {
                root: &place.root,
                way: self.way,
                may: [place.right.may_edit(), place.right.may_record()],
                base: place.revision,
                form: form_name()?,
                who: self.who,
                kept: self.kept,
                plan: &place.plan,
                record: record.as_ref(),
                shown: self.shown,
            },
        ))
    }
}
