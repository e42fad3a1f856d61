//! A page of the short way: a few questions, with the picture of what they come to.

use askama::Template;

use super::drawn::DrawingView;
use super::field::{Control, FieldView};
use super::frame::Frame;
use super::step::FaultView;
use crate::forms::short::Part;

/// The page.
#[derive(Template)]
#[template(path = "pages/begin.html")]
pub struct BeginPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Which page it is.
    pub part: Part,
    /// How many there are.
    pub count: usize,
    /// The revision that the answers began from.
    pub base: u32,
    /// Units in which the page is shown.
    pub shown_in: &'static str,
    /// What has to be put right.
    pub faults: Vec<FaultView>,
    /// Whether the boxes hold what was sent and is not kept.
    pub typed: bool,
    /// The questions.
    pub fields: Vec<FieldView>,
    /// What the answers come to.
    pub picture: Option<DrawingView>,
}
