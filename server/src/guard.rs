//! Limits for each client: guesses at links, plans begun, designs, prints, photographs and the organiser's door.
//!
//! Everybody is counted, at this very machine too, unless a setting says otherwise. A proxy that is not stated and speaks
//! for others is one client. What a link that is right is refused for is what its own holders asked for, never a guess.

mod buckets;
mod delay;

use std::time::Duration;

use axum::extract::{MatchedPath, Request};
use axum::http::Method;

use crate::client::Client;
use crate::error::Trouble;
use crate::shares::Shares;
use crate::watch::Watch;
use buckets::Buckets;

/// What is counted, each by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RouteKind {
    /// Links that opened nothing.
    Guess,
    /// Plans begun.
    Begin,
    /// Pages that anybody may ask for without a link: any site can make a browser ask for them.
    Open,
    /// Pages and answers behind a link for which a plan may have to be worked out.
    Design,
    /// Searches over all the piers that fit, each as long as many designs.
    Search,
    /// Sheets of a plan behind a link.
    Print,
    /// Photographs and records of samples sent.
    Photo,
    /// The organiser's door, codes and lost links.
    Door,
    /// Questions that we ask of another service.
    LookUp,
    /// Refusals, of whatever kind: beyond these, one comes late.
    Refused,
}

impl RouteKind {
    /// How many at once, and how long until one more is free.
    const fn rate(self) -> (u32, Duration) {
        match self {
            Self::Guess => (20, Duration::from_secs(15)),
            Self::Begin => (20, Duration::from_secs(60)),
            Self::Open | Self::Design => (240, Duration::from_millis(250)),
            Self::Search => (12, Duration::from_secs(10)),
            Self::Print => (20, Duration::from_secs(5)),
            Self::Photo => (40, Duration::from_secs(4)),
            Self::Door => (10, Duration::from_secs(60)),
            Self::LookUp => (6, Duration::from_secs(60)),
            Self::Refused => (20, Duration::from_millis(50)),
        }
    }

    /// What a request is counted as.
    fn of(method: &Method, route: &str) -> Option<Self> {
        let changes = *method == Method::POST || *method == Method::PUT;
        match route {
            "/new" | "/standing" | "/example" | "/api/v1/plans" if changes => Some(Self::Begin),
            "/organiser/in" | "/recover" | "/api/v1/recover" if changes => Some(Self::Door),
            "/p/{secret}/climate" if changes => Some(Self::LookUp),
            "/p/{secret}/record/photos" | "/api/v1/plans/{id}/photos" if changes => {
                Some(Self::Photo)
            }
            "/api/v1/trace" | "/p/{secret}/commissioning/trace" => Some(Self::Photo),
            // A page of ways counts a search when it begins one, and not each time that it says how far it is.
            "/api/v1/options" => Some(Self::Search),
            "/" | "/api/v1/design" => Some(Self::Open),
            _ if route.starts_with("/example/") || route.starts_with("/s/") => Some(Self::Open),
            _ if route.ends_with(".pdf") => Some(Self::Print),
            _ if route.starts_with("/p/") || route.starts_with("/api/v1/plans/") => {
                Some(Self::Design)
            }
            _ => None,
        }
    }
}

/// The counts. Cheap to clone.
#[derive(Clone)]
pub struct Guard {
    buckets: Buckets,
    /// Refusals that are kept back.
    late: Shares,
}

impl Default for Guard {
    fn default() -> Self {
        Self {
            buckets: Buckets::default(),
            late: delay::places(),
        }
    }
}

impl Guard {
    /// Counts one.
    ///
    /// # Errors
    /// Too many, and when to come back.
    pub fn take(&self, client: &Client, kind: RouteKind) -> Result<(), Trouble> {
        self.buckets
            .take(kind, &client.circles())
            .map_err(Trouble::too_often)
    }

    /// Whether one more would be too many.
    ///
    /// # Errors
    /// Too many, and when to come back.
    pub fn look(&self, client: &Client, kind: RouteKind) -> Result<(), Trouble> {
        self.buckets
            .look(kind, &client.circles())
            .map_err(Trouble::too_often)
    }

    /// Counts a request; as what it was counted.
    ///
    /// # Errors
    /// One too many.
    pub fn admit(
        &self,
        watch: &Watch,
        client: &Client,
        request: &Request,
    ) -> Result<Option<RouteKind>, Trouble> {
        let route = request
            .extensions()
            .get::<MatchedPath>()
            .map(MatchedPath::as_str)
            .unwrap_or_default();
        let kind = RouteKind::of(request.method(), route);
        kind.map_or(Ok(()), |kind| self.take(client, kind))
            .inspect_err(|_| watch.refused())
            .map(|()| kind)
    }

    /// Counts a link that opened nothing as a guess, and as nothing else: a browser that another site makes ask for wrong
    /// links has not asked for the plans of its own.
    ///
    /// # Errors
    /// One guess too many.
    pub fn guessed(
        &self,
        watch: &Watch,
        client: &Client,
        counted: Option<RouteKind>,
    ) -> Result<(), Trouble> {
        if let Some(kind) = counted {
            self.buckets.give_back(kind, &client.circles());
        }
        self.take(client, RouteKind::Guess)
            .inspect_err(|_| watch.refused())
    }
}
