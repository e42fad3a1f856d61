//! What keeps a plan to those who hold its link: headers on every answer, and forms taken from our own pages only.

use axum::extract::{MatchedPath, Request};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CONTENT_TYPE, COOKIE, HeaderName, ORIGIN, REFERER,
    REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS, X_FRAME_OPTIONS,
};
use axum::http::{Extensions, HeaderMap, HeaderValue, Method, Response, StatusCode, Version};
use tower_http::CompressionLevel;
use tower_http::compression::CompressionLayer;
use tower_http::set_header::SetResponseHeaderLayer;

use crate::client::Client;
use crate::config::network::is_host;
use crate::error::Trouble;

/// Style, scripts, fonts and pictures from here and in files only; no frame, no other site.
const POLICY: &str = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; \
                      manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Headers of every answer. An address may hold a secret, so that it goes to no other site, no index and no cache.
static HEADERS: [(HeaderName, &str); 8] = [
    (CONTENT_SECURITY_POLICY, POLICY),
    (REFERRER_POLICY, "same-origin"),
    (X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (X_FRAME_OPTIONS, "DENY"),
    (
        HeaderName::from_static("cross-origin-opener-policy"),
        "same-origin",
    ),
    (
        HeaderName::from_static("cross-origin-resource-policy"),
        "same-origin",
    ),
    (
        HeaderName::from_static("permissions-policy"),
        "camera=(), geolocation=(), microphone=()",
    ),
    (HeaderName::from_static("x-robots-tag"), "noindex, nofollow"),
];

/// Puts the headers on an answer. As eight layers they would be copied eight times for each request, and the one layer for
/// many headers takes only bodies that can be copied.
#[must_use]
pub fn with_headers<B>(mut answer: Response<B>) -> Response<B> {
    for (name, value) in &HEADERS {
        answer
            .headers_mut()
            .insert(name, HeaderValue::from_static(value));
    }
    answer
}

/// What says nothing about caching is not cached.
#[must_use]
pub fn uncached() -> SetResponseHeaderLayer<HeaderValue> {
    SetResponseHeaderLayer::if_not_present(CACHE_CONTROL, HeaderValue::from_static("no-store"))
}

/// An answer that is not compressed.
#[derive(Clone, Copy)]
pub struct AsItIs;

/// Routes whose answers may show a secret that their own address does not hold, out of a cookie or just made. Their length
/// must not follow from it, beside words of somebody else's choice (the attack is known as BREACH). Every other answer with
/// a secret in it can be asked for only by whoever has that secret already.
const SHOW_OTHERS: [&str; 8] = [
    "/",
    "/new",
    "/recover",
    "/organiser",
    "/organiser/plan",
    "/organiser/invitations",
    "/p/{secret}/links",
    "/api/v1/plans",
];

/// Whether the answers of a route may be made shorter.
#[must_use]
pub fn may_be_compressed(route: Option<&MatchedPath>) -> bool {
    route.is_some_and(|route| {
        let route = route.as_str();
        !SHOW_OTHERS.contains(&route) && !route.ends_with("/recovery") && !route.contains("/links/")
    })
}

/// Which answers are made shorter, by status, version, headers and marks.
type Which = fn(StatusCode, Version, &HeaderMap, &Extensions) -> bool;

/// Makes text shorter on its way, by the quickest means: a page takes a millisecond and comes out at a sixth.
#[must_use]
pub fn compression() -> CompressionLayer<Which> {
    CompressionLayer::new()
        .quality(CompressionLevel::Fastest)
        .compress_when(is_text as Which)
}

/// The same for the one page that holds a whole day, opened on a telephone in the field: a few milliseconds more for a third
/// fewer bytes. What it has packed the other leaves as it is. A refusal is written anew for its reader further out, so that
/// it must not be packed before.
#[must_use]
pub fn tight_compression() -> CompressionLayer<Which> {
    CompressionLayer::new()
        .quality(CompressionLevel::Default)
        .compress_when(is_given as Which)
}

fn is_given(
    status: StatusCode,
    version: Version,
    headers: &HeaderMap,
    extensions: &Extensions,
) -> bool {
    status.is_success() && is_text(status, version, headers, extensions)
}

fn is_text(_: StatusCode, _: Version, headers: &HeaderMap, extensions: &Extensions) -> bool {
    let kind = headers
        .get(CONTENT_TYPE)
        .and_then(|kind| kind.to_str().ok())
        .unwrap_or_default();
    extensions.get::<AsItIs>().is_none()
        && (kind.starts_with("text/") || kind.contains("json") || kind.contains("svg"))
}

/// Refuses a form that another site made a browser send. The interface for programs takes its secret from a header that
/// a form cannot set.
///
/// # Errors
/// Such a form.
pub fn check_own_form(client: &Client, request: &Request) -> Result<(), Trouble> {
    let changes = !matches!(
        *request.method(),
        Method::GET | Method::HEAD | Method::OPTIONS
    );
    let is_foreign =
        changes && !request.uri().path().starts_with("/api/") && !is_own(request.headers(), client);
    if is_foreign {
        Err(Trouble::other_site())
    } else {
        Ok(())
    }
}

/// Whether a request comes from our own page, as far as the browser says. A program that says nothing is no browser; one
/// that says nothing and brings our cookies, or was let in as an organiser by a proxy, is a browser that hides something.
fn is_own(headers: &HeaderMap, client: &Client) -> bool {
    let (https, here) = (client.https, client.host.as_deref());
    let text = |name: HeaderName| headers.get(name).and_then(|value| value.to_str().ok());
    let origin = text(ORIGIN);
    if headers.contains_key(ORIGIN) && !origin.is_some_and(is_origin) {
        return false;
    }
    if let Some(site) = text(HeaderName::from_static("sec-fetch-site")) {
        return matches!(site, "same-origin" | "none");
    }
    let of_here = |address: &str| {
        let (scheme, usual) = if https {
            ("https", ":443")
        } else {
            ("http", ":80")
        };
        let named = address
            .split_once("://")
            .filter(|(named, _)| named.eq_ignore_ascii_case(scheme))
            .and_then(|(_, rest)| rest.split('/').next());
        let bare = |host: &str| {
            host.strip_suffix(usual)
                .unwrap_or(host)
                .to_ascii_lowercase()
        };
        named
            .zip(here)
            .is_some_and(|(named, here)| bare(named) == bare(here))
    };
    match (origin, text(REFERER)) {
        (Some(origin), _) => of_here(origin),
        (None, Some(page)) => of_here(page),
        (None, None) => !headers.contains_key(COOKIE) && client.organiser.is_none(),
    }
}

/// Whether a text can be what a browser calls an origin: a scheme and a host, and nothing after them (RFC 6454, 7).
fn is_origin(text: &str) -> bool {
    text.split_once("://")
        .is_some_and(|(scheme, host)| matches!(scheme, "http" | "https") && is_host(host))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn own(pairs: &[(&'static str, &'static str)]) -> bool {
        by(None, false, pairs)
    }

    fn by(organiser: Option<&str>, https: bool, pairs: &[(&'static str, &'static str)]) -> bool {
        let headers: HeaderMap = pairs
            .iter()
            .map(|&(name, value)| {
                (
                    HeaderName::from_static(name),
                    HeaderValue::from_static(value),
                )
            })
            .collect();
        let host = headers.get("host").and_then(|host| host.to_str().ok());
        let client = Client {
            address: std::net::Ipv4Addr::LOCALHOST.into(),
            unnamed: false,
            https,
            host: host.map(str::to_owned),
            hidden: false,
            uncounted: false,
            organiser: organiser.map(str::to_owned),
        };
        is_own(&headers, &client)
    }

    #[test]
    fn a_form_of_another_site_is_not_ours() {
        assert!(own(&[]));
        assert!(own(&[("sec-fetch-site", "same-origin")]));
        assert!(own(&[
            ("origin", "http://pier.example:8080"),
            ("host", "pier.example:8080")
        ]));
        assert!(!own(&[
            ("sec-fetch-site", "cross-site"),
            ("origin", "http://a"),
            ("host", "a")
        ]));
        assert!(!own(&[("sec-fetch-site", "same-site")]));
        assert!(!own(&[
            ("origin", "http://other.example"),
            ("host", "pier.example")
        ]));
        assert!(!own(&[("origin", "null"), ("host", "pier.example")]));
        assert!(!own(&[
            ("origin", "http://pier.example.evil.example"),
            ("host", "pier.example")
        ]));
    }

    #[test]
    fn an_origin_is_a_scheme_and_a_host_of_ours_and_nothing_more() {
        let host = ("host", "pier.example");
        for odd in [
            "http://pier.example/",
            "http://pier.example/new",
            "https://pier.example",
            "ftp://pier.example",
            "pier.example",
            "http://me@pier.example",
        ] {
            assert!(!own(&[("origin", odd), host]), "{odd}");
        }
        assert!(by(None, true, &[("origin", "https://pier.example"), host]));
        assert!(!by(None, true, &[("origin", "http://pier.example"), host]));
        assert!(own(&[
            ("origin", "http://pier.example"),
            ("host", "pier.example:80")
        ]));
        let same = ("sec-fetch-site", "same-origin");
        assert!(
            !own(&[same, ("origin", "http://pier.example/new"), host]),
            "no browser says so"
        );
        assert!(
            own(&[same, ("origin", "https://pier.example"), host]),
            "behind a proxy with TLS that was not stated, the browser itself knows best"
        );
    }

    #[test]
    fn a_browser_that_hides_where_a_form_comes_from_is_not_believed() {
        assert!(!own(&[("cookie", "plans=x"), ("host", "pier.example")]));
        assert!(own(&[
            ("cookie", "plans=x"),
            ("referer", "http://pier.example/new"),
            ("host", "pier.example")
        ]));
        assert!(
            !by(Some("ann"), false, &[("host", "pier.example")]),
            "whom a proxy let in"
        );
        assert!(!own(&[
            ("referer", "https://other.example/"),
            ("host", "pier.example")
        ]));
    }
}
