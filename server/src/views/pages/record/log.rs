//! All that was entered, by revision of the plan, each measurement held against the plan as it stands.

use stillground::figure::Units;
use stillground::record::entry::TASK_PREFIX;
use stillground::record::{Asks, Entry, Item, Kind, Reading, Verdict};

use stillground::site_plan::prices::lines;

use crate::record::Record;
use crate::store::record::Kept;
use crate::views::words;

/// All that was entered.
#[derive(Debug, Clone, Default)]
pub struct Log {
    /// By revision, the newest first.
    pub revisions: Vec<(u32, Vec<LineView>)>,
    /// Measurements that prove the finished pier, against the plan's figures.
    pub proofs: Vec<ProofView>,
    /// Stops that stand, in words.
    pub stops: Vec<String>,
    /// Findings that are not as planned, those that stop the work among them.
    pub outside: usize,
    /// Entries.
    pub count: usize,
}

/// An entry in words.
#[derive(Debug, Clone)]
pub struct LineView {
    /// When it was done or measured.
    pub when: String,
    /// Who entered it.
    pub who: String,
    /// The task.
    pub task: String,
    /// What was entered.
    pub what: String,
    /// What the plan expects.
    pub expected: String,
    /// What follows from it, in words.
    pub verdict: String,
    /// Whether it is marked: a stop, or not as planned.
    pub mark: &'static str,
    /// Name of the photograph.
    pub photo: Option<String>,
}

/// A measurement that proves the finished pier.
#[derive(Debug, Clone)]
pub struct ProofView {
    /// What is measured.
    pub title: String,
    /// What the plan expects.
    pub expected: String,
    /// What was found; none: not measured yet.
    pub found: Option<String>,
    /// What follows.
    pub verdict: &'static str,
}

/// By whom and when.
#[must_use]
pub fn by(who: &str, kept: Option<&Kept>) -> String {
    match kept {
        Some(kept) => format!("{who}, {}", when(kept)),
        None => who.to_owned(),
    }
}

/// What follows from a measurement, in a word or two.
#[must_use]
pub const fn verdict(verdict: Option<&Verdict>, ended: bool) -> &'static str {
    match verdict {
        Some(Verdict::Within) => "as planned",
        Some(Verdict::Outside { .. }) => "not as planned",
        Some(Verdict::Stop { .. }) if ended => "a stop, since ended",
        Some(Verdict::Stop { .. }) => "stop",
        None => "not judged",
    }
}

fn when(kept: &Kept) -> String {
    let measured = kept
        .entry
        .measured_at
        .as_deref()
        .and_then(|at| at.parse().ok());
    words::moment(measured.unwrap_or(kept.received_at))
}

impl Log {
    /// The log of a record.
    #[must_use]
    pub fn of(record: &Record) -> Self {
        let board = record.board();
        let lines = board
            .readings
            .iter()
            .zip(&record.kept)
            .map(|(reading, kept)| (kept.entry.revision, line(record, reading, kept)));
        let judged = |reading: &&Reading<'_>| {
            let differs = matches!(
                reading.verdict,
                Some(Verdict::Outside { .. } | Verdict::Stop { .. })
            );
            reading.counts() && differs
        };
        Self {
            revisions: by_revision(lines.collect()),
            proofs: proofs(record, &board.readings),
            stops: board
                .stops()
                .filter_map(|reading| stop(reading.verdict.as_ref()))
                .collect(),
            outside: board.readings.iter().filter(judged).count(),
            count: record.kept.len(),
        }
    }

    /// The log of entries that cannot be held against a plan, since it contradicts itself.
    #[must_use]
    pub fn unjudged(kept: &[Kept]) -> Self {
        let line = |kept: &Kept| {
            let entry = &kept.entry;
            let what = [
                entry.item.clone(),
                entry.value.map(stillground::figure::digits),
                entry.text.clone(),
                entry
                    .measurement
                    .as_ref()
                    .map(|measurement| measurement.says(Units::Metric)),
            ];
            let what = what.into_iter().flatten().collect::<Vec<_>>().join(" ");
            let line = LineView {
                what: format!("{} {what}", entry.kind.key()),
                ..plain(kept, entry.task.clone())
            };
            (entry.revision, line)
        };
        Self {
            revisions: by_revision(kept.iter().map(line).collect()),
            count: kept.len(),
            ..Self::default()
        }
    }
}

fn by_revision(lines: Vec<(u32, LineView)>) -> Vec<(u32, Vec<LineView>)> {
    let mut revisions: Vec<(u32, Vec<LineView>)> = Vec::new();
    for (revision, line) in lines.into_iter().rev() {
        match revisions.iter_mut().find(|(known, _)| *known == revision) {
            Some((_, lines)) => lines.push(line),
            None => revisions.push((revision, vec![line])),
        }
    }
    revisions.sort_by_key(|(revision, _)| std::cmp::Reverse(*revision));
    revisions
}

fn plain(kept: &Kept, task: String) -> LineView {
    LineView {
        when: when(kept),
        who: kept.entry.who.clone(),
        task,
        what: String::new(),
        expected: String::new(),
        verdict: String::new(),
        mark: "",
        photo: (kept.entry.kind == Kind::Photo).then(|| kept.entry.id.clone()),
    }
}

fn line(record: &Record, reading: &Reading<'_>, kept: &Kept) -> LineView {
    let entry = reading.entry;
    let known = record
        .planned
        .design
        .schedule
        .iter()
        .find(|task| task.id == entry.task);
    let task = known.map_or_else(
        || format!("{} (no longer a task of the plan)", entry.task),
        |task| task.title.clone(),
    );
    let mark = match reading.verdict.as_ref().filter(|_| reading.counts()) {
        Some(Verdict::Stop { .. }) if reading.ended_by.is_none() => "stop",
        Some(Verdict::Outside { .. } | Verdict::Stop { .. }) => "outside",
        _ => "",
    };
    LineView {
        what: what(record, reading),
        expected: reading
            .item
            .map(|item| item.expected.clone())
            .unwrap_or_default(),
        verdict: follows(record, reading),
        mark,
        ..plain(kept, task)
    }
}

fn what(record: &Record, reading: &Reading<'_>) -> String {
    let entry = reading.entry;
    let text = entry.text.as_deref().unwrap_or_default();
    match entry.kind {
        Kind::Done => "ticked off".to_owned(),
        Kind::Reopened => "not done after all".to_owned(),
        Kind::Here => format!("there: {}", order_line(record, entry)),
        Kind::Missing => format!("not there after all: {}", order_line(record, entry)),
        Kind::Note => text.to_owned(),
        Kind::Photo if text.is_empty() => "a photograph".to_owned(),
        Kind::Photo => format!("a photograph: {text}"),
        Kind::Decided => match entry.decides.as_deref() {
            Some(name) if name.starts_with(TASK_PREFIX) => {
                format!("decided on the task as a whole: {text}")
            }
            _ => format!("decided on a stop: {text}"),
        },
        Kind::Measured => match reading.item {
            Some(item) => format!(
                "{}: {}",
                item.title,
                item.found(entry, record.planned.brief.units)
            ),
            None => {
                let value = entry
                    .value
                    .map(stillground::figure::digits)
                    .unwrap_or_default();
                format!(
                    "{} {value}{text} (no longer asked by the plan)",
                    entry.item.as_deref().unwrap_or_default()
                )
            }
        },
    }
}

/// A line of the materials as the plan has it now, or else without its sizes.
fn order_line(record: &Record, entry: &Entry) -> String {
    let id = entry.item.as_deref().unwrap_or_default();
    let now = record
        .planned
        .design
        .materials
        .iter()
        .find(|line| line.id == id)
        .map(|line| line.item.clone());
    now.unwrap_or_else(|| {
        format!(
            "{} (no longer in the plan)",
            lines::line(id).map_or(id, |line| line.what)
        )
    })
}

fn follows(record: &Record, reading: &Reading<'_>) -> String {
    let who = |id: &str| {
        record
            .entries
            .iter()
            .find(|entry| entry.id == id)
            .map(|entry: &Entry| entry.who.clone())
            .unwrap_or_default()
    };
    if let Some(by) = reading.superseded_by {
        return format!("corrected by {}", who(by));
    }
    let said = verdict(reading.verdict.as_ref(), reading.ended_by.is_some());
    match (&reading.verdict, reading.ended_by) {
        (None, _) => String::new(),
        (Some(Verdict::Within), _) => said.to_owned(),
        (Some(Verdict::Stop { why, .. }), Some(by)) => format!("{said} by {}: {why}", who(by)),
        (Some(Verdict::Stop { why, ask, .. }), None) => format!("{said}: {why} Ask: {ask}."),
        (Some(Verdict::Outside { what_to_do }), _) => format!("{said}: {what_to_do}"),
    }
}

fn stop(verdict: Option<&Verdict>) -> Option<String> {
    match verdict {
        Some(Verdict::Stop { why, .. }) => Some(why.clone()),
        _ => None,
    }
}

fn proofs(record: &Record, readings: &[Reading<'_>]) -> Vec<ProofView> {
    let units = record.planned.brief.units;
    let view = |item: &Item, reading: Option<&Reading<'_>>| ProofView {
        title: item.title.clone(),
        expected: item.expected.clone(),
        found: reading.map(|reading| item.found(reading.entry, units)),
        verdict: reading.map_or("not measured yet", |reading| {
            verdict(reading.verdict.as_ref(), reading.ended_by.is_some())
        }),
    };
    let views = |item: &Item| {
        let mut found: Vec<&Reading<'_>> = readings
            .iter()
            .filter(|reading| reading.counts())
            .filter(|reading| reading.item.is_some_and(|known| known.id == item.id))
            .collect();
        // Of a knock, a lean and a pull each stands by itself; of a single figure the last holds.
        if !matches!(item.asks, Asks::Measurement { .. }) {
            found = found.pop().into_iter().collect();
        }
        if found.is_empty() && item.asked {
            return vec![view(item, None)];
        }
        found
            .into_iter()
            .map(|reading| view(item, Some(reading)))
            .collect()
    };
    record
        .items
        .iter()
        .filter(|item| item.proves)
        .flat_map(views)
        .collect()
}
