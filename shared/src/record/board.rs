//! The tasks as the record leaves them: done, to be done now, later, or held.

use super::entry::{Entry, Kind, TASK_PREFIX, minutes_of, moment_of};
use super::item::{Item, Needed};
use super::reading::{Reading, readings};
use super::verdict::Verdict;
use super::waits;
use crate::brief::Brief;
use crate::stages::schedule::Task;

/// The tasks as the record leaves them.
#[derive(Debug, Clone, PartialEq)]
pub struct Board<'a> {
    /// The entries, in the order in which they were received.
    pub readings: Vec<Reading<'a>>,
    /// The tasks, in the schedule's order.
    pub tasks: Vec<TaskState<'a>>,
}

/// A task, and how it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct TaskState<'a> {
    /// The task.
    pub task: &'a Task,
    /// How it stands.
    pub state: State<'a>,
    /// The entry that ticked it off, also while a stop holds it.
    pub ticked: Option<&'a Entry>,
    /// For a wait: when it is over, reckoned from when what it waits for was ticked off; none while that is open.
    pub over_at: Option<String>,
    /// Hours by which a wait was ticked off sooner than that.
    pub too_soon_h: Option<f64>,
    /// Hours that it lasts: a wait's by the recorded temperature.
    pub lasts_h: f64,
    /// The recorded temperature by which a wait is counted, in words; none where the planned one holds.
    pub counted_at: Option<String>,
    /// What must be in the record before it is begun or ticked off, and is not.
    pub needs: Vec<&'a Item>,
}

/// How a task stands.
#[derive(Debug, Clone, PartialEq)]
pub enum State<'a> {
    /// Ticked off.
    Done,
    /// Held by these findings, by their places among the readings; by none where something must be entered before it is begun.
    Held(Vec<usize>),
    /// All that comes before is done.
    Now,
    /// It waits for these tasks.
    Later(Vec<&'a str>),
}

impl State<'_> {
    /// Its name in the interface.
    pub const fn key(&self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::Held(_) => "held",
            Self::Now => "now",
            Self::Later(_) => "later",
        }
    }
}

impl Board<'_> {
    /// The findings that stand as stops.
    pub fn stops(&self) -> impl Iterator<Item = &Reading<'_>> {
        self.readings.iter().filter(|reading| reading.stands())
    }

    /// Whether somebody who may edit decided that a wait counts as over, or that a task may be ticked off as it is.
    pub fn decided(&self, task: &str) -> bool {
        decided(task, &self.readings)
    }

    /// A task by its name.
    pub fn task(&self, id: &str) -> Option<&TaskState<'_>> {
        self.tasks.iter().find(|state| state.task.id == id)
    }

    /// The entry that says that a line of the materials is there; none where it is not, or not any more.
    pub fn here(&self, line: &str) -> Option<&Entry> {
        let speaks = |reading: &&Reading<'_>| {
            reading.counts()
                && reading.entry.item.as_deref() == Some(line)
                && matches!(reading.entry.kind, Kind::Here | Kind::Missing)
        };
        self.readings
            .iter()
            .rev()
            .find(speaks)
            .map(|reading| reading.entry)
            .filter(|entry| entry.kind == Kind::Here)
    }

    /// What the findings at a task ask for, without the stops.
    pub fn to_do<'b>(&'b self, task: &'b str) -> impl Iterator<Item = &'b str> {
        let at = move |reading: &&Reading<'_>| reading.entry.task == task && reading.counts();
        self.readings
            .iter()
            .filter(at)
            .filter_map(|reading| match &reading.verdict {
                Some(Verdict::Outside { what_to_do }) => Some(what_to_do.as_str()),
                _ => None,
            })
    }
}

/// Reads the record: entries in the order in which they were received, held against the tasks and items of the plan.
pub fn board<'a>(
    entries: &'a [Entry],
    tasks: &'a [Task],
    items: &'a [Item],
    brief: &Brief,
) -> Board<'a> {
    let readings = readings(entries, items, brief.units);
    let lasts = waits::all(brief, tasks, &readings);
    let stops: Vec<(usize, &str)> = readings
        .iter()
        .enumerate()
        .filter(|(_, reading)| reading.stands())
        .map(|(place, reading)| (place, reading.entry.task.as_str()))
        .collect();
    let ticked: Vec<(&str, &Entry)> = tasks
        .iter()
        .filter_map(|task| Some((task.id, tick(task.id, &readings)?)))
        .collect();
    let is_ticked = |id: &str| ticked.iter().any(|(known, _)| *known == id);
    let state = |task: &'a Task| {
        let holding: Vec<usize> = stops
            .iter()
            .filter(|(_, at)| follows(task.id, at, tasks))
            .map(|&(place, _)| place)
            .collect();
        let open: Vec<&'a str> = task
            .after
            .iter()
            .copied()
            .filter(|before| !is_ticked(before))
            .collect();
        let first = needs(task.id, items, &readings)
            .iter()
            .any(|item| item.needed == Needed::BeforeWork);
        match (holding.is_empty(), is_ticked(task.id), open.is_empty()) {
            (true, false, true) if first && !decided(task.id, &readings) => State::Held(Vec::new()),
            (false, ..) => State::Held(holding),
            (true, true, _) => State::Done,
            (true, false, true) => State::Now,
            (true, false, false) => State::Later(open),
        }
    };
    let ticked_at = |id: &str| minutes(ticked.iter().find(|(known, _)| *known == id)?.1);
    let stands = |task: &'a Task| {
        let wait = lasts.iter().find(|wait| wait.id == task.id);
        let hours = wait.map_or(task.lasts_h, |wait| wait.hours);
        let over = over(task, hours, &ticked_at);
        let too_soon = over
            .zip(ticked_at(task.id))
            .map(|(over, ticked)| (over - ticked) as f64 / 60.0);
        TaskState {
            task,
            state: state(task),
            ticked: ticked
                .iter()
                .find(|(id, _)| *id == task.id)
                .map(|&(_, entry)| entry),
            over_at: over.and_then(moment_of),
            too_soon_h: too_soon.filter(|hours| *hours > 0.0),
            lasts_h: hours,
            counted_at: wait.and_then(|wait| wait.at.clone()),
            needs: needs(task.id, items, &readings),
        }
    };
    let tasks_now = tasks.iter().map(stands).collect();
    Board {
        readings,
        tasks: tasks_now,
    }
}

/// Minutes at which an entry was made, by its sender's clock in universal time.
fn minutes(entry: &Entry) -> Option<i64> {
    minutes_of(entry.measured_at.as_deref()?)
}

/// What must be in the record for a task, and is not: no finding that stops the work counts as there.
fn needs<'a>(task: &str, items: &'a [Item], readings: &[Reading<'_>]) -> Vec<&'a Item> {
    let there = |item: &&Item| {
        readings.iter().any(|reading| {
            reading.counts()
                && reading.entry.kind == Kind::Measured
                && reading.entry.task == task
                && reading.entry.item.as_deref() == Some(item.id.as_str())
        })
    };
    items
        .iter()
        .filter(|item| item.task == task && item.needed != Needed::No)
        .filter(|item| !there(item))
        .collect()
}

/// Whether a decision about a task as a whole stands.
fn decided(task: &str, readings: &[Reading<'_>]) -> bool {
    readings.iter().any(|reading| {
        reading.counts()
            && reading.entry.kind == Kind::Decided
            && reading
                .entry
                .decides
                .as_deref()
                .and_then(|name| name.strip_prefix(TASK_PREFIX))
                == Some(task)
    })
}

/// When a wait is over by the record: so long after the last of what comes before was ticked off.
fn over(task: &Task, hours: f64, ticked_at: &dyn Fn(&str) -> Option<i64>) -> Option<i64> {
    let before: Option<Vec<i64>> = task.after.iter().map(|id| ticked_at(id)).collect();
    let last = before?.into_iter().max().filter(|_| task.wait)?;
    Some(last + (hours * 60.0).ceil() as i64)
}

/// The entry that ticked a task off, when none reopened it since.
fn tick<'a>(task: &str, readings: &[Reading<'a>]) -> Option<&'a Entry> {
    let speaks = |reading: &&Reading<'a>| {
        reading.counts()
            && reading.entry.task == task
            && matches!(reading.entry.kind, Kind::Done | Kind::Reopened)
    };
    readings
        .iter()
        .rev()
        .find(speaks)
        .map(|reading| reading.entry)
        .filter(|entry| entry.kind == Kind::Done)
}

/// Whether a task is another or comes after it, directly or by others between.
fn follows(task: &str, other: &str, tasks: &[Task]) -> bool {
    let mut seen: Vec<&str> = Vec::new();
    let mut open: Vec<&str> = vec![task];
    while let Some(id) = open.pop() {
        if id == other {
            return true;
        }
        if !seen.contains(&id) {
            seen.push(id);
            open.extend(
                tasks
                    .iter()
                    .filter(|known| known.id == id)
                    .flat_map(|known| known.after.iter().copied()),
            );
        }
    }
    false
}
