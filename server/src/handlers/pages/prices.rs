//! The prices of the materials, under the edit link.

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};

use super::contradictory::unless_contradictory;
use super::place::Place;
use super::sent::{self, Sent};
use crate::app::App;
use crate::error::Trouble;
use crate::forms::prices::{PriceFault, read, sheet};
use crate::forms::sheet::Sheet;
use crate::store::Save;
use crate::views::pages::answer;
use crate::views::pages::prices::{Filled, PricesPage};

/// How often a save is tried again after somebody else's.
const TRIES: usize = 3;

/// The page.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    answer(&page(&app, &place.editing()?, None, Vec::new()).await?)
}

/// Keeps the prices that were changed, on top of whatever stands now.
pub async fn keep(State(app): State<App>, place: Place, sent: Sent) -> Result<Response, Trouble> {
    let mut place = place.editing()?;
    let sent = sent::sheet(sent)?;
    for _ in 0..TRIES {
        let planned = unless_contradictory(app.planned(&place.plan).await)?;
        let materials = planned
            .as_ref()
            .map(|planned| planned.design.materials.as_slice())
            .unwrap_or_default();
        let plan = match read(&place.plan, materials, &sent) {
            Ok(plan) => plan,
            Err(faults) => {
                let page = page(&app, &place, Some(&sent), faults).await?;
                return Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response());
            }
        };
        if plan == place.plan {
            return Ok(Redirect::to(&format!("{}/materials", place.root)).into_response());
        }
        match app
            .store
            .save(&place.plan_id, place.revision, &plan)
            .await?
        {
            Save::Stale { current } => {
                (place.revision, place.plan) = (current.revision, current.plan.clone())
            }
            _ => return Ok(Redirect::to(&format!("{}/materials", place.root)).into_response()),
        }
    }
    Err(Trouble::crowded())
}

async fn page(
    app: &App,
    place: &Place,
    sent: Option<&Sheet>,
    faults: Vec<PriceFault>,
) -> Result<PricesPage, Trouble> {
    let planned = unless_contradictory(app.planned(&place.plan).await)?;
    let saved = sheet(&place.plan.prices);
    let filled = Filled {
        saved: &saved,
        sent,
        faults: &faults,
    };
    let (currency, groups) = (
        filled.currency(),
        planned
            .map(|planned| filled.groups(&planned))
            .unwrap_or_default(),
    );
    Ok(PricesPage {
        frame: place.frame("Prices"),
        root: place.root.clone(),
        faults,
        currency,
        groups,
    })
}
