//! Every route, and what each request passes on its way.

use axum::Router;
use axum::middleware::from_fn_with_state;
use axum::routing::{get, post};
use tower_http::catch_panic::CatchPanicLayer;

use crate::app::App;
use crate::error::{Trouble, present};
use crate::handlers::api::{design, links, plans};
use crate::handlers::pages;

/// The whole service.
pub fn router(app: App) -> Router {
    let inner = Router::new()
        .merge(pages::routes())
        .nest("/api/v1", api())
        .fallback(async || Trouble::nothing_here())
        .method_not_allowed_fallback(async || Trouble::method())
        .layer(CatchPanicLayer::custom(panicked))
        .layer(from_fn_with_state(app.clone(), present));
    let whole = if app.config.base.is_empty() { inner } else { Router::new().nest(&app.config.base, inner) };
    whole.with_state(app)
}

fn api() -> Router<App> {
    Router::new()
        .route("/design", post(design::stateless))
        .route("/plans", post(plans::create))
        .route("/plans/{id}", get(plans::read).put(plans::replace))
        .route("/plans/{id}/revisions", get(plans::revisions))
        .route("/plans/{id}/revisions/{number}", get(plans::revision))
        .route("/plans/{id}/design", get(design::stored))
        .route("/plans/{id}/links", get(links::list))
        .route("/plans/{id}/links/{right}", post(links::replace).delete(links::revoke))
}

fn panicked(payload: Box<dyn std::any::Any + Send>) -> axum::response::Response {
    use axum::response::IntoResponse;
    let said = payload.downcast_ref::<&str>().copied().or_else(|| payload.downcast_ref::<String>().map(String::as_str));
    Trouble::broken("a handler panicked", &said.unwrap_or("without words")).into_response()
}
