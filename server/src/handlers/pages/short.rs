//! The short way: three pages of questions, after which the ways to build it are shown.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use stillground::figure::Units;

use super::contradictory::planned;
use super::place::Place;
use super::sent::{self, Sent};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::reading::Fault;
use crate::forms::sheet::Sheet;
use crate::forms::short::Part;
use crate::forms::step::Step;
use crate::planned::Planned;
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::begin::BeginPage;
use crate::views::pages::drawn::DrawingView;
use crate::views::pages::field::{Desk, FieldView};
use crate::views::pages::step::FaultView;

/// The drawing that goes with the questions.
const PICTURE: &str = "cut-away";

fn part(path: &[(String, String)]) -> Result<Part, Trouble> {
    path.iter()
        .find(|(name, _)| name == "part")
        .and_then(|(_, slug)| Part::from_slug(slug))
        .ok_or_else(Trouble::nothing_here)
}

/// A page of it.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Path(path): Path<Vec<(String, String)>>,
) -> Result<Html<String>, Trouble> {
    let (place, part) = (place.editing()?, part(&path)?);
    let planned = planned(&app, &place.plan).await?;
    answer(&page(
        &place,
        part,
        &part.sheet(&place.plan),
        &[],
        planned.as_deref(),
    ))
}

/// Takes its answers and goes on.
pub async fn save(
    State(app): State<App>,
    place: Place,
    Path(path): Path<Vec<(String, String)>>,
    sent: Sent,
) -> Result<Response, Trouble> {
    let (place, part) = (place.editing()?, part(&path)?);
    let sheet = sent::sheet(sent)?;
    let base: u32 = sheet
        .text("base")
        .and_then(|base| base.parse().ok())
        .unwrap_or_default();
    let outcome = part.read(&place.plan, &sheet);
    if !outcome.faults.is_empty() {
        let planned = planned(&app, &place.plan).await?;
        let page = page(&place, part, &sheet, &outcome.faults, planned.as_deref());
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response());
    }
    if (outcome.plan != place.plan || base != place.revision)
        && let Save::Stale { current } = app.store.save(&place.plan_id, base, &outcome.plan).await?
    {
        return Err(Trouble::stale(&current));
    }
    let kept = format!("saved=short-{}-{base}", part.slug());
    let to = match (sheet.text("go"), part.next()) {
        (Some("steps"), _) => Step::Site.slug().to_owned(),
        (_, Some(next)) => format!("short/{}", next.slug()),
        (_, None) => "ways".to_owned(),
    };
    Ok(Redirect::to(&format!("{}/{to}?{kept}", place.root)).into_response())
}

fn page(
    place: &Place,
    part: Part,
    sheet: &Sheet,
    faults: &[Fault],
    planned: Option<&Planned>,
) -> BeginPage {
    let units = match sheet.text("shown_in") {
        Some("imperial") => Units::Imperial,
        Some("metric") => Units::Metric,
        _ => place.plan.units.unwrap_or_default(),
    };
    let desk = Desk {
        sheet,
        faults,
        planned,
        units,
    };
    BeginPage {
        frame: place.frame(part.title()),
        root: place.root.clone(),
        part,
        count: Part::ALL.len(),
        base: place.revision,
        shown_in: match units {
            Units::Imperial => "imperial",
            Units::Metric => "metric",
        },
        faults: faults
            .iter()
            .map(|fault| FaultView::of(fault, Step::Plan, &place.root))
            .collect(),
        typed: !faults.is_empty(),
        fields: part
            .questions()
            .map(|(_, question)| FieldView {
                // What is taken, and why, stands at the question's step.
                taken: None,
                ..desk.field(question)
            })
            .collect(),
        picture: planned.and_then(picture),
    }
}

/// The drawing, on a telephone without lettering, since it is small there.
fn picture(planned: &Planned) -> Option<DrawingView> {
    let drawn = DrawingView::of(PICTURE, planned)?;
    let small = planned
        .glance(PICTURE)
        .map(|glance| Arc::clone(&glance.svg));
    Some(DrawingView {
        phone: small.or(drawn.phone),
        ..drawn
    })
}
