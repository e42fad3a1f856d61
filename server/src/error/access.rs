//! Refusals that have to do with who asks, how often, and how much is kept.

use std::time::Duration;

use axum::http::header::RETRY_AFTER;
use axum::http::{HeaderValue, StatusCode};

use super::Trouble;
use crate::config::network::without_port;

impl Trouble {
    /// A client that came too often.
    #[must_use]
    pub fn too_often(wait: Duration) -> Self {
        let seconds = wait.as_secs().saturating_add(1);
        let said = format!(
            "This came too often from your address. Nothing was changed; try again in {seconds} seconds."
        );
        let mut trouble = Self::new(StatusCode::TOO_MANY_REQUESTS, "too_often", said);
        trouble.0.header = Some((RETRY_AFTER, HeaderValue::from(seconds)));
        trouble
    }

    /// A request that names no host, several, or something that is none.
    #[must_use]
    pub fn one_host() -> Self {
        let said = "A request has to name the machine that it asks, once, in its header Host.";
        Self::new(StatusCode::BAD_REQUEST, "one_host", said)
    }

    /// A request for a host that is none of ours.
    #[must_use]
    pub fn foreign_host(host: &str) -> Self {
        let name = without_port(host);
        let said = format!(
            "This planner was asked as {name}, a name that it was not told. Open it by its address in figures, or have whoever \
             runs it state the name: STILLGROUND_PUBLIC_ADDRESS=http://{host} (https where a proxy speaks TLS), or \
             STILLGROUND_HOSTS={name}. It answers to no other names, so that no other site can give its own name this \
             planner's address and speak for you."
        );
        Self::new(StatusCode::MISDIRECTED_REQUEST, "foreign_host", said)
    }

    /// A plan that was to begin without an invitation that is alive; unknown, used up, over and withdrawn ones are alike.
    #[must_use]
    pub fn not_invited() -> Self {
        let said = "A plan begins here with a code of the organiser’s. This one is missing, used up, over or mistyped; ask for another.";
        Self::new(StatusCode::FORBIDDEN, "not_invited", said)
    }

    /// A recovery code that finds nothing: wrong, used up and over are alike.
    #[must_use]
    pub fn no_such_code() -> Self {
        let said = "No plan is found again with this code. It may be used up, replaced by a newer one, or mistyped.";
        Self::new(StatusCode::FORBIDDEN, "no_such_code", said)
    }

    /// Something that only the organiser does.
    #[must_use]
    pub fn organiser_only() -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "organiser_only",
            "Only the organiser does this. Ask them, or sign in as organiser.",
        )
    }

    /// No more plans are kept.
    #[must_use]
    pub fn shelf_full() -> Self {
        let said = "No more plans are kept here for now. Nothing was begun; ask whoever runs it to make room.";
        Self::new(StatusCode::FORBIDDEN, "shelf_full", said)
    }

    /// No more of a plan is kept.
    #[must_use]
    pub fn quota() -> Self {
        let said = "This plan has as many revisions, or is as large, as are kept here. Nothing was saved; begin a new plan with what \
                    stands in it, or ask whoever runs this planner.";
        Self::new(StatusCode::FORBIDDEN, "quota", said)
    }
}
