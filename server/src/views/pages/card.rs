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
    /// What to do and what not, as planned.
    pub rules: Vec<String>,
    /// The same as this pier was measured; empty where nothing was.
    pub pier: Vec<String>,
}

impl CardPage {
    /// The card of a plan; none when its answers contradict each other.
    #[must_use]
    pub fn of(frame: Frame, root: &str, planned: Option<&Planned>) -> Self {
        let rules = planned
            .map(|planned| planned.design.motion.where_to_stand.clone())
            .unwrap_or_default();
        let fitted = planned.and_then(|planned| planned.design.fitted.as_ref());
        let pier = fitted
            .filter(|fitted| !fitted.agreement.is_empty())
            .and_then(|fitted| fitted.motion.as_ref())
            .map(|motion| motion.where_to_stand.clone())
            .unwrap_or_default();
        Self {
            frame,
            pier,
            root: root.to_owned(),
            rules,
        }
    }
}
