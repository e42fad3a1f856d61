//! The record of a plan's work: entries, only ever added.

use jiff::Timestamp;
use stillground::record::Entry;

use super::database::{Row, Work, values};
use super::moment::time;
use super::plans;
use super::{Outcome, Store, digest};

#[cfg(doc)]
use super::StoreFailure;

/// Most entries of a plan: a careful record of a pier has a few hundred.
pub const MOST_ENTRIES: i64 = 20_000;

/// An entry as it is kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept {
    /// The entry.
    pub entry: Entry,
    /// When it was received.
    pub received_at: Timestamp,
}

/// What became of an entry.
#[derive(Debug, Clone, PartialEq)]
pub enum Entered {
    /// It is on the disk.
    New(Kept),
    /// It was there already, the same to the letter: it was sent again.
    Again(Kept),
    /// Another entry has its name; nothing was changed.
    NameTaken,
    /// The plan's record takes no more.
    Full,
}

impl Store {
    /// Keeps an entry, once however often it is sent. It is on the disk when this returns.
    ///
    /// # Errors
    /// The store's own; nothing was kept then. [`StoreFailure::NotFound`] when there is no such plan.
    pub async fn enter(&self, plan_id: &str, entry: &Entry) -> Outcome<Entered> {
        let mut work = self.db.begin().await?;
        let entered = insert(&mut work, plan_id, entry).await?;
        let is_new = matches!(entered, Entered::New(_));
        if is_new && !self.may_take(&mut work, plan_id, 0).await? {
            work.give_up().await?;
            return Ok(Entered::Full);
        }
        work.commit().await?;
        Ok(entered)
    }

    /// The plan's entries, in the order in which they were received.
    ///
    /// # Errors
    /// The store's own.
    pub async fn entries(&self, plan_id: &str) -> Outcome<Vec<Kept>> {
        let sql = "SELECT document, received_at, plan_id, number, id, digest FROM entries WHERE plan_id = $1 ORDER BY number";
        let rows = self.db.rows(sql, values![plan_id]).await?;
        self.damage.seen(rows.iter().map(kept).collect())
    }
}

/// Adds an entry to the record within a transaction.
pub(super) async fn insert(work: &mut Work, plan_id: &str, entry: &Entry) -> Outcome<Entered> {
    // The plan is held until the end, so that of two entries at once each has a number of its own.
    plans::hold(work, plan_id).await?;
    let known = "SELECT document, received_at, plan_id, number, id, digest FROM entries WHERE plan_id = $1 AND id = $2";
    if let Some(row) = work.row(known, values![plan_id, &entry.id]).await? {
        let kept = kept(&row)?;
        return Ok(if same(&kept.entry, entry) {
            Entered::Again(kept)
        } else {
            Entered::NameTaken
        });
    }
    let last = "SELECT max(number) FROM entries WHERE plan_id = $1";
    let last = work
        .row(last, values![plan_id])
        .await?
        .map(|row| row.get::<Option<i64>>(0))
        .transpose()?
        .flatten()
        .unwrap_or(0);
    if last >= MOST_ENTRIES {
        return Ok(Entered::Full);
    }
    let now = Timestamp::now();
    put(work, plan_id, last + 1, entry, now.as_microsecond()).await?;
    Ok(Entered::New(Kept {
        entry: entry.clone(),
        received_at: time(now.as_microsecond()),
    }))
}

/// Keeps an entry under its number.
pub(super) async fn put(
    work: &mut Work,
    plan_id: &str,
    number: i64,
    entry: &Entry,
    at: i64,
) -> Outcome<()> {
    let sql = "INSERT INTO entries (plan_id, number, id, document, received_at, digest) VALUES ($1, $2, $3, $4, $5, $6)";
    let document = serde_json::to_string(entry)?;
    let sum = digest::of_entry(plan_id, number, &entry.id, &document, at);
    work.run(
        sql,
        values![plan_id, number, &entry.id, &document, at, &sum],
    )
    .await
    .map(drop)
}

/// Whether two entries say the same; the sender's clock may be set between two sendings.
fn same(kept: &Entry, sent: &Entry) -> bool {
    Entry {
        measured_at: None,
        ..kept.clone()
    } == Entry {
        measured_at: None,
        ..sent.clone()
    }
}

/// An entry from a row that begins with its document, time, plan, number, id and digest.
///
/// # Errors
/// [`StoreFailure::DamagedRow`] when it is not what was kept.
pub(super) fn kept(row: &Row) -> Outcome<Kept> {
    let (at, number): (i64, i64) = (row.get(1)?, row.get(3)?);
    let plan_id: String = row.get(2)?;
    let named = || format!("entry {number} in the record of plan {plan_id}");
    let document: String = digest::readable(row.get(0), named)?;
    let id: String = digest::readable(row.get(4), named)?;
    let sum = digest::of_entry(&plan_id, number, &id, &document, at);
    digest::check(row, 5, &sum, named)?;
    Ok(Kept {
        entry: serde_json::from_str(&document)?,
        received_at: time(at),
    })
}
