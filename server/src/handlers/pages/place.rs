//! The plan that an address opens: by the secret of one of its links, or the built-in example.

use std::sync::{Arc, LazyLock};

use axum::extract::{FromRequestParts, Path};
use axum::http::request::Parts;
use axum::response::Redirect;
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::config::Config;
use crate::error::Trouble;
use crate::forms::step::Step;
use crate::store::{Deed, Opened, Right, Save};
use crate::views::pages::frame::{Frame, PlanHead, StepLink};
use crate::views::pages::house;
use crate::views::pdf::Letterhead;
use crate::views::words;

/// The Quarry Lane pier of a fictitious club.
const EXAMPLE: &str = include_str!("../../../../tests/examples/quarry-lane.json");

static EXAMPLE_PLAN: LazyLock<SitePlan> =
    LazyLock::new(|| serde_json::from_str(EXAMPLE).unwrap_or_else(|_| SitePlan::unknown()));

/// An opened plan and the step in the address.
pub struct Place {
    /// The plan.
    pub plan: SitePlan,
    /// Its revision; 0 for the example.
    pub revision: u32,
    /// When it was saved, in words.
    pub saved: String,
    /// Version of the engine with which it was saved; none where nobody kept it, and for the example.
    pub engine: Option<String>,
    /// Address below which its pages stand.
    pub root: String,
    /// The link's secret; empty for the example.
    pub secret: String,
    /// The plan's name in the store; empty for the example.
    pub plan_id: String,
    /// What the link lets its holder do.
    pub right: Right,
    /// The step in the address.
    pub step: Option<Step>,
    config: Arc<Config>,
}

/// The example's plan.
pub fn example() -> SitePlan {
    EXAMPLE_PLAN.clone()
}

impl FromRequestParts<App> for Place {
    type Rejection = Trouble;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Self, Trouble> {
        let path = Path::<Vec<(String, String)>>::from_request_parts(parts, app)
            .await
            .map_err(|_| Trouble::nothing_here())?
            .0;
        let part = |wanted: &str| {
            path.iter()
                .find(|(name, _)| name == wanted)
                .map(|(_, value)| value.as_str())
        };
        let step = match part("step") {
            Some(slug) => Some(Step::from_slug(slug).ok_or_else(Trouble::nothing_here)?),
            None => None,
        };
        Self::behind(app, part("secret"), step).await
    }
}

impl Place {
    /// The plan that a link's secret opens, or else the example, at a step.
    pub async fn behind(
        app: &App,
        secret: Option<&str>,
        step: Option<Step>,
    ) -> Result<Self, Trouble> {
        match secret {
            Some(secret) => {
                let opened = app
                    .store
                    .open_link(secret)
                    .await?
                    .ok_or_else(Trouble::no_such_link)?;
                Ok(Self::opened(app, secret, opened, step))
            }
            None => Ok(Self::of_example(app, step)),
        }
    }

    fn opened(app: &App, secret: &str, opened: Opened, step: Option<Step>) -> Self {
        Self {
            plan: opened.saved.plan,
            revision: opened.saved.revision,
            saved: format!("saved {}", words::moment(opened.saved.saved_at)),
            engine: opened.engine,
            root: app.config.link(&format!("/p/{secret}")),
            secret: secret.to_owned(),
            plan_id: opened.plan_id,
            right: opened.right,
            step,
            config: app.config.clone(),
        }
    }

    fn of_example(app: &App, step: Option<Step>) -> Self {
        Self {
            plan: example(),
            revision: 0,
            saved: "built in".to_owned(),
            engine: None,
            root: app.config.link("/example"),
            secret: String::new(),
            plan_id: String::new(),
            right: Right::View,
            step,
            config: app.config.clone(),
        }
    }

    /// The same, when the link lets its holder do it.
    pub fn who_may(self, deed: Deed) -> Result<Self, Trouble> {
        if self.right.may(deed) {
            Ok(self)
        } else {
            Err(Trouble::needs(deed))
        }
    }

    /// The same, when the link may change the plan.
    pub fn editing(self) -> Result<Self, Trouble> {
        self.who_may(Deed::Change)
    }

    /// The same, when the link may enter into the record.
    pub fn recording(self) -> Result<Self, Trouble> {
        self.who_may(Deed::Record)
    }

    /// Saves a plan in its place, on top of the revision that was looked at, and leads to one of its pages.
    pub async fn save(
        &self,
        app: &App,
        base: u32,
        plan: &SitePlan,
        to: &str,
    ) -> Result<Redirect, Trouble> {
        match app.store.save(&self.plan_id, base, plan).await? {
            Save::Done(_) => Ok(Redirect::to(&format!("{}/{to}", self.root))),
            Save::Stale { current } => Err(Trouble::stale(&current)),
        }
    }

    /// The plan's title, or what stands for it.
    pub fn title(&self) -> String {
        title(self.plan.title.as_deref())
    }

    /// Where the place's climate is looked up, at the step that asks for it.
    pub fn climate(&self, step: Step) -> Option<String> {
        (step == Step::Site && self.config.climate.is_some())
            .then(|| format!("{}/climate", self.root))
    }

    /// What the house knew when this plan began, and still stands in it, at a step.
    pub fn house(&self, step: Step) -> Vec<String> {
        self.config
            .defaults
            .as_ref()
            .map(|defaults| house::lines(defaults, step, &self.plan))
            .unwrap_or_default()
    }

    /// What the house prints at the head of its sheets.
    pub fn letterhead(&self) -> Option<Letterhead> {
        Letterhead::of(&self.config.house)
    }

    /// The revision in words.
    pub fn revision_words(&self) -> String {
        if self.secret.is_empty() {
            "example".to_owned()
        } else {
            format!("revision\u{a0}{}", self.revision)
        }
    }

    /// The frame of one of the plan's pages.
    pub fn frame(&self, title: &str) -> Frame {
        let head = PlanHead {
            id: self.plan_id.clone(),
            title: self.title(),
            revision: self.revision_words(),
            root: self.root.clone(),
            edit: self.right.may_edit(),
            example: self.secret.is_empty(),
            steps: StepLink::all(self.step),
        };
        Frame::new(
            &self.config,
            format!("{title}: {}", self.title()),
            Some(head),
        )
    }
}

/// A plan's title, or what stands for it.
pub fn title(title: Option<&str>) -> String {
    title
        .filter(|title| !title.trim().is_empty())
        .unwrap_or("Untitled pier")
        .to_owned()
}

#[cfg(test)]
mod tests {
    use super::EXAMPLE;
    use stillground::site_plan::SitePlan;

    #[test]
    fn the_example_is_a_valid_plan() {
        let plan: SitePlan = serde_json::from_str(EXAMPLE).unwrap();
        assert_eq!(plan.validate(), Ok(()));
    }
}
