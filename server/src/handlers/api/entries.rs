//! The record of a plan's work: what was entered, and a new entry.

use std::collections::BTreeMap;

use axum::Json;
use axum::body::Bytes;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use serde_json::{Map, Value, json};
use stillground::record::{Entry, Reading};

use super::body::is_json;
use super::holder::Holder;
use crate::app::App;
use crate::error::Trouble;
use crate::record::{Record, Writer, take};
use crate::store::record::Kept;

/// The entries in the order in which they were received, each held against the plan as it stands.
pub async fn list(State(app): State<App>, holder: Holder) -> Result<Response, Trouble> {
    let record = Record::load(&app, &Writer::from(holder.0)).await?;
    let board = record.board();
    let entries: Vec<Value> = board
        .readings
        .iter()
        .zip(&record.kept)
        .map(|(reading, kept)| entry(kept, reading))
        .collect();
    let state = |task: &stillground::record::TaskState<'_>| (task.task.id, json!(task.state.key()));
    let tasks: BTreeMap<&str, Value> = board.tasks.iter().map(state).collect();
    let here = |line: &stillground::stages::materials::Material| {
        Some((line.id, json!(board.here(line.id)?.id)))
    };
    let materials: BTreeMap<&str, Value> = record
        .planned
        .design
        .materials
        .iter()
        .filter_map(here)
        .collect();
    let waits: BTreeMap<&str, &Option<String>> = board
        .tasks
        .iter()
        .filter(|state| state.task.wait)
        .map(|state| (state.task.id, &state.over_at))
        .collect();
    let needs: BTreeMap<&str, Vec<&str>> = board
        .tasks
        .iter()
        .filter(|state| state.ticked.is_none() && !state.needs.is_empty())
        .map(|state| {
            let items = state.needs.iter().map(|item| item.id.as_str());
            (state.task.id, items.collect())
        })
        .collect();
    let answer = json!({
        "entries": entries,
        "tasks": tasks,
        "waits": waits,
        "needs": needs,
        "materials": materials
    });
    Ok(Json(answer).into_response())
}

/// Keeps an entry, once however often it is sent.
pub async fn enter(
    State(app): State<App>,
    holder: Holder,
    headers: HeaderMap,
    body: Bytes,
) -> Result<Response, Trouble> {
    if !is_json(&headers) {
        return Err(Trouble::media_type());
    }
    let sent = parse(&body)?;
    let writer = Writer::from(holder.0);
    let (kept, new) = take(&app, &writer, &sent).await?;
    answer(&app, &writer, &kept, new).await
}

/// What was kept, held against the plan; 201 when it is new.
pub(super) async fn answer(
    app: &App,
    writer: &Writer,
    kept: &Kept,
    new: bool,
) -> Result<Response, Trouble> {
    let record = Record::load(app, writer)
        .await
        .map_err(Trouble::contradictory)?;
    let board = record.board();
    let reading = board
        .readings
        .iter()
        .find(|reading| reading.entry.id == kept.entry.id);
    let answer = reading.map_or_else(|| plain(kept), |reading| entry(kept, reading));
    Ok((
        if new {
            StatusCode::CREATED
        } else {
            StatusCode::OK
        },
        Json(answer),
    )
        .into_response())
}

fn parse(bytes: &[u8]) -> Result<Entry, Trouble> {
    let sent: Value = serde_json::from_slice(bytes).map_err(Trouble::not_json)?;
    if !sent.is_object() {
        return Err(Trouble::entry(&[(
            "",
            "An entry is an object with named members.".to_owned(),
        )]));
    }
    serde_path_to_error::deserialize(sent).map_err(|error| {
        let path = error.path().to_string();
        Trouble::entry(&[(
            path.as_str(),
            format!("This is no entry: {}.", error.inner()),
        )])
    })
}

fn plain(kept: &Kept) -> Value {
    let mut members = match serde_json::to_value(&kept.entry) {
        Ok(Value::Object(members)) => members,
        _ => Map::new(),
    };
    members.insert("received_at".to_owned(), json!(kept.received_at));
    Value::Object(members)
}

/// An entry with what follows from it.
pub(super) fn entry(kept: &Kept, reading: &Reading<'_>) -> Value {
    let mut entry = plain(kept);
    entry["judgement"] = json!(reading.verdict);
    entry["superseded_by"] = json!(reading.superseded_by);
    entry["ended_by"] = json!(reading.ended_by);
    entry
}
