//! The page for a lost link.

use askama::Template;

use super::frame::Frame;

/// The page.
#[derive(Template)]
#[template(path = "pages/recover.html")]
pub struct RecoverPage {
    /// The frame.
    pub frame: Frame,
    /// Whether a code was sent that opens nothing.
    pub wrong: bool,
    /// Whether there is an organiser who can help.
    pub organiser: bool,
}
