//! What a person typed into a form that could not be taken just now: the page that says so holds it, to be sent again. A
//! browser that goes back to a page which no cache keeps may come back with empty boxes.

use axum::body::{Body, Bytes};
use axum::extract::{Form, FromRequest, Request};
use axum::http::HeaderMap;
use axum::http::header::{CONTENT_LENGTH, CONTENT_TYPE};

/// The kind of a page's form.
const FORM: &str = "application/x-www-form-urlencoded";
/// Largest form that is held, bytes: many times the longest that a page has.
const LARGEST: usize = 256 * 1024;
/// A secret that is never put into a page; a form that has one is typed anew.
const SECRET: &str = "password";

/// A form as it arrived; empty when there was none.
#[derive(Debug, Default)]
pub struct Typed(Bytes);

impl Typed {
    /// What arrived, if it was a page's form.
    #[must_use]
    pub fn of(headers: &HeaderMap, body: Bytes) -> Self {
        Self(if is_form(headers) && body.len() <= LARGEST {
            body
        } else {
            Bytes::new()
        })
    }

    /// Whether a request says that it brings a form which could be held.
    #[must_use]
    pub fn is_brought_by(headers: &HeaderMap) -> bool {
        let length = headers
            .get(CONTENT_LENGTH)
            .and_then(|length| length.to_str().ok()?.parse::<usize>().ok());
        is_form(headers) && length.is_some_and(|length| length <= LARGEST)
    }

    /// Names and what stands at them, in their order.
    pub async fn pairs(self) -> Vec<(String, String)> {
        let mut request = Request::new(Body::from(self.0));
        *request.method_mut() = axum::http::Method::POST;
        request
            .headers_mut()
            .insert(CONTENT_TYPE, axum::http::HeaderValue::from_static(FORM));
        let Ok(Form(pairs)) = Form::<Vec<(String, String)>>::from_request(request, &()).await
        else {
            return Vec::new();
        };
        if pairs.iter().any(|(name, _)| name == SECRET) {
            Vec::new()
        } else {
            pairs
        }
    }
}

fn is_form(headers: &HeaderMap) -> bool {
    headers
        .get(CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(FORM.as_bytes()))
}
