//! Who asks: the holder of a link's secret.

use axum::extract::{FromRequestParts, Path};
use axum::http::HeaderMap;
use axum::http::header::AUTHORIZATION;
use axum::http::request::Parts;

use crate::app::App;
use crate::error::Trouble;
use crate::store::{Deed, LinkScope, Opened};

/// The plan of the address, opened by the secret in `Authorization: Bearer`.
pub struct Holder(pub Opened);

impl FromRequestParts<App> for Holder {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Trouble> {
        let Asked { secret, id } = Asked::from_request_parts(parts, app).await?;
        let opened = app.store.open_link(&secret).await?;
        opened
            .filter(|opened| opened.plan_id == id)
            .map(Self)
            .ok_or_else(Trouble::no_such_link)
    }
}

/// The plan of the address as the secret opens it, without reading it.
pub struct Seen(pub LinkScope);

impl FromRequestParts<App> for Seen {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Trouble> {
        Asked::from_request_parts(parts, app).await?.look(app).await
    }
}

impl Seen {
    /// The same, when the link may change the plan.
    ///
    /// # Errors
    /// A link that only records or views.
    pub fn editing(self) -> Result<LinkScope, Trouble> {
        if self.0.right.may(Deed::Change) {
            Ok(self.0)
        } else {
            Err(Trouble::needs(Deed::Change))
        }
    }
}

/// A plan that is asked for, with a secret of which nobody knows yet whether it opens it.
pub struct Asked {
    /// What stands in `Authorization: Bearer`.
    pub secret: String,
    /// The plan's name in the address.
    pub id: String,
}

impl FromRequestParts<App> for Asked {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Trouble> {
        let secret = bearer(&parts.headers)
            .ok_or_else(Trouble::no_secret)?
            .to_owned();
        let path = Path::<Vec<(String, String)>>::from_request_parts(parts, app)
            .await
            .map_err(|_| Trouble::nothing_here())?;
        let id = path
            .0
            .into_iter()
            .find_map(|(name, value)| (name == "id").then_some(value))
            .ok_or_else(Trouble::no_such_link)?;
        Ok(Self { secret, id })
    }
}

impl Asked {
    /// The plan as the secret opens it, without reading it.
    ///
    /// # Errors
    /// It does not open it; the store's own.
    pub async fn look(&self, app: &App) -> Result<Seen, Trouble> {
        let look = app.store.look(&self.secret).await?;
        look.filter(|look| look.plan_id == self.id)
            .map(Seen)
            .ok_or_else(Trouble::no_such_link)
    }
}

impl Holder {
    /// The same, when the link lets its holder do it.
    ///
    /// # Errors
    /// A link that lets its holder do less.
    pub fn who_may(self, deed: Deed) -> Result<Opened, Trouble> {
        if self.0.right.may(deed) {
            Ok(self.0)
        } else {
            Err(Trouble::needs(deed))
        }
    }
}

/// What stands in `Authorization: Bearer`.
pub fn bearer(headers: &HeaderMap) -> Option<&str> {
    let value = headers.get(AUTHORIZATION)?.to_str().ok()?;
    let (scheme, secret) = value.split_once(' ')?;
    scheme.eq_ignore_ascii_case("bearer").then(|| secret.trim())
}
