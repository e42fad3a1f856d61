//! What stands round every page: the masthead, the steps, and who may do what.

use crate::assets;
use crate::config::Config;
use crate::forms::step::Step;

/// The frame of a page.
#[derive(Debug, Clone)]
pub struct Frame {
    /// Path before every link of the service.
    pub base: String,
    /// Path before every asset.
    pub assets: String,
    /// The house's name, where it has one.
    pub house: Option<String>,
    /// Address of the house's colours, where it has any.
    pub colours: Option<String>,
    /// The page's title.
    pub title: String,
    /// The plan it belongs to.
    pub plan: Option<PlanHead>,
}

impl Frame {
    /// The frame of a page of this service.
    #[must_use]
    pub fn new(config: &Config, title: String, plan: Option<PlanHead>) -> Self {
        Self {
            base: config.base.clone(),
            assets: assets::link(&config.base, "")
                .trim_end_matches('/')
                .to_owned(),
            house: config.house.name.clone(),
            colours: config
                .house
                .look
                .as_ref()
                .map(|look| config.link(&format!("/house/{}.css", look.edition))),
            title,
            plan,
        }
    }

    /// Whose planner it is: the house's name, or the planner's own.
    #[must_use]
    pub fn brand(&self) -> &str {
        self.house.as_deref().unwrap_or("Stillground")
    }
}

/// The head of a plan's pages.
#[derive(Debug, Clone)]
pub struct PlanHead {
    /// The plan's name in the store, which opens nothing.
    pub id: String,
    /// The plan's title.
    pub title: String,
    /// Its revision in words.
    pub revision: String,
    /// Address below which its pages stand.
    pub root: String,
    /// Whether the reader may change it.
    pub edit: bool,
    /// Whether it is the built-in example.
    pub example: bool,
    /// The steps.
    pub steps: Vec<StepLink>,
}

/// A step in the masthead.
#[derive(Debug, Clone)]
pub struct StepLink {
    /// Name in the address.
    pub slug: &'static str,
    /// Name on the page.
    pub title: &'static str,
    /// Whether it is this page.
    pub current: bool,
}

impl StepLink {
    /// All steps, one of them current.
    #[must_use]
    pub fn all(current: Option<Step>) -> Vec<Self> {
        Step::ALL
            .into_iter()
            .map(|step| Self {
                slug: step.slug(),
                title: step.title(),
                current: current == Some(step),
            })
            // What was measured is no list of questions, and has a page of its own.
            .chain([Self {
                slug: "commissioning",
                title: "Commissioning",
                current: false,
            }])
            .collect()
    }
}
