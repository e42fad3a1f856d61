//! The record of a plan's work: its entries held against the plan as it stands, and how a new one is taken.

use std::sync::Arc;

use stillground::figure::Units;
use stillground::record::{Board, Entry, Item, Kind, board, items};
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::error::Trouble;
use crate::photo;
use crate::planned::Planned;
use crate::store::record::{Entered, Kept};
use crate::store::{Opened, Right, Saved};

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
        Self { plan_id: opened.plan_id, right: opened.right, saved: opened.saved }
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
        Self { planned, items, kept, entries }
    }

    /// The tasks as the record leaves them.
    #[must_use]
    pub fn board(&self) -> Board<'_> {
        board(&self.entries, &self.planned.design.schedule, &self.items, self.planned.brief.units)
    }
}

/// An entry with its time in universal time: that at which it was received, where its sender said none.
fn timed(kept: &Kept) -> Entry {
    let mut entry = kept.entry.clone();
    let measured: Option<jiff::Timestamp> = entry.measured_at.as_deref().and_then(|at| at.parse().ok());
    entry.measured_at = Some(measured.unwrap_or(kept.received_at).to_string());
    entry
}

/// The plan as it stood at a revision; none where it has none such.
async fn seen(app: &App, writer: &Writer, revision: u32) -> Result<Option<SitePlan>, Trouble> {
    Ok(match revision {
        now if now == writer.saved.revision => Some(writer.saved.plan.clone()),
        then if then > writer.saved.revision => None,
        then => app.store.revision(&writer.plan_id, then).await?.map(|saved| saved.plan),
    })
}

/// What was asked, and in which units, of whoever had a page of this revision before them: a figure means what its box
/// said, whatever has become of the plan since.
///
/// # Errors
/// A plan whose answers contradict each other, or the store's own.
pub async fn asked(app: &App, writer: &Writer, revision: u32) -> Result<(Vec<Item>, Units), Trouble> {
    let plan = seen(app, writer, revision).await?.unwrap_or_else(|| writer.saved.plan.clone());
    let planned = app.planned(&plan).await.map_err(Trouble::contradictory)?;
    Ok((items(&planned.brief, &planned.design), planned.brief.units))
}

/// Whether an entry may be kept: the link allows it, and the plan that its writer had before them asks for it.
///
/// # Errors
/// Everything that is wrong with it.
pub async fn examine(app: &App, writer: &Writer, entry: &Entry) -> Result<(), Trouble> {
    if !writer.right.may_record() {
        return Err(Trouble::not_with_this_link("record or edit"));
    }
    if entry.kind == Kind::Decided && !writer.right.may_edit() {
        return Err(Trouble::not_with_this_link("edit"));
    }
    let Some(plan) = seen(app, writer, entry.revision).await? else {
        return Err(Trouble::entry(&[("revision", "The plan has no such revision.".to_owned())]));
    };
    let planned = app.planned(&plan).await.map_err(Trouble::contradictory)?;
    let items = items(&planned.brief, &planned.design);
    let mut faults: Vec<(&str, String)> = entry
        .faults(&planned.design.schedule, &items, &planned.design.materials)
        .into_iter()
        .map(|fault| (fault.field, fault.said))
        .collect();
    if entry.measured_at.as_deref().is_some_and(|at| at.parse::<jiff::Timestamp>().is_err()) {
        faults.push(("measured_at", "Write the moment as 2027-04-20T09:30:00Z.".to_owned()));
    }
    let named = [("supersedes", &entry.supersedes), ("decides", &entry.decides)];
    if named.iter().any(|(_, name)| name.is_some()) {
        let kept = app.store.entries(&writer.plan_id).await?;
        let unknown = |name: &Option<String>| name.as_ref().is_some_and(|name| !kept.iter().any(|kept| kept.entry.id == *name));
        let missing = named.into_iter().filter(|(_, name)| unknown(name));
        faults.extend(missing.map(|(field, _)| (field, "The record has no entry of that name.".to_owned())));
    }
    if faults.is_empty() { Ok(()) } else { Err(Trouble::entry(&faults)) }
}

/// Takes an entry: examines it, and keeps it once however often it is sent.
///
/// # Errors
/// Everything that is wrong with it, or the store's own; nothing was kept then.
pub async fn take(app: &App, writer: &Writer, entry: &Entry) -> Result<(Kept, bool), Trouble> {
    examine(app, writer, entry).await?;
    settle(app.store.enter(&writer.plan_id, entry).await?)
}

/// Takes a photograph: examines its entry, writes the picture anew, and keeps both once however often they are sent.
///
/// # Errors
/// Everything that is wrong with it, or the store's own; nothing was kept then.
pub async fn take_photo(app: &App, writer: &Writer, entry: &Entry, picture: Vec<u8>) -> Result<(Kept, bool), Trouble> {
    if !writer.right.may_record() {
        return Err(Trouble::not_with_this_link("record or edit"));
    }
    if picture.is_empty() {
        return Err(Trouble::entry(&[("photo", "No photograph was chosen.".to_owned())]));
    }
    if picture.len() > app.config.largest_photo {
        return Err(Trouble::photo_too_large(app.config.largest_photo));
    }
    examine(app, writer, entry).await?;
    let picture = anew(app, picture).await?;
    settle(app.store.enter_photo(&writer.plan_id, entry, &picture).await?)
}

/// Writes a picture anew, one at a time: it takes a few hundred megabytes for a moment.
async fn anew(app: &App, picture: Vec<u8>) -> Result<Vec<u8>, Trouble> {
    let turn = Arc::clone(&app.darkroom).acquire_owned().await.map_err(|_| Trouble::crowded())?;
    let work = move || {
        let _turn = turn;
        photo::anew(&picture)
    };
    let made = tokio::task::spawn_blocking(work).await.map_err(|error| Trouble::broken("writing a photograph anew", &error))?;
    made.map_err(|fault| Trouble::entry(&[("photo", fault.to_string())]))
}

/// What became of an entry, and whether it is new.
///
/// # Errors
/// A name that another entry has, or a record that is full.
pub fn settle(entered: Entered) -> Result<(Kept, bool), Trouble> {
    match entered {
        Entered::New(kept) => Ok((kept, true)),
        Entered::Again(kept) => Ok((kept, false)),
        Entered::NameTaken => Err(Trouble::name_taken()),
        Entered::Full => Err(Trouble::record_full()),
    }
}
