//! Limits of size and time, the same for every route.

use std::time::Duration;

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{MatchedPath, Request};
use axum::http::HeaderMap;
use axum::http::header::{CONTENT_LENGTH, EXPECT};
use http_body_util::BodyExt;

use crate::config::Config;
use crate::error::Trouble;

/// Largest body taken, bytes: a plan is a few thousand, a form less.
pub const LARGEST_BODY: usize = 1024 * 1024;
/// How much of a larger body is read and thrown away, so that its sender hears why; beyond it the line is cut.
const READ_AND_DROPPED: usize = 64 * LARGEST_BODY;
/// Longest time for a body to arrive.
const SLOWEST_BODY: Duration = Duration::from_secs(20);
/// The routes whose bodies are larger: a photograph from a place with a poor connection.
const PHOTOGRAPHS: [&str; 2] = ["/p/{secret}/record/photos", "/api/v1/plans/{id}/photos"];
/// Longest time for a photograph to arrive.
const SLOWEST_PHOTO: Duration = Duration::from_secs(180);
/// What stands round a photograph in its form, bytes.
const ROUND_A_PHOTO: usize = 64 * 1024;
/// Longest time for an answer; designing waits its turn within it.
const LONGEST_ANSWER: Duration = Duration::from_secs(30);

/// The request and its whole body, read within its limits before the handler is asked.
///
/// # Errors
/// A body that is too large, too slow or broken off.
pub async fn whole(config: &Config, request: Request) -> Result<(Request, Bytes), Trouble> {
    if request.body().is_end_stream() {
        return Ok((request, Bytes::new()));
    }
    let (parts, body) = request.into_parts();
    let is_photo = parts
        .extensions
        .get::<MatchedPath>()
        .is_some_and(|route| PHOTOGRAPHS.contains(&route.as_str()));
    let (most, slowest) = if is_photo {
        (config.largest_photo + ROUND_A_PHOTO, SLOWEST_PHOTO)
    } else {
        (LARGEST_BODY, SLOWEST_BODY)
    };
    let bytes = match tokio::time::timeout(slowest, read(&parts.headers, body, most)).await {
        Ok(Err(trouble)) if is_photo && trouble.code == "too_large" => {
            return Err(Trouble::photo_too_large(config.largest_photo));
        }
        Ok(read) => read?,
        Err(_) => return Err(Trouble::too_slow()),
    };
    Ok((Request::from_parts(parts, Body::from(bytes.clone())), bytes))
}

/// Gives up on an answer that takes too long.
///
/// # Errors
/// That it did.
pub async fn in_time<T>(answer: impl Future<Output = T>) -> Result<T, Trouble> {
    tokio::time::timeout(LONGEST_ANSWER, answer)
        .await
        .map_err(|_| Trouble::took_too_long())
}

async fn read(headers: &HeaderMap, mut body: Body, most: usize) -> Result<Bytes, Trouble> {
    let stated = headers
        .get(CONTENT_LENGTH)
        .and_then(|length| length.to_str().ok()?.parse::<u64>().ok());
    if stated.is_some_and(|length| length > most as u64) && headers.contains_key(EXPECT) {
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
            _ if arrived <= most => kept.extend_from_slice(&data),
            _ if arrived > READ_AND_DROPPED => return Err(Trouble::too_large(most)),
            _ => kept = Vec::new(),
        }
    }
    if arrived > most {
        Err(Trouble::too_large(most))
    } else {
        Ok(Bytes::from(kept))
    }
}
