//! The revisions of a plan.

use askama::Template;

use super::frame::Frame;

/// The page.
#[derive(Template)]
#[template(path = "pages/revisions.html")]
pub struct RevisionsPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// The revisions, newest first.
    pub revisions: Vec<RevisionView>,
    /// Where older ones stand.
    pub older: Option<String>,
}

/// A revision.
#[derive(Debug, Clone)]
pub struct RevisionView {
    /// Its number.
    pub number: u32,
    /// Title at that time.
    pub title: String,
    /// When it was saved.
    pub saved: String,
    /// With which version of the planner; empty where nobody kept it.
    pub engine: String,
    /// Whether it is the newest.
    pub newest: bool,
}
