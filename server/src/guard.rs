//! Limits for each client: guesses at links, plans begun, designs, prints and the organiser's door; and how many prints
//! are made at once.
//!
//! Whoever sits at this very machine is not limited. A proxy that is not stated and speaks for others is one client.

mod buckets;

use std::net::IpAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::extract::{MatchedPath, Request};
use axum::http::Method;
use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use crate::client::Client;
use crate::error::Trouble;
use crate::watch::Watch;
use buckets::Buckets;

/// How long a print waits for its turn before it is asked to come back.
const LONGEST_WAIT: Duration = Duration::from_secs(10);

/// What is counted, each by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Links that opened nothing.
    Guess,
    /// Plans begun.
    Begin,
    /// Pages and answers for which a plan may have to be worked out.
    Design,
    /// Sheets.
    Print,
    /// The organiser's door, codes and lost links.
    Door,
    /// Questions that we ask of another service.
    LookUp,
}

impl Kind {
    /// How many at once, and how long until one more is free.
    const fn rate(self) -> (u32, Duration) {
        match self {
            Self::Guess => (20, Duration::from_secs(15)),
            Self::Begin => (20, Duration::from_secs(60)),
            Self::Design => (240, Duration::from_millis(250)),
            Self::Print => (20, Duration::from_secs(5)),
            Self::Door => (10, Duration::from_secs(60)),
            Self::LookUp => (6, Duration::from_secs(60)),
        }
    }

    /// What a request is counted as.
    fn of(method: &Method, route: &str) -> Option<Self> {
        let changes = *method == Method::POST || *method == Method::PUT;
        match route {
            "/new" | "/example" | "/api/v1/plans" if changes => Some(Self::Begin),
            "/organiser/in" | "/recover" | "/api/v1/recover" if changes => Some(Self::Door),
            "/p/{secret}/climate" if changes => Some(Self::LookUp),
            "/" => Some(Self::Design),
            _ if route.ends_with(".pdf") => Some(Self::Print),
            _ if route.starts_with("/p/")
                || route.starts_with("/s/")
                || route.starts_with("/example/") =>
            {
                Some(Self::Design)
            }
            "/api/v1/design" => Some(Self::Design),
            _ if route.starts_with("/api/v1/plans/") => Some(Self::Design),
            _ => None,
        }
    }
}

/// The counts, and the turns for printing. Cheap to clone.
#[derive(Clone)]
pub struct Guard {
    buckets: Buckets,
    presses: Arc<Semaphore>,
}

impl Default for Guard {
    fn default() -> Self {
        let processors = std::thread::available_parallelism().map_or(1, usize::from);
        Self {
            buckets: Buckets::default(),
            presses: Arc::new(Semaphore::new(processors)),
        }
    }
}

impl Guard {
    /// Counts one.
    ///
    /// # Errors
    /// Too many, and when to come back.
    pub fn take(&self, client: &Client, kind: Kind) -> Result<(), Trouble> {
        if client.is_here() {
            return Ok(());
        }
        self.buckets
            .take(kind, key(client.address))
            .map_err(Trouble::too_often)
    }

    /// Whether one more would be too many.
    ///
    /// # Errors
    /// Too many, and when to come back.
    pub fn look(&self, client: &Client, kind: Kind) -> Result<(), Trouble> {
        if client.is_here() {
            return Ok(());
        }
        self.buckets
            .look(kind, key(client.address))
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
    ) -> Result<Option<Kind>, Trouble> {
        let route = request
            .extensions()
            .get::<MatchedPath>()
            .map(MatchedPath::as_str)
            .unwrap_or_default();
        let kind = Kind::of(request.method(), route);
        let opens =
            route.contains("{secret}") || route.contains("{id}") || route.contains("{token}");
        self.count(client, kind, opens)
            .inspect_err(|_| watch.refused())
            .map(|()| kind)
    }

    /// Waits for the turn of what has to wait: prints do. The turn is over when what is handed out is dropped.
    ///
    /// # Errors
    /// It did not come in time.
    pub async fn turn(&self, kind: Option<Kind>) -> Result<Option<OwnedSemaphorePermit>, Trouble> {
        if kind != Some(Kind::Print) {
            return Ok(None);
        }
        let press = tokio::time::timeout(LONGEST_WAIT, self.presses.clone().acquire_owned()).await;
        press
            .ok()
            .and_then(Result::ok)
            .map(Some)
            .ok_or_else(Trouble::crowded)
    }

    fn count(&self, client: &Client, kind: Option<Kind>, opens: bool) -> Result<(), Trouble> {
        if opens {
            self.look(client, Kind::Guess)?;
        }
        kind.map_or(Ok(()), |kind| self.take(client, kind))
    }
}

/// Whom an address stands for: with version 6 a household has a whole /64.
fn key(ip: IpAddr) -> u128 {
    match ip.to_canonical() {
        IpAddr::V4(ip) => u128::from(ip.to_bits()),
        IpAddr::V6(ip) => (ip.to_bits() & !u128::from(u64::MAX)) | 1 << 63,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_household_is_one_client_and_its_neighbour_another() {
        let key = |text: &str| {
            key(text
                .parse()
                .unwrap_or(IpAddr::V4(std::net::Ipv4Addr::UNSPECIFIED)))
        };
        assert_eq!(
            key("2001:db8:1:2::1"),
            key("2001:db8:1:2:ffff:ffff:ffff:ffff")
        );
        assert_ne!(key("2001:db8:1:2::1"), key("2001:db8:1:3::1"));
        assert_ne!(key("192.0.2.1"), key("192.0.2.2"));
        assert_eq!(key("192.0.2.1"), key("::ffff:192.0.2.1"));
        assert_ne!(key("0.0.0.1"), key("::1"), "the families do not meet");
    }
}
