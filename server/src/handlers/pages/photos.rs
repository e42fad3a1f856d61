//! Photographs: taken into the record, and shown.

use std::sync::Arc;

use axum::Json;
use axum::extract::multipart::MultipartRejection;
use axum::extract::{Multipart, Path, State};
use axum::http::header::{ACCEPT, CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use serde_json::json;
use stillground::record::{Entry, Kind};

use super::place::Place;
use super::record::writer;
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::photo;
use crate::record::{examine, settle};

/// What a form with a photograph says.
#[derive(Default)]
struct Sent {
    entry: Option<Entry>,
    picture: Vec<u8>,
}

/// Takes a photograph.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    jar: CookieJar,
    headers: HeaderMap,
    form: Result<Multipart, MultipartRejection>,
) -> Result<Response, Trouble> {
    if !place.right.may_record() {
        return Err(Trouble::not_with_this_link("record or edit"));
    }
    let unread = || Trouble::malformed("This form could not be read. Go back, and send it again.");
    let Sent { entry, picture } = read(form.map_err(|_| unread())?).await.ok_or_else(unread)?;
    let (entry, writer) = (entry.ok_or_else(unread)?, writer(&place));
    if picture.is_empty() {
        return Err(Trouble::entry(&[("photo", "No photograph was chosen.".to_owned())]));
    }
    if picture.len() > app.config.largest_photo {
        return Err(Trouble::photo_too_large(app.config.largest_photo));
    }
    examine(&app, &writer, &entry).await?;
    let picture = anew(&app, picture).await?;
    settle(app.store.enter_photo(&writer.plan_id, &entry, &picture).await?)?;
    let jar = who::with(&app, &asker.0, jar, &entry.who);
    if headers.get(ACCEPT).is_some_and(|accept| accept.as_bytes() == b"application/json") {
        return Ok((jar, Json(json!({ "kept": 1 }))).into_response());
    }
    Ok((jar, Redirect::to(&format!("{}/record?kept=1#{}", place.root, entry.task))).into_response())
}

/// Writes a picture anew, one at a time: it takes a few hundred megabytes for a moment.
async fn anew(app: &App, picture: Vec<u8>) -> Result<Vec<u8>, Trouble> {
    let turn = Arc::clone(&app.darkroom).acquire_owned().await.map_err(|_| Trouble::crowded())?;
    let work = move || {
        let _turn = turn;
        photo::anew(&picture)
    };
    let made = tokio::task::spawn_blocking(work).await.map_err(|error| Trouble::broken("writing a photograph anew", &error))?;
    made.map_err(|fault| Trouble::entry(&[("photo", fault.to_string())]))
}

async fn read(mut form: Multipart) -> Option<Sent> {
    let (mut sent, mut id) = (Sent::default(), String::new());
    let mut entry = Entry { revision: 0, who: String::new(), ..Entry::new("", "", Kind::Photo) };
    while let Some(field) = form.next_field().await.ok()? {
        let name = field.name().unwrap_or_default().to_owned();
        if name == "photo" {
            sent.picture = field.bytes().await.ok()?.to_vec();
            continue;
        }
        let text = field.text().await.ok()?;
        match name.as_str() {
            "task" => entry.task = text,
            "form" => id = text,
            "revision" => entry.revision = text.trim().parse().unwrap_or(0),
            "who" => entry.who = text.trim().to_owned(),
            "text" if !text.trim().is_empty() => entry.text = Some(text.trim().to_owned()),
            _ => {}
        }
    }
    entry.id = format!("{id}.photo");
    sent.entry = Some(entry);
    Some(sent)
}

/// Shows a photograph.
pub async fn show(State(app): State<App>, place: Place, Path(path): Path<Vec<(String, String)>>) -> Result<Response, Trouble> {
    let id = path.iter().find(|(name, _)| name == "photo").map(|(_, id)| id.as_str()).unwrap_or_default();
    let picture = app.store.photo(&place.plan_id, id).await?.ok_or_else(Trouble::nothing_here)?;
    let head = [
        (CONTENT_TYPE, HeaderValue::from_static("image/jpeg")),
        (CONTENT_DISPOSITION, HeaderValue::from_static("inline; filename=\"photograph.jpg\"")),
        (CACHE_CONTROL, HeaderValue::from_static("private, no-store")),
    ];
    Ok((head, picture).into_response())
}
