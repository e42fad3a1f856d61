//! Where plans are kept: numbered revisions, and links of which only a digest is stored.
//!
//! Everything that knows a database stands below this module; the rest of the service sees the functions here.

pub mod access;
pub mod archive;
mod batches;
mod connection;
mod database;
mod digest;
mod failure;
mod file;
mod look;
mod migration;
mod moment;
pub mod organiser;
mod parcel;
pub mod photos;
mod plans;
mod private;
pub mod record;
mod rights;
mod save;
mod schema;
mod secret;
pub mod sheets;
mod size;
mod turn;
pub mod verify;

use jiff::Timestamp;
use stillground::site_plan::SitePlan;

pub use failure::StoreFailure;
pub use look::LinkScope;
pub use parcel::{BadParcel, Carried, CarriedEntry, Parcel};
pub use plans::REVISIONS_ON_A_PAGE;
pub use rights::{Deed, Right};
pub use schema::SCHEMA;
pub use secret::Secret;

use crate::config::{Database, Quotas};

/// A new plan: its name in the store and the only copy of its secrets.
#[derive(Debug, Clone)]
pub struct Created {
    /// The plan's name in the store; no secret.
    pub id: String,
    /// Its links.
    pub links: Links,
}

/// The secrets of a plan's three links.
#[derive(Debug, Clone)]
pub struct Links {
    /// Opens for editing.
    pub edit: Secret,
    /// Opens for recording.
    pub record: Secret,
    /// Opens for reading.
    pub view: Secret,
}

impl Links {
    /// Three new ones.
    fn new() -> Outcome<Self> {
        Ok(Self {
            edit: Secret::new()?,
            record: Secret::new()?,
            view: Secret::new()?,
        })
    }
}

/// A plan as a link opened it.
#[derive(Debug, Clone)]
pub struct Opened {
    /// The plan's name in the store.
    pub plan_id: String,
    /// What this link lets its holder do.
    pub right: Right,
    /// The plan, its newest revision.
    pub saved: Saved,
    /// Version of the engine with which it was saved; none where nobody kept it.
    pub engine: Option<String>,
}

/// One revision of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Saved {
    /// Number, from 1.
    pub revision: u32,
    /// What was said.
    pub plan: SitePlan,
    /// When.
    pub saved_at: Timestamp,
}

/// A line in the list of revisions.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Revision {
    /// Number, from 1.
    pub revision: u32,
    /// Title at that time.
    pub title: Option<String>,
    /// When it was saved.
    pub saved_at: Timestamp,
    /// Version of the engine with which it was saved; none where nobody kept it.
    pub engine: Option<String>,
}

/// What became of a save.
#[derive(Debug, Clone, PartialEq)]
pub enum Save {
    /// It is on the disk under this number.
    Done(u32),
    /// The plan has moved on since the revision that this save began from; nothing was changed.
    Stale {
        /// The revision that stands now.
        current: Box<Saved>,
    },
}

/// Whether a plan has a live link of a right, and since when.
#[derive(Debug, Clone, PartialEq)]
pub struct LinkState {
    /// The right.
    pub right: Right,
    /// When the live link was made; `None` when there is none.
    pub made_at: Option<Timestamp>,
    /// When it ends by itself.
    pub expires_at: Option<Timestamp>,
    /// When it was last used, to the day; none before that was noted.
    pub opened_at: Option<Timestamp>,
}

type Outcome<T> = Result<T, StoreFailure>;

/// The store. Cheap to clone; every copy is the same store. What it does with plans stands in `plans`.
#[derive(Clone)]
pub struct Store {
    db: database::Db,
    quotas: Quotas,
    saves: save::Saves,
    damage: verify::Known,
    openings: organiser::Openings,
}

impl Store {
    /// Opens the store, makes it on first start, and brings an older one up to date.
    ///
    /// # Errors
    /// No folder, no permission, no database, or one from a newer version of Stillground.
    pub async fn open(database: &Database) -> Outcome<Self> {
        let db = database::Db::open(database).await?;
        Ok(Self {
            db,
            quotas: Quotas::default(),
            saves: save::saves(),
            damage: verify::Known::default(),
            openings: organiser::Openings::default(),
        })
    }

    /// The same store, which keeps no more of a plan than is said.
    #[must_use]
    pub fn with_quotas(self, quotas: Quotas) -> Self {
        Self { quotas, ..self }
    }

    /// Whether the store answers.
    ///
    /// # Errors
    /// The store's own.
    pub async fn ping(&self) -> Outcome<()> {
        self.db.ping().await
    }

    /// Finishes what runs and closes the files.
    pub async fn close(&self) {
        self.db.close().await;
    }
}

#[cfg(test)]
mod tests;
