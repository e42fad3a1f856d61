//! A plan's links: which there are, make one anew, withdraw one.

use axum::extract::{Form, State};
use axum::http::HeaderMap;
use axum::http::header::HOST;
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use serde::Deserialize;

use super::begun;
use super::place::Place;
use crate::app::App;
use crate::error::Trouble;
use crate::store::Right;
use crate::views::pages::links::{LinkView, LinksPage};
use crate::views::pages::{answer, words};

/// What is asked for.
#[derive(Deserialize)]
pub struct Change {
    right: String,
    #[serde(rename = "do")]
    action: String,
}

/// The links of a plan.
pub async fn show(State(app): State<App>, place: Place) -> Result<Html<String>, Trouble> {
    let place = place.editing()?;
    answer(&LinksPage { links: links(&app, &place, None).await?, frame: place.frame("Links") })
}

/// Replaces or withdraws a link. A new one is shown in the answer and nowhere else.
pub async fn change(
    State(app): State<App>,
    place: Place,
    jar: CookieJar,
    headers: HeaderMap,
    Form(change): Form<Change>,
) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let right = Right::from_key(&change.right).ok_or_else(|| Trouble::malformed("There is no link of that name."))?;
    if change.action == "revoke" {
        if right != Right::Edit {
            app.store.revoke(&place.plan_id, right).await?;
        }
        return Ok(Redirect::to(&format!("{}/links", place.root)).into_response());
    }
    let secret = app.store.replace_link(&place.plan_id, right).await?;
    if right == Right::Edit {
        let jar = begun::with(&app, jar, secret.reveal(), Some(&place.secret));
        let here = app.config.link(&format!("/p/{}/links", secret.reveal()));
        return Ok((jar, Redirect::to(&here)).into_response());
    }
    let path = app.config.link(&format!("/p/{}", secret.reveal()));
    let address =
        headers.get(HOST).and_then(|host| host.to_str().ok()).map_or(path.clone(), |host| format!("{}://{host}{path}", scheme(&headers)));
    Ok(answer(&LinksPage { links: links(&app, &place, Some((right, address))).await?, frame: place.frame("Links") })?.into_response())
}

/// How the browser reached us, as a proxy says or as the form's own page was opened.
fn scheme(headers: &HeaderMap) -> &'static str {
    let text = |name: &str| headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default();
    if text("x-forwarded-proto").eq_ignore_ascii_case("https") || text("origin").starts_with("https://") { "https" } else { "http" }
}

async fn links(app: &App, place: &Place, new: Option<(Right, String)>) -> Result<Vec<LinkView>, Trouble> {
    let states = app.store.links(&place.plan_id).await?;
    let view = |right: Right| LinkView {
        key: right.key(),
        title: title(right),
        may: may(right),
        since: states.iter().find(|state| state.right == right).and_then(|state| state.made_at).map(words::moment),
        address: new.as_ref().filter(|(of, _)| *of == right).map(|(_, address)| address.clone()),
        own: right == place.right,
    };
    Ok(Right::ALL.into_iter().map(view).collect())
}

const fn title(right: Right) -> &'static str {
    match right {
        Right::Edit => "The link that edits",
        Right::Record => "The link for the helper on site",
        Right::View => "The link that only looks",
    }
}

const fn may(right: Right) -> &'static str {
    match right {
        Right::Edit => {
            "Its holder changes answers, links and all. Replacing it shuts out everyone who has the old one, in other browsers too."
        }
        Right::Record => "Its holder sees the plan and what to do today, ticks tasks off, enters what was measured, and changes no answer.",
        Right::View => "Its holder sees the plan, prints it, and changes nothing.",
    }
}
