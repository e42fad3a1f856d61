//! Commissioning: what was measured of a pier that stands, what it says, and what would help.

use axum::Form;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use serde::Deserialize;
use stillground::changing::changed;
use stillground::site_plan::commissioning::Measurement;

use super::place::Place;
use super::record::writer;
use super::sent::{self, Sent};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::commissioning::read;
use crate::record::Record;
use crate::views::pages::answer;
use crate::views::pages::commissioning::measure::entered;
use crate::views::pages::commissioning::{CommissioningPage, EnteredView, Parts, Shown};
use crate::views::pages::found::take;
use crate::views::proof::Proof;

/// The revision before something was taken.
#[derive(Default, Deserialize)]
pub struct Before {
    before: Option<u32>,
}

/// The page.
pub async fn show(
    State(app): State<App>,
    place: Place,
    Query(before): Query<Before>,
) -> Result<Html<String>, Trouble> {
    let before = before
        .before
        .filter(|before| place.right.may_edit() && (1..place.revision).contains(before));
    answer(&page(&app, &place, before, &Shown::default()).await?)
}

/// Takes a measurement into the plan, or out of it.
pub async fn keep(State(app): State<App>, place: Place, sent: Sent) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let sheet = sent::sheet(sent)?;
    let base = sheet
        .text("base")
        .and_then(|base| base.parse().ok())
        .unwrap_or(place.revision);
    if sheet.text("what") == Some("take") {
        let to = sheet.text("entry").unwrap_or_default();
        return Ok(taken(&app, &place, base, to).await?.into_response());
    }
    match read(&place.plan, &sheet, place.plan.units.unwrap_or_default()) {
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
            let page = page(&app, &place, None, &shown).await?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response())
        }
    }
}

/// Takes what a helper entered into the plan: one measurement, or all of them.
async fn taken(app: &App, place: &Place, base: u32, entry: &str) -> Result<Redirect, Trouble> {
    let record = Record::load(app, &writer(place)).await?;
    let names: Vec<String> = entered(&record, &place.plan)
        .into_iter()
        .map(|(_, view)| view)
        .filter(|view| !view.taken && (entry == "all" || view.entry == entry))
        .map(|view| view.entry)
        .collect();
    let mut plan = place.plan.clone();
    for name in &names {
        if let Some(made) = take(&record, &plan, name) {
            plan = made.plan;
        }
    }
    if names.is_empty() {
        return Err(Trouble::nothing_here());
    }
    let to = format!("commissioning?before={base}#said");
    place.save(app, base, &plan, &to).await
}

/// What helpers entered, each beside what the plan foresees for this very measurement.
async fn foreseen(
    app: &App,
    place: &Place,
    entered: Vec<(Measurement, EnteredView)>,
) -> Result<Vec<EnteredView>, Trouble> {
    let mut plan = place.plan.clone();
    for (measurement, _) in &entered {
        measurement.put(&mut plan.commissioning);
    }
    let with_all = if entered.is_empty() || plan.validate().is_err() {
        None
    } else {
        Some(app.improved(&plan).await?)
    };
    let proof = with_all.and_then(|planned| Proof::of(&planned.brief, &planned.design));
    let said = &plan.commissioning;
    let view = |(measurement, mut view): (Measurement, EnteredView)| {
        // The fit has knocks, leans and pulls in the order of the plan.
        let (knocks, leans) = (said.knocks.len(), said.leans.len());
        let at = match &measurement {
            Measurement::Knock(one) => said.knocks.iter().position(|known| known == one),
            Measurement::Lean(one) => {
                let place = said.leans.iter().position(|known| known == one);
                place.map(|place| knocks + place)
            }
            Measurement::Pull(one) => {
                let place = said.pulls.iter().position(|known| known == one);
                place.map(|place| knocks + leans + place)
            }
        };
        let line = at.and_then(|at| proof.as_ref()?.agreement.get(at));
        if let Some(line) = line {
            view.foreseen.clone_from(&line.foreseen);
        }
        view
    };
    Ok(entered.into_iter().map(view).collect())
}

/// Which remedy, and on top of which revision.
#[derive(Deserialize)]
pub struct Remedying {
    remedy: String,
    base: u32,
}

/// Writes a remedy into the plan as a revision of its own. It is looked up among those of the plan as it stands, so that a
/// form that was left open makes none that nobody worked out.
pub async fn remedy(
    State(app): State<App>,
    place: Place,
    Form(asked): Form<Remedying>,
) -> Result<Redirect, Trouble> {
    let place = place.editing()?;
    if asked.base != place.revision {
        let stands = app.store.revision(&place.plan_id, place.revision).await?;
        return Err(stands.map_or_else(Trouble::nothing_here, |stands| Trouble::stale(&stands)));
    }
    let planned = app.improved(&place.plan).await?;
    let fitted = planned.design.fitted.as_ref();
    let made = fitted
        .and_then(|fitted| {
            let mut all = fitted.remedies.iter();
            all.find(|remedy| remedy.id == asked.remedy)
        })
        .filter(|remedy| !remedy.fields.is_empty())
        .and_then(|remedy| changed(&place.plan, &planned.sized, &remedy.fields))
        .ok_or_else(Trouble::nothing_here)?;
    let to = format!("commissioning?before={}#said", asked.base);
    place.save(&app, asked.base, &made, &to).await
}

async fn page(
    app: &App,
    place: &Place,
    before: Option<u32>,
    shown: &Shown,
) -> Result<CommissioningPage, Trouble> {
    let found = if !place.plan.commissioning.is_empty() {
        app.improved(&place.plan).await
    } else {
        app.planned(&place.plan).await
    };
    let planned = super::contradictory::unless_contradictory(found)?;
    let entered = match &planned {
        Some(planned) if !place.secret.is_empty() => {
            let kept = app.store.entries(&place.plan_id).await?;
            let record = Record::of(planned.clone(), kept);
            foreseen(app, place, entered(&record, &place.plan)).await?
        }
        _ => Vec::new(),
    };
    let mut frame = place.frame("Commissioning");
    if let Some(step) = frame.plan.as_mut().and_then(|plan| plan.steps.last_mut()) {
        step.current = true;
    }
    Ok(CommissioningPage::of(
        frame,
        Parts {
            root: &place.root,
            may_edit: place.right.may_edit(),
            base: place.revision,
            before,
            plan: &place.plan,
            planned: planned.as_deref(),
            entered,
            shown,
        },
    ))
}
