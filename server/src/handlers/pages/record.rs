//! The helper's page, and what is entered there.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum_extra::extract::CookieJar;
use data_encoding::BASE32_NOPAD_NOCASE;
use serde::Deserialize;
use serde_json::json;
use stillground::record::Entry;

use super::place::Place;
use super::sent::{self, Sent};
use super::who;
use crate::app::App;
use crate::client::Asker;
use crate::error::{Trouble, asks_for_json};
use crate::forms::record::{RecordFault, box_of, read};
use crate::forms::sheet::Sheet;
use crate::planned::Planned;
use crate::record::{self, Record, Writer, asked, examine};
use crate::store::Saved;
use crate::views::pages::answer;
use crate::views::pages::record::log::Log;
use crate::views::pages::record::{RecordPage, Typed, Work};

/// What a redirect tells the page it leads to.
#[derive(Default, Deserialize)]
pub struct Said {
    kept: Option<u32>,
    seen: Option<u32>,
}

/// The page.
pub async fn show(
    State(app): State<App>,
    place: Place,
    jar: CookieJar,
    Query(said): Query<Said>,
) -> Result<Html<String>, Trouble> {
    let kept = said.kept.map(|count| {
        if count == 1 {
            "One entry was kept.".to_owned()
        } else {
            format!("{count} entries were kept.")
        }
    });
    let seen = said
        .seen
        .filter(|seen| (1..place.revision).contains(seen))
        .map(|seen| changed(seen, place.revision));
    let notice = (kept.is_some() || seen.is_some()).then(|| {
        [kept, seen]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" ")
    });
    let page = page(&app, &place, who::name(&jar), &Typed::default()).await?;
    answer(&RecordPage { notice, ..page })
}

/// Takes what a form says. A script that keeps what could not be sent asks for JSON and hears what became of it.
pub async fn keep(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    jar: CookieJar,
    headers: HeaderMap,
    sent: Sent,
) -> Result<Response, Trouble> {
    let place = place.recording()?;
    let sheet = sent::sheet(sent)?;
    let writer = writer(&place);
    let seen = sheet
        .text("revision")
        .and_then(|revision| revision.trim().parse().ok())
        .unwrap_or(place.revision);
    let (items, units) = asked(&app, &writer, seen).await?;
    let mut sent = read(&sheet, &items, units);
    if sent.faults.is_empty() {
        for (entry, trouble) in examine(&app, &writer, &sent.entries).await? {
            sent.faults.extend(faults(entry, &trouble));
        }
    }
    let script = asks_for_json(&headers);
    if !sent.faults.is_empty() && seen < place.revision {
        sent.faults
            .push(RecordFault::at("note", changed(seen, place.revision)));
    }
    if !sent.faults.is_empty() {
        return refused(&app, &place, &jar, &sheet, &sent.faults, script).await;
    }
    for entry in &sent.entries {
        match record::keep(&app, &writer, entry).await {
            // A page that was gone back to has the form that was sent before; it comes again under a new name.
            Err(trouble) if trouble.code == "name_taken" && !script => {
                let said = "This form was sent before, with something else in it. What you typed stands here: look at it, and send it again.";
                return refused(
                    &app,
                    &place,
                    &jar,
                    &sheet,
                    &[RecordFault::at("note", said)],
                    script,
                )
                .await;
            }
            other => drop(other?),
        }
    }
    let (jar, count) = (
        who::with(&app, &asker.0, jar, sheet.text("who").unwrap_or_default()),
        sent.entries.len(),
    );
    if script {
        return Ok((jar, Json(json!({ "kept": count }))).into_response());
    }
    // What was ticked off leads to what is next.
    let task = match sheet.text("do") {
        Some("done") => "now",
        _ => sheet.text("task").unwrap_or_default(),
    };
    let since = if seen < place.revision {
        format!("&seen={seen}")
    } else {
        String::new()
    };
    Ok((
        jar,
        Redirect::to(&format!("{}/record?kept={count}{since}#{task}", place.root)),
    )
        .into_response())
}

/// What is said to whoever had an older page before them.
fn changed(seen: u32, now: u32) -> String {
    format!(
        "The plan was changed while this page lay open: it was revision {seen} and is revision {now}. What stands here is the new one; \
         look at its figures again before you go on."
    )
}

async fn refused(
    app: &App,
    place: &Place,
    jar: &CookieJar,
    sheet: &Sheet,
    faults: &[RecordFault],
    script: bool,
) -> Result<Response, Trouble> {
    if script {
        let said: Vec<&str> = faults.iter().map(|fault| fault.said.as_str()).collect();
        return Ok((
            StatusCode::UNPROCESSABLE_ENTITY,
            Json(json!({ "refused": said })),
        )
            .into_response());
    }
    let who = sheet
        .text("who")
        .map_or_else(|| who::name(jar), str::to_owned);
    let page = page(
        app,
        place,
        who,
        &Typed {
            sheet: Some(sheet),
            faults,
        },
    )
    .await?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, answer(&page)?).into_response())
}

/// What is wrong with an entry, at the boxes of the form.
fn faults(entry: &Entry, trouble: &Trouble) -> Vec<RecordFault> {
    let name = |path: &str| match (path, &entry.item) {
        ("value" | "text" | "item", Some(item)) => box_of(item),
        _ => path.to_owned(),
    };
    trouble
        .errors
        .iter()
        .map(|error| RecordFault::at(name(&error.path), error.detail.clone()))
        .collect()
}

/// What was entered while a plan was built; none for the example, and for a plan of which nothing was entered.
pub async fn log(
    app: &App,
    place: &Place,
    planned: Option<&Arc<Planned>>,
) -> Result<Option<Log>, Trouble> {
    if place.secret.is_empty() {
        return Ok(None);
    }
    let kept = app.store.entries(&place.plan_id).await?;
    let log = match planned {
        _ if kept.is_empty() => return Ok(None),
        Some(planned) => Log::of(&Record::of(Arc::clone(planned), kept)),
        None => Log::unjudged(&kept),
    };
    Ok(Some(log))
}

/// Who writes, by the link that opened the page.
pub(super) fn writer(place: &Place) -> Writer {
    let saved = Saved {
        revision: place.revision,
        plan: place.plan.clone(),
        saved_at: jiff::Timestamp::UNIX_EPOCH,
    };
    Writer {
        plan_id: place.plan_id.clone(),
        right: place.right,
        saved,
    }
}

/// The page, filled in.
pub(super) async fn page(
    app: &App,
    place: &Place,
    who: String,
    typed: &Typed<'_>,
) -> Result<RecordPage, Trouble> {
    let (work, log) = match Record::load(app, &writer(place)).await {
        Ok(record) => (
            Some(Work::of(&record, typed, &now(), &place.plan)),
            Log::of(&record),
        ),
        Err(trouble) if !trouble.errors.is_empty() => (
            None,
            Log::unjudged(&app.store.entries(&place.plan_id).await?),
        ),
        Err(trouble) => return Err(trouble),
    };
    let task = typed
        .sheet
        .and_then(|sheet| sheet.text("task"))
        .unwrap_or_default();
    let at = |fault: &RecordFault| match fault.name.strip_prefix("item~") {
        Some(item) => format!("{task}-{}", item.replace(':', "-")),
        None => task.to_owned(),
    };
    Ok(RecordPage {
        frame: place.frame("Today"),
        root: place.root.clone(),
        plan_id: place.plan_id.clone(),
        revision: place.revision,
        largest_photo: app.config.largest_photo,
        may_record: place.right.may_record(),
        may_edit: place.right.may_edit(),
        who,
        form: form_name()?,
        notice: None,
        faults: typed
            .faults
            .iter()
            .map(|fault| (at(fault), fault.said.clone()))
            .collect(),
        work,
        log,
    })
}

/// The day and the time of day in universal time, as `2027-04-19 14:30`.
fn now() -> String {
    jiff::Timestamp::now()
        .to_string()
        .replace('T', " ")
        .chars()
        .take(16)
        .collect()
}

/// A name for the page's forms, so that a form that is sent twice is kept once.
pub(super) fn form_name() -> Result<String, Trouble> {
    let mut bytes = [0; 15];
    getrandom::fill(&mut bytes)
        .map_err(|error| Trouble::broken("asking the system for random numbers", &error))?;
    Ok(BASE32_NOPAD_NOCASE.encode(&bytes).to_ascii_lowercase())
}
