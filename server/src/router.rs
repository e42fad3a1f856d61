//! Every route, and what each request passes on its way.

use std::any::Any;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::http::header::{AUTHORIZATION, COOKIE, SET_COOKIE};
use axum::http::{StatusCode, Uri};
use axum::middleware::from_fn_with_state;
use axum::response::Response;
use axum::routing::{Route, get, post};
use tower::{Layer, ServiceBuilder, ServiceExt};
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::normalize_path::NormalizePathLayer;
use tower_http::request_id::{PropagateRequestIdLayer, SetRequestIdLayer};
use tower_http::sensitive_headers::SetSensitiveHeadersLayer;
use tower_http::timeout::TimeoutLayer;

use crate::app::App;
use crate::error::Trouble;
use crate::handlers::api::{describe, design, entries, links, photos, plans, recovery, trace};
use crate::handlers::{asset, health, house, pages};
use crate::limits::LONGEST_ANSWER;
use crate::passage::{panicked, passage};
use crate::prints::Print;
use crate::{journal, security};

/// The whole service, under its base path.
pub fn router(app: App) -> Router {
    let base = app.config.base.clone();
    let routes = Router::new()
        .merge(pages::routes())
        .nest("/api/v1", api())
        .route("/static/{*path}", get(asset::asset))
        .route("/favicon.ico", get(asset::icon))
        .route("/house/{edition}", get(house::style))
        .route("/health/live", get(health::live))
        .route("/health/ready", get(health::ready))
        .fallback(async || Trouble::nothing_here())
        .method_not_allowed_fallback(async || Trouble::method())
        .layer(around(&app))
        .with_state(app);
    under(base, routes)
}

/// What each request passes, the outermost first, as one layer.
fn around(
    app: &App,
) -> impl tower::Layer<
    Route,
    Service: tower::Service<
        Request,
        Response: axum::response::IntoResponse + 'static,
        Error: Into<std::convert::Infallible> + 'static,
        Future: Send + 'static,
    > + Clone
                 + Send
                 + Sync
                 + 'static,
>
+ Clone
+ Send
+ Sync
+ 'static
+ use<> {
    ServiceBuilder::new()
        // A request is named here, and by nobody else.
        .map_request(|mut request: Request| {
            request.headers_mut().remove(journal::REQUEST_ID);
            request
        })
        .layer(SetSensitiveHeadersLayer::new([
            AUTHORIZATION,
            COOKIE,
            SET_COOKIE,
        ]))
        .layer(SetRequestIdLayer::new(journal::REQUEST_ID, journal::Names))
        .layer(PropagateRequestIdLayer::new(journal::REQUEST_ID))
        .layer(journal::journal())
        .map_response(security::with_headers)
        .layer(security::uncached())
        .layer(security::compression())
        .layer(from_fn_with_state(app.clone(), passage))
        .layer(TimeoutLayer::with_status_code(
            StatusCode::SERVICE_UNAVAILABLE,
            LONGEST_ANSWER,
        ))
        .layer(CatchPanicLayer::custom(
            panicked as fn(Box<dyn Any + Send>) -> Response,
        ))
}

fn api() -> Router<App> {
    Router::new()
        .route("/design", post(design::stateless))
        .route("/options", post(design::options))
        // As large as a table may be is its route's own bound, looked at before the handler is asked.
        .route(
            "/trace",
            post(trace::trace).layer(DefaultBodyLimit::disable()),
        )
        .route("/plans", post(plans::create))
        .route("/plans/{id}", get(plans::read).put(plans::replace))
        .route("/plans/{id}/revisions", get(plans::revisions))
        .route("/plans/{id}/revisions/{number}", get(plans::revision))
        .route("/plans/{id}/design", get(design::stored))
        .route("/plans/{id}/plan.pdf", design::sheets(Print::Plan))
        .route("/plans/{id}/file.pdf", get(design::file_pdf))
        .route("/plans/{id}/template.pdf", design::sheets(Print::Template))
        .route("/plans/{id}/template.dxf", get(design::template_dxf))
        .route("/plans/{id}/drawings/{file}", get(design::drawing))
        .route("/plans/{id}/materials.csv", get(design::materials))
        .route("/plans/{id}/schedule.ics", get(design::schedule))
        .route(
            "/plans/{id}/entries",
            get(entries::list).post(entries::enter),
        )
        // How large a photograph may be is a setting, and looked at before the handler is asked.
        .route(
            "/plans/{id}/photos",
            get(photos::list)
                .post(photos::keep)
                .layer(DefaultBodyLimit::disable()),
        )
        .route("/plans/{id}/photos/{photo}", get(photos::show))
        .route("/openapi.json", get(describe::describe))
        .route("/plans/{id}/links", get(links::list))
        .route(
            "/plans/{id}/links/{right}",
            post(links::replace).delete(links::revoke),
        )
        .route("/plans/{id}/recovery", post(recovery::make))
        .route("/recover", post(recovery::recover))
}

/// The routes below a base path. A proxy may pass the path on or take it off: both are answered.
fn under(base: String, routes: Router) -> Router {
    // A slash at an address's end leads where the address leads.
    let routes = NormalizePathLayer::trim_trailing_slash().layer(routes);
    if base.is_empty() {
        return Router::new().fallback_service(routes);
    }
    Router::new().fallback(async move |mut request: Request| {
        if let Some(inner) = without(&base, request.uri()) {
            *request.uri_mut() = inner;
        }
        routes.oneshot(request).await
    })
}

fn without(base: &str, uri: &Uri) -> Option<Uri> {
    let inner = uri.path_and_query()?.as_str().strip_prefix(base)?;
    match inner.as_bytes().first() {
        Some(b'/') => inner.parse().ok(),
        Some(b'?') | None => format!("/{inner}").parse().ok(),
        _ => None,
    }
}
