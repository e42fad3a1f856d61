//! A lost edit link: a new one for whoever kept the plan's recovery code.

use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use serde::Deserialize;

use super::begun;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::views::pages::answer;
use crate::views::pages::frame::Frame;
use crate::views::pages::recover::RecoverPage;

/// The code.
#[derive(Deserialize)]
pub struct Sent {
    code: String,
}

/// Asks for the code.
pub async fn show(State(app): State<App>) -> Result<Html<String>, Trouble> {
    answer(&page(&app, false))
}

/// Takes it: it is used up, the old edit link opens nothing, and the new one stands in the address.
pub async fn recover(
    State(app): State<App>,
    asker: Asker,
    jar: CookieJar,
    Form(sent): Form<Sent>,
) -> Result<Response, Trouble> {
    let code = sent.code.trim().to_ascii_lowercase();
    let Some(secret) = app.store.recover(&code).await? else {
        return Ok((StatusCode::FORBIDDEN, answer(&page(&app, true))?).into_response());
    };
    let jar = begun::with(&app, &asker.0, jar, secret.reveal(), None);
    Ok((
        jar,
        Redirect::to(&app.config.link(&format!("/p/{}/links", secret.reveal()))),
    )
        .into_response())
}

fn page(app: &App, wrong: bool) -> RecoverPage {
    RecoverPage {
        frame: Frame::new(&app.config, "A lost link".to_owned(), None),
        wrong,
        organiser: app.config.access.organisers.are_there(),
    }
}
