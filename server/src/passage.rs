//! What each request passes on its way to its handler, and its answer on the way back.
//!
//! One layer, in which one thing calls the next: a layer of the router's is copied for each request with all that lie
//! below it, so that ten of them cost more than what they do.

use axum::extract::{Request, State};
use axum::middleware::Next;
use axum::response::Response;

use crate::app::App;
use crate::error::present;
use crate::{client, crowd, guard, journal, limits, security};

/// Passes a request on, the outermost first.
pub async fn passage(State(app): State<App>, mut request: Request, next: Next) -> Response {
    let (app, client) = (&app, client::note(&app.config, &mut request));
    let client = &*client;
    let inner = move |request| crowd::places(&app.places, request, move |request| next.run(request));
    let limited = move |request| limits::limits(&app.config, request, inner);
    let guarded = move |request| guard::guard(&app.guard, &app.watch, client, request, limited);
    let own = move |request| security::own_forms(client, request, guarded);
    let presented = move |request| present(&app.config, request, own);
    let with_headers = move |request| security::headers(request, presented);
    journal::journal(&app.watch, client, request, with_headers).await
}
