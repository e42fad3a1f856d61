//! A card for the wall: where to walk and stand while an exposure runs.

use askama::Template;

use super::frame::Frame;
use crate::planned::Planned;

/// The card.
#[derive(Template)]
#[template(path = "pages/card.html")]
pub struct CardPage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// What to do and what not.
    pub rules: Vec<String>,
}

impl CardPage {
    /// The card of a plan; none when its answers contradict each other.
    #[must_use]
    pub fn of(frame: Frame, root: &str, planned: Option<&Planned>) -> Self {
        let rules = planned
            .map(|planned| planned.design.motion.where_to_stand.clone())
            .unwrap_or_default();
        Self {
            frame,
            root: root.to_owned(),
            rules,
        }
    }
}
