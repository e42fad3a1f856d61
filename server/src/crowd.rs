//! How many requests are worked on at once: beyond that, one more is told at once to come back, so that those inside get
//! done.

use std::sync::Arc;

use axum::extract::Request;
use tokio::sync::{Semaphore, SemaphorePermit};

use crate::error::Trouble;

/// Most requests that are worked on at once; each waits for the store or for its turn to be designed.
const MOST_REQUESTS: usize = 512;

/// Places for requests that are worked on. Every copy counts the same ones.
#[derive(Clone)]
pub struct Places(Arc<Semaphore>);

impl Default for Places {
    fn default() -> Self {
        Self::new(MOST_REQUESTS)
    }
}

impl Places {
    /// So many places.
    #[must_use]
    pub fn new(places: usize) -> Self {
        Self(Arc::new(Semaphore::new(places)))
    }

    /// Gives a request that has arrived whole one of the places, until what is handed out is dropped.
    ///
    /// # Errors
    /// There is none left.
    pub fn enter(&self, request: &Request) -> Result<Option<SemaphorePermit<'_>>, Trouble> {
        // Whoever watches the service must hear from it when it is full, too.
        let watching = request.uri().path().starts_with("/health/");
        match self.0.try_acquire() {
            Ok(place) => Ok(Some(place)),
            Err(_) if watching => Ok(None),
            Err(_) => Err(Trouble::full()),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use axum::body::Body;
    use axum::response::IntoResponse;

    use super::*;

    #[test]
    fn one_request_more_than_there_are_places_is_told_at_once_to_come_back() {
        let places = Places::new(1);
        let request = |path: &str| Request::get(path).body(Body::empty()).unwrap();
        let first = places.enter(&request("/slow")).unwrap();
        assert!(first.is_some());
        let refused = places.enter(&request("/")).unwrap_err().into_response();
        assert_eq!(
            (refused.status().as_u16(), &refused.headers()["retry-after"]),
            (503, &"2".parse().unwrap())
        );
        assert!(places.enter(&request("/health/live")).unwrap().is_none());
        drop(first);
        assert!(places.enter(&request("/")).unwrap().is_some());
    }
}
