//! How many requests are worked on at once: beyond that, one more is told at once to come back, so that those inside get
//! done.

use std::sync::Arc;

use axum::extract::Request;
use axum::response::{IntoResponse, Response};
use tokio::sync::Semaphore;

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
}

/// Gives a request that has arrived whole one of the places.
pub async fn places<F: Future<Output = Response>>(places: &Places, request: Request, next: impl FnOnce(Request) -> F) -> Response {
    // Whoever watches the service must hear from it when it is full, too.
    let watching = request.uri().path().starts_with("/health/");
    let place = places.0.try_acquire();
    if place.is_err() && !watching {
        return Trouble::full().into_response();
    }
    next(request).await
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use axum::Router;
    use axum::body::Body;
    use axum::extract::State;
    use axum::http::StatusCode;
    use axum::middleware::{Next, from_fn_with_state};
    use axum::routing::get;
    use tokio::sync::Notify;
    use tower::ServiceExt;

    use super::*;

    async fn layer(State(all): State<Places>, request: Request, next: Next) -> Response {
        places(&all, request, |request| next.run(request)).await
    }

    #[tokio::test]
    async fn one_request_more_than_there_are_places_is_told_at_once_to_come_back() {
        let (inside, leave) = (Arc::new(Notify::new()), Arc::new(Notify::new()));
        let slow = {
            let (inside, leave) = (inside.clone(), leave.clone());
            async move || {
                inside.notify_one();
                leave.notified().await;
            }
        };
        let routes = Router::new().route("/slow", get(slow)).route("/", get(async || ())).route("/health/live", get(async || ()));
        let routes = routes.layer(from_fn_with_state(Places::new(1), layer));
        let ask = |path: &str| routes.clone().oneshot(Request::get(path).body(Body::empty()).unwrap());
        let first = tokio::spawn(ask("/slow"));
        inside.notified().await;
        let refused = ask("/").await.unwrap();
        assert_eq!((refused.status(), &refused.headers()["retry-after"]), (StatusCode::SERVICE_UNAVAILABLE, &"2".parse().unwrap()));
        assert_eq!(ask("/health/live").await.unwrap().status(), StatusCode::OK);
        leave.notify_one();
        assert_eq!(first.await.unwrap().unwrap().status(), StatusCode::OK);
        assert_eq!(ask("/").await.unwrap().status(), StatusCode::OK);
    }
}
