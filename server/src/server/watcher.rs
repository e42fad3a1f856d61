//! The port at which a watcher reads figures.

mod gauges;

use axum::Router;
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use axum::routing::get;

use crate::app::App;

/// What stands at the watcher's address: the figures and nothing else.
pub fn router(app: App) -> Router {
    let figures = async move || {
        let text = app.watch.text(app.store.ping().await.is_ok()) + &gauges::text(&app);
        (
            [(CONTENT_TYPE, "text/plain; version=0.0.4; charset=utf-8")],
            text,
        )
            .into_response()
    };
    Router::new().route("/metrics", get(figures))
}
