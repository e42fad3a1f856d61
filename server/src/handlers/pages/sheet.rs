//! Whether a printed sheet is superseded: asked by the code that stands on every sheet.

use axum::extract::{Path, Query, State};
use axum::response::Html;
use serde::Deserialize;

use crate::app::App;
use crate::error::Trouble;
use crate::views::pages::answer;
use crate::views::pages::frame::Frame;
use crate::views::pages::sheet::{SheetPage, SheetStanding};
use crate::views::words;

/// Which revision the sheet is of.
#[derive(Deserialize)]
pub struct Printed {
    rev: Option<String>,
}

/// Says how a sheet stands.
pub async fn check(
    State(app): State<App>,
    Path(token): Path<String>,
    Query(printed): Query<Printed>,
) -> Result<Html<String>, Trouble> {
    let found = app
        .store
        .sheet(&token)
        .await?
        .ok_or_else(Trouble::no_such_sheet)?;
    let rev: Option<u32> = printed.rev.as_deref().and_then(|rev| rev.parse().ok());
    let standing = match rev {
        Some(rev) if rev == found.revision => SheetStanding::Newest,
        Some(rev) if (1..found.revision).contains(&rev) => SheetStanding::Superseded(rev),
        _ => SheetStanding::Unknown,
    };
    let frame = Frame::new(&app.config, "A printed sheet".to_owned(), None);
    answer(&SheetPage {
        frame,
        standing,
        current: found.revision,
        saved: words::moment(found.saved_at),
    })
}
