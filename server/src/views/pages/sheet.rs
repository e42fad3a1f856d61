//! What the code on a printed sheet says to anybody: whether the sheet is superseded, and nothing of the plan.

use askama::Template;

use super::frame::Frame;

/// The page.
#[derive(Template)]
#[template(path = "pages/sheet.html")]
pub struct SheetPage {
    /// The frame.
    pub frame: Frame,
    /// How the sheet stands.
    pub standing: SheetStanding,
    /// The revision that stands.
    pub current: u32,
    /// When it was saved, in words.
    pub saved: String,
}

/// How a printed sheet stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetStanding {
    /// It is of the revision that stands.
    Newest,
    /// It is of an older one.
    Superseded(u32),
    /// No revision is named, or one that there is not.
    Unknown,
}
