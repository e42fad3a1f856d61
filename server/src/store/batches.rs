//! Jobs that are taken to the database together.
//!
//! Whoever comes when nobody is on the way goes at once; whoever comes while others are on the way waits for them to be
//! back, and goes with all who came meanwhile. A job alone is never kept waiting for others.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Jobs that wait, and how many carriers are on the way. Every copy is the same queue.
pub(super) struct Batches<J>(Arc<Queue<J>>);

struct Queue<J> {
    waiting: Mutex<Waiting<J>>,
    /// Most carriers at once.
    carriers: usize,
    /// Most jobs that one takes along.
    jobs: usize,
}

struct Waiting<J> {
    jobs: Vec<J>,
    carriers: usize,
}

/// Takes batch after batch until nobody waits. One that is dropped before lets go of the jobs that nobody else would take.
pub(super) struct Carrier<J> {
    queue: Arc<Queue<J>>,
    home: bool,
}

impl<J> Batches<J> {
    /// A queue with so many carriers at most, each with so many jobs at most.
    pub(super) fn new(carriers: usize, jobs: usize) -> Self {
        Self(Arc::new(Queue {
            waiting: Mutex::new(Waiting {
                jobs: Vec::new(),
                carriers: 0,
            }),
            carriers,
            jobs,
        }))
    }

    /// Adds a job. A carrier that is handed out has to be sent on its way.
    #[must_use]
    pub(super) fn add(&self, job: J) -> Option<Carrier<J>> {
        let mut waiting = self.0.waiting();
        waiting.jobs.push(job);
        if waiting.carriers >= self.0.carriers {
            return None;
        }
        waiting.carriers += 1;
        Some(Carrier {
            queue: Arc::clone(&self.0),
            home: false,
        })
    }
}

impl<J> Queue<J> {
    fn waiting(&self) -> MutexGuard<'_, Waiting<J>> {
        self.waiting.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl<J> Carrier<J> {
    /// The jobs that wait, the first first; none when this carrier's way is over.
    pub(super) fn next(&mut self) -> Option<Vec<J>> {
        let mut waiting = self.queue.waiting();
        if waiting.jobs.is_empty() {
            if !std::mem::replace(&mut self.home, true) {
                waiting.carriers -= 1;
            }
            return None;
        }
        let most = self.queue.jobs.min(waiting.jobs.len());
        let rest = waiting.jobs.split_off(most);
        Some(std::mem::replace(&mut waiting.jobs, rest))
    }
}

impl<J> Drop for Carrier<J> {
    fn drop(&mut self) {
        if self.home {
            return;
        }
        let mut waiting = self.queue.waiting();
        waiting.carriers -= 1;
        let left = if waiting.carriers == 0 {
            std::mem::take(&mut waiting.jobs)
        } else {
            Vec::new()
        };
        drop(waiting);
        drop(left);
    }
}

impl<J> Clone for Batches<J> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_comes_while_others_are_on_the_way_goes_with_the_next() {
        let queue = Batches::new(1, 3);
        let mut carrier = queue.add(1).unwrap();
        assert_eq!(carrier.next(), Some(vec![1]));
        for job in 2..=5 {
            assert!(queue.add(job).is_none(), "one carrier is enough");
        }
        assert_eq!(carrier.next(), Some(vec![2, 3, 4]));
        assert_eq!(carrier.next(), Some(vec![5]));
        assert_eq!(carrier.next(), None);
        assert!(queue.add(6).is_some(), "the next to come goes at once");
    }

    #[test]
    fn a_carrier_that_is_lost_lets_go_of_its_jobs_and_another_may_go() {
        let queue = Batches::new(1, 8);
        let job = Arc::new(());
        let carrier = queue.add(Arc::clone(&job)).unwrap();
        drop(carrier);
        assert_eq!(Arc::strong_count(&job), 1, "whoever waits hears of it");
        let mut carrier = queue.add(Arc::clone(&job)).unwrap();
        assert_eq!(carrier.next().map(|jobs| jobs.len()), Some(1));
    }
}
