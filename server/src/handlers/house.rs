//! The house's own colours, as a style sheet: the content security policy takes none from within a page.

use axum::extract::{Path, State};
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};

use super::api::precondition::{not_modified, with_etag};
use crate::app::App;
use crate::error::Trouble;

/// The style sheet; under its own edition it may be kept for ever, under an older one it is asked about again.
pub async fn style(
    State(app): State<App>,
    Path(asked): Path<String>,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let look = app
        .config
        .house
        .look
        .as_ref()
        .filter(|_| asked.ends_with(".css"))
        .ok_or_else(Trouble::nothing_here)?;
    let etag = format!("\"{}\"", look.edition);
    let mut response = not_modified(&headers, &etag)
        .unwrap_or_else(|| with_etag(look.sheet.clone().into_response(), &etag));
    let current = asked.strip_suffix(".css") == Some(look.edition.as_str());
    let kept = if current {
        "public, max-age=31536000, immutable"
    } else {
        "public, no-cache"
    };
    response.headers_mut().insert(
        CONTENT_TYPE,
        HeaderValue::from_static("text/css; charset=utf-8"),
    );
    response
        .headers_mut()
        .insert(CACHE_CONTROL, HeaderValue::from_static(kept));
    Ok(response)
}
