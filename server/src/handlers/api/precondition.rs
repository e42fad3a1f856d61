//! ETag, If-Match and If-None-Match, RFC 9110 section 13.

use axum::http::header::{ETAG, IF_MATCH, IF_NONE_MATCH};
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};

use crate::error::Trouble;

/// The tag of a plan's revision.
#[must_use]
pub fn etag(revision: u32) -> String {
    format!("\"{revision}\"")
}

/// The answer with its tag.
#[must_use]
pub fn with_etag(mut response: Response, etag: &str) -> Response {
    if let Ok(value) = HeaderValue::from_str(etag) {
        response.headers_mut().insert(ETAG, value);
    }
    response
}

/// "Not modified", when the reader has this tag already.
#[must_use]
pub fn not_modified(headers: &HeaderMap, etag: &str) -> Option<Response> {
    // Weak comparison: a W/ before the tag does not matter here.
    let known = tags(headers, IF_NONE_MATCH)
        .any(|tag| tag == "*" || tag.strip_prefix("W/").unwrap_or(tag) == etag);
    known.then(|| with_etag(StatusCode::NOT_MODIFIED.into_response(), etag))
}

/// Whether a save replaces the revision that stands: If-Match names it.
///
/// # Errors
/// No If-Match.
pub fn replaces(headers: &HeaderMap, current: u32) -> Result<bool, Trouble> {
    if !headers.contains_key(IF_MATCH) {
        return Err(Trouble::no_precondition());
    }
    let tag = etag(current);
    Ok(tags(headers, IF_MATCH).any(|named| named == "*" || named == tag))
}

/// The revision that If-Match names, where it names one and nothing else.
#[must_use]
pub fn one_revision(headers: &HeaderMap) -> Option<u32> {
    let mut tags = tags(headers, IF_MATCH);
    let (Some(tag), None) = (tags.next(), tags.next()) else {
        return None;
    };
    tag.trim_matches('"')
        .parse()
        .ok()
        .filter(|revision| etag(*revision) == tag)
}

fn tags(headers: &HeaderMap, name: HeaderName) -> impl Iterator<Item = &str> {
    headers
        .get_all(name)
        .into_iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(','))
        .map(str::trim)
}
