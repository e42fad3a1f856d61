//! The plan on paper, as pages and the interface for programs hand it out.

use std::sync::Arc;

use axum::body::Bytes;
use axum::http::HeaderValue;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use stillground::site_plan::SitePlan;

use crate::app::App;
use crate::client::Client;
use crate::config::House;
use crate::error::Trouble;
use crate::planned::Planned;
use crate::prints::{Print, Printed};
use crate::record::{Record, Writer};
use crate::turns::Work;
use crate::views::pages::found;
use crate::views::pdf::{self, Built, Fault, Letterhead, Paper, Sheet};
use crate::views::{csv, dxf, ics};

/// What may be asked of a print.
#[derive(Debug, Clone, Default, Deserialize)]
pub struct Asked {
    /// Size of paper, `a4` or `letter`, for the template also `a3` to `a0`; left out: by the plan's units.
    pub paper: Option<String>,
}

/// What stands on a print besides the design.
#[derive(Debug, Clone, Default)]
pub struct Issue {
    /// Revision; none for a plan that is not saved.
    pub revision: Option<i64>,
    /// Day of the revision.
    pub date: Option<String>,
    /// Address that opens the plan for reading.
    pub view_link: Option<String>,
    /// Address that says whether this revision is still the newest.
    pub check_link: Option<String>,
    /// What the house prints at the head.
    pub letterhead: Option<Letterhead>,
    /// What the record says of how it was built, for the file.
    pub built: Vec<Built>,
}

impl Letterhead {
    /// What a house prints; nothing when it has neither a name nor colours.
    #[must_use]
    pub fn of(house: &House) -> Option<Self> {
        let head = Self {
            name: house.name.clone(),
            accent: house.look.as_ref().map(|look| look.accent),
        };
        (head.name.is_some() || head.accent.is_some()).then_some(head)
    }
}

/// Prints a plan in turn, away from the threads that serve requests, unless the very same was printed before.
///
/// # Errors
/// A size of paper that there is not, or a fault of ours.
pub async fn print(
    app: &App,
    which: Print,
    plan: &SitePlan,
    issue: Issue,
    asked: &Asked,
) -> Result<Response, Trouble> {
    let planned = match which {
        Print::File => app.improved(plan).await?,
        // Its wall card has what was measured too.
        Print::Plan if plan.commissioning.is_measured() => app.improved(plan).await?,
        Print::Plan | Print::Template => app.planned(plan).await?,
    };
    let paper = paper(asked, &planned)?;
    let key = Printed {
        which,
        paper,
        plan: planned.plan,
        improved: planned.improved,
        revision: issue.revision,
        date: issue.date.clone(),
        links: [issue.view_link.clone(), issue.check_link.clone()],
        built: issue.built.clone(),
    };
    let print = match app.prints.0.get(&key) {
        Some(kept) => kept,
        None => made(app, key, planned, issue).await?,
    };
    let name = match which {
        Print::Plan => HeaderValue::from_static("inline; filename=\"plan.pdf\""),
        Print::File => HeaderValue::from_static("inline; filename=\"file.pdf\""),
        Print::Template => HeaderValue::from_static("inline; filename=\"template.pdf\""),
    };
    Ok((
        [
            (CONTENT_TYPE, HeaderValue::from_static("application/pdf")),
            (CONTENT_DISPOSITION, name),
        ],
        print,
    )
        .into_response())
}

/// Makes a print and keeps it. Whoever asked for the same and had its turn before has made it already.
async fn made(
    app: &App,
    key: Printed,
    planned: Arc<Planned>,
    issue: Issue,
) -> Result<Bytes, Trouble> {
    let prints = app.prints.clone();
    let work = move || {
        if let Some(kept) = prints.0.get(&key) {
            return Ok(kept);
        }
        let print = Bytes::from(bytes(key.which, &planned, &issue, key.paper)?);
        prints.0.insert(key, print.clone());
        Ok(print)
    };
    let made: Result<Bytes, Fault> = app.work(Work::Press, work).await?;
    made.map_err(|fault| Trouble::broken("a plan could not be printed", &fault))
}

/// The bytes of a print.
///
/// # Errors
/// A fault of ours.
pub fn bytes(
    which: Print,
    planned: &Planned,
    issue: &Issue,
    paper: Paper,
) -> Result<Vec<u8>, Fault> {
    let sheet = Sheet {
        brief: &planned.brief,
        design: &planned.design,
        revision: issue.revision,
        date: issue.date.as_deref(),
        view_link: issue.view_link.as_deref(),
        check_link: issue.check_link.as_deref(),
        letterhead: issue.letterhead.as_ref(),
        built: &issue.built,
    };
    match which {
        Print::Plan => pdf::plan(&sheet, paper),
        Print::File => pdf::file(&sheet, paper),
        Print::Template => pdf::template(&sheet, paper),
    }
}

fn paper(asked: &Asked, planned: &Planned) -> Result<Paper, Trouble> {
    match &asked.paper {
        None => Ok(Paper::usual(planned.brief.units)),
        Some(key) => Paper::from_key(key).ok_or_else(|| {
            Trouble::malformed("Paper is a4 or letter; for the template also a3, a2, a1 or a0.")
        }),
    }
}

/// The address that says whether a revision is still the newest, for the code on a sheet. A plan prints without it when
/// the store cannot be written just now: paper is most needed when something else has failed.
pub async fn check_link(
    app: &App,
    client: &Client,
    plan_id: &str,
    revision: u32,
) -> Option<String> {
    match app.store.sheet_token(plan_id).await {
        Ok(token) => client.link(&app.config.link(&format!("/s/{token}?rev={revision}"))),
        Err(error) => {
            tracing::warn!(error = %error, "a sheet was printed without its code");
            None
        }
    }
}

/// What the record says of how a pier was built: the last of each measurement, without the nuts' many torques before the
/// last pass. Nothing where nothing was entered, or where the plan contradicts itself just now.
///
/// # Errors
/// The store's own.
pub async fn built(app: &App, writer: &Writer) -> Result<Vec<Built>, Trouble> {
    let record = match Record::load(app, writer).await {
        Ok(record) => record,
        Err(trouble) if !trouble.errors.is_empty() => return Ok(Vec::new()),
        Err(trouble) => return Err(trouble),
    };
    let rows = found::rows(&record, &writer.saved.plan);
    let line = |row: found::FoundRow| Built {
        title: row.title,
        planned: row.planned,
        found: row.found,
        verdict: row.verdict,
        by: row.by,
    };
    Ok(rows.into_iter().map(line).collect())
}

/// One of a plan's drawings, by the name of its file.
///
/// # Errors
/// A drawing that there is not, or that this plan has nothing for.
pub fn drawing(planned: &Planned, file: &str) -> Result<Response, Trouble> {
    let name = file
        .strip_suffix(".svg")
        .ok_or_else(Trouble::nothing_here)?;
    // The layout for a telephone has an address of its own, so that a page may ask for it alone.
    let (name, on_a_phone) = name
        .strip_suffix("-phone")
        .map_or((name, false), |name| (name, true));
    let drawn = planned.drawing(name).ok_or_else(Trouble::nothing_here)?;
    let svg = if on_a_phone {
        drawn.phone.as_ref().ok_or_else(Trouble::nothing_here)?
    } else {
        &drawn.svg
    };
    Ok((
        [(CONTENT_TYPE, HeaderValue::from_static("image/svg+xml"))],
        svg.to_string(),
    )
        .into_response())
}

/// Plate and drilling jig as a drawing for a workshop.
///
/// # Errors
/// A fault of ours.
pub fn workshop(planned: &Planned) -> Result<Response, Trouble> {
    let made = dxf::workshop(&planned.brief, &planned.design)
        .map_err(|fault| Trouble::broken("no drawing for the workshop", &fault))?;
    let head = [
        (CONTENT_TYPE, HeaderValue::from_static("image/vnd.dxf")),
        (
            CONTENT_DISPOSITION,
            HeaderValue::from_static("attachment; filename=\"template.dxf\""),
        ),
    ];
    Ok((head, made).into_response())
}

/// A plan's materials as a table.
#[must_use]
pub fn materials(planned: &Planned) -> Response {
    let table = csv::materials(&planned.design, planned.brief.units);
    let head = [
        (
            CONTENT_TYPE,
            HeaderValue::from_static("text/csv; charset=utf-8"),
        ),
        (
            CONTENT_DISPOSITION,
            HeaderValue::from_static("attachment; filename=\"materials.csv\""),
        ),
    ];
    (head, table).into_response()
}

/// Earlier revisions whose tasks are looked at: what went longer ago was cancelled by the calendars of between.
const LOOKED_BACK: u32 = 5;

/// A plan's schedule as a calendar, for a plan that says on which day it begins.
///
/// # Errors
/// A plan that does not, or the store's own.
pub async fn schedule(
    app: &App,
    planned: &Planned,
    plan_id: &str,
    revision: u32,
) -> Result<Response, Trouble> {
    let start = planned
        .brief
        .work
        .start_date
        .as_deref()
        .ok_or_else(Trouble::no_start_day)?;
    let gone = gone(app, planned, plan_id, revision).await?;
    let calendar = ics::schedule(&planned.design, &gone, plan_id, revision, start);
    let head = [
        (
            CONTENT_TYPE,
            HeaderValue::from_static("text/calendar; charset=utf-8"),
        ),
        (
            CONTENT_DISPOSITION,
            HeaderValue::from_static("attachment; filename=\"schedule.ics\""),
        ),
    ];
    Ok((head, calendar).into_response())
}

/// Tasks that one of the last revisions had and this one has not.
async fn gone(
    app: &App,
    planned: &Planned,
    plan_id: &str,
    revision: u32,
) -> Result<Vec<ics::Gone>, Trouble> {
    let mut gone: Vec<ics::Gone> = Vec::new();
    for then in (revision.saturating_sub(LOOKED_BACK).max(1)..revision).rev() {
        let Some(saved) = app.store.revision(plan_id, then).await? else {
            continue;
        };
        let Some(start) = saved.plan.work.start_date.clone() else {
            continue;
        };
        let old = match app.planned(&saved.plan).await {
            Err(trouble) if !trouble.errors.is_empty() => continue,
            old => old?,
        };
        for task in &old.design.schedule {
            let stands = planned
                .design
                .schedule
                .iter()
                .chain(gone.iter().map(|gone| &gone.task))
                .any(|known| known.id == task.id);
            if !stands {
                gone.push(ics::Gone {
                    task: task.clone(),
                    start: start.clone(),
                });
            }
        }
    }
    Ok(gone)
}
