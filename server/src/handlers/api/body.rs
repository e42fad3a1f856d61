//! The body of a request: a plan as JSON, every refusal with its place.

mod lists;

use axum::body::Bytes;
use axum::extract::{FromRequest, Request};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::error::Category;
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::error::Trouble;
use crate::turns::Work;

/// A plan from the body. It has the form of a plan; whether its answers can be planned with, the engine says.
pub struct PlanBody(pub SitePlan);

/// Longest body that is read where requests are served, bytes: some hundred microseconds. A plan is a few thousand.
const SHORT: usize = 64 * 1024;

impl FromRequest<App> for PlanBody {
    type Rejection = Trouble;

    async fn from_request(request: Request, app: &App) -> Result<Self, Trouble> {
        if !is_json(request.headers()) {
            return Err(Trouble::media_type());
        }
        let bytes = Bytes::from_request(request, app)
            .await
            .map_err(|_| Trouble::malformed("The body broke off before its end."))?;
        let plan = if bytes.len() <= SHORT {
            parse(&bytes)?
        } else {
            app.work(Work::Design, move || parse(&bytes)).await??
        };
        Ok(Self(plan))
    }
}

/// Reads a plan.
///
/// # Errors
/// No JSON, or JSON that is no plan, with the path of the field.
pub fn parse(bytes: &[u8]) -> Result<SitePlan, Trouble> {
    let plan: SitePlan = document(bytes)?;
    if lists::are_all_known(bytes) {
        return Ok(plan);
    }
    let sent: Value = serde_json::from_slice(bytes).map_err(Trouble::not_json)?;
    let read = serde_json::to_value(&plan)
        .map_err(|error| Trouble::broken("a plan could not be written as JSON", &error))?;
    match unnamed(&sent, &read, "") {
        Some(path) => Err(Trouble::document(
            &path,
            "this is a list; each answer has to be named",
        )),
        None => Ok(plan),
    }
}

/// Reads a document, every refusal with its place.
pub(super) fn document<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, Trouble> {
    // Only a refusal needs its place, which takes as long again to keep in mind.
    if let Ok(read) = serde_json::from_slice(bytes) {
        return Ok(read);
    }
    let mut reader = serde_json::Deserializer::from_slice(bytes);
    let read = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string();
        refusal(&path, error.inner())
    })?;
    reader.end().map_err(Trouble::not_json)?;
    Ok(read)
}

/// The first place at which named answers were sent as a bare list. The reader would take them by their order, which
/// may change, and nobody would see an answer land in the wrong field.
fn unnamed(sent: &Value, read: &Value, path: &str) -> Option<String> {
    let join = |name: &str| {
        if path.is_empty() {
            name.to_owned()
        } else {
            format!("{path}.{name}")
        }
    };
    match (sent, read) {
        (Value::Array(_), Value::Object(_)) => Some(path.to_owned()),
        (Value::Object(sent), Value::Object(read)) => sent
            .iter()
            .find_map(|(name, sent)| unnamed(sent, read.get(name)?, &join(name))),
        (Value::Array(sent), Value::Array(read)) => sent
            .iter()
            .zip(read)
            .enumerate()
            .find_map(|(i, (sent, read))| unnamed(sent, read, &format!("{path}[{i}]"))),
        _ => None,
    }
}

fn refusal(path: &str, error: &serde_json::Error) -> Trouble {
    match error.classify() {
        Category::Data => Trouble::document(path, error.to_string()),
        Category::Syntax | Category::Eof | Category::Io => Trouble::not_json(error),
    }
}

pub(super) fn is_json(headers: &HeaderMap) -> bool {
    let Some(kind) = headers
        .get(CONTENT_TYPE)
        .and_then(|kind| kind.to_str().ok())
    else {
        return false;
    };
    let essence = kind
        .split(';')
        .next()
        .unwrap_or_default()
        .trim()
        .to_ascii_lowercase();
    essence == "application/json"
        || (essence.starts_with("application/") && essence.ends_with("+json"))
}
