//! What each request passes on its way to its handler, and its answer on the way back.
//!
//! The layers of [`around`] come first, as one: a layer of the router's is copied for each request with all that lie below
//! it. Then [`passage`] counts the client, bounds the body and gives every refusal the form that its reader expects.

use std::any::Any;
use std::sync::Arc;

use axum::extract::{MatchedPath, Request, State};
use axum::http::HeaderValue;
use axum::http::header::CONNECTION;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::app::App;
use crate::client::{Client, host, note};
use crate::error::{Reader, Trouble, Typed};
use crate::guard::RouteKind;
use crate::limits::{self, Arriving};
use crate::shares::Spent;
use crate::{journal, security, turns};

/// Passes a request on, and its answer back.
pub async fn passage(State(app): State<App>, mut request: Request, next: Next) -> Response {
    let client = note(&app.config, &mut request);
    let entry = journal::Entry::begin(&app, &client, &request);
    let compressed = security::may_be_compressed(request.extensions().get::<MatchedPath>());
    let mut response = presented(&app, &client, request, next).await;
    // To make a refusal shorter would take longer than to find it.
    if !compressed || response.status().is_client_error() {
        response.extensions_mut().insert(security::AsItIs);
    }
    entry.end(&app.watch, &response);
    app.guard.delay(&client, response.status()).await;
    response
}

/// The answer in the form that its reader expects.
async fn presented(app: &App, client: &Client, request: Request, next: Next) -> Response {
    let reader = Reader::of(&request);
    let (mut typed, mut arriving, mut whole) = (Typed::default(), None, true);
    let response = answer(app, client, request, next, &mut arriving)
        .await
        .unwrap_or_else(IntoResponse::into_response);
    if let Some(arriving) = arriving
        && response.status().is_client_error() | response.status().is_server_error()
    {
        // Rare, and no burden to those that are admitted.
        let trouble = response.extensions().get::<Trouble>();
        if trouble.is_some_and(|trouble| trouble.may_pass()) {
            typed = Box::pin(arriving.typed()).await;
        }
        whole = Box::pin(arriving.drop_rest(client, &app.bodies)).await;
    }
    let mut response = reader.present(&app.config, response, typed).await;
    if !whole {
        // What still comes would be taken for the next request.
        let close = HeaderValue::from_static("close");
        response.headers_mut().insert(CONNECTION, close);
    }
    response
}

/// The handler's answer, if it comes to that.
async fn answer(
    app: &App,
    client: &Client,
    request: Request,
    next: Next,
    arriving: &mut Option<Arc<Arriving>>,
) -> Result<Response, Trouble> {
    // Whoever watches the service must hear from it when it is full, and may not know by which name to ask.
    let watching = request.uri().path().starts_with("/health/");
    if !watching {
        host::check(
            &app.config,
            client.host.as_deref(),
            request.headers(),
            request.uri(),
        )?;
    }
    limits::without_a_body(&request)?;
    security::check_own_form(client, &request)?;
    let admitted = app.guard.admit(&app.watch, client, &request);
    let (request, body) = limits::bounded(&app.config, &app.bodies, client, request);
    arriving.clone_from(&body);
    let counted = admitted?;
    let _place = match app.places.one(client.circles()) {
        Ok(place) => Some(place),
        Err(_) if watching => None,
        Err(Spent::Yours) => return Err(Trouble::too_much_at_once()),
        Err(Spent::All) => return Err(Trouble::full()),
    };
    let response = turns::on_behalf(client, next.run(request)).await;
    if let Some(trouble) = body.and_then(|body| body.refused()) {
        return Err(trouble);
    }
    guess(app, client, counted, &response)?;
    Ok(response)
}

/// Counts an answer to a link that opened nothing as a guess.
fn guess(
    app: &App,
    client: &Client,
    counted: Option<RouteKind>,
    response: &Response,
) -> Result<(), Trouble> {
    let opened_nothing = response
        .extensions()
        .get::<Trouble>()
        .is_some_and(|trouble| ["no_such_link", "no_such_sheet"].contains(&trouble.code));
    if opened_nothing {
        app.guard.guessed(&app.watch, client, counted)
    } else {
        Ok(())
    }
}

/// The answer to a request whose handler panicked.
pub fn panicked(payload: Box<dyn Any + Send>) -> Response {
    let said = payload
        .downcast_ref::<&str>()
        .copied()
        .or_else(|| payload.downcast_ref::<String>().map(String::as_str));
    Trouble::broken("a handler panicked", &said.unwrap_or("without words")).into_response()
}
