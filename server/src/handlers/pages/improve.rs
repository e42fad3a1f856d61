//! A change that would help, made with one press: its answers written into the plan as a new revision.

use axum::Form;
use axum::extract::State;
use axum::response::Redirect;
use serde::Deserialize;
use stillground::changing::changed;

use super::place::Place;
use crate::app::App;
use crate::error::Trouble;

/// Which change, in the engine's words, and on top of which revision.
#[derive(Deserialize)]
pub struct Make {
    change: String,
    base: u32,
}

/// Makes the change. The words are looked up among those of the plan as it stands, so that a form that was left open while
/// the plan changed makes none that nobody worked out.
pub async fn make(
    State(app): State<App>,
    place: Place,
    Form(make): Form<Make>,
) -> Result<Redirect, Trouble> {
    let place = place.editing()?;
    if make.base != place.revision {
        let stands = app.store.revision(&place.plan_id, place.revision).await?;
        return Err(stands.map_or_else(Trouble::nothing_here, |stands| Trouble::stale(&stands)));
    }
    let planned = app.improved(&place.plan).await?;
    let mut all = planned.design.improvements.iter();
    let made = all
        .find(|improvement| improvement.change == make.change)
        .and_then(|improvement| changed(&place.plan, &planned.sized, &improvement.fields))
        .ok_or_else(Trouble::nothing_here)?;
    let to = format!("plan?before={}", make.base);
    place.save(&app, make.base, &made, &to).await
}
