//! Whether all that was kept is still what was kept: each revision, entry and photograph against its digest, read by the
//! reader of today, and each plan with the revision that stands.

use std::collections::BTreeSet;
use std::sync::{Arc, Mutex};
use std::time::Duration;

use stillground::record::Entry;
use stillground::site_plan::SitePlan;

use super::connection::{Line, Row, Value, values};
use super::database::Db;
use super::schema::{DIGESTS, RECORD, SCHEMA};
use super::{Outcome, Store, StoreFailure, photos, plans, record};

/// Plans in one question.
const PLANS_AT_ONCE: i64 = 200;
/// A verification that runs beside the service rests so long after each plan, so that nobody waits for it.
const REST: Duration = Duration::from_millis(2);

/// The damage that is known of: found by whoever read it, or by a verification.
#[derive(Debug, Clone, Default)]
pub(super) struct Known(Arc<Mutex<BTreeSet<String>>>);

impl Known {
    /// Remembers damage that a reading met, and hands the outcome on.
    pub(super) fn seen<T>(&self, read: Outcome<T>) -> Outcome<T> {
        if let Err(StoreFailure::DamagedRow(row)) = &read {
            self.remember(row);
        }
        read
    }

    fn remember(&self, what: &str) {
        if let Ok(mut known) = self.0.lock()
            && known.insert(what.to_owned())
        {
            tracing::error!(row = what, "what was kept is damaged");
        }
    }

    fn replace(&self, found: &[String]) {
        found.iter().for_each(|what| self.remember(what));
        if let Ok(mut known) = self.0.lock() {
            known.retain(|what| found.contains(what));
        }
    }

    fn count(&self) -> usize {
        self.0.lock().map_or(0, |known| known.len())
    }
}

/// What a verification read, and what of it is damaged.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Verified {
    /// Plans looked at.
    pub plans: u64,
    /// Revisions read.
    pub revisions: u64,
    /// Entries read.
    pub entries: u64,
    /// Photographs read.
    pub photos: u64,
    /// What is damaged, a line each with its plan.
    pub damaged: Vec<String>,
}

impl std::fmt::Display for Verified {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self {
            plans,
            revisions,
            entries,
            photos,
            damaged,
        } = self;
        write!(
            f,
            "{plans} plans, {revisions} revisions, {entries} entries and {photos} photographs read"
        )?;
        match damaged.len() {
            0 => write!(f, ", all as they were kept"),
            number => write!(f, ", {number} damaged: {}", damaged.join("; ")),
        }
    }
}

/// What is read: a running service's store, or a file beside it.
pub(super) enum On<'c> {
    Service(&'c Db),
    File(Line<'c>),
}

impl On<'_> {
    async fn rows(&mut self, sql: &'static str, values: &[Value<'_>]) -> Outcome<Vec<Row>> {
        match self {
            Self::Service(db) => db.rows(sql, values).await,
            Self::File(line) => line.rows(sql, values).await,
        }
    }
}

/// One kind of row: since which schema there are any, how they are read, and how they were before they had digests.
struct Kind {
    name: &'static str,
    since: i64,
    rows: &'static str,
    read: fn(&Row) -> Outcome<()>,
    rows_before: &'static str,
    read_before: fn(&Row) -> Outcome<()>,
}

const KINDS: [Kind; 3] = [
    Kind {
        name: "revisions",
        since: 1,
        rows: "SELECT number, document, saved_at, plan_id, title, digest FROM revisions WHERE plan_id = $1 ORDER BY number",
        read: |row| plans::saved(row).map(drop),
        rows_before: "SELECT document FROM revisions WHERE plan_id = $1",
        read_before: |row| Ok(serde_json::from_str::<SitePlan>(&row.get::<String>(0)?).map(drop)?),
    },
    Kind {
        name: "record",
        since: RECORD,
        rows: "SELECT document, received_at, plan_id, number, id, digest FROM entries WHERE plan_id = $1 ORDER BY number",
        read: |row| record::kept(row).map(drop),
        rows_before: "SELECT document FROM entries WHERE plan_id = $1",
        read_before: |row| Ok(serde_json::from_str::<Entry>(&row.get::<String>(0)?).map(drop)?),
    },
    Kind {
        name: "photographs",
        since: RECORD,
        rows: "SELECT picture, plan_id, id, digest FROM photos WHERE plan_id = $1",
        read: |row| photos::picture(row).map(drop),
        rows_before: "SELECT picture FROM photos WHERE plan_id = $1",
        read_before: |row| row.get::<Vec<u8>>(0).map(drop),
    },
];

impl Store {
    /// How many rows are known to be damaged.
    #[must_use]
    pub fn damaged_rows(&self) -> usize {
        self.damage.count()
    }

    /// Reads everything that is kept and says what of it is damaged; damage is remembered, and forgotten when it is mended.
    ///
    /// # Errors
    /// The store's own, when not even the list of plans can be read.
    pub async fn verify(&self) -> Outcome<Verified> {
        self.verified(Duration::ZERO).await
    }

    /// The same beside a service, without haste.
    ///
    /// # Errors
    /// The store's own, when not even the list of plans can be read.
    pub async fn verify_in_the_background(&self) -> Outcome<Verified> {
        self.verified(REST).await
    }

    async fn verified(&self, rest: Duration) -> Outcome<Verified> {
        let found = verify(&mut On::Service(&self.db), SCHEMA, rest).await;
        match &found {
            Ok(found) => self.damage.replace(&found.damaged),
            Err(StoreFailure::Damaged(said)) => {
                self.damage.remember(&format!("the list of plans ({said})"));
            }
            Err(_) => {}
        }
        found
    }
}

/// Reads all that stands in a store of a schema.
///
/// # Errors
/// The store's own, when not even the list of plans can be read.
pub(super) async fn verify(on: &mut On<'_>, schema: i64, rest: Duration) -> Outcome<Verified> {
    let mut found = Verified::default();
    let mut last = String::new();
    loop {
        let sql = "SELECT id FROM plans WHERE id > $1 ORDER BY id LIMIT $2";
        let rows = on.rows(sql, values![&last, PLANS_AT_ONCE]).await?;
        if rows.is_empty() {
            return Ok(found);
        }
        for row in &rows {
            last = row.get(0)?;
            verify_plan(on, schema, &last, &mut found).await?;
            if !rest.is_zero() {
                tokio::time::sleep(rest).await;
            }
        }
    }
}

async fn verify_plan(on: &mut On<'_>, schema: i64, id: &str, found: &mut Verified) -> Outcome<()> {
    let head = "SELECT revisions.number FROM plans JOIN revisions ON revisions.plan_id = plans.id \
                AND revisions.number = plans.revision WHERE plans.id = $1";
    if matches!(on.rows(head, values![id]).await, Ok(rows) if rows.is_empty()) {
        let line = format!("plan {id}, whose newest revision is not there");
        found.damaged.push(line);
    }
    found.plans += 1;
    let mut sound = [0; 3];
    for (kind, sound) in KINDS.iter().zip(&mut sound) {
        if schema >= kind.since {
            *sound = kind.verify(on, schema, id, &mut found.damaged).await?;
        }
    }
    let [revisions, entries, photos] = sound;
    found.revisions += revisions;
    found.entries += entries;
    found.photos += photos;
    Ok(())
}

impl Kind {
    /// Reads a plan's rows; how many are sound. A question that the database itself breaks off over damage is told with
    /// the plan, and the others go on.
    async fn verify(
        &self,
        on: &mut On<'_>,
        schema: i64,
        plan_id: &str,
        damaged: &mut Vec<String>,
    ) -> Outcome<u64> {
        let (sql, read) = if schema >= DIGESTS {
            (self.rows, self.read)
        } else {
            (self.rows_before, self.read_before)
        };
        let name = self.name;
        let rows = match on.rows(sql, values![plan_id]).await {
            Ok(rows) => rows,
            Err(StoreFailure::Damaged(said)) => {
                damaged.push(format!("the {name} of plan {plan_id} ({said})"));
                return Ok(0);
            }
            Err(failure) => return Err(failure),
        };
        let mut sound = 0;
        for row in &rows {
            match read(row) {
                Ok(()) => sound += 1,
                Err(StoreFailure::DamagedRow(what)) => damaged.push(what),
                Err(failure) => {
                    damaged.push(format!("a row of the {name} of plan {plan_id} ({failure})"));
                }
            }
        }
        Ok(sound)
    }
}
