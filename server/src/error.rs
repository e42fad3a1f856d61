//! What a person is told when it goes wrong. Two families: their input, which names the field, and our fault, which is
//! logged once with its context.
//!
//! Handlers return a [`Trouble`]; as it leaves, a [`Reader`] gives it the form that the reader expects: problem details
//! (RFC 9457) below `/api/`, a page elsewhere.

mod access;
mod busy;
mod page;
mod present;
mod sent;
mod store;
mod typed;

use std::fmt::Display;

use axum::http::header::{HeaderName, WWW_AUTHENTICATE};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use serde_json::{Map, Value, json};
use stillground::field::{NumberField, Problems};
use stillground::site_plan::SitePlan;

pub use present::{Reader, asks_for_json};
pub use typed::Typed;

use crate::store::{Deed, Right, Saved};

/// The media type of problem details.
pub const PROBLEM_JSON: &str = "application/problem+json";

/// What went wrong. Its parts are those of a [`Report`].
#[derive(Debug, Clone)]
pub struct Trouble(Box<Report>);

/// What went wrong, in words for the person who asked.
#[derive(Debug, Clone)]
pub struct Report {
    /// Status of the answer.
    pub status: StatusCode,
    /// A short name that programs may rely on.
    pub code: &'static str,
    /// What happened and what to do, whole sentences.
    pub detail: String,
    /// The fields that are wrong.
    pub errors: Vec<FieldError>,
    /// Further members of the problem details.
    more: Map<String, Value>,
    header: Option<(HeaderName, HeaderValue)>,
}

/// What is wrong with a field.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FieldError {
    /// Path of the field, for instance `site.frost_depth_m`.
    pub path: String,
    /// What is wrong and what would be right.
    pub detail: String,
    /// The value found, where it can be shown.
    pub value: Option<f64>,
    /// The range that is taken, in the field's own unit.
    pub range: Option<Range>,
    /// The other fields, where answers contradict each other.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub with: Vec<String>,
}

/// The range of a number.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Range {
    /// Least value taken.
    pub least: f64,
    /// Largest value taken.
    pub most: f64,
    /// Unit.
    pub unit: &'static str,
}

impl std::ops::Deref for Trouble {
    type Target = Report;

    fn deref(&self) -> &Report {
        &self.0
    }
}

impl Trouble {
    fn new(status: StatusCode, code: &'static str, detail: impl Into<String>) -> Self {
        Self(Box::new(Report {
            status,
            code,
            detail: detail.into(),
            errors: Vec::new(),
            more: Map::new(),
            header: None,
        }))
    }

    fn with_errors(mut self, errors: Vec<FieldError>) -> Self {
        self.0.errors = errors;
        self
    }

    fn with_header(mut self, name: HeaderName, value: &'static str) -> Self {
        self.0.header = Some((name, HeaderValue::from_static(value)));
        self
    }

    /// The same under another name.
    fn with_code(mut self, code: &'static str) -> Self {
        self.0.code = code;
        self
    }

    /// The same words under another status.
    fn with_status(mut self, status: StatusCode) -> Self {
        self.0.status = status;
        self
    }

    /// Answers that are out of range or contradict each other, all at once.
    #[must_use]
    pub fn answers(problems: &Problems) -> Self {
        let errors: Vec<FieldError> = problems.0.iter().flat_map(FieldError::of).collect();
        let detail = match problems.0.as_slice() {
            [one] => one.said.clone(),
            many => format!(
                "Correct {} answers; the plan cannot be calculated until then.",
                many.len()
            ),
        };
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "answers", detail).with_errors(errors)
    }

    /// A document that is no plan, and where it stops being one.
    #[must_use]
    pub fn document(path: &str, said: impl Into<String>) -> Self {
        let detail = said.into();
        let error = FieldError::at(path, detail.clone());
        Self::new(
            StatusCode::UNPROCESSABLE_ENTITY,
            "document",
            format!("This is not a plan: {detail}."),
        )
        .with_errors(vec![error])
    }

    /// A calendar of a plan that does not say on which day it begins.
    #[must_use]
    pub fn no_start_day() -> Self {
        let said = "The plan does not say on which day the work begins, so there is no calendar yet. Give the day first.";
        let error = FieldError::at("work.start_date", said);
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "no_start_day", said).with_errors(vec![error])
    }

    /// An entry of the record that cannot be kept, each member with what is wrong.
    #[must_use]
    pub fn entry(faults: &[(&str, String)]) -> Self {
        let error = |(path, detail): &(&str, String)| FieldError::at(path, detail.clone());
        let detail = match faults {
            [(_, one)] => one.clone(),
            many => format!(
                "{} things are wrong with this entry; nothing was kept.",
                many.len()
            ),
        };
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "entry", detail)
            .with_errors(faults.iter().map(error).collect())
    }

    /// An entry under a name that another one has.
    #[must_use]
    pub fn name_taken() -> Self {
        Self::new(
            StatusCode::CONFLICT,
            "name_taken",
            "Another entry has this name, and an entry is never changed. Send it under a new name.",
        )
    }

    /// A record that takes no more.
    #[must_use]
    pub fn record_full() -> Self {
        let said = "The record of this plan takes no more of these. Nothing was lost; tell whoever made the plan.";
        Self::new(StatusCode::CONFLICT, "record_full", said)
    }

    /// The same words, when they say that the plan contradicts itself: no fault of the entry that was sent.
    #[must_use]
    pub fn contradictory(self) -> Self {
        if self.errors.is_empty() {
            return self;
        }
        let said = "The plan's answers contradict each other just now, so nothing can be held against it. Keep the entry and send it later.";
        Self::new(StatusCode::CONFLICT, "contradictory", said)
    }

    /// A link that opens nothing: wrong, revoked or never made, all alike.
    #[must_use]
    pub fn no_such_link() -> Self {
        let said = "No plan opens with this link. It may have been replaced or revoked, or a letter may be missing; ask whoever sent it \
                    for a new one.";
        Self::new(StatusCode::NOT_FOUND, "no_such_link", said)
    }

    /// A sheet's code that names no plan here.
    #[must_use]
    pub fn no_such_sheet() -> Self {
        let said = "No plan here has printed a sheet with this code. Ask whoever gave you the sheet whether it is still the latest before \
                    you dig, pour or drill.";
        Self::new(StatusCode::NOT_FOUND, "no_such_sheet", said)
    }

    /// An address at which there is nothing.
    #[must_use]
    pub fn nothing_here() -> Self {
        Self::new(
            StatusCode::NOT_FOUND,
            "nothing_here",
            "There is nothing at this address.",
        )
    }

    /// A request to a plan without its link's secret.
    #[must_use]
    pub fn no_secret() -> Self {
        let said =
            "Send the secret of one of the plan's links: Authorization: Bearer and the secret.";
        Self::new(StatusCode::UNAUTHORIZED, "no_secret", said)
            .with_header(WWW_AUTHENTICATE, "Bearer realm=\"plans\"")
    }

    /// A link that opens the plan, but not for this.
    #[must_use]
    pub fn not_with_this_link(needed: &str) -> Self {
        Self::new(
            StatusCode::FORBIDDEN,
            "not_with_this_link",
            format!("You need the plan’s {needed} link for this."),
        )
    }

    /// A link that opens the plan, but does not let its holder do this.
    #[must_use]
    pub fn needs(deed: Deed) -> Self {
        Self::not_with_this_link(match deed.least() {
            Right::Edit => "edit",
            Right::Record => "record or edit",
            Right::View => "view",
        })
    }

    /// A save that does not say which revision it began from.
    #[must_use]
    pub fn no_precondition() -> Self {
        let said = "Say which revision this replaces: send If-Match with the ETag that the plan was read with.";
        Self::new(StatusCode::PRECONDITION_REQUIRED, "no_precondition", said)
    }

    /// A save on an old revision: the plan that stands now is named, and stands in the problem details.
    #[must_use]
    pub fn stale(current: &Saved) -> Self {
        let said = format!(
            "The plan was saved by someone else since: revision {} stands now. Nothing was overwritten; read it, merge your changes and save again.",
            current.revision
        );
        let mut trouble = Self::new(StatusCode::PRECONDITION_FAILED, "stale", said);
        let current = json!({ "revision": current.revision, "saved_at": current.saved_at, "plan": current.plan });
        trouble.0.more.insert("current".to_owned(), current);
        trouble
    }

    /// Our fault: logged here, once, with what was being done.
    #[must_use]
    pub fn broken(doing: &str, error: &dyn Display) -> Self {
        tracing::error!(doing, error = %error, "a fault of the service");
        let said = "Something broke here; it was not your doing, and it was written to the log. Nothing that was saved before is lost.";
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, "broken", said)
    }

    /// Whether the very same may be taken another time: nothing is wrong with what was sent.
    #[must_use]
    pub fn may_pass(&self) -> bool {
        self.status.is_server_error()
            || self.status == StatusCode::TOO_MANY_REQUESTS
            || ["quota", "record_full", "contradictory"].contains(&self.code)
    }

    /// What is wrong in one line, with the field's path, for the command line.
    #[must_use]
    pub fn sentence(&self) -> String {
        match self.errors.first() {
            Some(first) => format!("{}: {}", first.path, first.detail),
            None => self.detail.clone(),
        }
    }

    /// The problem details, RFC 9457.
    #[must_use]
    pub fn details(&self) -> Value {
        let mut details = self.more.clone();
        details.insert("type".to_owned(), "about:blank".into());
        details.insert(
            "title".to_owned(),
            self.status.canonical_reason().unwrap_or("Error").into(),
        );
        details.insert("status".to_owned(), self.status.as_u16().into());
        details.insert("code".to_owned(), self.code.into());
        details.insert("detail".to_owned(), self.detail.clone().into());
        if !self.errors.is_empty() {
            details.insert("errors".to_owned(), json!(self.errors));
        }
        Value::Object(details)
    }
}

impl FieldError {
    /// What is wrong with a field that is no number out of its range.
    pub(crate) fn at(path: &str, detail: impl Into<String>) -> Self {
        Self {
            path: path.to_owned(),
            detail: detail.into(),
            value: None,
            range: None,
            with: Vec::new(),
        }
    }

    /// One for each field of a problem, so that contradictory answers are named at both fields.
    fn of(problem: &stillground::field::Problem) -> impl Iterator<Item = Self> {
        problem.fields.iter().map(move |path| Self {
            path: path.clone(),
            detail: problem.said.clone(),
            value: problem.value,
            range: SitePlan::numbers()
                .find(|field| field.path == *path)
                .map(Range::of),
            with: problem
                .fields
                .iter()
                .filter(|other| *other != path)
                .cloned()
                .collect(),
        })
    }
}

impl Range {
    fn of(field: &NumberField) -> Self {
        Self {
            least: field.least,
            most: field.most,
            unit: field.unit.symbol(),
        }
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let mut response = (
            self.status,
            [("content-type", PROBLEM_JSON)],
            self.details().to_string(),
        )
            .into_response();
        if let Some((name, value)) = self.header.clone() {
            response.headers_mut().insert(name, value);
        }
        response.extensions_mut().insert(self);
        response
    }
}
