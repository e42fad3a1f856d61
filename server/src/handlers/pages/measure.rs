//! The ways to measure a pier, each on a page of its own. With the edit link a measurement goes into the plan, with the
//! record link into the record, from which the plan takes it.

use axum::Json;
use axum::body::Body;
use axum::extract::{FromRequest, Multipart, Path, Query, Request, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use http_body_util::BodyExt;
use serde::Deserialize;
use serde_json::json;
use stillground::figure::Units;
use stillground::record::Entry;
use stillground::site_plan::commissioning::MeasurementKind;
use stillground::trace::{self, Along, Asked, Kind, Refusal, Trace};

use super::place::Place;
use super::record::{form_name, writer};
use super::sent::{self, Sent, unread};
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::{Trouble, asks_for_json};
use crate::forms::commissioning::{Wrong, measurement, read};
use crate::forms::sheet::Sheet;
use crate::record::{Record, seen, take};
use crate::turns::Work;
use crate::views::pages::answer;
use crate::views::pages::commissioning::Shown;
use crate::views::pages::commissioning::heard::Heard;
use crate::views::pages::commissioning::measure::{MeasurePage, Parts};
use crate::views::pages::commissioning::ways::Way;

/// What a redirect tells the page it leads to.
#[derive(Default, Deserialize)]
pub struct Said {
    kept: Option<u32>,
    direction: Option<String>,
    frequency_hz: Option<String>,
    frequency_sd_hz: Option<String>,
    damping_ratio: Option<String>,
}

impl Said {
    /// The boxes that the address fills: the other direction of a file that was read.
    fn sheet(&self) -> Sheet {
        let boxes = [
            ("direction", &self.direction),
            ("frequency_hz", &self.frequency_hz),
            ("frequency_sd_hz", &self.frequency_sd_hz),
            ("damping_ratio", &self.damping_ratio),
        ];
        let filled = boxes
            .into_iter()
            .filter_map(|(name, text)| Some((name.to_owned(), text.clone()?)));
        let what = ("what".to_owned(), "knock".to_owned());
        Sheet::sent(std::iter::once(what).chain(filled).collect())
    }
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
    let shown = Shown {
        sheet: said.sheet(),
        ..Shown::default()
    };
    let asked = Page {
        way: way(&path)?,
        who: who::name(&jar),
        kept: said.kept.is_some(),
        shown: &shown,
    };
    answer(&asked.made(&app, &place).await?)
}

/// Takes a measurement: into the plan with the link that edits, else into the record. A script that keeps what could not be
/// sent asks for JSON and hears what became of it.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    path: Parameters,
    asker: Asker,
    jar: CookieJar,
    headers: HeaderMap,
    sent: Sent,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
    let way = way(&path)?;
    let kind = way.kind().ok_or_else(Trouble::nothing_here)?;
    let sheet = sent::sheet(sent)?;
    let units = units_then(&app, &place, &sheet).await?;
    let is_script = asks_for_json(&headers);
    let done = if place.right.may_edit() {
        into_plan(&app, &place, &sheet, units).await?
    } else {
        into_record(&app, &place, &sheet, kind, units).await?
    };
    let faults = match done {
        Done::Kept(to) => {
            let name = sheet.text("who").unwrap_or_default();
            let jar = match name.trim() {
                "" => jar,
                name => who::with(&app, &asker.0, jar, name),
            };
            let to = format!(
                "{}/{}",
                place.root,
                to.unwrap_or(format!("measure/{}?kept=1", way.slug()))
            );
            return Ok(if is_script {
                (jar, Json(json!({ "kept": 1, "to": to }))).into_response()
            } else {
                (jar, Redirect::to(&to)).into_response()
            });
        }
        Done::Wrong(faults) => faults,
    };
    if is_script {
        let said: Vec<&str> = faults.iter().map(|(_, said)| said.as_str()).collect();
        let refused = Json(json!({ "refused": said }));
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, refused).into_response());
    }
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

/// What became of a measurement.
enum Done {
    /// It was kept; the page below the plan's address that shows it, if that is not its own.
    Kept(Option<String>),
    /// What has to be put right.
    Wrong(Vec<Wrong>),
}

/// The units of the revision that the form showed: a bare figure means what its box said, whatever became of the plan since.
async fn units_then(app: &App, place: &Place, sheet: &Sheet) -> Result<Units, Trouble> {
    let base = sheet.text("base").and_then(|base| base.trim().parse().ok());
    let then = match base {
        Some(base) => seen(app, &writer(place), base).await?,
        None => None,
    };
    let units = then.map_or(place.plan.units, |plan| plan.units);
    Ok(units.unwrap_or_default())
}

/// A measurement stands beside the others whatever was changed since the form was shown, so that it goes on top of the plan
/// as it is now; sent twice, it is there once.
async fn into_plan(app: &App, place: &Place, sheet: &Sheet, units: Units) -> Result<Done, Trouble> {
    let to = "commissioning#said";
    match read(&place.plan, sheet, units) {
        Ok(plan) => {
            if plan != place.plan {
                let _ = place.save(app, place.revision, &plan, to).await?;
            }
            Ok(Done::Kept(Some(to.to_owned())))
        }
        Err(faults) => Ok(Done::Wrong(faults)),
    }
}

async fn into_record(
    app: &App,
    place: &Place,
    sheet: &Sheet,
    kind: MeasurementKind,
    units: Units,
) -> Result<Done, Trouble> {
    let found = match measurement(kind, sheet, units) {
        Ok(found) => found,
        Err(faults) => return Ok(Done::Wrong(faults)),
    };
    let text = |name: &str| sheet.text(name).unwrap_or_default().trim().to_owned();
    let entry = Entry {
        revision: text("base").parse().unwrap_or(place.revision),
        who: text("who"),
        measured_at: Some(text("at")).filter(|at| !at.is_empty()),
        ..Entry::of_pier(&format!("{}.{}", text("form"), kind.key()), found)
    };
    match take(app, &writer(place), &entry).await {
        Ok(_) => Ok(Done::Kept(None)),
        Err(trouble) if trouble.errors.is_empty() => Err(trouble),
        Err(trouble) => {
            let errors = trouble.errors.iter();
            Ok(Done::Wrong(
                errors
                    .map(|error| (error.path.clone(), error.detail.clone()))
                    .collect(),
            ))
        }
    }
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
    let read = app.work(Work::Design, move || both(&file, asked)).await?;
    let (status, heard) = match read {
        Ok((found, other)) => {
            let heard = Heard::of(&found);
            let heard = match other {
                Some(other) => heard.with_other(&other),
                None => heard,
            };
            (StatusCode::OK, heard)
        }
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

/// What a record says, and what its other level direction does where no column was named.
fn both(file: &[u8], asked: Asked) -> Result<(Trace, Option<Trace>), Refusal> {
    let found = trace::read(file, &asked)?;
    let mut columns = found.columns.iter();
    let other = columns
        .find(|column| !column.used && column.along.is_none_or(|along| along != Along::Z))
        .filter(|_| found.kind == Kind::Knock && asked.value.is_none());
    let other = other.and_then(|column| {
        let asked = Asked {
            value: Some(column.name.clone()),
            kind: Some(Kind::Knock),
            ..asked
        };
        trace::read(file, &asked).ok()
    });
    Ok((found, other))
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
            "at" => asked.at_s = numbers(text),
            "towards" => asked.towards_deg = numbers(text),
            _ => {}
        }
    }
    Some((file, asked))
}

/// Figures with spaces or semicolons between.
fn numbers(text: &str) -> Vec<f64> {
    let each = text.split([';', ' ']).filter(|one| !one.is_empty());
    each.filter_map(|one| one.replace(',', ".").parse().ok())
        .collect()
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
                plan_id: &place.plan_id,
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
