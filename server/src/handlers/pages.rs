//! The pages' routes.

mod answers;
mod begun;
mod climate;
mod commissioning;
mod contradictory;
mod files;
mod found;
mod front;
mod improve;
mod links;
mod materials;
mod measure;
mod organiser;
mod photos;
mod place;
mod plan;
mod prices;
mod record;
mod recover;
mod revisions;
mod save;
mod sent;
mod sheet;
mod short;
mod step;
mod versions;
mod ways;
mod who;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};

use crate::app::App;
use crate::prints::Print;
use crate::security::tight_compression;

/// Every page.
pub fn routes() -> Router<App> {
    Router::new()
        .route("/", get(front::front))
        .route("/new", post(front::new))
        .route("/standing", post(front::standing))
        .route("/forget", post(front::forget))
        .route("/recover", get(recover::show).post(recover::recover))
        .route("/organiser", get(organiser::show))
        .route("/organiser/in", post(organiser::enter))
        .route("/organiser/out", post(organiser::leave))
        .route("/organiser/plan", post(organiser::change))
        .route("/organiser/invitations", post(organiser::invite))
        .route("/example", get(front::example).post(front::copy))
        .route("/example/{step}", get(step::show))
        .route("/example/plan/{chapter}", get(plan::chapter))
        .route("/example/answers", get(answers::show))
        .route("/example/ways", get(ways::show))
        .route("/example/drawings/{file}", get(plan::drawing))
        .route("/example/card", get(plan::card))
        .route("/example/materials", get(materials::show))
        .route("/example/plan.pdf", plan::sheets(Print::Plan))
        .route("/example/file.pdf", get(plan::file))
        .route("/example/template.pdf", plan::sheets(Print::Template))
        .route("/example/template.dxf", get(plan::workshop))
        .route("/example/materials.csv", get(files::materials))
        .route("/example/schedule.ics", get(files::calendar))
        .route("/versions", get(versions::show))
        .route("/s/{token}", get(sheet::check))
        .route("/p/{secret}", get(front::open))
        .route("/p/{secret}/{step}", get(step::show).post(save::save))
        .route("/p/{secret}/answers", get(answers::show))
        .route("/p/{secret}/links", get(links::show).post(links::change))
        .route(
            "/p/{secret}/climate",
            get(climate::show).post(climate::sent),
        )
        .route("/example/commissioning", get(commissioning::show))
        .route("/example/measure/{way}", get(measure::show))
        .route(
            "/p/{secret}/measure/{way}",
            get(measure::show).post(measure::keep),
        )
        .route("/p/{secret}/remedy", post(commissioning::remedy))
        .route(
            "/p/{secret}/commissioning",
            get(commissioning::show).post(commissioning::keep),
        )
        // As large as a record may be is its route's own bound, looked at before the form is read.
        .route(
            "/p/{secret}/commissioning/trace",
            post(measure::trace).layer(DefaultBodyLimit::disable()),
        )
        .route(
            "/p/{secret}/revisions",
            get(revisions::show).post(revisions::again),
        )
        .route(
            "/p/{secret}/record",
            get(record::show)
                .post(record::keep)
                .layer(tight_compression()),
        )
        .route("/p/{secret}/found", get(found::show).post(found::keep))
        // How large a photograph may be is a setting, and looked at before the form is read.
        .route(
            "/p/{secret}/record/photos",
            post(photos::keep).layer(DefaultBodyLimit::disable()),
        )
        .route("/p/{secret}/photos/{photo}", get(photos::show))
        .route("/p/{secret}/card", get(plan::card))
        .route(
            "/p/{secret}/materials",
            get(materials::show).post(materials::keep),
        )
        .route(
            "/p/{secret}/short/{part}",
            get(short::show).post(short::save),
        )
        .route("/p/{secret}/ways", get(ways::show).post(ways::take))
        .route("/p/{secret}/beside", post(ways::beside_another))
        .route("/p/{secret}/improve", post(improve::make))
        .route("/p/{secret}/plan/{chapter}", get(plan::chapter))
        .route("/p/{secret}/drawings/{file}", get(plan::drawing))
        .route("/p/{secret}/prices", get(prices::show).post(prices::keep))
        .route("/p/{secret}/materials.csv", get(files::materials))
        .route("/p/{secret}/schedule.ics", get(files::calendar))
        .route("/p/{secret}/plan.pdf", plan::sheets(Print::Plan))
        .route("/p/{secret}/file.pdf", get(plan::file))
        .route("/p/{secret}/template.pdf", plan::sheets(Print::Template))
        .route("/p/{secret}/template.dxf", get(plan::workshop))
}
