//! The climate of a place, asked of the service that the host named: a proposal with its source, taken only when the
//! person says so.

use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use serde::Deserialize;
use stillground::site_plan::SitePlan;

use super::place::Place;
use crate::app::App;
use crate::config::ClimateService;
use crate::error::Trouble;
use crate::lookup::{self, source};
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::climate::{ClimatePage, Proposal};

/// What is sent: a place to ask about, or what to take of the proposal for a place. The figures are those that the page
/// showed; what is taken is what the service said, and only if it is the same.
#[derive(Deserialize)]
pub struct Sent {
    #[serde(rename = "do")]
    action: String,
    #[serde(default)]
    latitude: String,
    #[serde(default)]
    longitude: String,
    #[serde(default)]
    base: u32,
    index: Option<f64>,
    mean: Option<f64>,
    gust: Option<f64>,
    take_index: Option<String>,
    take_mean: Option<String>,
    take_gust: Option<String>,
}

/// Asks for the place.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let (place, service) = open(&app, place)?;
    answer(&page(&place, service, None, None))
}

/// Asks the service, or takes what it proposed.
pub async fn sent(
    State(app): State<App>,
    place: Place,
    Form(sent): Form<Sent>,
) -> Result<Response, Trouble> {
    let (place, service) = open(&app, place)?;
    let at = |text: &str, most: f64| {
        text.trim()
            .replace(',', ".")
            .parse()
            .ok()
            .filter(|degrees: &f64| degrees.abs() <= most)
    };
    let (Some(latitude), Some(longitude)) = (at(&sent.latitude, 90.0), at(&sent.longitude, 180.0))
    else {
        let wrong = "Write both in degrees with a decimal point, south and west with a minus: 52.21 and -1.35.";
        return Ok(answer(&page(&place, service, None, Some(wrong.to_owned())))?.into_response());
    };
    let takes = sent.action == "take";
    let held = takes
        .then(|| app.lookups.find(&place.plan_id, latitude, longitude))
        .flatten();
    let found = match held {
        Some(found) => Ok(found),
        // Another planner on the same database may have asked, or this one long ago.
        None => lookup::climate(service, latitude, longitude).await,
    };
    let found = match found {
        Ok(found) => found,
        Err(failure) => {
            tracing::warn!(%failure, "the climate could not be looked up");
            let said = format!("Nothing was found out: {failure}. Nothing was changed.");
            return Ok(answer(&page(&place, service, None, Some(said)))?.into_response());
        }
    };
    app.lookups
        .hold(&place.plan_id, latitude, longitude, found.clone());
    let units = place.plan.units.unwrap_or_default();
    let proposal = Proposal::of(&found, latitude, longitude, units);
    if !takes {
        return Ok(answer(&page(&place, service, Some(proposal), None))?.into_response());
    }
    if !is_what_was_shown(&proposal, &sent) {
        let said = "The service does not say what this page showed. Nothing was taken; look at it again below.";
        let shown = page(&place, service, Some(proposal), Some(said.to_owned()));
        return Ok((StatusCode::CONFLICT, answer(&shown)?).into_response());
    }
    take(&app, service, &place, &sent, &proposal).await
}

/// The figures that can be taken: name in the form, what the page showed, whether it is taken, and its name in a source.
fn figures(sent: &Sent) -> [(&'static str, Option<f64>, bool, &'static str); 3] {
    [
        (
            "index",
            sent.index,
            sent.take_index.is_some(),
            "freezing index",
        ),
        (
            "mean",
            sent.mean,
            sent.take_mean.is_some(),
            "mean temperature",
        ),
        ("gust", sent.gust, sent.take_gust.is_some(), "gust"),
    ]
}

/// Whether every figure that is to be taken is the one that the person saw.
fn is_what_was_shown(proposal: &Proposal, sent: &Sent) -> bool {
    figures(sent)
        .into_iter()
        .filter(|(_, _, taken, _)| *taken)
        .all(|(key, shown, _, _)| shown.is_some() && shown == proposal.value(key))
}

/// Saves what was chosen of a proposal on top of the revision that it was shown with.
async fn take(
    app: &App,
    service: &ClimateService,
    place: &Place,
    sent: &Sent,
    proposal: &Proposal,
) -> Result<Response, Trouble> {
    let mut plan: SitePlan = place.plan.clone();
    let site = &mut plan.site;
    let mut taken = Vec::new();
    for (key, _, _, name) in figures(sent).into_iter().filter(|(_, _, taken, _)| *taken) {
        let value = proposal.value(key);
        match key {
            "index" => site.freezing_index_c_days = value,
            "mean" => site.mean_annual_temperature_c = value,
            _ => site.design_gust_m_s = value,
        }
        taken.push(name);
    }
    if !taken.is_empty() {
        site.climate_source = Some(source::written(&service.source, &proposal.of, &taken));
    }
    plan.validate()
        .map_err(|problems| Trouble::answers(&problems))?;
    if plan != place.plan
        && let Save::Stale { current } = app.store.save(&place.plan_id, sent.base, &plan).await?
    {
        return Err(Trouble::stale(&current));
    }
    Ok(Redirect::to(&format!("{}/site?saved=yes", place.root)).into_response())
}

fn open(app: &App, place: Place) -> Result<(Place, &ClimateService), Trouble> {
    let service = app
        .config
        .climate
        .as_ref()
        .ok_or_else(Trouble::nothing_here)?;
    Ok((place.editing()?, service))
}

fn page(
    place: &Place,
    service: &ClimateService,
    proposal: Option<Proposal>,
    said: Option<String>,
) -> ClimatePage {
    let degrees = |value: Option<f64>| value.map(|value| value.to_string()).unwrap_or_default();
    ClimatePage {
        frame: place.frame("The climate of the place"),
        root: place.root.clone(),
        source: service.source.clone(),
        host: service.host.clone(),
        latitude: degrees(place.plan.site.latitude_deg),
        longitude: degrees(place.plan.site.longitude_deg),
        base: place.revision,
        proposal,
        said,
    }
}
