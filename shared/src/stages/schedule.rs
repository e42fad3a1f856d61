//! Schedule: tasks in order, with the waits that concrete and resin ask for.

mod clock;
mod concreting;
mod dowels;
mod finishing;
pub(crate) mod frost;
mod setting;
mod waits;

pub use waits::wait_hours;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Celsius, Unit};
use crate::notes::{Found, Notes, When};
use crate::rules::calendar;
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::pier::Pier;

/// The task at which the finished pier is measured. What is measured of a pier that stands belongs to it too, though that plan
/// has no tasks.
pub const MEASURE: &str = "measure";

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
    /// Hours after the start of day 1 at which it is done; a working day has eight hours, a wait runs day and night.
    pub done_h: f64,
    /// Hours of work, or of waiting.
    pub lasts_h: f64,
    /// Whether it is a wait, in which nobody works.
    pub wait: bool,
    /// Why it comes then and lasts so long.
    pub why: String,
    /// The part of the work, whose cautions stand beside it.
    pub part: When,
}

/// What the tasks are made from.
struct Job<'a> {
    brief: &'a Brief,
    excavation: &'a Excavation,
    block: &'a Block,
    pier: &'a Pier,
    anchors: &'a Anchors,
    floor: &'a Floor,
}

impl Job<'_> {
    /// A round size of common practice.
    fn about_mm(&self, value: f64) -> String {
        self.brief.units.about(value, Unit::Millimetre)
    }

    fn celsius(&self, value: f64) -> String {
        self.brief.units.say(value, Celsius)
    }

    /// Hours that so many person-hours take, at most four people being able to reach the same work.
    fn shared(&self, person_hours: f64) -> f64 {
        person_hours / self.brief.work.people.value.clamp(1.0, 4.0)
    }
}

/// Tasks in the making.
#[derive(Default)]
struct Plan {
    tasks: Vec<Task>,
}

impl Plan {
    /// Adds work: it starts when all tasks before it are done, in working hours.
    fn work(
        &mut self,
        part: When,
        id: &'static str,
        title: impl Into<String>,
        after: &[&'static str],
        lasts_h: f64,
        why: impl Into<String>,
    ) {
        self.add(part, id, title.into(), after, lasts_h, why.into(), false);
    }

    /// Adds a wait: it runs day and night.
    fn wait(
        &mut self,
        part: When,
        id: &'static str,
        title: impl Into<String>,
        after: &[&'static str],
        lasts_h: f64,
        why: impl Into<String>,
    ) {
        self.add(part, id, title.into(), after, lasts_h, why.into(), true);
    }

    #[allow(
        clippy::too_many_arguments,
        reason = "the one place where a task is made; its two callers name the last argument"
    )]
    fn add(
        &mut self,
        part: When,
        id: &'static str,
        title: String,
        after: &[&'static str],
        lasts_h: f64,
        why: String,
        wait: bool,
    ) {
        let after: Vec<_> = after.iter().copied().filter(|id| self.has(id)).collect();
        let ready = after.iter().map(|id| self.done_h(id)).fold(0.0, f64::max);
        let lasts_h = quarters(lasts_h);
        let (earliest_h, done_h) = if wait {
            (ready, ready + lasts_h)
        } else {
            clock::work(ready, lasts_h)
        };
        self.tasks.push(Task {
            id,
            title,
            after,
            earliest: String::new(),
            earliest_h,
            done_h,
            lasts_h,
            wait,
            why,
            part,
        });
    }

    fn has(&self, id: &str) -> bool {
        self.tasks.iter().any(|task| task.id == id)
    }

    fn done_h(&self, id: &str) -> f64 {
        self.tasks
            .iter()
            .find(|task| task.id == id)
            .map_or(0.0, |task| task.done_h)
    }
}

/// Up to a quarter of an hour.
fn quarters(hours: f64) -> f64 {
    (hours * 4.0).ceil() / 4.0
}

/// Puts the work in order.
pub fn stage(
    brief: &Brief,
    excavation: &Excavation,
    block: &Block,
    pier: &Pier,
    anchors: &Anchors,
    floor: &Floor,
) -> Found<Vec<Task>> {
    let job = Job {
        brief,
        excavation,
        block,
        pier,
        anchors,
        floor,
    };
    let mut plan = Plan::default();
    concreting::tasks(&job, &mut plan);
    setting::tasks(&job, &mut plan);
    finishing::tasks(&job, &mut plan);
    let start = brief.work.start_date.as_deref();
    for task in &mut plan.tasks {
        task.earliest = day(start, task.earliest_h);
    }
    plan.tasks
        .sort_by(|a, b| a.earliest_h.total_cmp(&b.earliest_h));
    Found {
        value: plan.tasks,
        notes: Notes::default(),
    }
}

/// The day on which an hour falls: a date when the first day is known, else its number.
fn day(start: Option<&str>, hour: f64) -> String {
    let days = (hour / 24.0 + 1e-9).floor().clamp(0.0, 100_000.0) as i64;
    start
        .and_then(|start| calendar::days_after(start, days))
        .unwrap_or_else(|| format!("day {}", days + 1))
}
