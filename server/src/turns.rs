//! Turns at work that keeps a processor busy: designing a plan, printing it, writing a photograph anew. There are as many
//! as there are processors; one client has at most half of them, and waits for its own before it waits among all. Of
//! photographs there is one at a time, since each takes memory for all its dots.

mod busy;
mod workers;

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use crate::client::{Circle, Client};
use crate::error::Trouble;
pub use busy::Work;
use busy::{Busy, Stay};
use workers::Workers;
pub(crate) use workers::give_way;

/// How long a request waits for its turn before it is asked to come back.
const LONGEST_WAIT: Duration = Duration::from_secs(10);
/// Most requests of one client that wait; beyond it, one more is told at once.
const MOST_WAITING: usize = 128;

tokio::task_local! {
    /// Who asks for what is being answered.
    static ASKING: Option<Circle>;
}

/// Answers a client's request, so that its turns are counted as its own.
pub async fn on_behalf<T>(client: &Client, answer: impl Future<Output = T>) -> T {
    let circle = client.circles().first().map(|(circle, _)| *circle);
    ASKING.scope(circle, answer).await
}

/// The turns. Every copy is the same.
#[derive(Clone)]
pub struct Turns {
    all: Arc<Semaphore>,
    each: Arc<Mutex<HashMap<Circle, Arc<Semaphore>>>>,
    most_each: usize,
    darkroom: Arc<Semaphore>,
    busy: Arc<Busy>,
    workers: Workers,
}

/// A turn, which is over when this is dropped.
pub struct Turn {
    _of_all: OwnedSemaphorePermit,
    _of_the_darkroom: Option<OwnedSemaphorePermit>,
    _own: Option<Own>,
    _stay: Stay,
}

/// A client's own turn, and its place in the list of those who have one or wait for one.
struct Own {
    turns: Turns,
    circle: Circle,
    permit: Option<OwnedSemaphorePermit>,
    line: Option<Arc<Semaphore>>,
}

impl Turns {
    /// So many turns.
    #[must_use]
    pub fn new(turns: usize) -> Self {
        Self {
            all: Arc::new(Semaphore::new(turns)),
            each: Arc::default(),
            most_each: (turns / 2).max(1),
            darkroom: Arc::new(Semaphore::new(1)),
            busy: Arc::default(),
            workers: Workers::new(turns),
        }
    }

    /// Works in turn, behind the threads that serve requests.
    ///
    /// # Errors
    /// Too many are waiting; or the work panicked.
    pub async fn work<T: Send + 'static>(
        &self,
        kind: Work,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Trouble> {
        let turn = self.wait(kind).await?;
        let work = move || {
            let _turn = turn;
            work()
        };
        self.workers.run(kind, work).await
    }

    /// Waits for a turn.
    ///
    /// # Errors
    /// It did not come in time, or too many wait already.
    pub async fn wait(&self, work: Work) -> Result<Turn, Trouble> {
        let waiting = Stay::begin(&self.busy, work, true);
        let circle = ASKING.try_with(|circle| *circle).ok().flatten();
        let turn = async {
            let own = match circle {
                Some(circle) => Some(self.own(circle).await?),
                None => None,
            };
            let of_the_darkroom = match work {
                Work::Darkroom => Some(self.darkroom.clone().acquire_owned().await.ok()?),
                Work::Design | Work::Press => None,
            };
            let of_all = self.all.clone().acquire_owned().await.ok()?;
            Some(Turn {
                _of_all: of_all,
                _of_the_darkroom: of_the_darkroom,
                _own: own,
                _stay: Stay::begin(&self.busy, work, false),
            })
        };
        let turn = async {
            let turn = turn.await;
            drop(waiting);
            turn
        };
        tokio::time::timeout(LONGEST_WAIT, turn)
            .await
            .ok()
            .flatten()
            .ok_or_else(Trouble::crowded)
    }

    /// How many have a turn at some work, and how many wait for one.
    #[must_use]
    pub fn busy(&self, work: Work) -> (usize, usize) {
        self.busy.now(work)
    }

    async fn own(&self, circle: Circle) -> Option<Own> {
        let line = {
            let mut each = self.each.lock().unwrap_or_else(PoisonError::into_inner);
            let line = each
                .entry(circle)
                .or_insert_with(|| Arc::new(Semaphore::new(self.most_each)));
            if Arc::strong_count(line) > MOST_WAITING {
                return None;
            }
            Arc::clone(line)
        };
        let mut own = Own {
            turns: self.clone(),
            circle,
            permit: None,
            line: Some(Arc::clone(&line)),
        };
        own.permit = line.acquire_owned().await.ok();
        Some(own)
    }
}

impl Drop for Own {
    fn drop(&mut self) {
        drop(self.permit.take());
        let mut each = self
            .turns
            .each
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        drop(self.line.take());
        if each
            .get(&self.circle)
            .is_some_and(|line| Arc::strong_count(line) == 1)
        {
            each.remove(&self.circle);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    async fn at_once(turns: &Turns, address: &str) -> Option<Turn> {
        let client = Client::at(address);
        let wait = on_behalf(&client, turns.wait(Work::Design));
        tokio::time::timeout(Duration::from_millis(50), wait)
            .await
            .ok()
            .and_then(Result::ok)
    }

    #[tokio::test]
    async fn one_client_has_half_of_the_turns_and_leaves_the_other_half() {
        let turns = Turns::new(2);
        let first = at_once(&turns, "192.0.2.1").await;
        assert!(first.is_some());
        assert_eq!(turns.busy(Work::Design), (1, 0));
        assert_eq!(turns.busy(Work::Press), (0, 0));
        assert!(at_once(&turns, "192.0.2.1").await.is_none());
        let other = at_once(&turns, "192.0.2.2").await;
        assert!(other.is_some(), "another is not kept waiting");
        drop(first);
        assert!(at_once(&turns, "192.0.2.1").await.is_some());
        drop(other);
        assert!(turns.each.lock().unwrap().is_empty());
        assert_eq!(
            turns.busy(Work::Design),
            (0, 0),
            "whoever gave up waits no more"
        );
    }

    #[tokio::test]
    async fn there_is_one_photograph_at_a_time_whoever_sent_it() {
        let turns = Turns::new(4);
        let _developing = turns.wait(Work::Darkroom).await.unwrap();
        let other = Client::at("192.0.2.2");
        let next = on_behalf(&other, turns.wait(Work::Darkroom));
        let next = tokio::time::timeout(Duration::from_millis(50), next).await;
        assert!(next.is_err(), "it waits");
        assert!(at_once(&turns, "192.0.2.3").await.is_some());
    }

    #[tokio::test]
    async fn of_one_client_no_endless_line_waits() {
        let turns = Turns::new(1);
        let _held = at_once(&turns, "192.0.2.1").await.unwrap();
        let mut waiting: Vec<_> = Vec::new();
        for _ in 0..MOST_WAITING + 5 {
            let turns = turns.clone();
            waiting.push(tokio::spawn(async move {
                on_behalf(&Client::at("192.0.2.1"), turns.wait(Work::Design))
                    .await
                    .is_err()
            }));
        }
        tokio::task::yield_now().await;
        tokio::time::sleep(Duration::from_millis(20)).await;
        let refused = waiting.iter().filter(|task| task.is_finished()).count();
        assert!(refused >= 5, "{refused}");
        waiting.iter().for_each(tokio::task::JoinHandle::abort);
    }
}
