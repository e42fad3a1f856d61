//! One plan by itself, to be carried to another store: every revision and its record, no link and no secret.

use std::collections::BTreeSet;

use data_encoding::BASE64;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use stillground::record::Entry;
use stillground::site_plan::SitePlan;

use super::database::{Work, values};
use super::plans::{insert_links, insert_revision, saved};
use super::{Created, Outcome, Saved, Store, photos, record, secret};

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
    /// The record of the work, in the order in which it was received.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub record: Vec<CarriedEntry>,
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

/// An entry of the record on its way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CarriedEntry {
    /// When it was received.
    pub received_at: Timestamp,
    /// The entry.
    pub entry: Entry,
    /// Its photograph in base 64, when it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<String>,
}

/// Why a document is no parcel that can be unpacked here.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BadParcel {
    /// A later form.
    #[error(
        "this export has form {0}, this version of Stillground knows form {FORM}: use a newer version"
    )]
    Newer(u32),
    /// No revision at all, or one that is missing.
    #[error("the revisions are not numbered 1, 2, 3 and so on without a gap")]
    Numbers,
    /// Two entries of one name.
    #[error("two entries of the record have the same id")]
    Names,
    /// A plan or an entry that the service would refuse if it were sent by itself.
    #[error("{place}: {said}")]
    Refused {
        /// Which revision or entry, and which answer of it.
        place: String,
        /// What is wrong with it.
        said: String,
    },
    /// A photograph that cannot be read.
    #[error("the picture of entry {0} is not written in base 64, or is no picture")]
    Picture(String),
}

impl Parcel {
    /// Nothing, when it can be unpacked.
    ///
    /// # Errors
    /// A later form, revisions with gaps, entries that cannot be told apart, pictures that cannot be read.
    pub fn check(&self) -> Result<(), BadParcel> {
        if self.stillground_export != FORM {
            return Err(BadParcel::Newer(self.stillground_export));
        }
        let counted = self
            .revisions
            .iter()
            .map(|carried| carried.revision)
            .eq((1..).take(self.revisions.len()));
        if !counted || self.revisions.is_empty() {
            return Err(BadParcel::Numbers);
        }
        for carried in &self.revisions {
            carried.check()?;
        }
        let names: BTreeSet<&str> = self
            .record
            .iter()
            .map(|carried| carried.entry.id.as_str())
            .collect();
        if names.len() < self.record.len() {
            return Err(BadParcel::Names);
        }
        self.record
            .iter()
            .try_for_each(|carried| carried.bytes().map(drop).and(carried.check_words()))
    }
}

impl Carried {
    /// Nothing, when the service would take this plan. Contradictions between answers are no reason: a plan may be saved
    /// with them.
    fn check(&self) -> Result<(), BadParcel> {
        let refused = |place: String, said: &str| {
            Err(BadParcel::Refused {
                place,
                said: said.to_owned(),
            })
        };
        let Err(problems) = self.plan.validate_each() else {
            return Ok(());
        };
        match problems.0.first() {
            Some(problem) => refused(
                format!("revision {}, {}", self.revision, problem.fields.join(", ")),
                &problem.said,
            ),
            None => Ok(()),
        }
    }
}

impl CarriedEntry {
    /// Nothing, when the service would take this entry's words.
    fn check_words(&self) -> Result<(), BadParcel> {
        match self.entry.word_faults().into_iter().next() {
            Some(fault) => Err(BadParcel::Refused {
                place: format!("entry {:?}, {}", self.entry.id, fault.field),
                said: fault.said,
            }),
            None => Ok(()),
        }
    }

    /// The photograph itself.
    ///
    /// # Errors
    /// A text that is not base 64.
    pub fn bytes(&self) -> Result<Option<Vec<u8>>, BadParcel> {
        let decoded = self
            .picture
            .as_ref()
            .map(|picture| BASE64.decode(picture.as_bytes()))
            .transpose();
        decoded.map_err(|_| BadParcel::Picture(self.entry.id.clone()))
    }
}

impl From<Saved> for Carried {
    fn from(saved: Saved) -> Self {
        Self {
            revision: saved.revision,
            saved_at: saved.saved_at,
            plan: saved.plan,
        }
    }
}

impl Store {
    /// Packs a plan; `None` when there is none of that name.
    ///
    /// # Errors
    /// The store's own.
    pub async fn pack(&self, plan_id: &str) -> Outcome<Option<Parcel>> {
        let sql = "SELECT number, document, saved_at, plan_id, title, digest FROM revisions WHERE plan_id = $1 ORDER BY number";
        let rows = self.db.rows(sql, values![plan_id]).await?;
        let revisions = rows.iter().map(|row| saved(row).map(Carried::from));
        let revisions = self.damage.seen(revisions.collect::<Outcome<Vec<_>>>())?;
        if revisions.is_empty() {
            return Ok(None);
        }
        Ok(Some(Parcel {
            stillground_export: FORM,
            revisions,
            record: self.pack_record(plan_id).await?,
        }))
    }

    async fn pack_record(&self, plan_id: &str) -> Outcome<Vec<CarriedEntry>> {
        let mut record = Vec::new();
        for kept in self.entries(plan_id).await? {
            let picture = self
                .photo(plan_id, &kept.entry.id)
                .await?
                .map(|bytes| BASE64.encode(&bytes));
            record.push(CarriedEntry {
                received_at: kept.received_at,
                entry: kept.entry,
                picture,
            });
        }
        Ok(record)
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
        work.run(
            "INSERT INTO plans (id, revision, created_at) VALUES ($1, $2, $3)",
            values![&id, newest, now],
        )
        .await?;
        for carried in &parcel.revisions {
            let at = carried.saved_at.as_microsecond();
            insert_revision(
                &mut work,
                &id,
                i64::from(carried.revision),
                &carried.plan,
                at,
                // The export does not say by which version it was saved.
                None,
            )
            .await?;
        }
        for (number, carried) in (1..).zip(&parcel.record) {
            unpack_entry(&mut work, &id, number, carried).await?;
        }
        insert_links(&mut work, &id, &links, now).await?;
        work.commit().await?;
        Ok(Created { id, links })
    }
}

async fn unpack_entry(
    work: &mut Work,
    plan_id: &str,
    number: i64,
    carried: &CarriedEntry,
) -> Outcome<()> {
    let at = carried.received_at.as_microsecond();
    record::put(work, plan_id, number, &carried.entry, at).await?;
    match carried.bytes() {
        Ok(Some(picture)) => photos::put(work, plan_id, &carried.entry.id, &picture).await,
        _ => Ok(()),
    }
}
