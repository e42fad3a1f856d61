//! Photographs of the work, each kept with its entry in the record.

use stillground::record::Entry;

use super::database::values;
use super::record::{Entered, insert};
use super::{Outcome, Store};

/// Most photographs of a plan.
pub const MOST_PHOTOS: i64 = 300;

impl Store {
    /// Keeps a photograph and its entry, both or neither, once however often they are sent.
    ///
    /// # Errors
    /// The store's own; nothing was kept then. [`super::StoreFailure::NotFound`] when there is no such plan.
    pub async fn enter_photo(&self, plan_id: &str, entry: &Entry, picture: &[u8]) -> Outcome<Entered> {
        let mut work = self.db.begin().await?;
        let entered = insert(&mut work, plan_id, entry).await?;
        if let Entered::New(_) = entered {
            let count = work.row("SELECT count(*) FROM photos WHERE plan_id = $1", values![plan_id]).await?;
            if count.map(|row| row.get::<i64>(0)).transpose()?.unwrap_or(0) >= MOST_PHOTOS {
                work.give_up().await?;
                return Ok(Entered::Full);
            }
            let sql = "INSERT INTO photos (plan_id, id, picture) VALUES ($1, $2, $3)";
            work.run(sql, values![plan_id, &entry.id, picture]).await?;
        }
        work.commit().await?;
        Ok(entered)
    }

    /// A photograph by the name of its entry; `None` when there is none.
    ///
    /// # Errors
    /// The store's own.
    pub async fn photo(&self, plan_id: &str, id: &str) -> Outcome<Option<Vec<u8>>> {
        let sql = "SELECT picture FROM photos WHERE plan_id = $1 AND id = $2";
        self.db.row(sql, values![plan_id, id]).await?.map(|row| row.get(0)).transpose()
    }
}
