//! Copies that are made now and then: by the planner while it runs, or by a command that stays. What became of them is told
//! in the log, to whoever asks whether the planner is ready, and with the figures for a watcher.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use jiff::Timestamp;

use crate::config::{Copying, Database};
use crate::store::StoreFailure;
use crate::store::archive::copies::{Made, one_more, until_due};

/// Longest wait after a copy that failed.
const SOON: Duration = Duration::from_secs(3600);

/// What became of the copies. Every clone is the same.
#[derive(Debug, Clone, Default)]
pub struct Copies(Arc<Mutex<Told>>);

/// What is told of the copies.
#[derive(Debug, Clone, Default)]
pub struct Told {
    /// When the last good one was made.
    pub last_good: Option<Timestamp>,
    /// Good ones since the start.
    pub good: u64,
    /// Failures since the start.
    pub failures: u64,
    /// Why the last one failed, when it did.
    pub failed: Option<String>,
}

impl Copies {
    /// What became of them so far.
    #[must_use]
    pub fn told(&self) -> Told {
        self.0
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    fn note(&self, made: &Result<Made, StoreFailure>) {
        let mut told = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        match made {
            Ok(_) => {
                told.good += 1;
                told.last_good = Some(Timestamp::now());
                told.failed = None;
            }
            Err(failure) => {
                told.failures += 1;
                told.failed = Some(failure.to_string());
            }
        }
    }

    /// Makes one copy and says what became of it.
    ///
    /// # Errors
    /// No good copy could be made.
    pub async fn one(&self, database: &Database, copying: &Copying) -> Result<Made, StoreFailure> {
        let made = one_more(database, &copying.folder, copying.keep).await;
        self.note(&made);
        let folder = copying.folder.display();
        match &made {
            Ok(Made { file, held, kept }) => {
                tracing::info!(file = %file.display(), %held, kept, "a copy was made and read back");
            }
            Err(failure) => tracing::error!(%folder, %failure, "no good copy could be made"),
        }
        made
    }

    /// Makes copies for ever, the first when the youngest that is there is old enough.
    pub async fn for_ever(self, database: Database, copying: Copying) {
        let mut pause = until_due(&copying.folder, copying.every);
        loop {
            tokio::time::sleep(pause).await;
            let made = self.one(&database, &copying).await;
            pause = if made.is_ok() {
                copying.every
            } else {
                copying.every.min(SOON)
            };
        }
    }
}
