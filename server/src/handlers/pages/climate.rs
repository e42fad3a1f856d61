//! The climate of a place, asked of the service that the host named: a proposal with its source, taken only when the
//! person says so.

use axum::extract::{Form, State};
use axum::response::{Html, IntoResponse, Redirect, Response};
use serde::Deserialize;
use stillground::site_plan::SitePlan;

use super::place::Place;
use crate::app::App;
use crate::config::ClimateService;
use crate::error::Trouble;
use crate::lookup;
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::climate::{ClimatePage, Proposal};

/// What is sent: a place to ask about, or what to take of a proposal.
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
    #[serde(default)]
    of: String,
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
    if sent.action == "take" {
        return take(&app, service, &place, &sent).await;
    }
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
    let shown = match lookup::climate(service, latitude, longitude).await {
        Ok(found) => page(
            &place,
            service,
            Some(Proposal::of(
                &found,
                latitude,
                longitude,
                place.plan.units.unwrap_or_default(),
            )),
            None,
        ),
        Err(failure) => {
            tracing::warn!(%failure, "the climate could not be looked up");
            page(
                &place,
                service,
                None,
                Some(format!(
                    "Nothing was found out: {failure}. Nothing was changed."
                )),
            )
        }
    };
    Ok(answer(&shown)?.into_response())
}

/// Saves what was chosen of a proposal on top of the revision that it was shown with.
async fn take(
    app: &App,
    service: &ClimateService,
    place: &Place,
    sent: &Sent,
) -> Result<Response, Trouble> {
    let chosen = |chosen: &Option<String>, value: Option<f64>| {
        value.filter(|value| chosen.is_some() && value.is_finite())
    };
    let mut plan: SitePlan = place.plan.clone();
    let site = &mut plan.site;
    site.freezing_index_c_days =
        chosen(&sent.take_index, sent.index).or(site.freezing_index_c_days);
    site.mean_annual_temperature_c =
        chosen(&sent.take_mean, sent.mean).or(site.mean_annual_temperature_c);
    site.design_gust_m_s = chosen(&sent.take_gust, sent.gust).or(site.design_gust_m_s);
    if let Some(source) = source(service, sent) {
        plan.site.climate_source = Some(source);
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

/// Where what was taken comes from: the service, the place and years that were asked for, and which figures.
fn source(service: &ClimateService, sent: &Sent) -> Option<String> {
    let figures = [
        (&sent.take_index, "freezing index"),
        (&sent.take_mean, "mean temperature"),
        (&sent.take_gust, "gust"),
    ];
    let taken: Vec<&str> = figures
        .into_iter()
        .filter(|(taken, _)| taken.is_some())
        .map(|(_, figure)| figure)
        .collect();
    let of = if sent.of.is_empty() {
        String::new()
    } else {
        format!(" for {}", sent.of)
    };
    (!taken.is_empty()).then(|| format!("{}{of}: {}", service.source, taken.join(", ")))
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
