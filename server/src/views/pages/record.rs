//! The helper's page: what to do today, what to measure, what stands in the way, and all that was entered.

mod boxes;
mod desk;
pub mod figures;
pub mod log;
mod means;
pub mod needed;
mod task;

use std::sync::Arc;

use askama::Template;

use super::found;
use super::frame::Frame;
use super::panel::CautionView;
use crate::forms::record::RecordFault;
use crate::forms::sheet::Sheet;
use crate::record::Record;
use crate::views::words;
use boxes::Asked;
use log::Log;
use stillground::record::{State, Verdict};
use stillground::site_plan::SitePlan;
pub use task::TaskView;

/// The page.
#[derive(Template)]
#[template(path = "pages/record.html")]
pub struct RecordPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// The plan's name in the store, under which a browser keeps what it could not send.
    pub plan_id: String,
    /// Revision that the page shows.
    pub revision: u32,
    /// Largest photograph that is taken, in bytes.
    pub largest_photo: usize,
    /// Whether its reader may enter anything.
    pub may_record: bool,
    /// Whether its reader may decide on a stop.
    pub may_edit: bool,
    /// Name of whoever entered something last in this browser.
    pub who: String,
    /// Name of the page's forms.
    pub form: String,
    /// What was done.
    pub notice: Option<String>,
    /// What has to be put right: address on the page and words.
    pub faults: Vec<(String, String)>,
    /// The work; none when the plan's answers contradict each other.
    pub work: Option<Work>,
    /// All that was entered.
    pub log: Log,
}

/// The work as the record leaves it.
#[derive(Debug, Clone)]
pub struct Work {
    /// Tasks done, of how many.
    pub done_count: usize,
    /// Tasks.
    pub count: usize,
    /// What stands in the way.
    pub stops: Vec<StopView>,
    /// To be done now.
    pub now: Vec<TaskView>,
    /// Held, or waiting for others.
    pub later: Vec<TaskView>,
    /// Ticked off.
    pub done: Vec<TaskView>,
    /// Findings that the plan could take in.
    pub to_take: usize,
    /// Drawings that tasks need.
    pub drawings: Vec<Drawn>,
    /// Cautions by part of the work: its name, its heading, the cautions.
    pub cautions: Vec<(&'static str, &'static str, Vec<CautionView>)>,
}

/// A finding that stops the work.
#[derive(Debug, Clone)]
pub struct StopView {
    /// Name of its entry.
    pub id: String,
    /// Its task.
    pub task: String,
    /// The task's title.
    pub task_title: String,
    /// What was found and what must not be done.
    pub why: String,
    /// Whom to ask.
    pub ask: String,
    /// Who found it, and when.
    pub by: String,
    /// Whether only a decision ends it.
    pub lasting: bool,
    /// How many tasks after its own it holds.
    pub holds: usize,
    /// Whether the plan could take in what was found.
    pub to_take: bool,
}

/// A drawing that a task is done by.
#[derive(Debug, Clone)]
pub struct Drawn {
    /// Its name.
    pub name: &'static str,
    /// Its title.
    pub title: String,
    /// As much of it as is looked at while working.
    pub svg: Arc<str>,
}

/// What is typed on the page and was not taken.
#[derive(Debug, Clone, Copy, Default)]
pub struct Typed<'a> {
    /// The form as it was sent.
    pub sheet: Option<&'a Sheet>,
    /// What has to be put right.
    pub faults: &'a [RecordFault],
}

impl Work {
    /// The work of a plan, for a page whose forms are named so.
    #[must_use]
    pub fn of(record: &Record, typed: &Typed<'_>, at: &str, plan: &SitePlan) -> Self {
        let board = record.board();
        let desk = desk::Desk {
            record,
            board: &board,
            typed,
            now: at,
        };
        let (mut now, mut later, mut done) = (Vec::new(), Vec::new(), Vec::new());
        for state in &board.tasks {
            let view = desk.task(state);
            match &state.state {
                State::Now => now.push(view),
                // Where the stop was found is where it is put right.
                State::Held(by)
                    if by.is_empty()
                        || by.iter().any(|&place| {
                            board
                                .readings
                                .get(place)
                                .is_some_and(|stop| stop.entry.task == state.task.id)
                        }) =>
                {
                    now.push(view)
                }
                State::Done => done.push(view),
                State::Later(_) | State::Held(_) => later.push(view),
            }
        }
        // What is stopped comes first: nothing else goes on until it is put right.
        now.sort_by_key(|task| task.held.is_empty());
        let tasks = || now.iter().chain(&later).chain(&done);
        let needed: Vec<&str> = tasks()
            .flat_map(|task| &task.drawings)
            .map(|(name, _)| *name)
            .collect();
        let to_take: Vec<&str> = found::to_take(record, &board, plan)
            .map(|(reading, _)| reading.entry.id.as_str())
            .collect();
        Self {
            done_count: done.len(),
            count: board.tasks.len(),
            stops: stops(record, &board, &to_take),
            to_take: to_take.len(),
            drawings: drawings(record, &needed),
            cautions: cautions(record),
            now,
            later,
            done,
        }
    }

    /// Every task: those of now first, then those to come, then those that are done.
    pub fn tasks(&self) -> impl Iterator<Item = &TaskView> {
        self.now.iter().chain(&self.later).chain(&self.done)
    }
}

fn stops(
    record: &Record,
    board: &stillground::record::Board<'_>,
    to_take: &[&str],
) -> Vec<StopView> {
    let view = |(place, reading): (usize, &stillground::record::Reading<'_>)| {
        let Some(Verdict::Stop { why, ask, lasting }) = &reading.verdict else {
            return None;
        };
        let held = |state: &&stillground::record::TaskState<'_>| matches!(&state.state, State::Held(by) if by.contains(&place));
        Some(StopView {
            id: reading.entry.id.clone(),
            task: reading.entry.task.clone(),
            task_title: board
                .task(&reading.entry.task)
                .map(|state| state.task.title.clone())
                .unwrap_or_default(),
            why: why.clone(),
            ask: ask.clone(),
            by: log::by(&reading.entry.who, record.kept.get(place)),
            lasting: *lasting,
            to_take: to_take.contains(&reading.entry.id.as_str()),
            holds: board.tasks.iter().filter(held).count().saturating_sub(1),
        })
    };
    board
        .readings
        .iter()
        .enumerate()
        .filter(|(_, reading)| reading.stands())
        .filter_map(view)
        .collect()
}

fn drawings(record: &Record, needed: &[&str]) -> Vec<Drawn> {
    let wanted = crate::drawing::NAMES
        .iter()
        .filter(|name| needed.contains(name));
    wanted
        .filter_map(|name| {
            let glance = record.planned.glance(name)?;
            Some(Drawn {
                name,
                title: glance.title.clone(),
                svg: Arc::clone(&glance.svg),
            })
        })
        .collect()
}

fn cautions(record: &Record) -> Vec<(&'static str, &'static str, Vec<CautionView>)> {
    let cautions = &record.planned.design.cautions;
    let of = |when| {
        cautions
            .iter()
            .filter(|caution| caution.when == when)
            .map(CautionView::of)
            .collect::<Vec<_>>()
    };
    let parts = words::WHENS
        .into_iter()
        .map(|when| (words::part(when), words::when(when), of(when)));
    parts
        .filter(|(_, _, cautions)| !cautions.is_empty())
        .collect()
}
