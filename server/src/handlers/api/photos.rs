//! Photographs of a plan's work, for programs: taken, listed, and one by its name.

use axum::Json;
use axum::body::Bytes;
use axum::extract::rejection::QueryRejection;
use axum::extract::{Path, Query, State};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use stillground::record::{Entry, Kind};

use super::entries::{answer, entry};
use super::holder::Holder;
use crate::app::App;
use crate::error::Trouble;
use crate::handlers::photograph::photograph;
use crate::record::{Record, Writer, take_photo};

/// What a body may be; what it is shows when it is decoded.
const KINDS: [&str; 3] = ["image/jpeg", "image/png", "image/webp"];

/// What stands in the address about a photograph: its entry, without what every photograph's is.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct About {
    id: String,
    revision: u32,
    task: String,
    who: String,
    text: Option<String>,
    measured_at: Option<String>,
}

impl From<About> for Entry {
    fn from(about: About) -> Self {
        let About {
            id,
            revision,
            task,
            who,
            text,
            measured_at,
        } = about;
        Self {
            revision,
            who,
            text,
            measured_at,
            ..Self::new(&id, &task, Kind::Photo)
        }
    }
}

/// Keeps a photograph, once however often it is sent.
pub async fn keep(
    State(app): State<App>,
    holder: Holder,
    about: Result<Query<About>, QueryRejection>,
    headers: HeaderMap,
    body: Bytes,
) -> Result<Response, Trouble> {
    if !is_picture(&headers) {
        return Err(Trouble::no_picture_type());
    }
    let Query(about) = about.map_err(|_| {
        Trouble::malformed(
            "The address says id, revision, task and who, and no more than text and measured_at.",
        )
    })?;
    let (sent, writer) = (Entry::from(about), Writer::from(holder.0));
    let (kept, new) = take_photo(&app, &writer, &sent, body.into()).await?;
    answer(&app, &writer, &kept, new).await
}

/// The entries that have a photograph, in the order in which they were received.
pub async fn list(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    let record = Record::load(&app, &Writer::from(holder.0)).await?;
    let board = record.board();
    let read = board
        .readings
        .iter()
        .zip(&record.kept)
        .filter(|(_, kept)| kept.entry.kind == Kind::Photo);
    let photos: Vec<Value> = read.map(|(reading, kept)| entry(kept, reading)).collect();
    Ok(Json(json!({ "photos": photos })).into_response())
}

/// A photograph by the name of its entry.
pub async fn show(
    State(app): State<App>,
    holder: Holder,
    Path((_, name)): Path<(String, String)>,
) -> Result<Response, Trouble> {
    photograph(&app, &holder.0.plan_id, &name).await
}

fn is_picture(headers: &HeaderMap) -> bool {
    let said = headers
        .get(CONTENT_TYPE)
        .and_then(|kind| kind.to_str().ok())
        .unwrap_or_default();
    let kind = said.split(';').next().unwrap_or_default().trim();
    KINDS.iter().any(|known| kind.eq_ignore_ascii_case(known))
}
