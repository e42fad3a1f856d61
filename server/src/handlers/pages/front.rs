//! The front page, and how a plan begins.

use std::sync::Arc;

use axum::extract::State;
use axum::response::{Html, Redirect};
use axum_extra::extract::CookieJar;
use stillground::site_plan::SitePlan;

use super::begun;
use super::place::{self, Place};
use crate::app::App;
use crate::error::Trouble;
use crate::store::Right;
use crate::views::pages::frame::Frame;
use crate::views::pages::front::{Begun, FrontPage};
use crate::views::pages::{answer, words};

/// The front page.
pub async fn front(State(app): State<App>, jar: CookieJar) -> Result<Html<String>, Trouble> {
    let mut plans = Vec::new();
    for secret in begun::secrets(&jar) {
        if let Some(opened) = app.store.open_link(&secret).await? {
            plans.push(Begun {
                title: place::title(opened.saved.plan.title.as_deref()),
                href: app.config.link(&format!("/p/{secret}/site")),
                saved: words::moment(opened.saved.saved_at),
            });
        }
    }
    let frame = Frame::new(&app.config.base, "Telescope piers that stay still".to_owned(), None);
    answer(&FrontPage { frame, begun: plans, drawing: drawing(&app).await })
}

/// The example's map of leans; the page does without where too much else is being designed.
async fn drawing(app: &App) -> Option<Arc<str>> {
    let planned = app.planned(&place::example()).await.ok()?;
    planned.drawing("tilt-map").map(|drawn| Arc::clone(&drawn.svg))
}

/// Begins a plan in which nothing is known.
pub async fn new(State(app): State<App>, jar: CookieJar) -> Result<(CookieJar, Redirect), Trouble> {
    begin(&app, jar, &SitePlan::unknown()).await
}

/// Begins a plan as a copy of the example.
pub async fn copy(State(app): State<App>, jar: CookieJar) -> Result<(CookieJar, Redirect), Trouble> {
    let plan = place::example();
    let title = plan.title.as_ref().map(|title| format!("{title}, a copy"));
    begin(&app, jar, &SitePlan { title, ..plan }).await
}

/// Keeps a plan. Only its edit link is shown, in the address; the others are made when they are asked for.
async fn begin(app: &App, jar: CookieJar, plan: &SitePlan) -> Result<(CookieJar, Redirect), Trouble> {
    let created = app.store.create(plan).await?;
    app.store.revoke(&created.id, Right::Record).await?;
    app.store.revoke(&created.id, Right::View).await?;
    let secret = created.links.edit.reveal();
    let jar = begun::with(app, jar, secret, None);
    Ok((jar, Redirect::to(&app.config.link(&format!("/p/{secret}/site")))))
}

/// Forgets the plans begun in this browser.
pub async fn forget(State(app): State<App>, jar: CookieJar) -> (CookieJar, Redirect) {
    (begun::without(&app, jar), Redirect::to(&app.config.link("/")))
}

/// The example's first page.
pub async fn example(State(app): State<App>) -> Redirect {
    Redirect::to(&app.config.link("/example/plan"))
}

/// A link without a step: where its holder has something to do.
pub async fn open(place: Place) -> Redirect {
    let step = match place.right {
        Right::Edit => "site",
        Right::Record => "record",
        Right::View => "plan",
    };
    Redirect::to(&format!("{}/{step}", place.root))
}
