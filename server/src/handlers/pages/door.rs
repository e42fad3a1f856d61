//! The door of a plan's page: whether the link in the address opens it, and which page as it was written stands behind it.
//!
//! The link is looked up in the store for every request. The plan itself is read only by whoever has to write a page.

use axum::extract::{FromRequestParts, Path};
use axum::http::request::Parts;

use super::place::Place;
use crate::app::App;
use crate::error::Trouble;
use crate::forms::step::Step;
use crate::written::Leaf;

/// A door that a link has opened.
pub struct Door {
    /// The step in the address.
    pub step: Step,
    /// The page as it stands now.
    pub leaf: Leaf,
    secret: Option<String>,
}

impl FromRequestParts<App> for Door {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Trouble> {
        let path = Path::<Vec<(String, String)>>::from_request_parts(parts, app)
            .await
            .map_err(|_| Trouble::nothing_here())?
            .0;
        let (mut secret, mut step) = (None, None);
        for (name, value) in path {
            match name.as_str() {
                "secret" => secret = Some(value),
                "step" => step = Step::from_slug(&value),
                _ => {}
            }
        }
        let step = step.ok_or_else(Trouble::nothing_here)?;
        let leaf = leaf(app, secret.as_deref(), step).await?;
        Ok(Self { step, leaf, secret })
    }
}

/// The page behind a door as it stands now.
async fn leaf(app: &App, secret: Option<&str>, step: Step) -> Result<Leaf, Trouble> {
    let Some(secret) = secret else {
        return Ok(Leaf::of_example(app.config.link("/example"), step));
    };
    let look = app
        .store
        .look(secret)
        .await?
        .ok_or_else(Trouble::no_such_link)?;
    Ok(Leaf::of(
        app.config.link(&format!("/p/{secret}")),
        step,
        look,
    ))
}

impl Door {
    /// Goes in and reads the plan. The link may have been withdrawn since it was looked up.
    pub async fn enter(&self, app: &App) -> Result<Place, Trouble> {
        Place::behind(app, self.secret.as_deref(), Some(self.step)).await
    }

    /// The same, reached by the code on a sheet of a revision.
    pub fn of_sheet(self, revision: Option<u32>) -> Self {
        Self {
            leaf: self.leaf.of_sheet(revision),
            ..self
        }
    }

    /// Whether all is as it was when the door was opened.
    pub async fn is_as_it_was(&self, app: &App) -> bool {
        leaf(app, self.secret.as_deref(), self.step)
            .await
            .is_ok_and(|now| now.of_sheet(self.leaf.printed) == self.leaf)
    }
}
