//! Schedule: tasks in order, with the waits that concrete and resin ask for.

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes, When};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::pier::Pier;

/// One task.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Task {
    /// Stable name.
    pub id: &'static str,
    /// What is done.
    pub title: String,
    /// Tasks that must be done before.
    pub after: Vec<&'static str>,
    /// Earliest start: a day of the calendar when a start day is given, else the day number, counted from 1.
    pub earliest: String,
    /// Hours after the start of day 1 at which it may start.
    pub earliest_h: f64,
    /// Hours of work, or of waiting.
    pub lasts_h: f64,
    /// Whether it is a wait, in which nobody works.
    pub wait: bool,
    /// Why it comes then and lasts so long.
    pub why: String,
    /// The part of the work, whose cautions stand beside it.
    pub part: When,
}

/// Puts the work in order.
#[must_use]
pub fn stage(
    _brief: &Brief,
    _excavation: &Excavation,
    _block: &Block,
    _pier: &Pier,
    _anchors: &Anchors,
    _floor: &Floor,
) -> Found<Vec<Task>> {
    Found { value: Vec::new(), notes: Notes::default() }
}
