//! What this version judges differently.

use axum::extract::State;
use axum::response::Html;

use crate::app::App;
use crate::error::Trouble;
use crate::views::pages::answer;
use crate::views::pages::frame::Frame;
use crate::views::pages::versions::VersionsPage;

/// The page.
pub async fn show(State(app): State<App>) -> Result<Html<String>, Trouble> {
    let frame = Frame::new(&app.config, "What changed".to_owned(), None);
    answer(&VersionsPage::in_frame(frame))
}
