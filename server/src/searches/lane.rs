//! Searches of one kind, which run one after another: how many may wait, of one client and of all, and how long one may take.
//!
//! A search takes what time there is while nobody waits. With somebody behind it it ends sooner, and what it found by then is
//! kept and can be gone on with; so one client's searches keep another's from beginning for seconds and not for minutes.

use std::sync::Arc;
use std::time::{Duration, Instant};

use tokio::sync::Semaphore;

use crate::client::Client;
use crate::error::Trouble;
use crate::shares::{Share, Shares, Spent};

/// Searches of one kind that run or wait; one more is told to come back.
const MOST: usize = 8;
/// How many of them may be one client's.
const MOST_OF_ONE: usize = 2;

/// A place at the searches of one kind, and the rules for it. Every copy is the same.
#[derive(Clone)]
pub(super) struct Lane {
    pub(super) turn: Arc<Semaphore>,
    places: Shares,
    alone: Duration,
    with_others: Duration,
}

impl Lane {
    /// Nobody in it; how long a search may take while nobody waits, and while somebody does.
    pub(super) fn new(alone: Duration, with_others: Duration) -> Self {
        Self {
            turn: Arc::new(Semaphore::new(1)),
            places: Shares::new(MOST, MOST_OF_ONE),
            alone,
            with_others,
        }
    }

    /// A place in it, given up when it is dropped.
    ///
    /// # Errors
    /// The client has its part of them, or all are taken.
    pub(super) fn place(&self, asker: &Client) -> Result<Share, Trouble> {
        self.places
            .one(asker.circles())
            .map_err(|spent| match spent {
                Spent::Yours => Trouble::too_much_at_once(),
                Spent::All => Trouble::crowded(),
            })
    }

    /// Whether a search that began then may go on.
    pub(super) fn has_time(&self, began: Instant) -> bool {
        let longest = if self.places.taken() > 1 {
            self.with_others
        } else {
            self.alone
        };
        began.elapsed() < longest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_search_ends_sooner_while_another_waits() {
        let lane = Lane::new(Duration::MAX, Duration::ZERO);
        let began = Instant::now();
        let of = |address| lane.place(&Client::at(address)).ok();
        let first = of("192.0.2.1");
        assert!(first.is_some() && lane.has_time(began), "alone");
        let second = of("192.0.2.2");
        assert!(second.is_some() && !lane.has_time(began), "one waits");
        drop(second);
        assert!(lane.has_time(began), "alone again");
    }
}
