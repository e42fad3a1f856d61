//! Limits of size and time, the same for every route.
//!
//! A body is read when its handler asks for it, after route and link were looked at and no turn at anything is held; what
//! has arrived counts against what may be held at once, for one client and for all.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{MatchedPath, Request};
use axum::http::header::{CONTENT_LENGTH, EXPECT};
use axum::http::{HeaderMap, Method};
use futures_util::stream::once;
use http_body_util::BodyExt;
use stillground::trace::MOST_BYTES;
use tokio::sync::Semaphore;

use crate::client::Client;
use crate::config::Config;
use crate::error::{Trouble, Typed};
use crate::shares::{Share, Shares, Spent};

/// Largest body taken, bytes: a plan is a few thousand, a form less.
pub const LARGEST_BODY: usize = 1024 * 1024;
/// How much of a larger body is read and thrown away, so that its sender hears why; beyond it the line is cut.
const READ_AND_DROPPED: usize = 64 * LARGEST_BODY;
/// Longest pause of a body that is thrown away.
const LONGEST_PAUSE: Duration = Duration::from_secs(1);
/// How much of a body is taken at once, whoever else sends: a plan or a form is not longer.
const AT_ONCE: usize = 64 * 1024;
/// Parts beyond it, of some sixty kilobytes, that are taken at the same time of all bodies together, and how long each keeps
/// its place: a hundred megabytes a second at most, so that whoever sends all they can leaves the processors to others.
const PARTS: usize = 2;
const EACH_PART: Duration = Duration::from_millis(1);
/// Bodies that are thrown away at once, in all and of one client; beyond it the line is closed with the answer.
const MOST_DROPPED: usize = 32;
const MOST_DROPPED_OF_ONE: usize = 2;
/// Longest time for a body to arrive.
const SLOWEST_BODY: Duration = Duration::from_secs(20);
/// The routes whose bodies are larger: a photograph from a place with a poor connection.
const PHOTOGRAPHS: [&str; 2] = ["/p/{secret}/record/photos", "/api/v1/plans/{id}/photos"];
/// The routes whose body is a table of samples, by itself or in a form.
const TRACES: [&str; 2] = ["/api/v1/trace", "/p/{secret}/commissioning/trace"];
/// Longest time for a photograph to arrive.
const SLOWEST_PHOTO: Duration = Duration::from_secs(180);
/// What stands round a photograph in its form, bytes.
const ROUND_A_PHOTO: usize = 64 * 1024;
/// Bytes of bodies that are held at once for one client, two photographs at least, and for all.
const HELD_FOR_ONE: usize = 16 * LARGEST_BODY;
const HELD_FOR_ALL: usize = 3 * HELD_FOR_ONE;
/// Longest time for an answer; designing waits its turn within it.
pub const LONGEST_ANSWER: Duration = Duration::from_secs(30);

/// What all bodies together may take.
pub struct Bodies {
    /// Bytes that are held.
    pub held: Shares,
    /// Bodies that are read and thrown away.
    dropped: Shares,
    parts: Arc<Semaphore>,
}

impl Bodies {
    /// As the configuration has it.
    #[must_use]
    pub fn new(config: &Config) -> Self {
        let one = HELD_FOR_ONE
            .max(2 * (config.largest_photo + ROUND_A_PHOTO))
            .max(MOST_BYTES + LARGEST_BODY);
        Self {
            held: Shares::new(HELD_FOR_ALL.max(2 * one), one),
            dropped: Shares::new(MOST_DROPPED, MOST_DROPPED_OF_ONE),
            parts: Arc::new(Semaphore::new(PARTS)),
        }
    }
}

/// Waits until the next part of a long body may be taken.
async fn next_part(parts: &Semaphore, arrived: usize) {
    if arrived > AT_ONCE {
        let _place = parts.acquire().await;
        tokio::time::sleep(EACH_PART).await;
    } else {
        // A line that always has more would keep its thread, and all who wait behind it.
        tokio::task::yield_now().await;
    }
}

/// Refuses a body where none belongs: nothing would read it.
///
/// # Errors
/// Such a body.
pub fn without_a_body(request: &Request) -> Result<(), Trouble> {
    let reads = matches!(*request.method(), Method::GET | Method::HEAD);
    if reads && !request.body().is_end_stream() {
        Err(Trouble::unasked_body())
    } else {
        Ok(())
    }
}

/// A request's body while it is awaited, read at most once.
pub struct Arriving {
    headers: HeaderMap,
    bounds: Bounds,
    state: tokio::sync::Mutex<State>,
    refused: Mutex<Option<Trouble>>,
    parts: Arc<Semaphore>,
}

/// How much may arrive, and in which time.
#[derive(Clone, Copy)]
struct Bounds {
    most: usize,
    slowest: Duration,
    is_photo: bool,
}

struct State {
    body: Option<Body>,
    whole: Bytes,
    share: Share,
}

/// The request with a body that is read, within its limits, when it is asked for.
#[must_use]
pub fn bounded(
    config: &Config,
    bodies: &Bodies,
    client: &Client,
    request: Request,
) -> (Request, Option<Arc<Arriving>>) {
    if request.body().is_end_stream() {
        return (request, None);
    }
    let (parts, body) = request.into_parts();
    let route = parts.extensions.get::<MatchedPath>();
    let route = route.map_or("", MatchedPath::as_str);
    let is_photo = PHOTOGRAPHS.contains(&route);
    let (most, slowest) = if is_photo {
        (config.largest_photo + ROUND_A_PHOTO, SLOWEST_PHOTO)
    } else if route == TRACES[0] {
        (MOST_BYTES, SLOWEST_PHOTO)
    } else if route == TRACES[1] {
        (MOST_BYTES + ROUND_A_PHOTO, SLOWEST_PHOTO)
    } else {
        (LARGEST_BODY, SLOWEST_BODY)
    };
    let arriving = Arc::new(Arriving {
        headers: parts.headers.clone(),
        bounds: Bounds {
            most,
            slowest,
            is_photo,
        },
        state: tokio::sync::Mutex::new(State {
            body: Some(body),
            whole: Bytes::new(),
            share: bodies.held.open(client.circles()),
        }),
        refused: Mutex::new(None),
        parts: Arc::clone(&bodies.parts),
    });
    let reader = Arc::clone(&arriving);
    let body = Body::from_stream(once(async move {
        reader.whole().await.map_err(|trouble| trouble.code)
    }));
    (Request::from_parts(parts, body), Some(arriving))
}

impl Arriving {
    /// The whole body.
    async fn whole(&self) -> Result<Bytes, Trouble> {
        let mut state = self.state.lock().await;
        let Some(body) = state.body.take() else {
            return Ok(state.whole.clone());
        };
        let Bounds {
            most,
            slowest,
            is_photo,
        } = self.bounds;
        let read = read(&self.headers, body, most, &mut state.share, &self.parts);
        let read = match tokio::time::timeout(slowest, read).await {
            Ok(Err(trouble)) if is_photo && trouble.code == "too_large" => {
                Err(Trouble::photo_too_large(most - ROUND_A_PHOTO))
            }
            Ok(read) => read,
            Err(_) => Err(Trouble::too_slow()),
        };
        match read {
            Ok(whole) => {
                state.whole = whole.clone();
                Ok(whole)
            }
            Err(trouble) => {
                *self.refused.lock().unwrap_or_else(PoisonError::into_inner) =
                    Some(trouble.clone());
                Err(trouble)
            }
        }
    }

    /// Why it was not read to its end, if it was not: the handler knows only that it broke off.
    pub fn refused(&self) -> Option<Trouble> {
        self.refused
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take()
    }

    /// Reads what still comes of a body that nobody asked for, and throws it away: whoever is still sending would see a
    /// broken line and not why it was refused. Nothing of it is kept, and who pauses is answered. One who sends several at
    /// once has no place for the third: it is not read, and its line is to be closed with the answer. Whether all came.
    pub async fn drop_rest(&self, client: &Client, bodies: &Bodies) -> bool {
        let Some(mut body) = self.state.lock().await.body.take() else {
            return true;
        };
        if self.headers.contains_key(EXPECT) || stated(&self.headers) > READ_AND_DROPPED as u64 {
            return false;
        }
        let Ok(_place) = bodies.dropped.one(client.circles()) else {
            return false;
        };
        let mut dropped = 0_usize;
        let all = async {
            while dropped <= READ_AND_DROPPED {
                match tokio::time::timeout(LONGEST_PAUSE, body.frame()).await {
                    Ok(Some(Ok(frame))) => dropped += frame.data_ref().map_or(0, Bytes::len),
                    Ok(None) => return true,
                    _ => return false,
                }
                next_part(&self.parts, dropped).await;
            }
            false
        };
        let all = tokio::time::timeout(self.bounds.slowest, all).await;
        all.unwrap_or(false)
    }

    /// A page's form that arrived, or that still arrives, for the page that says why it could not be taken.
    pub async fn typed(&self) -> Typed {
        if !Typed::is_brought_by(&self.headers) {
            return Typed::default();
        }
        let whole = self.whole().await;
        whole.map_or_else(
            |_| Typed::default(),
            |whole| Typed::of(&self.headers, whole),
        )
    }
}

/// The length that a body is said to have; nought where nothing is said.
fn stated(headers: &HeaderMap) -> u64 {
    headers
        .get(CONTENT_LENGTH)
        .and_then(|length| length.to_str().ok()?.parse().ok())
        .unwrap_or(0)
}

async fn read(
    headers: &HeaderMap,
    mut body: Body,
    most: usize,
    share: &mut Share,
    parts: &Semaphore,
) -> Result<Bytes, Trouble> {
    if stated(headers) > most as u64 && headers.contains_key(EXPECT) {
        return Err(Trouble::too_large(most));
    }
    let (mut kept, mut arrived) = (Vec::new(), 0_usize);
    while let Some(frame) = body.frame().await {
        let frame = frame.map_err(|_| Trouble::malformed("The body broke off before its end."))?;
        let Ok(data) = frame.into_data() else {
            continue;
        };
        arrived = arrived.saturating_add(data.len());
        match arrived {
            _ if arrived <= most => {
                share.grow(data.len()).map_err(|spent| match spent {
                    Spent::Yours => Trouble::too_much_at_once(),
                    Spent::All => Trouble::full(),
                })?;
                if kept.is_empty() {
                    // What would be copied each time that it grows; memory that nothing is written to is not taken.
                    let stated = usize::try_from(stated(headers)).unwrap_or(0);
                    kept.reserve_exact(stated.min(LARGEST_BODY));
                }
                kept.extend_from_slice(&data);
            }
            _ if arrived > READ_AND_DROPPED => return Err(Trouble::too_large(most)),
            _ => kept = Vec::new(),
        }
        next_part(parts, arrived).await;
    }
    if arrived > most {
        Err(Trouble::too_large(most))
    } else {
        Ok(Bytes::from(kept))
    }
}

#[cfg(test)]
mod tests {
    use tokio::time::Instant;

    use super::*;

    /// A thousand parts of sixty kilobytes at two in a millisecond: half a second at least.
    #[tokio::test(start_paused = true)]
    async fn long_bodies_leave_the_processors_to_others_and_short_ones_do_not_wait() {
        let parts = Arc::new(Semaphore::new(PARTS));
        let begun = Instant::now();
        let mut long = tokio::task::JoinSet::new();
        for _ in 0..1000 {
            let parts = Arc::clone(&parts);
            long.spawn(async move { next_part(&parts, AT_ONCE + 1).await });
        }
        tokio::task::yield_now().await;
        next_part(&parts, AT_ONCE).await;
        assert_eq!(begun.elapsed(), Duration::ZERO);
        while long.join_next().await.is_some() {}
        assert!(begun.elapsed() >= Duration::from_millis(500));
    }
}
