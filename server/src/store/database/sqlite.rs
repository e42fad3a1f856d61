//! A SQLite file: one connection writes, several read.

use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use sqlx::sqlite::{SqliteConnection, SqlitePool, SqlitePoolOptions, SqliteRow};
use sqlx::{Connection, Sqlite, Transaction};

use crate::store::connection::{BUSY, Value, bound, sqlite_options};
use crate::store::file::StoreFile;
use crate::store::turn::Turn;
use crate::store::{Outcome, migration, private};

/// Connections that read; each has a thread of its own.
const READERS: u32 = 4;

/// A SQLite file that is open.
#[derive(Clone)]
pub(in crate::store) struct SqlitePools {
    writer: SqlitePool,
    pub(super) readers: SqlitePool,
    settled: Settled,
    file: StoreFile,
}

/// Whether what the writer did last is known to have come to its end.
#[derive(Clone, Default)]
pub(in crate::store) struct Settled(Arc<AtomicBool>);

impl Settled {
    /// It has.
    pub(super) fn set(&self) {
        self.0.store(true, Ordering::Release);
    }

    fn take(&self) -> bool {
        self.0.swap(false, Ordering::AcqRel)
    }
}

impl SqlitePools {
    pub(super) async fn open(path: &Path) -> Outcome<Self> {
        if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
            private::folder(folder)?;
        }
        let turn = Turn::wait(path).await?;
        private::file(path)?;
        let options = sqlite_options(path);
        let settled = Settled::default();
        let writer = {
            let settled = settled.clone();
            let check = pool(1).before_acquire(move |connection, _| {
                let settled = settled.take();
                Box::pin(async move { if settled { Ok(true) } else { is_fresh(connection).await } })
            });
            check.connect_with(options.clone()).await?
        };
        migration::sqlite(&mut *writer.acquire().await?, path).await?;
        let readers = pool(READERS).connect_with(options.pragma("query_only", "ON")).await?;
        drop(turn);
        Ok(Self { writer, readers, settled, file: StoreFile::at(path)? })
    }

    /// Begins to write. The lock is taken at once: a transaction that began as a reader could not wait for another's.
    pub(super) async fn begin(&self) -> Outcome<(Transaction<'static, Sqlite>, Settled)> {
        self.is_there()?;
        Ok((self.writer.begin_with("BEGIN IMMEDIATE").await?, self.settled.clone()))
    }

    /// A whole transaction, from its `BEGIN IMMEDIATE` to its `COMMIT`, in one errand to the connection's thread; the rows
    /// that its statements return. It is on the disk when this returns.
    pub(in crate::store) async fn at_once(&self, sql: &'static str, values: &[Value<'_>]) -> Outcome<Vec<SqliteRow>> {
        self.is_there()?;
        let mut writer = self.writer.acquire().await?;
        let done = bound::<Sqlite>(sql, values).fetch_all(&mut *writer).await;
        match done {
            Ok(_) => self.settled.set(),
            // What was begun ends with its connection.
            Err(_) => drop(writer.close().await),
        }
        Ok(done?)
    }

    /// Nothing, as long as the file that was opened is still the one at its place.
    pub(super) fn is_there(&self) -> Outcome<()> {
        self.file.is_there()
    }

    pub(super) async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }
}

/// Whether a connection may be used again. A full disk ends a transaction inside SQLite, and the connection counts it as
/// open for ever: such a one is closed and another is made.
async fn is_fresh(connection: &mut SqliteConnection) -> sqlx::Result<bool> {
    // A rollback may still be on its way to the connection's thread; the answer comes after it.
    connection.ping().await?;
    Ok(!connection.is_in_transaction())
}

fn pool(connections: u32) -> SqlitePoolOptions {
    SqlitePoolOptions::new()
        .max_connections(connections)
        .acquire_timeout(BUSY * 2)
        .idle_timeout(None)
        .max_lifetime(None)
        .test_before_acquire(false)
}
