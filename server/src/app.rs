//! What every handler may use: the store, the shelf, the settings, and a place where plans are designed.

use std::ops::Deref;
use std::sync::Arc;
use std::time::Duration;

use moka::sync::Cache;
use sha2::{Digest, Sha256};
use stillground::site_plan::SitePlan;
use tokio::sync::Semaphore;

use crate::config::Config;
use crate::crowd::Places;
use crate::error::Trouble;
use crate::guard::Guard;
use crate::planned::Planned;
use crate::shelf::MemoryShelf;
use crate::store::Store;
use crate::watch::Watch;
use crate::written::Written;

/// Designs that are kept for the pages asked for next; one takes half a megabyte when all its drawings and panels were asked
/// for.
const MOST_DESIGNS: u64 = 48;
/// How long a request waits for its turn to be designed before it is asked to come back.
const LONGEST_WAIT: Duration = Duration::from_secs(10);

/// What every handler may use. Cheap to clone: each request does so several times.
#[derive(Clone)]
pub struct App(Arc<Parts>);

/// What an [`App`] holds.
pub struct Parts {
    /// Where plans are kept.
    pub store: Store,
    /// Solved block shapes.
    pub shelf: MemoryShelf,
    /// The settings.
    pub config: Arc<Config>,
    /// Turns at writing photographs anew.
    pub darkroom: Arc<Semaphore>,
    /// Pages that are still true.
    pub written: Written,
    /// Counts of each client.
    pub guard: Guard,
    /// Figures for a watcher.
    pub watch: Watch,
    /// Places for requests that are worked on.
    pub places: Places,
    desk: Desk,
}

/// Where plans are designed: as many at once as there are processors, off the threads that serve requests.
#[derive(Clone)]
struct Desk {
    kept: Cache<[u8; 32], Arc<Planned>>,
    turns: Arc<Semaphore>,
}

impl App {
    /// An app on an open store.
    #[must_use]
    pub fn new(store: Store, config: Config) -> Self {
        let processors = std::thread::available_parallelism().map_or(1, usize::from);
        let desk = Desk {
            kept: Cache::new(MOST_DESIGNS),
            turns: Arc::new(Semaphore::new(processors)),
        };
        let darkroom = Arc::new(Semaphore::new(1));
        let (guard, watch) = (Guard::default(), Watch::default());
        let (shelf, written, places) = (MemoryShelf::new(), Written::new(), Places::default());
        Self(Arc::new(Parts {
            store,
            shelf,
            config: Arc::new(config),
            darkroom,
            written,
            guard,
            watch,
            places,
            desk,
        }))
    }

    /// The plan's inputs and design, without what would help. The same plan is designed once while it is in use.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn planned(&self, plan: &SitePlan) -> Result<Arc<Planned>, Trouble> {
        let key = digest(plan)?;
        if let Some(kept) = self.desk.kept.get(&key) {
            return Ok(kept);
        }
        let (plan, shelf) = (Box::new(plan.clone()), self.shelf.clone());
        let found = Box::pin(self.desk.work(move || Planned::of(&plan, &shelf))).await?;
        let planned = Arc::new(found.map_err(|problems| Trouble::answers(&problems))?);
        self.desk.kept.insert(key, planned.clone());
        Ok(planned)
    }

    /// The same with what would help most, which takes as long again.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn improved(&self, plan: &SitePlan) -> Result<Arc<Planned>, Trouble> {
        let planned = self.planned(plan).await?;
        if planned.improved {
            return Ok(planned);
        }
        let key = digest(plan)?;
        let (plan, shelf) = (Box::new(plan.clone()), self.shelf.clone());
        let improved =
            Arc::new(Box::pin(self.desk.work(move || planned.improve(&plan, &shelf))).await?);
        self.desk.kept.insert(key, improved.clone());
        Ok(improved)
    }
}

impl Deref for App {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        &self.0
    }
}

impl Desk {
    /// Works in turn, off the threads that serve requests.
    async fn work<T: Send + 'static>(
        &self,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Trouble> {
        let turn = tokio::time::timeout(LONGEST_WAIT, self.turns.clone().acquire_owned()).await;
        let Ok(Ok(turn)) = turn else {
            return Err(Trouble::crowded());
        };
        let work = move || {
            let _turn = turn;
            work()
        };
        tokio::task::spawn_blocking(work)
            .await
            .map_err(|error| Trouble::broken("the engine stopped", &error))
    }
}

fn digest(plan: &SitePlan) -> Result<[u8; 32], Trouble> {
    let document = serde_json::to_vec(plan)
        .map_err(|error| Trouble::broken("a plan could not be written as JSON", &error))?;
    Ok(Sha256::digest(document).into())
}
