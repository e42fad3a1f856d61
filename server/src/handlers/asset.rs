//! Style sheet, scripts and fonts, embedded in the binary.

use axum::extract::Path;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use data_encoding::HEXLOWER;

use super::api::precondition::{not_modified, with_etag};
use crate::assets::{Assets, EDITION};
use crate::error::Trouble;

const FOR_EVER: HeaderValue = HeaderValue::from_static("public, max-age=31536000, immutable");
const ASK_AGAIN: HeaderValue = HeaderValue::from_static("public, no-cache");

/// An asset by its name, with or without the edition before it.
pub async fn asset(Path(path): Path<String>, headers: HeaderMap) -> Result<Response, Trouble> {
    let dated = path
        .strip_prefix(EDITION.as_str())
        .and_then(|rest| rest.strip_prefix('/'));
    let file = Assets::get(dated.unwrap_or(&path)).or_else(|| Assets::get(path.split_once('/')?.1));
    let file = file.ok_or_else(Trouble::nothing_here)?;
    let etag = format!(
        "\"{}\"",
        HEXLOWER.encode(&file.metadata.sha256_hash()[..12])
    );
    let mut response = not_modified(&headers, &etag)
        .unwrap_or_else(|| with_etag(file.data.into_response(), &etag));
    response
        .headers_mut()
        .insert(CONTENT_TYPE, media_type(&path));
    response.headers_mut().insert(
        CACHE_CONTROL,
        if dated.is_some() { FOR_EVER } else { ASK_AGAIN },
    );
    Ok(response)
}

/// The icon where browsers look for it by themselves.
pub async fn icon(headers: HeaderMap) -> Result<Response, Trouble> {
    asset(Path("icon/favicon.ico".to_owned()), headers).await
}

fn media_type(path: &str) -> HeaderValue {
    HeaderValue::from_static(match path.rsplit_once('.').map(|(_, ending)| ending) {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("ico") => "image/vnd.microsoft.icon",
        Some("woff2") => "font/woff2",
        Some("ttf") => "font/ttf",
        Some("otf") => "font/otf",
        Some("txt") => "text/plain; charset=utf-8",
        Some("webmanifest") => "application/manifest+json",
        _ => "application/octet-stream",
    })
}
