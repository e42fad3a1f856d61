//! Searches over the piers that fit, each on a thread of its own that yields to whatever a page needs.
//!
//! A search for a page goes on while nobody waits for it: the page says how far it is and asks again. One search for pages and
//! one for programs run at once, the others wait; so a wide-open plan keeps no more than these from the pages of others, and
//! they run at a lower priority.

mod lane;

use std::collections::HashMap;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering::Relaxed};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use moka::sync::Cache;
use stillground::candidates::Reached;
use stillground::field::Problems;
use stillground::options::{self, Options};
use stillground::site_plan::SitePlan;
use tokio::sync::{OwnedSemaphorePermit, watch};

use crate::client::Client;
use crate::error::Trouble;
use crate::shares::Share;
use crate::shelf::MemoryShelf;
use crate::turns::give_way;
use lane::Lane;

/// Solved shapes of block that are kept for searches: what two gardens' pits have, some tens of megabytes at most.
const MOST_SHAPES: u64 = 800;
/// Searches that are kept.
const MOST_KEPT: u64 = 24;
/// How many times as long as an answer may take a search for a page goes on while no other waits.
const LONGER: u32 = 10;
/// The part of that time which a program's search has while another waits.
const SHORTER: u32 = 4;
/// Longest wait of a program for its turn, and of a page before it says how far the search is.
const LONGEST_WAIT: Duration = Duration::from_secs(10);
const LONGEST_LOOK: Duration = Duration::from_millis(1500);

type Outcome = Result<Arc<Options>, Problems>;

/// The searches.
pub struct Searches {
    kept: Cache<[u8; 32], Arc<Options>>,
    going: Arc<Mutex<HashMap<[u8; 32], Going>>>,
    shelf: MemoryShelf,
    longest: Duration,
    for_pages: Lane,
    for_programs: Lane,
    stopped: Arc<AtomicBool>,
}

/// A search that has begun, or waits to.
#[derive(Clone)]
struct Going {
    progress: Arc<Progress>,
    ended: watch::Receiver<Option<Outcome>>,
}

#[derive(Default)]
struct Progress {
    blocks: AtomicUsize,
    of: AtomicUsize,
}

impl Progress {
    fn set(&self, reached: Reached) {
        self.of.store(reached.of, Relaxed);
        self.blocks.store(reached.blocks, Relaxed);
    }

    fn now(&self) -> Reached {
        Reached {
            blocks: self.blocks.load(Relaxed),
            of: self.of.load(Relaxed),
        }
    }
}

/// What a page has to show.
pub enum Looked {
    /// What was found.
    Found(Arc<Options>),
    /// The search goes on.
    Going(Reached),
}

impl Searches {
    /// None yet.
    #[must_use]
    pub fn new(longest: Duration) -> Self {
        Self {
            kept: Cache::new(MOST_KEPT),
            going: Arc::default(),
            shelf: MemoryShelf::holding(MOST_SHAPES),
            longest,
            for_pages: Lane::new(longest * LONGER, longest),
            for_programs: Lane::new(longest, longest / SHORTER),
            stopped: Arc::default(),
        }
    }

    /// What is kept of a plan's search, unless it was cut short and is to be gone on with.
    #[must_use]
    pub fn kept(&self, key: &[u8; 32], more: bool) -> Option<Arc<Options>> {
        self.kept
            .get(key)
            .filter(|kept| !more || kept.not_reached == 0)
    }

    /// Whether a plan's search goes on.
    #[must_use]
    pub fn goes_on(&self, key: &[u8; 32]) -> bool {
        self.lock().contains_key(key)
    }

    /// A search for a page: begun unless it goes on already, and waited for a moment.
    ///
    /// # Errors
    /// The plan contradicts itself, too many wait or the asker has several going, or the search broke.
    pub async fn look(
        &self,
        asker: &Client,
        key: [u8; 32],
        open: SitePlan,
    ) -> Result<Looked, Trouble> {
        let Going {
            progress,
            mut ended,
        } = self.begin(asker, key, open)?;
        let wait = LONGEST_LOOK.min(self.longest);
        match tokio::time::timeout(wait, ended.wait_for(Option::is_some)).await {
            Ok(Ok(found)) => found_in(found.clone()).map(Looked::Found),
            Ok(Err(error)) => Err(Trouble::broken("a search stopped", &error)),
            Err(_) => Ok(Looked::Going(progress.now())),
        }
    }

    /// A search for a program, as far as there is time for it.
    ///
    /// # Errors
    /// The plan contradicts itself, too many wait or the asker has several going, its turn did not come in time, or the
    /// search broke.
    pub async fn answer(
        &self,
        asker: &Client,
        key: [u8; 32],
        open: SitePlan,
    ) -> Result<Arc<Options>, Trouble> {
        let place = self.for_programs.place(asker)?;
        let turn = Arc::clone(&self.for_programs.turn).acquire_owned();
        let turn = tokio::time::timeout(LONGEST_WAIT, turn)
            .await
            .ok()
            .and_then(Result::ok)
            .ok_or_else(Trouble::crowded)?;
        if let Some(kept) = self.kept(&key, true) {
            return Ok(kept);
        }
        let (tell, mut ended) = watch::channel(None);
        let job = self.job(key, open, &self.for_programs);
        job.start((turn, place), Arc::default(), tell)?;
        let found = ended.wait_for(Option::is_some).await;
        let found = found.map_err(|error| Trouble::broken("a search stopped", &error))?;
        found_in(found.clone())
    }

    fn begin(&self, asker: &Client, key: [u8; 32], open: SitePlan) -> Result<Going, Trouble> {
        let mut going = self.lock();
        if let Some(known) = going.get(&key) {
            return Ok(known.clone());
        }
        let place = self.for_pages.place(asker)?;
        let (tell, ended) = watch::channel(None);
        let one = Going {
            progress: Arc::default(),
            ended,
        };
        going.insert(key, one.clone());
        drop(going);
        let job = self.job(key, open, &self.for_pages);
        let (turns, progress) = (Arc::clone(&self.for_pages.turn), Arc::clone(&one.progress));
        let over = Over {
            key,
            going: Arc::clone(&self.going),
        };
        tokio::spawn(async move {
            let mut heard = tell.subscribe();
            // The search's thread holds the other end until it is over.
            if let Ok(turn) = turns.acquire_owned().await
                && job.start((turn, place), progress, tell).is_ok()
            {
                let _ = heard.wait_for(Option::is_some).await;
            }
            drop(over);
        });
        Ok(one)
    }

    fn job(&self, key: [u8; 32], open: SitePlan, lane: &Lane) -> Job {
        Job {
            key,
            open: Box::new(open),
            shelf: self.shelf.clone(),
            kept: self.kept.clone(),
            stopped: Arc::clone(&self.stopped),
            lane: lane.clone(),
        }
    }

    fn lock(&self) -> std::sync::MutexGuard<'_, HashMap<[u8; 32], Going>> {
        self.going.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Drop for Searches {
    fn drop(&mut self) {
        self.stopped.store(true, Relaxed);
    }
}

/// Takes a search off the list when it is over, however it ended.
struct Over {
    key: [u8; 32],
    going: Arc<Mutex<HashMap<[u8; 32], Going>>>,
}

impl Drop for Over {
    fn drop(&mut self) {
        let mut going = self.going.lock().unwrap_or_else(PoisonError::into_inner);
        going.remove(&self.key);
    }
}

/// A search with all that its thread needs.
struct Job {
    key: [u8; 32],
    open: Box<SitePlan>,
    shelf: MemoryShelf,
    kept: Cache<[u8; 32], Arc<Options>>,
    stopped: Arc<AtomicBool>,
    lane: Lane,
}

impl Job {
    fn start(
        self,
        turn: (OwnedSemaphorePermit, Share),
        progress: Arc<Progress>,
        tell: watch::Sender<Option<Outcome>>,
    ) -> Result<(), Trouble> {
        let work = move || {
            give_way();
            let found = self.run(&progress);
            drop(turn);
            tell.send_replace(Some(found));
        };
        std::thread::Builder::new()
            .name("search".to_owned())
            .spawn(work)
            .map(drop)
            .map_err(|error| Trouble::broken("starting a search", &error))
    }

    fn run(&self, progress: &Progress) -> Outcome {
        let began = Instant::now();
        let go_on = |reached| {
            progress.set(reached);
            !self.stopped.load(Relaxed) && self.lane.has_time(began)
        };
        let found = Arc::new(options::find(&self.open, &self.shelf, &go_on)?);
        // What was cut short is kept to be shown, and gone on with from the shapes that are kept by then.
        let better = |kept: Arc<Options>| kept.not_reached < found.not_reached;
        if !self.kept.get(&self.key).is_some_and(better) {
            self.kept.insert(self.key, Arc::clone(&found));
        }
        Ok(found)
    }
}

fn found_in(outcome: Option<Outcome>) -> Result<Arc<Options>, Trouble> {
    match outcome {
        Some(Ok(found)) => Ok(found),
        Some(Err(problems)) => Err(Trouble::answers(&problems)),
        None => Err(Trouble::broken("a search", &"it ended without an answer")),
    }
}

#[cfg(test)]
mod tests {
    use axum::http::StatusCode;
    use axum::response::IntoResponse;

    use super::*;

    fn client(last: u8) -> Client {
        Client::at(&format!("192.0.2.{last}"))
    }

    fn open() -> SitePlan {
        let mut plan = SitePlan::unknown();
        plan.excavation.max_depth_m = Some(0.9);
        (plan.block.length_m, plan.block.width_m) = (Some(0.9), Some(0.9));
        (plan.pier.outside_diameter_mm, plan.pier.wall_mm) = (Some(219.1), Some(8.0));
        plan
    }

    #[tokio::test]
    async fn a_search_for_a_page_goes_on_by_itself_and_says_how_far_it_is() {
        let searches = Searches::new(Duration::from_millis(20));
        let first = searches
            .look(&client(1), [1; 32], open())
            .await
            .ok()
            .unwrap();
        assert!(matches!(first, Looked::Going(_)));
        assert!(searches.goes_on(&[1; 32]));
        // It is cut short at ten times as long, and kept as far as it came.
        let mut kept = None;
        for _ in 0..1200 {
            tokio::time::sleep(Duration::from_millis(100)).await;
            kept = searches.kept(&[1; 32], false);
            if kept.is_some() {
                break;
            }
        }
        let kept = kept.unwrap();
        assert!(kept.looked_at + kept.not_reached > 0);
        if kept.not_reached > 0 {
            assert!(searches.kept(&[1; 32], true).is_none());
        }
    }

    #[tokio::test]
    async fn one_client_has_two_searches_and_all_have_eight() {
        let searches = Searches::new(Duration::from_millis(1));
        let begin = |of: u8, key: u8| searches.begin(&client(of), [key; 32], open());
        for key in 0..8 {
            assert!(begin(key / 2, key).is_ok());
        }
        let refused = |of| begin(of, 99).err().map(|it| it.into_response().status());
        assert_eq!(refused(0), Some(StatusCode::TOO_MANY_REQUESTS));
        assert_eq!(refused(9), Some(StatusCode::SERVICE_UNAVAILABLE));
        assert!(begin(9, 0).is_ok(), "one that goes on");
    }

    #[tokio::test]
    async fn a_contradiction_is_said_at_once() {
        let mut plan = open();
        plan.pier.wall_mm = Some(1e6);
        let searches = Searches::new(Duration::from_secs(1));
        assert!(
            searches
                .look(&client(1), [1; 32], plan.clone())
                .await
                .is_err()
        );
        assert!(searches.answer(&client(1), [2; 32], plan).await.is_err());
    }
}
