//! Who may begin a plan, and who is the organiser.

use axum_extra::extract::CookieJar;
use axum_extra::extract::cookie::{Cookie, SameSite};
use jiff::SignedDuration;
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::client::Client;
use crate::config::Creators;
use crate::error::Trouble;
use crate::guard::RouteKind;
use crate::store::Created;
use crate::store::access::{Begun, Terms};

/// The cookie that holds the organiser's session.
const COOKIE: &str = "organiser";
/// How long a session of the organiser's lasts.
const SESSION: SignedDuration = SignedDuration::from_hours(12);

/// How somebody comes to begin a plan.
#[derive(Debug, Clone, Copy, Default)]
pub struct Coming<'c> {
    /// The code of an invitation.
    pub code: Option<&'c str>,
    /// Whether it is the organiser.
    pub organiser: bool,
}

/// Keeps a new plan, when whoever comes may begin one.
///
/// # Errors
/// No invitation, no organiser, a full shelf, or the store's own.
pub async fn begin(app: &App, plan: &SitePlan, coming: Coming<'_>) -> Result<Created, Trouble> {
    let code = coming.code.filter(|code| !code.trim().is_empty());
    let invitation = match app.config.access.creators {
        _ if coming.organiser => None,
        Creators::Anyone => None,
        Creators::Organiser => return Err(Trouble::organiser_only()),
        Creators::Invited => Some(code.ok_or_else(Trouble::not_invited)?),
    };
    let terms = Terms {
        invitation,
        most_plans: app.config.access.quotas.plans,
    };
    match app.store.begin(plan, terms).await? {
        Begun::Done(created) => Ok(created),
        Begun::NotInvited => Err(Trouble::not_invited()),
        Begun::Full => Err(Trouble::shelf_full()),
    }
}

/// The name of the organiser who asks: whom a proxy of ours let in, or whose session the browser has. A session goes with
/// the password that opened it.
///
/// # Errors
/// The store's own.
pub async fn organiser(
    app: &App,
    client: &Client,
    jar: &CookieJar,
) -> Result<Option<String>, Trouble> {
    if client.organiser.is_some() {
        return Ok(client.organiser.clone());
    }
    let keepers = &app.config.access.organisers.with_password;
    let Some(cookie) = jar.get(COOKIE).filter(|_| !keepers.is_empty()) else {
        return Ok(None);
    };
    let Some(mark) = app.store.session_mark(cookie.value()).await? else {
        return Ok(None);
    };
    let keeper = keepers.iter().find(|keeper| keeper.mark()[..] == mark[..]);
    Ok(keeper.map(|keeper| keeper.name.clone()))
}

/// Whether it is an organiser who asks.
///
/// # Errors
/// The store's own.
pub async fn is_organiser(app: &App, client: &Client, jar: &CookieJar) -> Result<bool, Trouble> {
    Ok(organiser(app, client, jar).await?.is_some())
}

/// Whether a program sends the organiser's password; a wrong one is counted as a guess at the door.
///
/// # Errors
/// Too many guesses.
pub fn is_organisers_program(
    app: &App,
    client: &Client,
    bearer: Option<&str>,
) -> Result<bool, Trouble> {
    let organisers = &app.config.access.organisers;
    let Some(bearer) = bearer.filter(|_| !organisers.with_password.is_empty()) else {
        return Ok(false);
    };
    app.guard.look(client, RouteKind::Door)?;
    let right = organisers.whose(bearer).is_some();
    if !right {
        app.guard.take(client, RouteKind::Door)?;
    }
    Ok(right)
}

/// Opens a session for whoever has the password.
///
/// # Errors
/// The store's own; `None` for a wrong password.
pub async fn enter(
    app: &App,
    client: &Client,
    jar: CookieJar,
    password: &str,
) -> Result<Option<CookieJar>, Trouble> {
    let Some(keeper) = app.config.access.organisers.whose(password.trim()) else {
        return Ok(None);
    };
    tracing::info!(organiser = keeper.name, "an organiser goes in");
    let session = app.store.open_session(&keeper.mark(), SESSION).await?;
    Ok(Some(jar.add(cookie(
        app,
        client,
        session.reveal().to_owned(),
    ))))
}

/// Ends the session of a browser.
///
/// # Errors
/// The store's own.
pub async fn leave(app: &App, client: &Client, jar: CookieJar) -> Result<CookieJar, Trouble> {
    if let Some(session) = jar.get(COOKIE) {
        app.store.close_session(session.value()).await?;
    }
    Ok(jar.remove(cookie(app, client, String::new())))
}

/// No other site's link brings it along, no script reads it, and it ends with the browser.
fn cookie(app: &App, client: &Client, value: String) -> Cookie<'static> {
    Cookie::build((COOKIE, value))
        .path(app.config.link("/"))
        .http_only(true)
        .same_site(SameSite::Strict)
        .secure(client.https)
        .build()
}
