//! Who may begin a plan, and who is the organiser.

use axum_extra::extract::CookieJar;
use axum_extra::extract::cookie::{Cookie, SameSite};
use jiff::SignedDuration;
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::client::Client;
use crate::config::Creators;
use crate::error::Trouble;
use crate::guard::Kind;
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

/// Whether a browser has the organiser's open session.
///
/// # Errors
/// The store's own.
pub async fn is_organiser(app: &App, jar: &CookieJar) -> Result<bool, Trouble> {
    let (Some(token), Some(cookie)) = (&app.config.access.organiser, jar.get(COOKIE)) else {
        return Ok(false);
    };
    Ok(app.store.is_session(cookie.value(), &token.mark()).await?)
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
    let (Some(token), Some(bearer)) = (&app.config.access.organiser, bearer) else {
        return Ok(false);
    };
    app.guard.look(client, Kind::Door)?;
    let right = token.is(bearer);
    if !right {
        app.guard.take(client, Kind::Door)?;
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
    let Some(token) = app
        .config
        .access
        .organiser
        .as_ref()
        .filter(|token| token.is(password.trim()))
    else {
        return Ok(None);
    };
    let session = app.store.open_session(&token.mark(), SESSION).await?;
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
