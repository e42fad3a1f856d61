//! The front page, and how a plan begins.

use axum::extract::rejection::FormRejection;
use axum::extract::{Form, State};
use axum::response::{Html, Redirect};
use axum_extra::extract::CookieJar;
use serde::Deserialize;
use stillground::site_plan::SitePlan;
use stillground::site_plan::commissioning::State as Standing;

use super::begun;
use super::place::{self, Place};
use super::sent::unread;
use crate::access;
use crate::app::App;
use crate::client::{Asker, Client};
use crate::config::Creators;
use crate::error::Trouble;
use crate::guard::RouteKind;
use crate::store::Right;
use crate::views::pages::answer;
use crate::views::pages::drawn::DrawingView;
use crate::views::pages::frame::Frame;
use crate::views::pages::front::{Begins, Begun, FrontPage};
use crate::views::words;

/// The front page.
pub async fn front(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
) -> Result<(CookieJar, Html<String>), Trouble> {
    let (plans, jar) = begun_here(&app, &asker.0, jar).await?;
    let frame = Frame::new(
        &app.config,
        "Telescope piers that stay still".to_owned(),
        None,
    );
    let organiser = access::is_organiser(&app, &asker.0, &jar).await?;
    let begins = match app.config.access.creators {
        Creators::Invited if !organiser => Begins::WithACode,
        Creators::Organiser if !organiser => Begins::Elsewhere,
        _ => Begins::Here,
    };
    let page = answer(&FrontPage {
        frame,
        begins,
        begun: plans,
        drawing: drawing(&app).await,
    })?;
    Ok((jar, page))
}

/// The plans begun in this browser. A link in the cookie that opens nothing is a guess like any other, and is taken out.
async fn begun_here(
    app: &App,
    client: &Client,
    mut jar: CookieJar,
) -> Result<(Vec<Begun>, CookieJar), Trouble> {
    let mut plans = Vec::new();
    for secret in begun::secrets(&jar) {
        let Some(opened) = app.store.open_link(&secret).await? else {
            let _ = app.guard.take(client, RouteKind::Guess);
            jar = begun::except(app, client, jar, &secret);
            continue;
        };
        plans.push(Begun {
            title: place::title(opened.saved.plan.title.as_deref()),
            href: app.config.link(&format!("/p/{secret}/plan")),
            saved: words::moment(opened.saved.saved_at),
        });
    }
    Ok((plans, jar))
}

/// The example in the opened ground; the page does without where too much else is being designed.
async fn drawing(app: &App) -> Option<DrawingView> {
    let planned = app.planned(&place::example()).await.ok()?;
    DrawingView::of("cut-away", &planned)
}

/// The first page of a plan of which nothing is known.
const SHORT_WAY: &str = "short/ground";

/// What a form that begins a plan may hold.
#[derive(Default, Deserialize)]
pub struct Coming {
    #[serde(default)]
    code: String,
}

type Sent = Result<Form<Coming>, FormRejection>;

/// Begins a plan in which nothing is known but what the house knows.
pub async fn new(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    sent: Sent,
) -> Result<(CookieJar, Redirect), Trouble> {
    let plan = app
        .config
        .defaults
        .as_ref()
        .map_or_else(SitePlan::unknown, |defaults| defaults.plan.clone());
    begin(&app, &asker.0, jar, &plan, sent, SHORT_WAY).await
}

/// Begins with a pier that stands already: how it trembles first, and nothing is ordered.
pub async fn standing(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    sent: Sent,
) -> Result<(CookieJar, Redirect), Trouble> {
    let plan = SitePlan {
        state: Some(Standing::Standing),
        ..SitePlan::unknown()
    };
    begin(&app, &asker.0, jar, &plan, sent, "commissioning").await
}

/// Begins a plan as a copy of the example.
pub async fn copy(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    sent: Sent,
) -> Result<(CookieJar, Redirect), Trouble> {
    let plan = place::example();
    let title = plan.title.as_ref().map(|title| format!("{title}, a copy"));
    begin(
        &app,
        &asker.0,
        jar,
        &SitePlan { title, ..plan },
        sent,
        "plan",
    )
    .await
}

/// Keeps a plan. Only its edit link is shown, in the address; the others are made when they are asked for.
async fn begin(
    app: &App,
    client: &Client,
    jar: CookieJar,
    plan: &SitePlan,
    sent: Sent,
    first: &str,
) -> Result<(CookieJar, Redirect), Trouble> {
    let Coming { code } = match sent {
        Ok(Form(coming)) => coming,
        // Nothing begins with a form of which the end is missing.
        Err(FormRejection::BytesRejection(_)) => return Err(unread()),
        Err(_) => Coming::default(),
    };
    let organiser = access::is_organiser(app, client, &jar).await?;
    let created = access::begin(
        app,
        plan,
        access::Coming {
            code: Some(&code),
            organiser,
        },
    )
    .await?;
    app.store.revoke(&created.id, Right::Record).await?;
    app.store.revoke(&created.id, Right::View).await?;
    let secret = created.links.edit.reveal();
    let jar = begun::with(app, client, jar, secret, None);
    Ok((
        jar,
        Redirect::to(&app.config.link(&format!("/p/{secret}/{first}"))),
    ))
}

/// Forgets the plans begun in this browser.
pub async fn forget(State(app): State<App>, asker: Asker, jar: CookieJar) -> (CookieJar, Redirect) {
    (
        begun::without(&app, &asker.0, jar),
        Redirect::to(&app.config.link("/")),
    )
}

/// The example's first page.
pub async fn example(State(app): State<App>) -> Redirect {
    Redirect::to(&app.config.link("/example/plan"))
}

/// A link without a step: where its holder has something to do.
pub async fn open(place: Place) -> Redirect {
    let step = match place.right {
        Right::Edit | Right::View => "plan",
        Right::Record => "record",
    };
    Redirect::to(&format!("{}/{step}", place.root))
}
