//! What can go wrong with a store, told apart by what a person can do about it.

use sqlx::Error;

/// A store that cannot do what was asked. Whatever it is, nothing was half done.
#[derive(Debug, thiserror::Error)]
pub enum StoreFailure {
    /// There is no such plan.
    #[error("there is no such plan")]
    NotFound,
    /// Others are writing, or the disk is slow.
    #[error("the store is busy")]
    Busy,
    /// The disk is full.
    #[error("the disk is full")]
    Full,
    /// The file or its folder cannot be written.
    #[error("the store cannot be written: {0}")]
    ReadOnly(String),
    /// The file was deleted, moved or replaced while it was in use.
    #[error("the file {0} was taken away or replaced while it was in use: put it back or restore a backup, and start the service again")]
    Gone(String),
    /// The file is of a newer version.
    #[error("the store has schema {found}, this version of Stillground knows up to {known}: start the newer version, or restore a backup")]
    Newer {
        /// Schema in the file.
        found: i64,
        /// Newest schema known here.
        known: i64,
    },
    /// The file is something else.
    #[error("the file is no store of Stillground's: {0}")]
    Foreign(String),
    /// No store where one was named.
    #[error("there is no store at {0}")]
    Missing(String),
    /// The store is used by a running service.
    #[error("{0} is in use: stop the service first")]
    InUse(String),
    /// A store whose inside is damaged.
    #[error("the file is damaged: {0}")]
    Damaged(String),
    /// A file that is already there and would be overwritten.
    #[error("{0} is already there")]
    Exists(String),
    /// A stored document that can no longer be read.
    #[error("a stored plan cannot be read: {0}")]
    Document(#[from] serde_json::Error),
    /// A file or folder.
    #[error("{0}")]
    File(#[from] std::io::Error),
    /// No random numbers from the system.
    #[error("the system gives no random numbers: {0}")]
    Random(getrandom::Error),
    /// Anything else from the database.
    #[error("the database: {0}")]
    Database(Error),
}

/// SQLite's primary result codes, sqlite.org/rescode.html.
mod code {
    pub const BUSY: u32 = 5;
    pub const LOCKED: u32 = 6;
    pub const READONLY: u32 = 8;
    pub const IOERR: u32 = 10;
    pub const FULL: u32 = 13;
    pub const CANTOPEN: u32 = 14;
    pub const NOTADB: u32 = 26;
    pub const CORRUPT: u32 = 11;
}

impl From<Error> for StoreFailure {
    fn from(error: Error) -> Self {
        if matches!(error, Error::PoolTimedOut) {
            return Self::Busy;
        }
        let primary = error
            .as_database_error()
            .and_then(|error| error.code())
            .and_then(|code| code.parse::<u32>().ok())
            // The low byte of an extended code is its primary code.
            .map(|code| code & 0xff);
        match primary {
            Some(code::BUSY | code::LOCKED) => Self::Busy,
            Some(code::FULL) => Self::Full,
            Some(code::READONLY | code::CANTOPEN | code::IOERR) => Self::ReadOnly(error.to_string()),
            Some(code::NOTADB | code::CORRUPT) => Self::Foreign(error.to_string()),
            _ => Self::Database(error),
        }
    }
}
