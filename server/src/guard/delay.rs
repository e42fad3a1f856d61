//! Refusals that come late. Whoever is refused many times within a second waits for each further refusal, so that asking
//! again and again takes as little of the processors as asking now and then. What is not refused comes at once, to the same
//! client too: a right link is not slowed by guesses that another site makes a browser send.

use std::net::IpAddr;
use std::time::Duration;

use axum::http::StatusCode;

use super::{Guard, RouteKind};
use crate::client::{Circle, Client};
use crate::shares::Shares;

/// How long a refusal is kept back.
const LATE_BY: Duration = Duration::from_secs(1);
/// How long a new connection of such a client is kept waiting before anything is read from it.
const LATE_TO_BEGIN: Duration = Duration::from_millis(250);
/// Refusals that are kept back at once, in all and of one client; beyond it one comes at once.
const MOST: usize = 2048;
const MOST_OF_ONE: usize = 128;

/// Places for refusals that are kept back.
pub(super) fn places() -> Shares {
    Shares::new(MOST, MOST_OF_ONE)
}

impl Guard {
    /// Counts an answer, if it is a refusal, and waits if there were many.
    pub async fn delay(&self, client: &Client, status: StatusCode) {
        let circles = client.circles();
        if !is_refusal(status)
            || circles.is_empty()
            || self.buckets.take(RouteKind::Refused, &circles).is_ok()
        {
            return;
        }
        if let Ok(_place) = self.late.one(circles) {
            tokio::time::sleep(LATE_BY).await;
        }
    }

    /// Counts a connection on which nothing was sent that can be read.
    pub fn unread(&self, peer: IpAddr) {
        let _ = self
            .buckets
            .take(RouteKind::Refused, &Circle::of_address(peer, false));
    }

    /// Whether a machine that asks by itself was refused so often that it has to wait.
    #[must_use]
    pub fn is_late(&self, peer: IpAddr) -> bool {
        self.buckets
            .look(RouteKind::Refused, &Circle::of_address(peer, false))
            .is_err()
    }

    /// Waits before a connection of such a machine is read.
    pub async fn delay_connection(&self, peer: IpAddr) {
        if self.is_late(peer) {
            tokio::time::sleep(LATE_TO_BEGIN).await;
        }
    }

    /// How many refusals are kept back.
    #[must_use]
    pub fn late(&self) -> usize {
        self.late.taken()
    }
}

/// Whether an answer says no to what was asked. That a plan's answers contradict each other, or that somebody saved before,
/// was found out by work that is counted by itself.
fn is_refusal(status: StatusCode) -> bool {
    status.is_client_error()
        && !matches!(
            status,
            StatusCode::CONFLICT
                | StatusCode::PRECONDITION_FAILED
                | StatusCode::UNPROCESSABLE_ENTITY
        )
}

#[cfg(test)]
mod tests {
    use tokio::time::Instant;

    use super::*;

    async fn took(guard: &Guard, client: &Client, status: StatusCode) -> Duration {
        let begun = Instant::now();
        guard.delay(client, status).await;
        begun.elapsed()
    }

    #[tokio::test(start_paused = true)]
    async fn whoever_is_refused_again_and_again_waits_for_the_next_refusal_and_for_nothing_else() {
        let (guard, greedy) = (Guard::default(), Client::at("192.0.2.1"));
        for _ in 0..20 {
            let took = took(&guard, &greedy, StatusCode::TOO_MANY_REQUESTS).await;
            assert_eq!(took, Duration::ZERO);
        }
        assert!(guard.is_late(greedy.address));
        for (status, late) in [
            (StatusCode::NOT_FOUND, true),
            (StatusCode::OK, false),
            (StatusCode::UNPROCESSABLE_ENTITY, false),
            (StatusCode::SERVICE_UNAVAILABLE, false),
        ] {
            let took = took(&guard, &greedy, status).await;
            assert_eq!(took >= LATE_BY, late, "{status} after {took:?}");
        }
        let another = Client::at("192.0.2.2");
        let uncounted = Client {
            uncounted: true,
            ..Client::at("192.0.2.1")
        };
        for other in [another, uncounted] {
            let took = took(&guard, &other, StatusCode::NOT_FOUND).await;
            assert_eq!(took, Duration::ZERO);
        }
        assert!(!guard.is_late("192.0.2.2".parse().unwrap()));
    }

    #[tokio::test(start_paused = true)]
    async fn of_one_client_no_endless_line_of_refusals_waits() {
        let (guard, greedy) = (Guard::default(), Client::at("192.0.2.1"));
        while guard
            .buckets
            .take(RouteKind::Refused, &greedy.circles())
            .is_ok()
        {}
        let waiting: Vec<_> = (0..MOST_OF_ONE)
            .map(|_| guard.late.one(greedy.circles()).unwrap())
            .collect();
        assert_eq!(guard.late(), MOST_OF_ONE);
        let one_more = took(&guard, &greedy, StatusCode::NOT_FOUND).await;
        assert_eq!(one_more, Duration::ZERO);
        drop(waiting);
        assert_eq!(guard.late(), 0);
    }
}
