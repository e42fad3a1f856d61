//! What can go wrong with a store, told apart by what a person can do about it.

use sqlx::Error;
use sqlx::postgres::PgDatabaseError;

/// A store that cannot do what was asked. Whatever it is, nothing was half done.
#[derive(Debug, thiserror::Error)]
pub enum StoreFailure {
    /// There is no such plan.
    #[error("there is no such plan")]
    NotFound,
    /// No more of a plan is kept.
    #[error("the plan has as many revisions, or is as large, as is kept")]
    Quota,
    /// Others are writing, or the disk is slow.
    #[error("the store is busy")]
    Busy,
    /// The database's server does not answer, or broke off; nothing was changed.
    #[error("the database does not answer: {0}")]
    Away(String),
    /// The database's server was lost at the moment of keeping a change: it may stand or not.
    #[error("the database was lost before it said whether it kept a change: {0}")]
    Unsure(String),
    /// The disk is full.
    #[error("the disk is full")]
    Full,
    /// The file or its folder cannot be written.
    #[error("the store cannot be written: {0}")]
    ReadOnly(String),
    /// The file was deleted, moved or replaced while it was in use.
    #[error(
        "the file {0} was taken away or replaced while it was in use: put it back or restore a backup, and start the service again"
    )]
    Gone(String),
    /// The file is of a newer version.
    #[error(
        "the store has schema {found}, this version of Stillground knows up to {known}: start the newer version, or restore a backup"
    )]
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
    /// A row that is not what was kept; the others are read as ever.
    #[error("{0} is damaged: it is not what was kept")]
    DamagedRow(String),
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
mod sqlite {
    pub const BUSY: u32 = 5;
    pub const LOCKED: u32 = 6;
    pub const READONLY: u32 = 8;
    pub const IOERR: u32 = 10;
    pub const CORRUPT: u32 = 11;
    pub const FULL: u32 = 13;
    pub const CANTOPEN: u32 = 14;
    pub const NOTADB: u32 = 26;
}

impl StoreFailure {
    /// The same failure when it came while a change was being kept.
    pub(super) fn at_commit(self) -> Self {
        match self {
            Self::Away(said) => Self::Unsure(said),
            other => other,
        }
    }

    /// The same failure for another who waited for the same answer.
    pub(super) fn again(&self) -> Self {
        match self {
            Self::NotFound => Self::NotFound,
            Self::Quota => Self::Quota,
            Self::Busy => Self::Busy,
            Self::Full => Self::Full,
            Self::Away(said) => Self::Away(said.clone()),
            Self::Unsure(said) => Self::Unsure(said.clone()),
            Self::ReadOnly(said) => Self::ReadOnly(said.clone()),
            Self::Gone(file) => Self::Gone(file.clone()),
            Self::Damaged(said) => Self::Damaged(said.clone()),
            Self::DamagedRow(row) => Self::DamagedRow(row.clone()),
            Self::Foreign(said) => Self::Foreign(said.clone()),
            other => Self::Database(Error::Protocol(other.to_string())),
        }
    }

    fn of_sqlite(error: Error, code: u32) -> Self {
        // The low byte of an extended code is its primary code.
        match code & 0xff {
            sqlite::BUSY | sqlite::LOCKED => Self::Busy,
            sqlite::FULL => Self::Full,
            sqlite::READONLY | sqlite::CANTOPEN | sqlite::IOERR => {
                Self::ReadOnly(error.to_string())
            }
            sqlite::NOTADB => Self::Foreign(error.to_string()),
            sqlite::CORRUPT => Self::Damaged(error.to_string()),
            _ => Self::Database(error),
        }
    }

    /// PostgreSQL's classes of errors, its manual's appendix A.
    fn of_postgres(error: Error, code: &str) -> Self {
        match code {
            // Waited too long for a lock or for an end; could not be put in a row with others.
            "55P03" | "57014" | "40001" | "40P01" => Self::Busy,
            "53100" => Self::Full,
            // A standby, or a server set to refuse changes; a file of the server's that cannot be written.
            "25006" | "58030" => Self::ReadOnly(error.to_string()),
            // Stopped, starting, or without a connection to spare; the line broke.
            "57P01" | "57P02" | "57P03" | "57P05" | "25P03" | "53300" | "53200" => {
                Self::Away(error.to_string())
            }
            _ if code.starts_with("08") => Self::Away(error.to_string()),
            _ => Self::Database(error),
        }
    }
}

impl From<Error> for StoreFailure {
    fn from(error: Error) -> Self {
        match &error {
            Error::PoolTimedOut => Self::Busy,
            Error::Io(_) | Error::Protocol(_) | Error::PoolClosed | Error::WorkerCrashed => {
                Self::Away(error.to_string())
            }
            Error::Database(said) => {
                match said.code().map(|code| (code.parse(), code.into_owned())) {
                    Some((_, code)) if said.try_downcast_ref::<PgDatabaseError>().is_some() => {
                        Self::of_postgres(error, &code)
                    }
                    Some((Ok(code), _)) => Self::of_sqlite(error, code),
                    _ => Self::Database(error),
                }
            }
            _ => Self::Database(error),
        }
    }
}
