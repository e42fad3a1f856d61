//! The one connection that writes to a SQLite file.
//!
//! Whoever writes takes it out and gives it back when all has come to its end. One that is not given back, after a failure or
//! because whoever had it went away, is closed, which undoes what was begun, and the next makes another.

use std::path::Path;
use std::sync::Arc;

use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteRow};
use sqlx::{ConnectOptions, Connection, Executor, Sqlite};
use tokio::sync::{Mutex, OwnedMutexGuard};
use tokio::time::timeout;

use crate::store::connection::{BUSY, Value, bound};
use crate::store::{Outcome, StoreFailure, migration};

/// A revision that is put on top of a plan's newest moves the plan to it, in the same statement: what one statement does is
/// kept whole or not at all, and takes a single errand to the connection's thread. It belongs to the connection, not the file.
const ON_TOP: &str = "CREATE TEMP TRIGGER on_top AFTER INSERT ON main.revisions BEGIN \
                      UPDATE plans SET revision = NEW.number WHERE id = NEW.plan_id AND revision = NEW.number - 1; END";

/// The connection that writes, one at a time. Every copy is the same.
#[derive(Clone)]
pub(super) struct Writer {
    slot: Arc<Mutex<Slot>>,
    options: Arc<SqliteConnectOptions>,
}

/// The connection while nobody writes.
enum Slot {
    Free(SqliteConnection),
    /// It was not given back, after a failure: the next who writes connects anew.
    Empty,
    Closed,
}

/// The right to write, with the connection.
pub(in crate::store) struct WriteGuard {
    slot: OwnedMutexGuard<Slot>,
    connection: SqliteConnection,
}

impl Writer {
    /// Connects, and brings the file up to date.
    pub(super) async fn open(options: SqliteConnectOptions, file: &Path) -> Outcome<Self> {
        // What belongs to the connection needs no file beside the store's.
        let options = options.pragma("temp_store", "MEMORY");
        let mut connection = options.connect().await?;
        migration::sqlite(&mut connection, file).await?;
        connection.execute(ON_TOP).await?;
        Ok(Self {
            slot: Arc::new(Mutex::new(Slot::Free(connection))),
            options: Arc::new(options),
        })
    }

    /// Waits for whoever writes.
    ///
    /// # Errors
    /// [`StoreFailure::Busy`] when they take too long.
    pub(super) async fn take(&self) -> Outcome<WriteGuard> {
        let mut slot = timeout(BUSY * 2, Arc::clone(&self.slot).lock_owned())
            .await
            .map_err(|_| StoreFailure::Busy)?;
        let connection = match std::mem::replace(&mut *slot, Slot::Empty) {
            Slot::Free(connection) => connection,
            Slot::Empty => self.connect().await?,
            Slot::Closed => {
                *slot = Slot::Closed;
                return Err(sqlx::Error::PoolClosed.into());
            }
        };
        Ok(WriteGuard { slot, connection })
    }

    async fn connect(&self) -> Outcome<SqliteConnection> {
        let mut connection = self.options.connect().await?;
        connection.execute(ON_TOP).await?;
        Ok(connection)
    }

    /// Lets whoever writes finish, and nobody after.
    pub(super) async fn close(&self) {
        let connection = std::mem::replace(&mut *self.slot.lock().await, Slot::Closed);
        if let Slot::Free(connection) = connection {
            // What was acknowledged is on the disk before: whatever goes wrong now loses nothing.
            drop(connection.close().await);
        }
    }
}

impl WriteGuard {
    /// Changes rows by one statement; how many it names, without those that follow from it.
    pub(in crate::store) async fn run(
        &mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<u64> {
        Ok(bound::<Sqlite>(sql, values)
            .execute(&mut self.connection)
            .await?
            .rows_affected())
    }

    /// Reads rows as they stand for the writer.
    pub(in crate::store) async fn rows(
        &mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<Vec<SqliteRow>> {
        Ok(bound::<Sqlite>(sql, values)
            .fetch_all(&mut self.connection)
            .await?)
    }

    /// The last statement, with which all that was begun comes to its end, and gives the connection back.
    pub(in crate::store) async fn last(
        mut self,
        sql: &'static str,
        values: &[Value<'_>],
    ) -> Outcome<u64> {
        let rows = self.run(sql, values).await?;
        self.give_back();
        Ok(rows)
    }

    fn give_back(mut self) {
        *self.slot = Slot::Free(self.connection);
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::store::connection::{sqlite_options, values};
    use crate::store::private;

    const PLAN: &str = "INSERT INTO plans (id, revision, created_at) VALUES ('p', 2, 0)";
    const REVISION: &str = "INSERT INTO revisions (plan_id, number, title, document, saved_at) VALUES ('p', $1, NULL, '{}', 0)";

    async fn writer(folder: &Path) -> Writer {
        let file = folder.join("plans.sqlite");
        private::file(&file).unwrap();
        Writer::open(sqlite_options(&file), &file).await.unwrap()
    }

    async fn newest(guard: &mut WriteGuard) -> Option<i64> {
        guard
            .rows("SELECT revision FROM plans", &[])
            .await
            .unwrap()
            .first()
            .map(|row| sqlx::Row::get(row, 0))
    }

    #[tokio::test]
    async fn what_was_begun_is_undone_when_the_connection_does_not_come_back() {
        let folder = tempfile::tempdir().unwrap();
        let writer = writer(folder.path()).await;
        let mut guard = writer.take().await.unwrap();
        guard.run("BEGIN IMMEDIATE", &[]).await.unwrap();
        guard.run(PLAN, &[]).await.unwrap();
        drop(guard);
        let mut guard = writer.take().await.unwrap();
        assert_eq!(newest(&mut guard).await, None);
        guard.run(PLAN, &[]).await.unwrap();
        guard.give_back();
        assert_eq!(newest(&mut writer.take().await.unwrap()).await, Some(2));
    }

    #[tokio::test]
    async fn a_revision_moves_its_plan_only_from_the_one_before() {
        let folder = tempfile::tempdir().unwrap();
        let writer = writer(folder.path()).await;
        // The second connection of a writer knows it as well as the first.
        for _ in 0..2 {
            drop(writer.take().await.unwrap());
            let mut guard = writer.take().await.unwrap();
            guard.run("DELETE FROM plans", &[]).await.unwrap();
            guard.run(PLAN, &[]).await.unwrap();
            for (number, moved_to) in [(1_i64, 2), (2, 2), (3, 3), (5, 3)] {
                guard.run(REVISION, values![number]).await.unwrap();
                assert_eq!(
                    newest(&mut guard).await,
                    Some(moved_to),
                    "after revision {number}"
                );
            }
            guard.give_back();
        }
    }

    #[tokio::test]
    async fn nobody_writes_after_the_close() {
        let folder = tempfile::tempdir().unwrap();
        let writer = writer(folder.path()).await;
        writer.close().await;
        for _ in 0..2 {
            assert!(matches!(writer.take().await, Err(StoreFailure::Away(_))));
        }
    }
}
