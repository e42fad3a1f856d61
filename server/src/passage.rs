//! What each request passes on its way to its handler, and its answer on the way back.
//!
//! One layer, in which one thing follows the other: a layer of the router's is copied for each request with all that lie
//! below it, so that ten of them cost more than what they do.

use std::any::Any;
use std::panic::AssertUnwindSafe;

use axum::extract::{Request, State};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use futures_util::FutureExt;
use tracing::Instrument;

use crate::app::App;
use crate::client::{Client, note};
use crate::error::{Reader, Trouble, Typed};
use crate::guard::Kind;
use crate::journal::Entry;
use crate::{limits, security};

/// Passes a request on, and its answer back.
pub async fn passage(State(app): State<App>, mut request: Request, next: Next) -> Response {
    let client = note(&app.config, &mut request);
    let entry = Entry::begin(&app.watch, &client, &request);
    let mut response = presented(&app, &client, request, next)
        .instrument(entry.span())
        .await;
    security::add_headers(response.headers_mut());
    entry.end(&app.watch, &mut response);
    response
}

/// The answer in the form that its reader expects.
async fn presented(app: &App, client: &Client, request: Request, next: Next) -> Response {
    let reader = Reader::of(&request);
    let mut typed = Typed::default();
    let response = answer(app, client, request, next, &mut typed)
        .await
        .unwrap_or_else(IntoResponse::into_response);
    if response
        .extensions()
        .get::<Trouble>()
        .is_some_and(|trouble| trouble.code == "no_such_link")
    {
        let _ = app.guard.take(client, Kind::Guess);
    }
    reader.present(&app.config, response, typed).await
}

/// The handler's answer, if it comes to that.
async fn answer(
    app: &App,
    client: &Client,
    request: Request,
    next: Next,
    typed: &mut Typed,
) -> Result<Response, Trouble> {
    security::check_own_form(client, &request)?;
    let kind = match app.guard.admit(&app.watch, client, &request) {
        Ok(kind) => kind,
        Err(trouble) => {
            // Rare, and no burden to those that are admitted.
            *typed = Box::pin(held(app, request)).await;
            return Err(trouble);
        }
    };
    let _turn = app.guard.turn(kind).await?;
    let (request, body) = limits::whole(&app.config, request).await?;
    *typed = Typed::of(request.headers(), body);
    let _place = app.places.enter(&request)?;
    limits::in_time(AssertUnwindSafe(next.run(request)).catch_unwind())
        .await?
        .map_err(|payload| panicked(&*payload))
}

/// A form that comes no further than this.
async fn held(app: &App, request: Request) -> Typed {
    if !Typed::is_brought_by(request.headers()) {
        return Typed::default();
    }
    let whole = limits::whole(&app.config, request).await;
    whole.map_or_else(
        |_| Typed::default(),
        |(request, body)| Typed::of(request.headers(), body),
    )
}

fn panicked(payload: &(dyn Any + Send)) -> Trouble {
    let said = payload
        .downcast_ref::<&str>()
        .copied()
        .or_else(|| payload.downcast_ref::<String>().map(String::as_str));
    Trouble::broken("a handler panicked", &said.unwrap_or("without words"))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use axum::Router;
    use axum::body::{Body, to_bytes};
    use axum::http::StatusCode;
    use axum::middleware::from_fn_with_state;
    use axum::routing::get;
    use tower::ServiceExt;

    use super::*;
    use crate::config::{Config, Settings};
    use crate::store::Store;

    async fn panics() {
        panic!("a secret word")
    }

    #[tokio::test]
    async fn a_panic_becomes_an_answer_that_does_not_repeat_its_words() {
        let folder = tempfile::tempdir().unwrap();
        let config = Config::new(Settings {
            data: Some(folder.path().to_path_buf()),
            ..Settings::default()
        })
        .unwrap();
        let app = App::new(Store::open(&config.database).await.unwrap(), config);
        let routes = Router::new()
            .route("/api/", get(panics))
            .layer(from_fn_with_state(app, passage));
        let answer = routes
            .oneshot(Request::get("/api/").body(Body::empty()).unwrap())
            .await
            .unwrap();
        assert_eq!(answer.status(), StatusCode::INTERNAL_SERVER_ERROR);
        let body = String::from_utf8(to_bytes(answer.into_body(), 10_000).await.unwrap().to_vec())
            .unwrap();
        assert!(
            body.contains("\"broken\"") && !body.contains("secret"),
            "{body}"
        );
    }
}
