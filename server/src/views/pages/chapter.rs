//! A chapter of the plan: everything about one subject, on a page of its own.

use askama::Template;

use super::frame::Frame;
use super::plan::{Marks, PlanBody};
use super::record::log::Log;
use crate::forms::chapter::Chapter;

/// The page of a chapter.
#[derive(Template)]
#[template(path = "pages/chapter.html")]
pub struct ChapterPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages and files stand.
    pub root: String,
    /// Whether it is the built-in example.
    pub example: bool,
    /// Whether the reader may change the plan.
    pub edit: bool,
    /// Revision that a change is made on top of.
    pub base: u32,
    /// Revision, date, engine.
    pub marks: Marks,
    /// Which chapter.
    pub chapter: Chapter,
    /// The others that this plan has.
    pub others: Vec<Chapter>,
    /// What was entered while it was built; none where nothing was.
    pub log: Option<Log>,
    /// What was found; none when the answers contradict each other.
    pub body: Option<PlanBody>,
}
