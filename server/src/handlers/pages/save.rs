//! Saving a step: on top of the revision that the answers began from, and never over somebody else's.

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use stillground::brief::resolve;
use stillground::figure::{Kilonewton, Unit};
use stillground::path;
use stillground::site_plan::SitePlan;
use stillground::stages::anchors::torque::Screw;
use stillground::units::newton_metre;

use super::contradictory::planned;
use super::place::Place;
use super::sent::{self, Sent};
use super::step::{Shown, changed, elsewhere, page};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::questions;
use crate::forms::reading::{Fault, Outcome, read};
use crate::forms::sheet::Sheet;
use crate::forms::step::Step;
use crate::store::{Save, Saved};
use crate::views::pages::side::Side;
use crate::views::pages::stale::{StalePage, carried, differences};
use crate::views::pages::{answer, field};
use crate::views::words;

/// What a button asks for.
enum Go {
    /// Another row in a list.
    Add(String),
    /// One row fewer.
    Remove(String, usize),
    /// The page with these answers, nothing saved: what was typed before and is put back.
    Again,
    /// The panel for these answers, nothing saved.
    Panel,
    /// A save, and then this page.
    Save(To),
}

/// Where a save leads.
enum To {
    /// To a step.
    Step(Step),
    /// To the list of all answers.
    Answers,
}

/// Takes a step's answers.
pub async fn save(State(app): State<App>, place: Place, sent: Sent) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let step = place
        .step
        .filter(|step| *step != Step::Plan)
        .ok_or_else(Trouble::method)?;
    let mut sheet = sent::sheet(sent)?;
    match go(step, &sheet) {
        Go::Add(list) => sheet.put(
            format!("{list}[{}]{}", sheet.rows(&list), first_box(&list)),
            "",
        ),
        Go::Remove(list, row) => sheet.remove_row(&list, row),
        Go::Again => {}
        Go::Panel => return panel(&app, &place, step, &sheet).await,
        Go::Save(to) => return keep(&app, &place, step, sheet, to).await,
    }
    let outcome = read(step, &place.plan, &sheet);
    let faults = outcome
        .faults
        .into_iter()
        .filter(|fault| !fault.said.starts_with("This figure is missing"))
        .collect();
    again(
        &app,
        &place,
        step,
        &sheet,
        Outcome { faults, ..outcome },
        StatusCode::OK,
    )
    .await
}

fn go(step: Step, sheet: &Sheet) -> Go {
    let text = sheet
        .text("keep")
        .or_else(|| sheet.text("go"))
        .unwrap_or("stay");
    let mut parts = text.split(':');
    match (parts.next(), parts.next(), parts.next()) {
        (Some("add"), Some(list), None) => Go::Add(list.to_owned()),
        (Some("remove"), Some(list), Some(row)) => {
            Go::Remove(list.to_owned(), row.parse().unwrap_or(usize::MAX))
        }
        (Some("again"), ..) => Go::Again,
        (Some("panel"), ..) => Go::Panel,
        (Some("answers"), ..) => Go::Save(To::Answers),
        (Some("next"), ..) => Go::Save(To::Step(step.next())),
        (Some(slug), ..) => Go::Save(To::Step(Step::from_slug(slug).unwrap_or(step))),
        _ => Go::Save(To::Step(step)),
    }
}

fn first_box(list: &str) -> &'static str {
    if path!(floor.stands) == list {
        ".name"
    } else {
        "[0]"
    }
}

/// The panel for answers that are not saved, for the script that shows it while one types.
async fn panel(app: &App, place: &Place, step: Step, sheet: &Sheet) -> Result<Response, Trouble> {
    let outcome = read(step, &place.plan, sheet);
    let planned = planned(app, &outcome.plan).await?;
    Ok(Html(Side::of(step, planned.as_deref()).to_string()).into_response())
}

async fn keep(
    app: &App,
    place: &Place,
    step: Step,
    mut sheet: Sheet,
    to: To,
) -> Result<Response, Trouble> {
    let base = sheet
        .text("base")
        .and_then(|base| base.parse().ok())
        .unwrap_or(0);
    if base != place.revision {
        let current = Saved {
            revision: place.revision,
            plan: place.plan.clone(),
            saved_at: jiff::Timestamp::UNIX_EPOCH,
        };
        return stale(
            app,
            place,
            step,
            &sheet,
            base,
            &current,
            place.saved.trim_start_matches("saved "),
        )
        .await;
    }
    for question in questions::of(step) {
        if sheet.text(&format!("keep~{}", question.path)) == Some("theirs") {
            sheet.take_out(&question.path);
        }
    }
    let outcome = read(step, &place.plan, &sheet);
    let all_the_same = sheet.text("keep").is_some() && elsewhere(step, &outcome.faults).is_some();
    if !outcome.faults.is_empty() && !all_the_same {
        return again(
            app,
            place,
            step,
            &sheet,
            outcome,
            StatusCode::UNPROCESSABLE_ENTITY,
        )
        .await;
    }
    if outcome.plan != place.plan
        && let Save::Stale { current } = app.store.save(&place.plan_id, base, &outcome.plan).await?
    {
        return stale(
            app,
            place,
            step,
            &sheet,
            base,
            &current,
            &words::moment(current.saved_at),
        )
        .await;
    }
    // What was kept, for the script that holds what is typed until then.
    let kept = format!("{}-{base}", step.slug());
    let change = changed(step, &sheet);
    let to = match (to, change) {
        (To::Answers, Some(change)) => format!("answers?saved={kept}#{}", field::id(change)),
        (To::Answers, None) => format!("answers?saved={kept}"),
        (To::Step(to), Some(change)) if to == step => {
            format!("{}?saved={kept}&change={change}", to.slug())
        }
        (To::Step(to), _) => format!("{}?saved={kept}", to.slug()),
    };
    Ok(Redirect::to(&format!("{}/{to}", place.root)).into_response())
}

/// The page again, with what was typed.
async fn again(
    app: &App,
    place: &Place,
    step: Step,
    sheet: &Sheet,
    outcome: Outcome,
    status: StatusCode,
) -> Result<Response, Trouble> {
    let planned = planned(
        app,
        if outcome.plan.validate().is_ok() {
            &outcome.plan
        } else {
            &place.plan
        },
    )
    .await?;
    let faults = with_preloads(&outcome.plan, outcome.faults);
    let base = sheet
        .text("base")
        .and_then(|base| base.parse().ok())
        .unwrap_or(place.revision);
    let shown = Shown {
        sheet,
        faults: &faults,
        planned: planned.as_deref(),
        base,
        notice: None,
        typed: true,
    };
    Ok((status, answer(&page(place, step, &shown))?).into_response())
}

/// Says beside each reading of a torque which pull on a stud it gives, were the stud unbreakable.
fn with_preloads(plan: &SitePlan, mut faults: Vec<Fault>) -> Vec<Fault> {
    let units = plan.units.unwrap_or_default();
    let mut calm = plan.clone();
    calm.anchors.torque_n_m = None;
    let Ok(brief) = resolve(&calm) else {
        return faults;
    };
    let screw = Screw::of(&brief);
    let torques = faults.iter_mut().filter(|fault| {
        fault
            .fields
            .iter()
            .any(|field| field.starts_with("anchors.") && field.contains("torque"))
    });
    for reading in torques.flat_map(|fault| &mut fault.readings) {
        let preload = screw.typical(newton_metre::new(reading.value));
        let torque = units.say(reading.value, Unit::NewtonMetre);
        let pull = units.say(preload, Kilonewton);
        let much = if preload > screw.breaking {
            ", more than it bears: it would tear off"
        } else {
            ""
        };
        reading.words = format!(
            "{}: {torque}, which pulls each stud with about {pull}{much}",
            reading.words
        );
    }
    faults
}

/// Both versions, for the person to choose.
async fn stale(
    app: &App,
    place: &Place,
    step: Step,
    sheet: &Sheet,
    base: u32,
    current: &Saved,
    saved_at: &str,
) -> Result<Response, Trouble> {
    let began = app
        .store
        .revision(&place.plan_id, base)
        .await?
        .map_or_else(|| current.plan.clone(), |saved| saved.plan);
    let outcome = read(step, &began, sheet);
    if !outcome.faults.is_empty() {
        return again(
            app,
            place,
            step,
            sheet,
            outcome,
            StatusCode::UNPROCESSABLE_ENTITY,
        )
        .await;
    }
    let page = StalePage {
        frame: place.frame("Saved by somebody else"),
        action: format!("{}/{}", place.root, step.slug()),
        step,
        current: current.revision,
        saved_at: saved_at.to_owned(),
        shown_in: if sheet.text("shown_in") == Some("imperial") {
            "imperial"
        } else {
            "metric"
        },
        differences: differences(step, &began, &outcome.plan, &current.plan),
        carried: carried(sheet),
    };
    let page: Html<String> = answer(&page)?;
    Ok((StatusCode::CONFLICT, page).into_response())
}
