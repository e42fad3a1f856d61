//! What was found beside what was planned, and what would change if the plan took it in.

use askama::Template;
use stillground::record::taking::{Taken, taken};
use stillground::record::{Asks, Board, Reading, Verdict};
use stillground::site_plan::SitePlan;

use super::frame::Frame;
use super::printed::{Change, answers, changed};
use super::record::log;
use crate::forms::questions;
use crate::planned::Planned;
use crate::record::Record;
use crate::views::verdict;

/// The page.
#[derive(Template)]
#[template(path = "pages/found.html")]
pub struct FoundPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Whether its reader may change the plan.
    pub may_edit: bool,
    /// The revision that is shown.
    pub base: u32,
    /// The revision before a finding was taken in.
    pub before: Option<u32>,
    /// What was measured.
    pub rows: Vec<FoundRow>,
    /// The finding that is looked at.
    pub chosen: Option<Chosen>,
}

/// Something that was measured.
#[derive(Debug, Clone)]
pub struct FoundRow {
    /// What.
    pub title: String,
    /// What the plan expects.
    pub planned: String,
    /// What was found.
    pub found: String,
    /// What follows, in a word or two.
    pub verdict: &'static str,
    /// By whom, and when.
    pub by: String,
    /// Its entry, where the plan could take it in.
    pub entry: Option<String>,
}

/// What changes with a finding.
#[derive(Debug, Clone)]
pub struct Chosen {
    /// Its entry.
    pub entry: String,
    /// What was measured.
    pub title: String,
    /// What was found.
    pub found: String,
    /// The question that it answers.
    pub question: String,
    /// The three questions about the plan, where their answers change.
    pub verdicts: Vec<Change>,
    /// Answers that change.
    pub answers: Vec<Change>,
    /// Figures of the work that change.
    pub figures: Vec<Change>,
}

/// The findings that the plan could take in: each the last of its kind, and not as planned.
pub fn to_take<'a>(
    record: &'a Record,
    board: &'a Board<'a>,
    plan: &'a SitePlan,
) -> impl Iterator<Item = (&'a Reading<'a>, Taken)> {
    latest(board).filter_map(move |reading| {
        // What was measured of the pier is worth taking in above all where it is as planned.
        if matches!(reading.verdict, Some(Verdict::Within)) && !is_of_pier(reading) {
            return None;
        }
        Some((reading, taken(reading.entry, plan, &record.planned.design)?))
    })
}

/// Whether it is one of the measurements of the finished pier, of which each stands by itself.
fn is_of_pier(reading: &Reading<'_>) -> bool {
    reading
        .item
        .is_some_and(|item| matches!(item.asks, Asks::Measurement { .. }))
}

/// The last measurement of each kind.
fn latest<'a>(board: &'a Board<'a>) -> impl Iterator<Item = &'a Reading<'a>> {
    let readings = &board.readings;
    readings
        .iter()
        .enumerate()
        .filter_map(move |(place, reading)| {
            let item = reading.item.filter(|_| reading.counts())?;
            let again = |later: &Reading<'_>| {
                later.counts() && later.item.is_some_and(|known| known.id == item.id)
            };
            let last = is_of_pier(reading) || !readings.iter().skip(place + 1).any(again);
            last.then_some(reading)
        })
}

/// The rows of the table.
#[must_use]
pub fn rows(record: &Record, plan: &SitePlan) -> Vec<FoundRow> {
    let board = record.board();
    let units = record.planned.brief.units;
    let takeable: Vec<String> = to_take(record, &board, plan)
        .map(|(reading, _)| reading.entry.id.clone())
        .collect();
    let row = |reading: &Reading<'_>| {
        let item = reading.item?;
        let kept = record
            .kept
            .iter()
            .find(|kept| kept.entry.id == reading.entry.id);
        let id = &reading.entry.id;
        Some(FoundRow {
            title: item.title.clone(),
            planned: item.expected.clone(),
            found: item.found(reading.entry, units),
            verdict: log::verdict(reading.verdict.as_ref(), reading.ended_by.is_some()),
            by: log::by(&reading.entry.who, kept),
            entry: takeable.contains(id).then(|| id.clone()),
        })
    };
    latest(&board).filter_map(row).collect()
}

/// The plan with a finding in it; none where the plan could not take it in.
#[must_use]
pub fn take(record: &Record, plan: &SitePlan, entry: &str) -> Option<Taken> {
    let board = record.board();
    let found = to_take(record, &board, plan).find(|(reading, _)| reading.entry.id == entry);
    found.map(|(_, taken)| taken)
}

impl Chosen {
    /// What changes from a plan to the one that has the finding in it.
    #[must_use]
    pub fn of(
        row: &FoundRow,
        entry: &str,
        plan: &SitePlan,
        taken: &Taken,
        both: [&Planned; 2],
    ) -> Self {
        let [then, now] = both;
        let say = |planned: &Planned| verdict::answers(&planned.design, now.brief.units);
        let verdicts = say(then).into_iter().zip(say(now));
        Self {
            entry: entry.to_owned(),
            title: row.title.clone(),
            found: row.found.clone(),
            question: questions::label(&taken.field).to_owned(),
            verdicts: verdicts
                .map(|(was, is)| Change {
                    label: is.question.to_owned(),
                    was: was.says,
                    is: is.says,
                })
                .filter(|change| change.was != change.is)
                .collect(),
            answers: answers(plan, &taken.plan),
            figures: changed(then, now),
        }
    }
}
