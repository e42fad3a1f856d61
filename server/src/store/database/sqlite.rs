//! A SQLite file: one connection writes, several read.

use std::path::Path;

use sqlx::sqlite::{SqlitePool, SqlitePoolOptions};

use super::writer::{WriteGuard, Writer};
use crate::store::connection::{BUSY, Value, sqlite_options};
use crate::store::file::StoreFile;
use crate::store::turn::Turn;
use crate::store::{Outcome, private};

/// Connections that read; each has a thread of its own.
const READERS: u32 = 4;

/// A SQLite file that is open.
#[derive(Clone)]
pub(in crate::store) struct SqlitePools {
    writer: Writer,
    pub(super) readers: SqlitePool,
    file: StoreFile,
}

impl SqlitePools {
    pub(super) async fn open(path: &Path) -> Outcome<Self> {
        if let Some(folder) = path
            .parent()
            .filter(|folder| !folder.as_os_str().is_empty())
        {
            private::folder(folder)?;
        }
        let turn = Turn::wait(path).await?;
        private::file(path)?;
        let options = sqlite_options(path);
        let writer = Writer::open(options.clone(), path).await?;
        let readers = readers()
            .connect_with(options.pragma("query_only", "ON"))
            .await?;
        drop(turn);
        Ok(Self {
            writer,
            readers,
            file: StoreFile::at(path)?,
        })
    }

    /// Begins to write. The lock is taken at once: a transaction that began as a reader could not wait for another's.
    pub(super) async fn begin(&self) -> Outcome<WriteGuard> {
        self.is_there()?;
        let mut guard = self.writer.take().await?;
        guard.run("BEGIN IMMEDIATE", &[]).await?;
        Ok(guard)
    }

    /// Changes rows by one statement, which is a transaction by itself and one errand to the connection's thread.
    pub(super) async fn run(&self, sql: &'static str, values: &[Value<'_>]) -> Outcome<u64> {
        self.is_there()?;
        self.writer.take().await?.last(sql, values).await
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

fn readers() -> SqlitePoolOptions {
    SqlitePoolOptions::new()
        .max_connections(READERS)
        .acquire_timeout(BUSY * 2)
        .idle_timeout(None)
        .max_lifetime(None)
        .test_before_acquire(false)
}
