//! One plan by itself, to be carried to another store: every revision, no link and no secret.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use stillground::site_plan::SitePlan;

use super::database::values;
use super::plans::{insert_links, insert_revision, saved};
use super::{Created, Outcome, Saved, Store, secret};

/// The form of the document; a later one has a higher number.
pub const FORM: u32 = 1;

/// A plan with all that belongs to it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parcel {
    /// The form of this document.
    pub stillground_export: u32,
    /// Every revision, the first one first.
    pub revisions: Vec<Carried>,
}

/// A revision on its way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Carried {
    /// Number, from 1.
    pub revision: u32,
    /// When it was saved.
    pub saved_at: Timestamp,
    /// What was said.
    pub plan: SitePlan,
}

/// Why a document is no parcel that can be unpacked here.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BadParcel {
    /// A later form.
    #[error("this export has form {0}, this version of Stillground knows form {FORM}: use a newer version")]
    Newer(u32),
    /// No revision at all, or one that is missing.
    #[error("the revisions are not numbered 1, 2, 3 and so on without a gap")]
    Numbers,
}

impl Parcel {
    /// Nothing, when it can be unpacked.
    ///
    /// # Errors
    /// A later form, or revisions with gaps.
    pub fn check(&self) -> Result<(), BadParcel> {
        if self.stillground_export != FORM {
            return Err(BadParcel::Newer(self.stillground_export));
        }
        let counted = self.revisions.iter().map(|carried| carried.revision).eq((1..).take(self.revisions.len()));
        if counted && !self.revisions.is_empty() { Ok(()) } else { Err(BadParcel::Numbers) }
    }
}

impl From<Saved> for Carried {
    fn from(saved: Saved) -> Self {
        Self { revision: saved.revision, saved_at: saved.saved_at, plan: saved.plan }
    }
}

impl Store {
    /// Packs a plan; `None` when there is none of that name.
    ///
    /// # Errors
    /// The store's own.
    pub async fn pack(&self, plan_id: &str) -> Outcome<Option<Parcel>> {
        let sql = "SELECT number, document, saved_at FROM revisions WHERE plan_id = $1 ORDER BY number";
        let rows = self.db.rows(sql, values![plan_id]).await?;
        let revisions = rows.iter().map(|row| saved(row).map(Carried::from)).collect::<Outcome<Vec<_>>>()?;
        Ok((!revisions.is_empty()).then_some(Parcel { stillground_export: FORM, revisions }))
    }

    /// Unpacks a checked parcel as a new plan with new links.
    ///
    /// # Errors
    /// The store's own; nothing was kept then.
    pub async fn unpack(&self, parcel: &Parcel) -> Outcome<Created> {
        let (id, links) = (secret::plan_id()?, super::Links::new()?);
        let now = Timestamp::now().as_microsecond();
        let mut work = self.db.begin().await?;
        let newest = i64::try_from(parcel.revisions.len()).unwrap_or(i64::MAX);
        work.run("INSERT INTO plans (id, revision, created_at) VALUES ($1, $2, $3)", values![&id, newest, now]).await?;
        for carried in &parcel.revisions {
            let at = carried.saved_at.as_microsecond();
            insert_revision(&mut work, &id, i64::from(carried.revision), &carried.plan, at).await?;
        }
        insert_links(&mut work, &id, &links, now).await?;
        work.commit().await?;
        Ok(Created { id, links })
    }
}
