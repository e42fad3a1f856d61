//! Group commit: jobs that arrive while a batch is being written wait, and the next batch takes them all.
//!
//! A job that arrives while nobody writes starts a worker at once; a job alone never waits for others.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// A queue of jobs with a bounded number of workers. Every copy is the same queue.
pub(super) struct Batches<J>(Arc<Queue<J>>);

struct Queue<J> {
    waiting: Mutex<Waiting<J>>,
    /// Most workers at once.
    workers: usize,
    /// Most jobs in one batch.
    jobs: usize,
}

struct Waiting<J> {
    jobs: Vec<J>,
    workers: usize,
}

/// Takes batch after batch until the queue is empty. The last worker that is dropped before drops the jobs that are left, so
/// that whoever waits for them hears of it.
pub(super) struct Worker<J> {
    queue: Arc<Queue<J>>,
    done: bool,
}

impl<J> Batches<J> {
    /// A queue with so many workers at most, each with so many jobs at most.
    pub(super) fn new(workers: usize, jobs: usize) -> Self {
        Self(Arc::new(Queue {
            waiting: Mutex::new(Waiting {
                jobs: Vec::new(),
                workers: 0,
            }),
            workers,
            jobs,
        }))
    }

    /// Adds a job. A worker that is returned has to be run.
    #[must_use]
    pub(super) fn add(&self, job: J) -> Option<Worker<J>> {
        let mut waiting = self.0.waiting();
        waiting.jobs.push(job);
        if waiting.workers >= self.0.workers {
            return None;
        }
        waiting.workers += 1;
        Some(Worker {
            queue: Arc::clone(&self.0),
            done: false,
        })
    }
}

impl<J> Queue<J> {
    fn waiting(&self) -> MutexGuard<'_, Waiting<J>> {
        self.waiting.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl<J> Worker<J> {
    /// The next batch, oldest first; none when the queue is empty, which ends this worker.
    pub(super) fn next(&mut self) -> Option<Vec<J>> {
        let mut waiting = self.queue.waiting();
        if waiting.jobs.is_empty() {
            if !std::mem::replace(&mut self.done, true) {
                waiting.workers -= 1;
            }
            return None;
        }
        let most = self.queue.jobs.min(waiting.jobs.len());
        let rest = waiting.jobs.split_off(most);
        Some(std::mem::replace(&mut waiting.jobs, rest))
    }
}

impl<J> Drop for Worker<J> {
    fn drop(&mut self) {
        if self.done {
            return;
        }
        let mut waiting = self.queue.waiting();
        waiting.workers -= 1;
        let left = if waiting.workers == 0 {
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
        let mut worker = queue.add(1).unwrap();
        assert_eq!(worker.next(), Some(vec![1]));
        for job in 2..=5 {
            assert!(queue.add(job).is_none(), "one worker is enough");
        }
        assert_eq!(worker.next(), Some(vec![2, 3, 4]));
        assert_eq!(worker.next(), Some(vec![5]));
        assert_eq!(worker.next(), None);
        assert!(queue.add(6).is_some(), "the next to come goes at once");
    }

    #[test]
    fn a_carrier_that_is_lost_lets_go_of_its_jobs_and_another_may_go() {
        let queue = Batches::new(1, 8);
        let job = Arc::new(());
        let worker = queue.add(Arc::clone(&job)).unwrap();
        drop(worker);
        assert_eq!(Arc::strong_count(&job), 1, "whoever waits hears of it");
        let mut worker = queue.add(Arc::clone(&job)).unwrap();
        assert_eq!(worker.next().map(|jobs| jobs.len()), Some(1));
    }
}
