//! The front page: what it does, where to begin, and the plans begun in this browser.

use askama::Template;

use super::drawn::DrawingView;
use super::frame::Frame;

/// The front page.
#[derive(Template)]
#[template(path = "pages/front.html")]
pub struct FrontPage {
    /// The frame.
    pub frame: Frame,
    /// How a plan begins here.
    pub begins: Begins,
    /// Plans begun in this browser.
    pub begun: Vec<Begun>,
    /// A drawing of the example.
    pub drawing: Option<DrawingView>,
}

/// How a plan begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Begins {
    /// With a button.
    Here,
    /// With a code.
    WithACode,
    /// With the organiser.
    Elsewhere,
}

/// A plan begun in this browser.
#[derive(Debug, Clone)]
pub struct Begun {
    /// Its title.
    pub title: String,
    /// Its address.
    pub href: String,
    /// When it was saved last.
    pub saved: String,
}
