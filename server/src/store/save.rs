//! Saving a plan: on top of the revision that it began from, acknowledged when it is on the disk.
//!
//! A SQLite file has one writer, and what takes longest is to wait for the disk. Saves that wait for the writer are kept
//! by one transaction, each by itself: one that cannot be kept, since its plan has moved on or is full, leaves the others
//! as they are, and none is acknowledged before all are on the disk. PostgreSQL does the same among its connections.

use jiff::Timestamp;
use stillground::design::ENGINE_VERSION;
use stillground::site_plan::SitePlan;
use tokio::sync::oneshot;

use super::batches::{Batches, Worker};
use super::database::{Db, Row, Value, Work, values};
use super::plans::{NEWEST, saved};
use super::size::{self, SIZE};
use super::{Outcome, Save, Saved, Secret, Store, StoreFailure, digest};

/// Most saves that one transaction keeps.
const MOST: usize = 64;

/// A save that waits for the writer.
pub(super) struct Keeping {
    revision: NewRevision,
    answer: oneshot::Sender<Outcome<Save>>,
}

pub(super) type Saves = Batches<Keeping>;

/// Nobody saves.
pub(super) fn saves() -> Saves {
    Batches::new(1, MOST)
}

/// What is saved.
struct NewRevision {
    plan_id: String,
    /// The digest of the link that has to open the plan for editing; none where it was looked up before.
    link: Option<[u8; 32]>,
    base: u32,
    title: Option<String>,
    document: String,
}

impl Store {
    /// Saves a plan on top of the revision that it began from. `Done` is returned when it is on the disk.
    ///
    /// # Errors
    /// The store's own; nothing was changed then. [`StoreFailure::NotFound`] when there is no such plan.
    pub async fn save(&self, plan_id: &str, base_revision: u32, plan: &SitePlan) -> Outcome<Save> {
        self.add(NewRevision::of(plan_id, None, base_revision, plan)?)
            .await
    }

    /// Saves a plan as the holder of a link, which is looked up in the same transaction; the new revision's number. `None`
    /// when nothing was kept, for whatever reason lies in the link, the plan or the revision.
    ///
    /// # Errors
    /// The store's own; nothing was changed then.
    pub async fn save_by_link(
        &self,
        secret: &str,
        plan_id: &str,
        base_revision: u32,
        plan: &SitePlan,
    ) -> Outcome<Option<u32>> {
        let Some(secret) = Secret::parse(secret) else {
            return Ok(None);
        };
        match self
            .add(NewRevision::of(
                plan_id,
                Some(&secret),
                base_revision,
                plan,
            )?)
            .await
        {
            Ok(Save::Done(revision)) => Ok(Some(revision)),
            Ok(Save::Stale { .. }) | Err(StoreFailure::NotFound | StoreFailure::Quota) => Ok(None),
            Err(failure) => Err(failure),
        }
    }

    async fn add(&self, revision: NewRevision) -> Outcome<Save> {
        if let Db::Postgres(_) = self.db {
            return self.save_by(&mut By::Itself(&self.db), &revision).await;
        }
        let (answer, heard) = oneshot::channel();
        if let Some(worker) = self.saves.add(Keeping { revision, answer }) {
            // Whoever goes away meanwhile takes no neighbour's save along.
            tokio::spawn(work_off(self.clone(), worker));
        }
        heard
            .await
            .unwrap_or_else(|_| Err(StoreFailure::Unsure("the writer broke off".to_owned())))
    }

    /// Keeps saves by one transaction; what became of each. A failure of the database is everybody's.
    async fn save_together(
        &self,
        mut work: Work,
        batch: &[Keeping],
    ) -> Outcome<Vec<Outcome<Save>>> {
        let mut saves = Vec::with_capacity(batch.len());
        for one in batch {
            saves.push(
                match self.save_by(&mut By::With(&mut work), &one.revision).await {
                    Err(
                        failure @ (StoreFailure::Quota
                        | StoreFailure::NotFound
                        | StoreFailure::DamagedRow(_)
                        | StoreFailure::Document(_)),
                    ) => Err(failure),
                    kept => Ok(kept?),
                },
            );
        }
        work.commit().await?;
        Ok(saves)
    }

    async fn save_by(&self, by: &mut By<'_>, revision: &NewRevision) -> Outcome<Save> {
        let NewRevision {
            plan_id,
            link,
            base,
            title,
            document,
        } = revision;
        let link = link.as_ref().map(<[u8; 32]>::as_slice);
        let (next, now) = (i64::from(*base) + 1, Timestamp::now().as_microsecond());
        let has_room = self.has_room(by, plan_id, next, document).await?;
        // Nothing is put on top of a revision that is damaged: whoever saves has not seen what they change.
        self.stands(by, plan_id).await?;
        let sum = digest::of_revision(plan_id, next, title.as_deref(), document, now);
        if has_room
            && by
                .run(values![
                    next,
                    plan_id,
                    *base,
                    title,
                    document,
                    now,
                    link,
                    &sum,
                    ENGINE_VERSION
                ])
                .await?
                > 0
        {
            return Ok(Save::Done(base + 1));
        }
        let current = self.stands(by, plan_id).await?;
        if !has_room && current.revision == *base {
            Err(StoreFailure::Quota)
        } else {
            Ok(Save::Stale {
                current: Box::new(current),
            })
        }
    }

    /// The revision that stands, sound.
    async fn stands(&self, by: &mut By<'_>, plan_id: &str) -> Outcome<Saved> {
        let row = by.row(NEWEST, values![plan_id]).await?;
        let found = self.damage.seen(row.as_ref().map(saved).transpose())?;
        found.ok_or(StoreFailure::NotFound)
    }

    /// Whether a plan may have so many revisions, and this document with those that it has.
    async fn has_room(
        &self,
        by: &mut By<'_>,
        plan_id: &str,
        revisions: i64,
        document: &str,
    ) -> Outcome<bool> {
        if self
            .quotas
            .revisions
            .is_some_and(|most| revisions > i64::from(most))
        {
            return Ok(false);
        }
        let Some(most) = self.quotas.plan_bytes else {
            return Ok(true);
        };
        let size: Option<i64> = by
            .row(SIZE, values![plan_id])
            .await?
            .map(|row| row.get(0))
            .transpose()?;
        Ok(size::fits(size, document.len(), most))
    }
}

impl NewRevision {
    fn of(plan_id: &str, link: Option<&Secret>, base: u32, plan: &SitePlan) -> Outcome<Self> {
        let (title, document) = (plan.title.clone(), serde_json::to_string(plan)?);
        Ok(Self {
            plan_id: plan_id.to_owned(),
            link: link.map(Secret::digest),
            base,
            title,
            document,
        })
    }
}

/// How a save reaches the database.
enum By<'w> {
    /// In a transaction of its own, in one errand.
    Itself(&'w Db),
    /// Within a transaction that holds the lock of its file.
    With(&'w mut Work),
}

/// That a link opens the plan for editing, when a save brings one along.
macro_rules! opened {
    () => {
        " AND ($7 IS NULL OR EXISTS (SELECT 1 FROM links WHERE digest = $7 AND plan_id = plans.id AND opens = 'edit' \
         AND revoked_at IS NULL AND (expires_at IS NULL OR expires_at > $6) \
         AND plans.removed_at IS NULL AND (plans.closes_at IS NULL OR plans.closes_at > $6)))"
    };
}

/// Adds the revision to a plan that has not moved. In a file, the plan moves to it in the same statement.
const ADDED: &str = concat!(
    "INSERT INTO revisions (plan_id, number, title, document, saved_at, digest, engine) \
     SELECT id, $1, $4, $5, $6, $8, $9 FROM plans WHERE id = $2 AND revision = $3",
    opened!()
);

/// Moves a plan that has not moved, and adds the revision. Of two who come at once, the second waits for the first, and then
/// finds that the revision has moved.
const MOVED: &str = concat!(
    "WITH moved AS (UPDATE plans SET revision = $1 WHERE id = $2 AND revision = $3",
    opened!(),
    " RETURNING id) INSERT INTO revisions (plan_id, number, title, document, saved_at, digest, engine) \
     SELECT id, $1, $4, $5, $6, $8, $9 FROM moved"
);

impl By<'_> {
    /// Adds the revision and moves the plan to it, both or neither; how many were added, none where the plan has moved or the
    /// link does not open it.
    async fn run(&mut self, values: &[Value<'_>]) -> Outcome<u64> {
        match self {
            Self::Itself(db @ Db::Sqlite(_)) => db.run(ADDED, values).await,
            Self::Itself(db @ Db::Postgres(_)) => db.run(MOVED, values).await,
            Self::With(work) => work.run(ADDED, values).await,
        }
    }

    async fn row(&mut self, sql: &'static str, values: &[Value<'_>]) -> Outcome<Option<Row>> {
        match self {
            Self::Itself(db) => db.row(sql, values).await,
            Self::With(work) => work.row(sql, values).await,
        }
    }
}

async fn work_off(store: Store, mut worker: Worker<Keeping>) {
    while let Some(batch) = worker.next() {
        for (one, kept) in keep(&store, batch).await {
            let _ = one.answer.send(kept);
        }
    }
}

/// Keeps what waits. Saves that could not be kept together are kept one by one: each hears what became of its own.
async fn keep(store: &Store, batch: Vec<Keeping>) -> Vec<(Keeping, Outcome<Save>)> {
    if let [alone] = batch.as_slice() {
        let kept = store
            .save_by(&mut By::Itself(&store.db), &alone.revision)
            .await;
        return batch.into_iter().zip([kept]).collect();
    }
    let work = match store.db.begin().await {
        Ok(work) => work,
        Err(failure) => {
            return batch
                .into_iter()
                .map(|one| (one, Err(failure.again())))
                .collect();
        }
    };
    match store.save_together(work, &batch).await {
        Ok(kept) => batch.into_iter().zip(kept).collect(),
        Err(_) => keep_apart(store, batch).await,
    }
}

async fn keep_apart(store: &Store, batch: Vec<Keeping>) -> Vec<(Keeping, Outcome<Save>)> {
    let mut kept = Vec::with_capacity(batch.len());
    for one in batch {
        kept.extend(Box::pin(keep(store, vec![one])).await);
    }
    kept
}
