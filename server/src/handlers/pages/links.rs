//! A plan's links: which there are, make one anew, withdraw one.

use axum::extract::{Form, State};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use jiff::{SignedDuration, Timestamp};
use serde::Deserialize;

use super::begun;
use super::place::Place;
use crate::app::App;
use crate::client::{Asker, Client};
use crate::error::Trouble;
use crate::store::{Deed, Right};
use crate::views::pages::answer;
use crate::views::pages::code;
use crate::views::pages::links::{LinkView, LinksPage};
use crate::views::words;

/// What is asked for.
#[derive(Deserialize)]
pub struct Change {
    right: String,
    #[serde(rename = "do")]
    action: String,
    #[serde(default)]
    days: String,
}

/// The links of a plan.
pub async fn show(
    State(app): State<App>,
    place: Place,
    asker: Asker,
) -> Result<Html<String>, Trouble> {
    let place = place.who_may(Deed::Share)?;
    answer(&page(&app, &place, &asker.0, None, None).await?)
}

/// Replaces or withdraws a link. A new one is shown in the answer and nowhere else.
pub async fn change(
    State(app): State<App>,
    place: Place,
    jar: CookieJar,
    asker: Asker,
    Form(change): Form<Change>,
) -> Result<Response, Trouble> {
    let place = place.who_may(Deed::Share)?;
    if change.action == "recovery" {
        return recovery(&app, &place, &asker.0).await;
    }
    let right = Right::from_key(&change.right)
        .ok_or_else(|| Trouble::malformed("There is no link of that name."))?;
    if change.action == "revoke" {
        if right != Right::Edit {
            app.store.revoke(&place.plan_id, right).await?;
        }
        return Ok(Redirect::to(&format!("{}/links", place.root)).into_response());
    }
    // The edit link never ends by itself: nobody would be left who could make another.
    let until = if right == Right::Edit {
        None
    } else {
        until(&change.days)?
    };
    let secret = app
        .store
        .replace_link_until(&place.plan_id, right, until)
        .await?;
    if right == Right::Edit {
        let jar = begun::with(&app, &asker.0, jar, secret.reveal(), Some(&place.secret));
        let here = app.config.link(&format!("/p/{}/links", secret.reveal()));
        return Ok((jar, Redirect::to(&here)).into_response());
    }
    let path = app.config.link(&format!("/p/{}", secret.reveal()));
    let address = asker.0.link(&path).unwrap_or(path);
    Ok(answer(&page(&app, &place, &asker.0, Some((right, address)), None).await?)?.into_response())
}

/// Makes a recovery code, which is shown in the answer and nowhere else.
async fn recovery(app: &App, place: &Place, client: &Client) -> Result<Response, Trouble> {
    let code = app.store.recovery_code(&place.plan_id).await?;
    Ok(
        answer(&page(app, place, client, None, Some(code.reveal().to_owned())).await?)?
            .into_response(),
    )
}

/// When a link ends that is made for so many days from now.
fn until(days: &str) -> Result<Option<Timestamp>, Trouble> {
    if days.trim().is_empty() {
        return Ok(None);
    }
    let days: i64 =
        days.trim().parse().ok().filter(|days| (1..=3650).contains(days)).ok_or_else(|| {
            Trouble::malformed("The number of days is a whole number from 1 to 3650, or nothing for a link without an end.")
        })?;
    Ok(Timestamp::now()
        .checked_add(SignedDuration::from_hours(days * 24))
        .ok())
}

async fn page(
    app: &App,
    place: &Place,
    client: &Client,
    new: Option<(Right, String)>,
    recovery: Option<String>,
) -> Result<LinksPage, Trouble> {
    let since = app
        .store
        .recovery_since(&place.plan_id)
        .await?
        .map(words::moment);
    Ok(LinksPage {
        links: links(app, place, client, new).await?,
        root: place.root.clone(),
        recovery,
        recovery_since: since,
        frame: place.frame("Share"),
    })
}

async fn links(
    app: &App,
    place: &Place,
    client: &Client,
    new: Option<(Right, String)>,
) -> Result<Vec<LinkView>, Trouble> {
    let states = app.store.links(&place.plan_id).await?;
    let made = |right: Right| {
        let new = new.as_ref().filter(|(of, _)| *of == right);
        new.map(|(_, address)| address.clone())
    };
    // The link that opened the page stands in the browser already.
    let address = |right: Right| {
        let own = || (right == place.right).then(|| client.link(&place.root))?;
        made(right).or_else(own)
    };
    let state = |right: Right| states.iter().find(|state| state.right == right);
    let view = |right: Right| LinkView {
        key: right.key(),
        title: title(right),
        whom: whom(right),
        may: may(right),
        code: address(right).as_deref().and_then(code::svg),
        since: state(right)
            .and_then(|state| state.made_at)
            .map(words::moment),
        until: state(right)
            .and_then(|state| state.expires_at)
            .map(words::moment),
        opened: state(right)
            .and_then(|state| state.opened_at)
            .map(words::day),
        address: made(right),
        own: right == place.right,
    };
    Ok(Right::ALL.into_iter().map(view).collect())
}

const fn title(right: Right) -> &'static str {
    match right {
        Right::Edit => "Edit link",
        Right::Record => "Record link, for the site",
        Right::View => "View link",
    }
}

const fn whom(right: Right) -> &'static str {
    match right {
        Right::Edit => "For you, and whoever plans with you.",
        Right::Record => "For whoever digs, pours, drills or orders.",
        Right::View => "For a client, a neighbour, an engineer who checks.",
    }
}

const fn may(right: Right) -> &'static [&'static str] {
    match right {
        Right::Edit => &[
            "changes answers and prices",
            "decides where the work was stopped",
            "makes and withdraws links",
            "and all that the others do",
        ],
        Right::Record => &[
            "sees what to do today",
            "ticks tasks off, enters what was measured, adds photographs",
            "sees prices",
            "changes no answer of the plan",
        ],
        Right::View => &[
            "reads the plan and what was recorded",
            "prints it",
            "sees no prices, and changes nothing",
        ],
    }
}
