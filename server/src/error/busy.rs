//! Requests with which nothing is wrong: there is no time or no room for them just now.

use axum::http::StatusCode;
use axum::http::header::RETRY_AFTER;

use super::Trouble;

impl Trouble {
    /// Too many plans are being designed.
    #[must_use]
    pub fn crowded() -> Self {
        let said = "Too many plans are being worked out at once. Nothing was lost; try again in a few seconds.";
        Self::new(StatusCode::SERVICE_UNAVAILABLE, "crowded", said).with_header(RETRY_AFTER, "5")
    }

    /// More requests at once than are worked on.
    #[must_use]
    pub fn full() -> Self {
        let said = "Too many requests are being answered at once. Nothing was changed; try again in a few seconds.";
        Self::new(StatusCode::SERVICE_UNAVAILABLE, "full", said).with_header(RETRY_AFTER, "2")
    }

    /// An answer that took too long to find.
    #[must_use]
    pub fn took_too_long() -> Self {
        tracing::error!("a request was given up after its time was over");
        let said = "This took too long and was given up. Read the plan again to see whether a save went through.";
        Self::new(StatusCode::SERVICE_UNAVAILABLE, "took_too_long", said)
            .with_header(RETRY_AFTER, "30")
    }

    /// More from one client at once than is worked on for one.
    #[must_use]
    pub fn too_much_at_once() -> Self {
        let said = "Too much came from your address at once. Nothing was changed; try again in a few seconds.";
        Self::new(StatusCode::TOO_MANY_REQUESTS, "too_much_at_once", said)
            .with_header(RETRY_AFTER, "2")
    }
}
