//! What every handler may use: the store, the shelf, the settings, and a place where plans are designed.

use std::ops::Deref;
use std::sync::Arc;

use moka::sync::Cache;
use stillground::brief::resolve;
use stillground::field::Problems;
use stillground::options::{Options, Worth, measuring};
use stillground::site_plan::SitePlan;

use crate::client::Client;
use crate::config::Config;
use crate::connections::connections;
use crate::copies::Copies;
use crate::error::Trouble;
use crate::guard::Guard;
use crate::limits::Bodies;
use crate::lookup::Held;
use crate::planned::{Planned, digest};
use crate::prints::Prints;
use crate::searches::Searches;
use crate::shares::Shares;
use crate::shelf::MemoryShelf;
use crate::store::Store;
use crate::turns::{Turns, Work};
use crate::watch::Watch;

/// Designs that are kept for the pages asked for next; one takes half a megabyte when all its drawings and panels were asked
/// for.
const MOST_DESIGNS: u64 = 48;
/// Most requests that are worked on at once, and most of one client's; each waits for the store or for its turn. Beyond
/// that, one more is told at once to come back, so that those inside get done.
const MOST_REQUESTS: usize = 512;
const MOST_REQUESTS_OF_ONE: usize = 128;

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
    /// Turns at what keeps a processor busy.
    pub turns: Turns,
    /// Prints that are still true.
    pub prints: Prints,
    /// Counts of each client.
    pub guard: Guard,
    /// Figures for a watcher.
    pub watch: Watch,
    /// Connections that are open.
    pub connections: Shares,
    /// What became of the copies.
    pub copies: Copies,
    /// Places for requests that are worked on.
    pub places: Shares,
    /// What all bodies together may take.
    pub bodies: Bodies,
    /// What a service outside answered.
    pub lookups: Held,
    kept: Cache<[u8; 32], Arc<Planned>>,
    /// Searches over the piers that fit, by the digest of what the person left open. They have shapes of their own, which
    /// would push out what single plans are using.
    pub searches: Searches,
    /// Answers worth finding out, by the digest of the plan.
    worth: Cache<[u8; 32], Arc<[Worth]>>,
}

impl App {
    /// An app on an open store.
    #[must_use]
    pub fn new(store: Store, config: Config) -> Self {
        let processors = std::thread::available_parallelism().map_or(1, usize::from);
        Self(Arc::new(Parts {
            store,
            shelf: MemoryShelf::new(),
            turns: Turns::new(processors),
            prints: Prints::default(),
            guard: Guard::default(),
            watch: Watch::default(),
            connections: connections(),
            copies: Copies::default(),
            places: Shares::new(MOST_REQUESTS, MOST_REQUESTS_OF_ONE),
            bodies: Bodies::new(&config),
            lookups: Held::default(),
            kept: Cache::new(MOST_DESIGNS),
            searches: Searches::new(config.longest_search),
            worth: Cache::new(MOST_DESIGNS),
            config: Arc::new(config),
        }))
    }

    /// The plan's inputs and design, without what would help. The same plan is designed once while it is in use.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn planned(&self, plan: &SitePlan) -> Result<Arc<Planned>, Trouble> {
        let key = digest(plan);
        if let Some(kept) = self.kept.get(&key) {
            return Ok(kept);
        }
        let (plan, shelf) = (Box::new(plan.clone()), self.shelf.clone());
        let found = Box::pin(self.work(Work::Design, move || Planned::of(&plan, &shelf))).await?;
        let planned = Arc::new(found.map_err(|problems| Trouble::answers(&problems))?);
        self.kept.insert(key, planned.clone());
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
        let key = digest(plan);
        let shelf = self.shelf.clone();
        let improved =
            Arc::new(Box::pin(self.work(Work::Design, move || planned.improve(&shelf))).await?);
        self.kept.insert(key, improved.clone());
        Ok(improved)
    }

    /// The answers that were taken on trust and move the verdict or the star most, most first.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn worth(&self, plan: &SitePlan) -> Result<Arc<[Worth]>, Trouble> {
        let key = digest(plan);
        if let Some(kept) = self.worth.get(&key) {
            return Ok(kept);
        }
        let (plan, shelf) = (Box::new(plan.clone()), self.shelf.clone());
        let look = move || Ok(measuring::worth(&plan, &resolve(&plan)?, &shelf));
        let found: Result<Vec<Worth>, Problems> = Box::pin(self.work(Work::Design, look)).await?;
        let found: Arc<[Worth]> = found
            .map_err(|problems| Trouble::answers(&problems))?
            .into();
        self.worth.insert(key, Arc::clone(&found));
        Ok(found)
    }

    /// All the piers that fit a plan's pit, as far as there is time for them.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn options(&self, asker: &Client, plan: &SitePlan) -> Result<Arc<Options>, Trouble> {
        let open = plan.left_open();
        let key = digest(&open);
        match self.searches.kept(&key, true) {
            Some(kept) => Ok(kept),
            None => self.searches.answer(asker, key, open).await,
        }
    }

    /// Works in turn, off the threads that serve requests.
    ///
    /// # Errors
    /// Too many are waiting; or the work panicked.
    pub async fn work<T: Send + 'static>(
        &self,
        kind: Work,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Trouble> {
        self.turns.work(kind, work).await
    }
}

impl Deref for App {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        &self.0
    }
}
