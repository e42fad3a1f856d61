//! The organiser's shelf: a door, the plans by title and age, and what is done with one.

mod invitations;

use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use jiff::Timestamp;
use serde::Deserialize;

pub use invitations::invite;

use crate::access;
use crate::app::App;
use crate::client::{Asker, Client};
use crate::error::Trouble;
use crate::store::Right;
use crate::store::organiser::Sought;
use crate::views::pages::answer;
use crate::views::pages::frame::Frame;
use crate::views::pages::organiser::{DoorPage, OncePage, ShelfPage};

/// Which plans are asked for.
#[derive(Debug, Default, Deserialize)]
pub struct Asked {
    #[serde(default)]
    title: String,
    removed: Option<String>,
    before: Option<i64>,
}

/// The password.
#[derive(Deserialize)]
pub struct Key {
    password: String,
}

/// What is done with a plan.
#[derive(Deserialize)]
pub struct Change {
    id: String,
    #[serde(rename = "do")]
    action: String,
    #[serde(default)]
    on: String,
}

/// The shelf, or the door before it.
pub async fn show(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    Query(asked): Query<Asked>,
) -> Result<Html<String>, Trouble> {
    there_is_one(&app)?;
    if !access::is_organiser(&app, &asker.0, &jar).await? {
        return answer(&DoorPage {
            frame: frame(&app, "Organiser"),
            password: has_password(&app),
            wrong: false,
        });
    }
    let removed = asked.removed.is_some();
    let before = asked
        .before
        .and_then(|before| Timestamp::from_microsecond(before).ok());
    let found = app
        .store
        .shelf(Sought {
            title: &asked.title,
            removed,
            before,
        })
        .await?;
    let page = ShelfPage::of(
        frame(&app, "All plans"),
        &app.config,
        &asked.title,
        removed,
        found,
    );
    let most = app.config.access.quotas.plans;
    answer(&page.with(
        app.store.plan_count().await?,
        most,
        app.store.invitations().await?,
    ))
}

/// Opens the door.
pub async fn enter(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    Form(key): Form<Key>,
) -> Result<Response, Trouble> {
    there_is_one(&app)?;
    match access::enter(&app, &asker.0, jar, &key.password).await? {
        Some(jar) => Ok((jar, Redirect::to(&app.config.link("/organiser"))).into_response()),
        None => {
            tracing::warn!(from = %asker.0.address, "a wrong password at the organiser's door");
            Ok((
                StatusCode::FORBIDDEN,
                answer(&DoorPage {
                    frame: frame(&app, "Organiser"),
                    password: has_password(&app),
                    wrong: true,
                })?,
            )
                .into_response())
        }
    }
}

/// Closes it.
pub async fn leave(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
) -> Result<Response, Trouble> {
    let jar = access::leave(&app, &asker.0, jar).await?;
    Ok((jar, Redirect::to(&app.config.link("/organiser"))).into_response())
}

/// Does something with a plan.
pub async fn change(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    Form(change): Form<Change>,
) -> Result<Response, Trouble> {
    let organiser = inside(&app, &asker.0, &jar).await?;
    let Change { id, action, on } = &change;
    tracing::info!(organiser, plan = %id.escape_default(), action = %action.escape_default(), "the organiser changes a plan");
    match action.as_str() {
        "close" => app.store.close_plan(id, Some(moment(on)?)).await?,
        "open" => app.store.close_plan(id, None).await?,
        "remove" => app.store.remove_plan(id).await?,
        "erase" => {
            if !app.store.erase_plan(id).await? {
                return Err(Trouble::nothing_here());
            }
        }
        "restore" => {
            if !app.store.bring_back(id).await? {
                return Err(Trouble::nothing_here());
            }
        }
        "link" => return new_edit_link(&app, &asker.0, id).await,
        _ => {
            return Err(Trouble::malformed(
                "There is no such thing to do with a plan.",
            ));
        }
    }
    let back = if matches!(action.as_str(), "restore" | "erase") {
        "/organiser?removed=yes"
    } else {
        "/organiser"
    };
    Ok(Redirect::to(&app.config.link(back)).into_response())
}

/// A new edit link for somebody who lost it; the old one opens nothing from now on.
async fn new_edit_link(app: &App, client: &Client, id: &str) -> Result<Response, Trouble> {
    let secret = app.store.replace_link(id, Right::Edit).await?;
    let path = app.config.link(&format!("/p/{}", secret.reveal()));
    let page = OncePage {
        frame: frame(app, "A new edit link"),
        title: "A new edit link",
        said: "Give it to the plan’s owner and to nobody else. The old edit link opens nothing from now on; the other links stay.",
        label: "The new edit link; it is shown this once",
        value: client.link(&path).unwrap_or(path),
    };
    Ok(answer(&page)?.into_response())
}

/// Refuses whoever is not an organiser; the name of one who is.
pub async fn inside(app: &App, client: &Client, jar: &CookieJar) -> Result<String, Trouble> {
    there_is_one(app)?;
    access::organiser(app, client, jar)
        .await?
        .ok_or_else(Trouble::organiser_only)
}

/// The frame of a page of the organiser's.
pub fn frame(app: &App, title: &str) -> Frame {
    Frame::new(&app.config, title.to_owned(), None)
}

/// Whether anybody goes in with a password.
fn has_password(app: &App) -> bool {
    !app.config.access.organisers.with_password.is_empty()
}

fn there_is_one(app: &App) -> Result<(), Trouble> {
    if app.config.access.organisers.are_there() {
        Ok(())
    } else {
        Err(Trouble::nothing_here())
    }
}

/// The beginning of a day in universal time; now, when no day is named.
fn moment(on: &str) -> Result<Timestamp, Trouble> {
    if on.trim().is_empty() {
        return Ok(Timestamp::now());
    }
    format!("{}T00:00:00Z", on.trim())
        .parse()
        .map_err(|_| Trouble::malformed("A day is written 2027-03-01."))
}
