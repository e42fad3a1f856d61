//! The record of a plan's work: its entries held against the plan as it stands, and how a new one is taken.

use std::sync::Arc;

use stillground::figure::Units;
use stillground::record::{Board, Entry, Item, Kind, board, entry, in_the_way, items};
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::error::Trouble;
use crate::photo;
use crate::planned::Planned;
use crate::store::record::{Entered, Kept};
use crate::store::{Opened, Right, Saved};
use crate::turns::Work;

/// A plan's record.
pub struct Record {
    /// The plan that the entries are held against.
    pub planned: Arc<Planned>,
    /// What it asks for.
    pub items: Vec<Item>,
    /// The entries as they are kept.
    pub kept: Vec<Kept>,
    /// The same for the engine: each with a time.
    pub entries: Vec<Entry>,
}

/// Who enters something, and where.
#[derive(Debug, Clone)]
pub struct Writer {
    /// The plan's name in the store.
    pub plan_id: String,
    /// What their link lets them do.
    pub right: Right,
    /// The plan as it stands.
    pub saved: Saved,
}

impl From<Opened> for Writer {
    fn from(opened: Opened) -> Self {
        Self {
            plan_id: opened.plan_id,
            right: opened.right,
            saved: opened.saved,
        }
    }
}

impl Record {
    /// The record of a plan.
    ///
    /// # Errors
    /// A plan whose answers contradict each other, or the store's own.
    pub async fn load(app: &App, writer: &Writer) -> Result<Self, Trouble> {
        let planned = app.planned(&writer.saved.plan).await?;
        let kept = app.store.entries(&writer.plan_id).await?;
        Ok(Self::of(planned, kept))
    }

    /// A record of these entries.
    #[must_use]
    pub fn of(planned: Arc<Planned>, kept: Vec<Kept>) -> Self {
        let entries = kept.iter().map(timed).collect();
        let items = items(&planned.brief, &planned.design);
        Self {
            planned,
            items,
            kept,
            entries,
        }
    }

    /// The tasks as the record leaves them.
    #[must_use]
    pub fn board(&self) -> Board<'_> {
        board(
            &self.entries,
            &self.planned.design.schedule,
            &self.items,
            &self.planned.brief,
        )
    }
}

/// An entry with its time in universal time: that at which it was received, where its sender said none.
fn timed(kept: &Kept) -> Entry {
    timed_by(&kept.entry, kept.received_at)
}

fn timed_by(entry: &Entry, received_at: jiff::Timestamp) -> Entry {
    let mut entry = entry.clone();
    let measured: Option<jiff::Timestamp> =
        entry.measured_at.as_deref().and_then(|at| at.parse().ok());
    entry.measured_at = Some(measured.unwrap_or(received_at).to_string());
    entry
}

/// The plan as it stood at a revision; none where it has none such.
pub async fn seen(app: &App, writer: &Writer, revision: u32) -> Result<Option<SitePlan>, Trouble> {
    Ok(match revision {
        now if now == writer.saved.revision => Some(writer.saved.plan.clone()),
        then if then > writer.saved.revision => None,
        then => app
            .store
            .revision(&writer.plan_id, then)
            .await?
            .map(|saved| saved.plan),
    })
}

/// What was asked, and in which units, of whoever had a page of this revision before them: a figure means what its box
/// said, whatever has become of the plan since.
///
/// # Errors
/// A plan whose answers contradict each other, or the store's own.
pub async fn asked(
    app: &App,
    writer: &Writer,
    revision: u32,
) -> Result<(Vec<Item>, Units), Trouble> {
    let plan = seen(app, writer, revision)
        .await?
        .unwrap_or_else(|| writer.saved.plan.clone());
    let planned = app.planned(&plan).await.map_err(Trouble::contradictory)?;
    Ok((items(&planned.brief, &planned.design), planned.brief.units))
}

/// What an entry is held against: what its revision asked for, read once for all that a page sends.
struct EntryContext {
    planned: Arc<Planned>,
    items: Vec<Item>,
    /// The record, where an entry speaks of another or ticks a task off.
    kept: Vec<Kept>,
    /// The record held against the plan as it stands, with what is sent now, where a task is ticked off.
    after: Option<Record>,
    now: jiff::Timestamp,
}

/// A decision about a task as a whole names the task, not an entry.
fn names_a_task(context: &EntryContext, name: &str) -> bool {
    name.strip_prefix(entry::TASK_PREFIX).is_some_and(|id| {
        let tasks = &context.planned.design.schedule;
        tasks.iter().any(|task| task.id == id)
    })
}

impl EntryContext {
    /// The context for entries of one revision; none where the plan has no such revision.
    async fn load(
        app: &App,
        writer: &Writer,
        entries: &[Entry],
        revision: u32,
    ) -> Result<Option<Self>, Trouble> {
        let Some(plan) = seen(app, writer, revision).await? else {
            return Ok(None);
        };
        let planned = app.planned(&plan).await.map_err(Trouble::contradictory)?;
        let items = items(&planned.brief, &planned.design);
        let now = jiff::Timestamp::now();
        let named = entries
            .iter()
            .any(|entry| entry.supersedes.is_some() || entry.decides.is_some());
        let ticks = entries.iter().any(|entry| entry.kind == Kind::Done);
        let kept = if named || ticks {
            app.store.entries(&writer.plan_id).await?
        } else {
            Vec::new()
        };
        let after = if ticks {
            // What holds is the plan as it stands, whichever its writer had before them.
            let planned = app
                .planned(&writer.saved.plan)
                .await
                .map_err(Trouble::contradictory)?;
            let sent = entries
                .iter()
                .filter(|entry| kept.iter().all(|known| known.entry.id != entry.id))
                .filter(|entry| entry.kind != Kind::Done);
            let mut record = Record::of(planned, kept.clone());
            record
                .entries
                .extend(sent.map(|entry| timed_by(entry, now)));
            Some(record)
        } else {
            None
        };
        Ok(Some(Self {
            planned,
            items,
            kept,
            after,
            now,
        }))
    }

    /// What is wrong with an entry: the field, and a sentence.
    fn faults(&self, entry: &Entry) -> Vec<(&'static str, String)> {
        let design = &self.planned.design;
        let found = entry.faults(&design.schedule, &self.items, &design.materials);
        let mut faults: Vec<(&str, String)> = found
            .into_iter()
            .map(|fault| (fault.field, fault.said))
            .collect();
        if entry
            .measured_at
            .as_deref()
            .is_some_and(|at| at.parse::<jiff::Timestamp>().is_err())
        {
            faults.push((
                "measured_at",
                "Write the moment as 2027-04-20T09:30:00Z.".to_owned(),
            ));
        }
        for (field, name) in [
            ("supersedes", &entry.supersedes),
            ("decides", &entry.decides),
        ] {
            let known = |name: &String| {
                self.kept.iter().any(|kept| kept.entry.id == *name)
                    || (field == "decides" && names_a_task(self, name))
            };
            if name.as_ref().is_some_and(|name| !known(name)) {
                faults.push((field, "The record has no entry of that name.".to_owned()));
            }
        }
        faults.extend(self.too_soon(entry));
        faults
    }

    /// What stands in the way of ticking a task off; an entry that is kept already is not asked again.
    fn too_soon(&self, entry: &Entry) -> Vec<(&'static str, String)> {
        let Some(record) = self
            .after
            .as_ref()
            .filter(|_| self.kept.iter().all(|kept| kept.entry.id != entry.id))
        else {
            return Vec::new();
        };
        let entry = timed_by(entry, self.now);
        in_the_way(&entry, &record.board(), &self.now.to_string())
            .into_iter()
            .map(|fault| (fault.field, fault.said))
            .collect()
    }
}

/// What is wrong with each of the entries of a page, which were all made on one revision: the link allows them, and the plan
/// that their writer had before them asks for them. None of the list is wrong where it is empty.
///
/// # Errors
/// A link that does not allow one of them, a plan that contradicts itself, or the store's own.
pub async fn examine<'e>(
    app: &App,
    writer: &Writer,
    entries: &'e [Entry],
) -> Result<Vec<(&'e Entry, Trouble)>, Trouble> {
    let Some(first) = entries.first() else {
        return Ok(Vec::new());
    };
    if !writer.right.may_record() {
        return Err(Trouble::not_with_this_link("record or edit"));
    }
    if entries.iter().any(|entry| entry.kind == Kind::Decided) && !writer.right.may_edit() {
        return Err(Trouble::not_with_this_link("edit"));
    }
    let context = EntryContext::load(app, writer, entries, first.revision).await?;
    let trouble = |entry: &'e Entry| {
        let faults = match &context {
            Some(context) => context.faults(entry),
            None => vec![("revision", "The plan has no such revision.".to_owned())],
        };
        (!faults.is_empty()).then(|| (entry, Trouble::entry(&faults)))
    };
    Ok(entries.iter().filter_map(trouble).collect())
}

/// Nothing, when this entry may be kept.
async fn examine_one(app: &App, writer: &Writer, entry: &Entry) -> Result<(), Trouble> {
    match examine(app, writer, std::slice::from_ref(entry))
        .await?
        .pop()
    {
        Some((_, trouble)) => Err(trouble),
        None => Ok(()),
    }
}

/// Takes an entry: examines it, and keeps it once however often it is sent.
///
/// # Errors
/// Everything that is wrong with it, or the store's own; nothing was kept then.
pub async fn take(app: &App, writer: &Writer, entry: &Entry) -> Result<(Kept, bool), Trouble> {
    examine_one(app, writer, entry).await?;
    keep(app, writer, entry).await
}

/// Keeps an entry that was examined, once however often it is sent; whether it is new.
///
/// # Errors
/// A name that another entry has, a record that is full, or the store's own.
pub async fn keep(app: &App, writer: &Writer, entry: &Entry) -> Result<(Kept, bool), Trouble> {
    settle(app.store.enter(&writer.plan_id, entry).await?)
}

/// Takes a photograph: examines its entry, writes the picture anew, and keeps both once however often they are sent.
///
/// # Errors
/// Everything that is wrong with it, or the store's own; nothing was kept then.
pub async fn take_photo(
    app: &App,
    writer: &Writer,
    entry: &Entry,
    picture: Vec<u8>,
) -> Result<(Kept, bool), Trouble> {
    if !writer.right.may_record() {
        return Err(Trouble::not_with_this_link("record or edit"));
    }
    if picture.is_empty() {
        return Err(Trouble::entry(&[(
            "photo",
            "No photograph was chosen.".to_owned(),
        )]));
    }
    if picture.len() > app.config.largest_photo {
        return Err(Trouble::photo_too_large(app.config.largest_photo));
    }
    examine_one(app, writer, entry).await?;
    let picture = anew(app, picture).await?;
    settle(
        app.store
            .enter_photo(&writer.plan_id, entry, &picture)
            .await?,
    )
}

/// Writes a picture anew, in turn.
async fn anew(app: &App, picture: Vec<u8>) -> Result<Vec<u8>, Trouble> {
    let made = app
        .work(Work::Darkroom, move || photo::anew(&picture))
        .await?;
    made.map_err(|fault| Trouble::entry(&[("photo", fault.to_string())]))
}

/// What became of an entry, and whether it is new.
///
/// # Errors
/// A name that another entry has, or a record that is full.
fn settle(entered: Entered) -> Result<(Kept, bool), Trouble> {
    match entered {
        Entered::New(kept) => Ok((kept, true)),
        Entered::Again(kept) => Ok((kept, false)),
        Entered::NameTaken => Err(Trouble::name_taken()),
        Entered::Full => Err(Trouble::record_full()),
    }
}
