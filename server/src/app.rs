//! What every handler may use: the store, the shelf, the settings, and a place where plans are designed.

use std::sync::Arc;
use std::time::Duration;

use moka::sync::Cache;
use sha2::{Digest, Sha256};
use stillground::brief::{Brief, resolve};
use stillground::design::{Design, design_decided};
use stillground::field::Problems;
use stillground::site_plan::SitePlan;
use tokio::sync::Semaphore;

use crate::config::Config;
use crate::error::Trouble;
use crate::shelf::MemoryShelf;
use crate::store::Store;

/// Designs that are kept for the pages asked for next; one takes some hundred kilobytes.
const MOST_DESIGNS: u64 = 96;
/// How long a request waits for its turn to be designed before it is asked to come back.
const LONGEST_WAIT: Duration = Duration::from_secs(10);

/// What every handler may use. Cheap to clone.
#[derive(Clone)]
pub struct App {
    /// Where plans are kept.
    pub store: Store,
    /// Solved block shapes.
    pub shelf: MemoryShelf,
    /// The settings.
    pub config: Arc<Config>,
    desk: Desk,
}

/// A plan's complete inputs and what was found from them.
#[derive(Debug)]
pub struct Planned {
    /// Complete inputs.
    pub brief: Brief,
    /// What was found.
    pub design: Design,
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
        let desk = Desk { kept: Cache::new(MOST_DESIGNS), turns: Arc::new(Semaphore::new(processors)) };
        Self { store, shelf: MemoryShelf::new(), config: Arc::new(config), desk }
    }

    /// The plan's inputs and design. The same plan is designed once while it is in use.
    ///
    /// # Errors
    /// Every field out of range and every contradiction; or that too many are waiting.
    pub async fn planned(&self, plan: &SitePlan) -> Result<Arc<Planned>, Trouble> {
        let key = digest(plan)?;
        if let Some(kept) = self.desk.kept.get(&key) {
            return Ok(kept);
        }
        let turn = tokio::time::timeout(LONGEST_WAIT, self.desk.turns.clone().acquire_owned()).await;
        let Ok(Ok(turn)) = turn else { return Err(Trouble::crowded()) };
        let (plan, shelf) = (plan.clone(), self.shelf.clone());
        let work = move || {
            let _turn = turn;
            planned(&plan, &shelf)
        };
        let found = tokio::task::spawn_blocking(work).await.map_err(|error| Trouble::broken("the engine stopped", &error))?;
        let planned = Arc::new(found.map_err(|problems| Trouble::answers(&problems))?);
        self.desk.kept.insert(key, planned.clone());
        Ok(planned)
    }
}

/// The plan's inputs and design, here and now.
///
/// # Errors
/// Every field out of range and every contradiction.
pub fn planned(plan: &SitePlan, shelf: &MemoryShelf) -> Result<Planned, Problems> {
    let brief = resolve(plan)?;
    let design = design_decided(plan, &brief, shelf);
    Ok(Planned { brief, design })
}

fn digest(plan: &SitePlan) -> Result<[u8; 32], Trouble> {
    let document = serde_json::to_vec(plan).map_err(|error| Trouble::broken("a plan could not be written as JSON", &error))?;
    Ok(Sha256::digest(document).into())
}
