//! The plans begun in this browser: a cookie that holds their edit links and that no script reads.

use axum_extra::extract::CookieJar;
use axum_extra::extract::cookie::{Cookie, SameSite};

use crate::app::App;
use crate::client::Client;
use crate::store::Secret;

const NAME: &str = "plans";
/// Most plans that a browser keeps; a cookie holds about a hundred secrets.
const MOST: usize = 40;

/// The secrets in the cookie, newest first.
pub fn secrets(jar: &CookieJar) -> Vec<String> {
    let text = jar.get(NAME).map(Cookie::value).unwrap_or_default();
    text.split('.')
        .filter(|secret| Secret::parse(secret).is_some())
        .take(MOST)
        .map(str::to_owned)
        .collect()
}

/// The cookie with one more, or with one in place of another.
pub fn with(app: &App, client: &Client, jar: CookieJar, new: &str, old: Option<&str>) -> CookieJar {
    let mut kept = secrets(&jar);
    kept.retain(|secret| secret != new && Some(secret.as_str()) != old);
    kept.insert(0, new.to_owned());
    kept.truncate(MOST);
    jar.add(cookie(app, client, kept.join(".")))
}

/// The cookie without one.
pub fn except(app: &App, client: &Client, jar: CookieJar, gone: &str) -> CookieJar {
    let mut kept = secrets(&jar);
    kept.retain(|secret| secret != gone);
    jar.add(cookie(app, client, kept.join(".")))
}

/// The cookie taken back.
pub fn without(app: &App, client: &Client, jar: CookieJar) -> CookieJar {
    jar.remove(cookie(app, client, String::new()))
}

/// It is sent over TLS only where the reader came over TLS.
fn cookie(app: &App, client: &Client, value: String) -> Cookie<'static> {
    let cookie = Cookie::build((NAME, value))
        .path(app.config.link("/"))
        .http_only(true)
        .same_site(SameSite::Lax);
    cookie.secure(client.https).permanent().build()
}
