//! Gives every refusal the form that its reader expects, whoever made it: a handler, a limit or the framework.

use axum::extract::Request;
use axum::http::header::{ACCEPT, CONTENT_LENGTH, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};

use super::{Trouble, Typed, page};
use crate::config::Config;

/// The media type of pages.
const HTML: HeaderValue = HeaderValue::from_static("text/html; charset=utf-8");

/// Whether a page's script sent a request, which asks for JSON where a browser asks for a page.
#[must_use]
pub fn asks_for_json(headers: &HeaderMap) -> bool {
    headers
        .get(ACCEPT)
        .is_some_and(|accept| accept.as_bytes() == b"application/json")
}

/// Who reads an answer, and so in which form a refusal is sent: problem details below `/api/` and to a page's script that
/// asks for JSON, a page elsewhere.
#[derive(Clone, Copy)]
pub struct Reader {
    is_program: bool,
}

impl Reader {
    /// Whoever sent a request.
    #[must_use]
    pub fn of(request: &Request) -> Self {
        Self {
            is_program: asks_for_json(request.headers())
                || request.uri().path().starts_with("/api/"),
        }
    }

    /// A refusal in this reader's form, with the form that may be sent again; any other answer as it is.
    pub async fn present(self, config: &Config, response: Response, typed: Typed) -> Response {
        let status = response.status();
        if !(status.is_client_error() || status.is_server_error()) {
            return response;
        }
        let Some(trouble) = response
            .extensions()
            .get::<Trouble>()
            .cloned()
            .or_else(|| of_framework(&response))
        else {
            return response;
        };
        let mut presented = if self.is_program {
            trouble.into_response()
        } else {
            as_page(&trouble, config, typed).await
        };
        for (name, value) in response.headers() {
            if name != CONTENT_TYPE
                && name != CONTENT_LENGTH
                && !presented.headers().contains_key(name)
            {
                presented.headers_mut().append(name, value.clone());
            }
        }
        presented
    }
}

async fn as_page(trouble: &Trouble, config: &Config, typed: Typed) -> Response {
    let again = if trouble.may_pass() {
        typed.pairs().await
    } else {
        Vec::new()
    };
    let mut response = (trouble.status, page::render(trouble, config, &again)).into_response();
    response.headers_mut().insert(CONTENT_TYPE, HTML);
    response.extensions_mut().insert(trouble.clone());
    response
}

/// A refusal of the framework's own, which is plain text; one of a page's own, which is HTML, stays as it is.
fn of_framework(response: &Response) -> Option<Trouble> {
    let plain = response
        .headers()
        .get(CONTENT_TYPE)
        .is_none_or(|kind| kind.as_bytes().starts_with(b"text/plain"));
    plain.then(|| match response.status() {
        StatusCode::NOT_FOUND => Trouble::nothing_here(),
        StatusCode::METHOD_NOT_ALLOWED => Trouble::method(),
        StatusCode::UNSUPPORTED_MEDIA_TYPE => Trouble::media_type(),
        // The layer that limits the time says so with this and nothing else.
        StatusCode::SERVICE_UNAVAILABLE => Trouble::took_too_long(),
        status if status.is_server_error() => Trouble::broken("answering", &status),
        status => Trouble::malformed("This request could not be read.").with_status(status),
    })
}
