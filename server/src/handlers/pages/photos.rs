//! Photographs: taken into the record, and shown.

use axum::Json;
use axum::body::Body;
use axum::extract::{FromRequest, Multipart, Path, Request, State};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use http_body_util::BodyExt;
use serde_json::json;
use stillground::record::{Entry, Kind};

use super::place::Place;
use super::record::writer;
use super::sent::unread;
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::{Trouble, asks_for_json};
use crate::handlers::photograph::photograph;
use crate::record::take_photo;

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
    request: Request,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
    let form = arrived(request).await.ok_or_else(unread)?;
    let Sent { entry, picture } = read(form).await.ok_or_else(unread)?;
    let (entry, writer) = (entry.ok_or_else(unread)?, writer(&place));
    take_photo(&app, &writer, &entry, picture).await?;
    let jar = who::with(&app, &asker.0, jar, &entry.who);
    if asks_for_json(&headers) {
        return Ok((jar, Json(json!({ "kept": 1 }))).into_response());
    }
    Ok((
        jar,
        Redirect::to(&format!("{}/record?kept=1#{}", place.root, entry.task)),
    )
        .into_response())
}

/// The form once all of it is there. While it arrives, what reads its parts looks twice at its beginning, and takes one of
/// which all came between the two looks for one that broke off.
async fn arrived(request: Request) -> Option<Multipart> {
    let (parts, body) = request.into_parts();
    let whole = body.collect().await.ok()?.to_bytes();
    let request = Request::from_parts(parts, Body::from(whole));
    Multipart::from_request(request, &()).await.ok()
}

async fn read(mut form: Multipart) -> Option<Sent> {
    let (mut sent, mut id) = (Sent::default(), String::new());
    let mut entry = Entry {
        revision: 0,
        who: String::new(),
        ..Entry::new("", "", Kind::Photo)
    };
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
            "at" if !text.is_empty() => entry.measured_at = Some(text),
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
pub async fn show(
    State(app): State<App>,
    place: Place,
    Path(path): Path<Vec<(String, String)>>,
) -> Result<Response, Trouble> {
    let id = path
        .iter()
        .find(|(name, _)| name == "photo")
        .map(|(_, id)| id.as_str())
        .unwrap_or_default();
    photograph(&app, &place.plan_id, id).await
}
