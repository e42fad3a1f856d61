//! A task on the helper's page.

use stillground::record::{Kind, Needed, State, TaskState, Verdict};

use super::boxes::{Asked, asked, each_or_one};
use super::desk::Desk;
use super::figures;
use super::needed;
use crate::views::pages::panel::CautionView;
use crate::views::words;

/// A task.
#[derive(Debug, Clone)]
pub struct TaskView {
    /// Its name.
    pub id: &'static str,
    /// What is done.
    pub title: String,
    /// When the schedule has it.
    pub when: String,
    /// How long it takes.
    pub lasts: String,
    /// Whether it is a wait.
    pub wait: bool,
    /// Why then and so long.
    pub why: String,
    /// The part of the work.
    pub part: &'static str,
    /// What can hurt at it.
    pub cautions: Vec<CautionView>,
    /// The figures that it needs.
    pub figures: Vec<(&'static str, String)>,
    /// The drawings that it needs, the first of which is shown with it: name and words.
    pub drawings: Vec<(&'static str, &'static str)>,
    /// How it stands, in a word or two.
    pub state: String,
    /// Whether it was ticked off and that counts.
    pub done: bool,
    /// What comes after it: name and title.
    pub then: Vec<(&'static str, String)>,
    /// What is measured at it.
    pub asked: Vec<Asked>,
    /// What the findings at it ask for.
    pub to_do: Vec<String>,
    /// Why it is held.
    pub held: Vec<String>,
    /// What must be entered before it is ticked off, and is not yet.
    pub needs: Vec<String>,
    /// Whether a decision under the link that edits would let it be ticked off sooner: an open wait, or something missing.
    pub may_be_decided: bool,
    /// Tasks that come before it and are open.
    pub waits_for: Vec<String>,
    /// Who ticked it off, and when.
    pub ticked: Option<String>,
    /// Notes: words, and by whom.
    pub notes: Vec<(String, String)>,
    /// Photographs: name, words, and by whom.
    pub photos: Vec<(String, String, String)>,
    /// Whether what was sent for it was not taken, so that it is shown at once.
    pub shown: bool,
    /// What was typed as a note and not taken.
    pub note: String,
    /// What is wrong with the form and no single box.
    pub errors: Vec<String>,
}

/// What must be entered before a task is ticked off, and is not yet.
fn needs(state: &TaskState<'_>) -> Vec<String> {
    if state.ticked.is_some() {
        return Vec::new();
    }
    let mut needs: Vec<String> = Vec::new();
    for item in &state.needs {
        let title = each_or_one(&item.id, &item.title);
        if !needs.contains(&title) {
            needs.push(title);
        }
    }
    needs
}

impl TaskView {
    /// How many of its drawings stand with it; the others are linked. Where the pier is measured nothing is built by one.
    #[must_use]
    pub fn shown_with_it(&self) -> usize {
        usize::from(self.id != "measure").min(self.drawings.len())
    }
}

impl Desk<'_> {
    pub(super) fn task(&self, state: &TaskState<'_>) -> TaskView {
        let (task, design) = (state.task, &self.record.planned.design);
        let units = self.record.planned.brief.units;
        let cautions = design
            .cautions
            .iter()
            .filter(|caution| !task.wait && caution.when == task.part);
        let sheet = self
            .typed
            .sheet
            .filter(|sheet| sheet.text("task") == Some(task.id));
        TaskView {
            id: task.id,
            title: task.title.clone(),
            when: self.when(state),
            lasts: words::lasting(task.lasts_h, units),
            wait: task.wait,
            why: task.why.clone(),
            part: words::part(task.part),
            cautions: cautions.map(CautionView::of).collect(),
            figures: figures::of(task.id, &self.record.planned, units),
            drawings: needed::drawings(task.id, design),
            state: self.state(state),
            done: state.state == State::Done,
            then: self.then(task.id),
            asked: asked(self, task.id, sheet),
            to_do: self.to_do(state),
            held: self.held(state),
            needs: needs(state),
            may_be_decided: state.ticked.is_none()
                && !self.board.decided(task.id)
                && (task.wait || !state.needs.is_empty()),
            waits_for: self.waits_for(state),
            ticked: state.ticked.map(|entry| self.by(&entry.id, &entry.who)),
            notes: self.said(task.id, Kind::Note),
            photos: self.photos(task.id),
            shown: sheet.is_some() && !self.typed.faults.is_empty(),
            note: sheet
                .and_then(|sheet| sheet.text("note"))
                .unwrap_or_default()
                .to_owned(),
            errors: if sheet.is_some() {
                self.errors()
            } else {
                Vec::new()
            },
        }
    }

    /// How it stands, for the list of tasks.
    fn state(&self, state: &TaskState<'_>) -> String {
        match (&state.state, state.over_at.as_deref()) {
            (State::Done, _) => "Done".to_owned(),
            (State::Held(by), _) if !by.is_empty() => "Stopped".to_owned(),
            (State::Later(_), _) => "Cannot start yet".to_owned(),
            (State::Now, Some(over)) if self.now < over => {
                format!("Waiting until {over}\u{a0}UTC")
            }
            (State::Held(_) | State::Now, _) => "Ready".to_owned(),
        }
    }

    /// The tasks that wait for this one.
    fn then(&self, task: &str) -> Vec<(&'static str, String)> {
        let after = |state: &&TaskState<'_>| state.task.after.contains(&task);
        let tasks = self.board.tasks.iter().filter(after);
        tasks
            .map(|state| (state.task.id, state.task.title.clone()))
            .collect()
    }

    /// When the schedule has it, and how that lies to today; for a wait, when it is over.
    fn when(&self, state: &TaskState<'_>) -> String {
        if let Some(over) = state
            .over_at
            .as_deref()
            .filter(|_| state.state == State::Now)
        {
            let counted = state
                .counted_at
                .as_deref()
                .map(|words| format!(", counted {words}"))
                .unwrap_or_default();
            return format!(
                "over on {over}\u{a0}UTC by the record{counted}; not to be ticked off before"
            );
        }
        let planned = &state.task.earliest;
        match planned.as_str().cmp(self.today()) {
            _ if planned.starts_with("day") => planned.clone(),
            std::cmp::Ordering::Equal => "planned for today".to_owned(),
            std::cmp::Ordering::Less => format!("planned since {planned}"),
            std::cmp::Ordering::Greater => format!("planned from {planned}"),
        }
    }

    /// What the findings ask for, and whether a wait was cut short.
    fn to_do(&self, state: &TaskState<'_>) -> Vec<String> {
        let units = self.record.planned.brief.units;
        let cut = |state: &TaskState<'_>| {
            let hours = state.too_soon_h?;
            let title = &state.task.title;
            Some(format!(
                "“{title}” was ticked off {} sooner than planned. Make sure that it is over before you go on, or ask whoever made the plan.",
                words::lasting(hours, units)
            ))
        };
        let before = state.task.after.iter().filter_map(|id| self.board.task(id));
        let cuts = before.chain([state]).filter_map(cut).collect::<Vec<_>>();
        self.board
            .to_do(state.task.id)
            .map(str::to_owned)
            .chain(cuts)
            .collect()
    }

    fn held(&self, state: &TaskState<'_>) -> Vec<String> {
        let State::Held(places) = &state.state else {
            return Vec::new();
        };
        let why = |&place: &usize| match &self.board.readings.get(place)?.verdict {
            Some(Verdict::Stop { why, ask, .. }) => Some(format!("{why} Ask: {ask}.")),
            _ => None,
        };
        let first = state
            .needs
            .iter()
            .filter(|item| places.is_empty() && item.needed == Needed::BeforeWork)
            .map(|item| {
                format!(
                    "Do not start before this is entered: {}. {}",
                    item.title, item.how
                )
            });
        places.iter().filter_map(why).chain(first).collect()
    }

    fn waits_for(&self, state: &TaskState<'_>) -> Vec<String> {
        let State::Later(open) = &state.state else {
            return Vec::new();
        };
        open.iter()
            .filter_map(|id| self.board.task(id))
            .map(|state| state.task.title.clone())
            .collect()
    }

    fn said(&self, task: &str, kind: Kind) -> Vec<(String, String)> {
        let entries = self
            .board
            .readings
            .iter()
            .filter(|reading| reading.counts())
            .map(|reading| reading.entry);
        let of_task = entries.filter(|entry| entry.task == task && entry.kind == kind);
        of_task
            .map(|entry| {
                (
                    entry.text.clone().unwrap_or_default(),
                    self.by(&entry.id, &entry.who),
                )
            })
            .collect()
    }

    fn photos(&self, task: &str) -> Vec<(String, String, String)> {
        let entries = self
            .board
            .readings
            .iter()
            .filter(|reading| reading.counts())
            .map(|reading| reading.entry);
        let of_task = entries.filter(|entry| entry.task == task && entry.kind == Kind::Photo);
        of_task
            .map(|entry| {
                (
                    entry.id.clone(),
                    entry.text.clone().unwrap_or_default(),
                    self.by(&entry.id, &entry.who),
                )
            })
            .collect()
    }

    /// What is wrong with a form and stands at no box of a measurement.
    fn errors(&self) -> Vec<String> {
        self.typed
            .faults
            .iter()
            .filter(|fault| !fault.name.starts_with("item~"))
            .map(|fault| fault.said.clone())
            .collect()
    }
}
