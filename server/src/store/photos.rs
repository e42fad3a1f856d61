//! Photographs of the work, each kept with its entry in the record.

use stillground::record::Entry;

use super::database::{Row, Work, values};
use super::record::{Entered, insert};
use super::{Outcome, Store, digest};

/// Most photographs of a plan.
pub const MOST_PHOTOS: i64 = 300;

impl Store {
    /// Keeps a photograph and its entry, both or neither, once however often they are sent.
    ///
    /// # Errors
    /// The store's own; nothing was kept then. [`super::StoreFailure::NotFound`] when there is no such plan.
    pub async fn enter_photo(
        &self,
        plan_id: &str,
        entry: &Entry,
        picture: &[u8],
    ) -> Outcome<Entered> {
        let mut work = self.db.begin().await?;
        let entered = insert(&mut work, plan_id, entry).await?;
        if let Entered::New(_) = entered {
            let count = work
                .row(
                    "SELECT count(*) FROM photos WHERE plan_id = $1",
                    values![plan_id],
                )
                .await?;
            if count.map(|row| row.get::<i64>(0)).transpose()?.unwrap_or(0) >= MOST_PHOTOS {
                work.give_up().await?;
                return Ok(Entered::Full);
            }
            put(&mut work, plan_id, &entry.id, picture).await?;
            if !self.may_take(&mut work, plan_id, 0).await? {
                work.give_up().await?;
                return Ok(Entered::Full);
            }
        }
        work.commit().await?;
        Ok(entered)
    }

    /// A photograph by the name of its entry; `None` when there is none.
    ///
    /// # Errors
    /// The store's own.
    pub async fn photo(&self, plan_id: &str, id: &str) -> Outcome<Option<Vec<u8>>> {
        let sql = "SELECT picture, plan_id, id, digest FROM photos WHERE plan_id = $1 AND id = $2";
        let row = self.db.row(sql, values![plan_id, id]).await?;
        self.damage.seen(row.as_ref().map(picture).transpose())
    }
}

/// Keeps a photograph beside its entry.
pub(super) async fn put(work: &mut Work, plan_id: &str, id: &str, picture: &[u8]) -> Outcome<()> {
    let sql = "INSERT INTO photos (plan_id, id, picture, digest) VALUES ($1, $2, $3, $4)";
    let sum = digest::of_photo(plan_id, id, picture);
    work.run(sql, values![plan_id, id, picture, &sum])
        .await
        .map(drop)
}

/// A photograph from a row that begins with its picture, plan, id and digest.
///
/// # Errors
/// [`super::StoreFailure::DamagedRow`] when it is not what was kept.
pub(super) fn picture(row: &Row) -> Outcome<Vec<u8>> {
    let (plan_id, id): (String, String) = (row.get(1)?, row.get(2)?);
    let named = || format!("photograph {id} in the record of plan {plan_id}");
    let picture: Vec<u8> = digest::readable(row.get(0), named)?;
    digest::check(row, 3, &digest::of_photo(&plan_id, &id, &picture), named)?;
    Ok(picture)
}

#[cfg(test)]
mod tests {
    use super::super::record::MOST_ENTRIES;
    use super::*;
    use crate::config::Database;
    use stillground::record::Kind;
    use stillground::site_plan::SitePlan;

    async fn store(folder: &std::path::Path) -> (Store, String) {
        let store = Store::open(&Database::Sqlite(folder.join("a.sqlite")))
            .await
            .unwrap();
        let plan = store.create(&SitePlan::unknown()).await.unwrap().id;
        (store, plan)
    }

    fn photo(id: &str) -> Entry {
        Entry {
            revision: 1,
            who: "A. Helper".to_owned(),
            ..Entry::new(id, "dig", Kind::Photo)
        }
    }

    #[tokio::test]
    async fn a_full_plan_takes_no_more_photographs_keeps_those_it_has_and_takes_notes_still() {
        let folder = tempfile::tempdir().unwrap();
        let (store, plan) = store(folder.path()).await;
        for number in 0..MOST_PHOTOS {
            let id = format!("p{number}");
            assert!(
                matches!(
                    store
                        .enter_photo(&plan, &photo(&id), b"picture")
                        .await
                        .unwrap(),
                    Entered::New(_)
                ),
                "{number}"
            );
        }
        assert_eq!(
            store
                .enter_photo(&plan, &photo("more"), b"picture")
                .await
                .unwrap(),
            Entered::Full
        );
        assert_eq!(
            store.entries(&plan).await.unwrap().len(),
            usize::try_from(MOST_PHOTOS).unwrap(),
            "no entry without its photograph"
        );
        assert!(matches!(
            store
                .enter_photo(&plan, &photo("p7"), b"picture")
                .await
                .unwrap(),
            Entered::Again(_)
        ));
        assert_eq!(store.photo(&plan, "p7").await.unwrap().unwrap(), b"picture");
        let note = Entry {
            text: Some("dry".to_owned()),
            ..Entry::new("n", "dig", Kind::Note)
        };
        assert!(matches!(
            store.enter(&plan, &note).await.unwrap(),
            Entered::New(_)
        ));
    }

    #[tokio::test]
    async fn a_full_record_takes_neither_entry_nor_photograph() {
        let folder = tempfile::tempdir().unwrap();
        let (store, plan) = store(folder.path()).await;
        assert!(matches!(
            store
                .enter_photo(&plan, &photo("first"), b"picture")
                .await
                .unwrap(),
            Entered::New(_)
        ));
        let mut work = store.db.begin().await.unwrap();
        let last = Entry::new("last", "dig", Kind::Note);
        super::super::record::put(&mut work, &plan, MOST_ENTRIES, &last, 0)
            .await
            .unwrap();
        work.commit().await.unwrap();
        assert_eq!(
            store
                .enter_photo(&plan, &photo("more"), b"picture")
                .await
                .unwrap(),
            Entered::Full
        );
        assert_eq!(
            store
                .enter(&plan, &Entry::new("n", "dig", Kind::Note))
                .await
                .unwrap(),
            Entered::Full
        );
        assert!(matches!(
            store
                .enter_photo(&plan, &photo("first"), b"picture")
                .await
                .unwrap(),
            Entered::Again(_)
        ));
        assert_eq!(store.photo(&plan, "more").await.unwrap(), None);
    }
}
