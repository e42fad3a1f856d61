//! The pages' routes.

use axum::Router;

use crate::app::App;

/// Every page.
pub fn routes() -> Router<App> {
    Router::new()
}
