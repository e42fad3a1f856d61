//! The name of whoever entered something last in this browser: a cookie, so that it need not be typed at every task.

use axum_extra::extract::CookieJar;
use axum_extra::extract::cookie::{Cookie, SameSite};
use data_encoding::BASE64URL_NOPAD;
use stillground::record::entry::LONGEST_NAME;
use stillground::text::fit;

use crate::app::App;
use crate::client::Client;

const NAME: &str = "who";

/// The name; empty when there is none.
pub fn name(jar: &CookieJar) -> String {
    let text = jar
        .get(NAME)
        .and_then(|cookie| BASE64URL_NOPAD.decode(cookie.value().as_bytes()).ok());
    let text = text
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default();
    fit(&text).chars().take(LONGEST_NAME).collect()
}

/// The cookie with another name.
pub fn with(app: &App, client: &Client, jar: CookieJar, name: &str) -> CookieJar {
    let value = BASE64URL_NOPAD.encode(name.trim().as_bytes());
    jar.add(
        Cookie::build((NAME, value))
            .path(app.config.link("/"))
            .http_only(true)
            .same_site(SameSite::Lax)
            .secure(client.https)
            .permanent()
            .build(),
    )
}
