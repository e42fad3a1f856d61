//! Invitations: made for so many plans, shown once, withdrawn.

use axum::extract::{Form, State};
use axum::response::{IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use jiff::SignedDuration;
use serde::Deserialize;
use stillground::text::fit;

use super::{frame, inside};
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::views::pages::answer;
use crate::views::pages::organiser::OncePage;

/// Longest word on whom an invitation is for, letters.
const LONGEST: usize = 80;

/// What is asked for.
#[derive(Deserialize)]
pub struct Invite {
    #[serde(rename = "do")]
    action: String,
    #[serde(default)]
    id: String,
    #[serde(default)]
    said: String,
    #[serde(default)]
    uses: String,
    #[serde(default)]
    days: String,
}

/// Makes an invitation, or withdraws one.
pub async fn invite(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    Form(invite): Form<Invite>,
) -> Result<Response, Trouble> {
    inside(&app, &asker.0, &jar).await?;
    if invite.action == "withdraw" {
        app.store.uninvite(&invite.id).await?;
        return Ok(Redirect::to(&app.config.link("/organiser#invitations")).into_response());
    }
    let uses = whole(
        &invite.uses,
        1,
        1000,
        "The number of plans is a whole number from 1 to 1000.",
    )?
    .unwrap_or(1);
    let days = whole(
        &invite.days,
        1,
        3650,
        "The number of days is a whole number from 1 to 3650, or nothing.",
    )?;
    let said: String = fit(&invite.said).chars().take(LONGEST).collect();
    let lasts = days.map(|days| SignedDuration::from_hours(i64::from(days) * 24));
    let code = app.store.invite(said.trim(), uses, lasts).await?;
    let page = OncePage {
        frame: frame(&app, "A new invitation"),
        title: "A new invitation",
        said: "Whoever has this code begins plans with it on the front page, until it is used up, over or withdrawn.",
        label: "The code; it is shown this once",
        value: code.reveal().to_owned(),
    };
    Ok(answer(&page)?.into_response())
}

/// A whole number within a range; nothing when nothing is typed.
fn whole(text: &str, least: u32, most: u32, said: &str) -> Result<Option<u32>, Trouble> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let number = text
        .trim()
        .parse()
        .ok()
        .filter(|number| (least..=most).contains(number));
    number.map(Some).ok_or_else(|| Trouble::malformed(said))
}
