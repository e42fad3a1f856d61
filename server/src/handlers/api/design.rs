//! Designing a plan: stateless, or as it is stored.

use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodRouter, get};
use stillground::design::ENGINE_VERSION;

use super::body::PlanBody;
use super::holder::Holder;
use super::precondition::{not_modified, with_etag};
use crate::app::App;
use crate::client::{Asker, Client};
use crate::error::Trouble;
use crate::handlers::print::{self, Asked, Issue, print};
use crate::prints::Print;
use crate::record::Writer;
use crate::views::pdf::Letterhead;
use crate::views::words::moment;

/// Designs the plan in the body and keeps nothing.
pub async fn stateless(
    State(app): State<App>,
    PlanBody(plan): PlanBody,
) -> Result<Response, Trouble> {
    let planned = app.improved(&plan).await?;
    Ok(Json(&planned.design).into_response())
}

/// All the piers that fit the pit of the plan in the body; keeps nothing.
pub async fn options(
    State(app): State<App>,
    asker: Asker,
    PlanBody(plan): PlanBody,
) -> Result<Response, Trouble> {
    Ok(Json(&*app.options(&asker.0, &plan).await?).into_response())
}

/// The design of a stored plan.
pub async fn stored(
    State(app): State<App>,
    holder: Holder,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let etag = format!("\"{}-{ENGINE_VERSION}\"", holder.0.saved.revision);
    if let Some(unchanged) = not_modified(&headers, &etag) {
        return Ok(unchanged);
    }
    let planned = app.improved(&holder.0.saved.plan).await?;
    Ok(with_etag(Json(&planned.design).into_response(), &etag))
}

/// A set of sheets of a stored plan.
pub fn sheets(which: Print) -> MethodRouter<App> {
    get(
        async move |State(app): State<App>,
                    holder: Holder,
                    asker: Asker,
                    Query(asked): Query<Asked>| {
            let issue = issue(&app, &holder, &asker.0).await;
            print(&app, which, &holder.0.saved.plan, issue, &asked).await
        },
    )
}

/// Everything that can be checked of a stored plan.
pub async fn file_pdf(
    State(app): State<App>,
    holder: Holder,
    asker: Asker,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let mut issue = issue(&app, &holder, &asker.0).await;
    let writer = Writer::from(holder.0);
    issue.built = print::built(&app, &writer).await?;
    print(&app, Print::File, &writer.saved.plan, issue, &asked).await
}

/// Plate and drilling jig of a stored plan, for a workshop.
pub async fn template_dxf(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    print::workshop(&*app.planned(&holder.0.saved.plan).await?)
}

/// One drawing of a stored plan.
pub async fn drawing(
    State(app): State<App>,
    holder: Holder,
    Path((_, file)): Path<(String, String)>,
) -> Result<Response, Trouble> {
    print::drawing(&*app.planned(&holder.0.saved.plan).await?, &file)
}

/// The materials of a stored plan.
pub async fn materials(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    Ok(print::materials(&*app.planned(&holder.0.saved.plan).await?))
}

/// The schedule of a stored plan.
pub async fn schedule(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    let (planned, saved) = (app.planned(&holder.0.saved.plan).await?, &holder.0.saved);
    print::schedule(&app, &planned, &holder.0.plan_id, saved.revision).await
}

async fn issue(app: &App, holder: &Holder, client: &Client) -> Issue {
    let saved = &holder.0.saved;
    let check_link = print::check_link(app, client, &holder.0.plan_id, saved.revision).await;
    Issue {
        revision: Some(i64::from(saved.revision)),
        date: Some(moment(saved.saved_at)),
        view_link: None,
        check_link,
        letterhead: Letterhead::of(&app.config.house),
        built: Vec::new(),
    }
}
