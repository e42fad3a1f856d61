//! What a record of samples says; nothing of it is kept.

use axum::Json;
use axum::body::Bytes;
use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, State};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use stillground::trace::{self, Asked, Kind};

use crate::app::App;
use crate::error::Trouble;
use crate::turns::Work;

/// What a body may be called; what it is shows when it is read.
pub const KINDS: [&str; 4] = [
    "text/csv",
    "text/plain",
    "text/tab-separated-values",
    "application/octet-stream",
];

/// What the address says of the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct About {
    kind: Option<Kind>,
    rate: Option<f64>,
    time: Option<String>,
    value: Option<String>,
    scale: Option<f64>,
    at: Option<String>,
    towards: Option<String>,
}

/// Reads a record.
pub async fn trace(
    State(app): State<App>,
    about: Result<Query<About>, QueryRejection>,
    headers: HeaderMap,
    body: Bytes,
) -> Result<Response, Trouble> {
    if !is_table(&headers) {
        return Err(Trouble::no_table_type());
    }
    let Query(about) = about.map_err(|_| {
        Trouble::malformed(
            "The address may say kind, rate, time, value, scale, at and towards, and no more.",
        )
    })?;
    let asked = about.asked()?;
    let read = app
        .work(Work::Design, move || trace::read(&body, &asked))
        .await?;
    match read {
        Ok(found) => Ok(Json(found).into_response()),
        Err(refusal) => Err(Trouble::no_table(refusal)),
    }
}

impl About {
    fn asked(self) -> Result<Asked, Trouble> {
        let numbers = |text: Option<String>, wrong: &'static str| {
            let text = text.unwrap_or_default();
            let each = text.split(',').filter(|one| !one.trim().is_empty());
            each.map(|one| one.trim().parse())
                .collect::<Result<Vec<f64>, _>>()
                .map_err(|_| Trouble::malformed(wrong))
        };
        Ok(Asked {
            kind: self.kind,
            rate_hz: self.rate,
            time: self.time,
            value: self.value,
            scale_arcsec_per_unit: self.scale,
            at_s: numbers(
                self.at,
                "The times of the steps are seconds with commas between.",
            )?,
            towards_deg: numbers(
                self.towards,
                "The bearings of the columns are degrees from north with a comma between.",
            )?,
        })
    }
}

fn is_table(headers: &HeaderMap) -> bool {
    let said = headers
        .get(CONTENT_TYPE)
        .and_then(|kind| kind.to_str().ok())
        .unwrap_or_default();
    let kind = said.split(';').next().unwrap_or_default().trim();
    KINDS.iter().any(|known| kind.eq_ignore_ascii_case(known))
}
