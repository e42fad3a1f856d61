//! Saves over HTTP, each on the disk before it is acknowledged, and beside them the same bytes put into a bare SQLite file.

use std::io::{Error, Result};
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use sqlx::ConnectOptions;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqliteSynchronous};
use stillground::site_plan::SitePlan;
use stillground_server::config::Database;
use stillground_server::store::{Save, Store};

use crate::drive::{Next, Seen, drive};
use crate::machine::Planner;

/// The plan that is saved again and again.
pub const PLAN: &str = include_str!("../../../tests/examples/quarry-lane.json");

/// A plan in the planner: its name and the secrets of two of its links.
#[derive(Debug, Clone)]
pub struct Kept {
    id: String,
    /// Opens for editing.
    pub edit: String,
    /// Opens for reading.
    pub view: String,
}

/// Keeps a plan.
pub async fn create(planner: &Planner) -> Result<Kept> {
    let (_, body) = planner.send(&sent("POST", "/api/v1/plans", "")).await?;
    let body: serde_json::Value = serde_json::from_slice(&body).map_err(Error::other)?;
    let text = |value: &serde_json::Value| {
        value
            .as_str()
            .map(str::to_owned)
            .ok_or_else(|| Error::other("no plan was made"))
    };
    Ok(Kept {
        id: text(&body["id"])?,
        edit: text(&body["links"]["edit"])?,
        view: text(&body["links"]["view"])?,
    })
}

/// Saves from so many people at once, each on a plan of their own, each save on top of the one before.
pub async fn save(planner: &Planner, people: usize, length: Duration) -> Result<Seen> {
    drive(
        planner.socket,
        people,
        length,
        savers(planner, people).await?,
    )
    .await
}

/// What so many people send, one after the other.
pub async fn savers(planner: &Planner, people: usize) -> Result<Next> {
    let mut plans = Vec::new();
    for _ in 0..people {
        plans.push(create(planner).await?);
    }
    Ok(Arc::new(move |person, nth| {
        let Kept { id, edit, .. } = &plans[person];
        sent(
            "PUT",
            &format!("/api/v1/plans/{id}"),
            &format!(
                "Authorization: Bearer {edit}\r\nIf-Match: \"{}\"\r\n",
                nth + 1
            ),
        )
    }))
}

fn sent(method: &str, path: &str, headers: &str) -> Vec<u8> {
    let length = PLAN.len();
    let head = format!(
        "{method} {path} HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: {length}\r\n"
    );
    format!("{head}{headers}\r\n{PLAN}").into_bytes()
}

/// Saves a second of the store alone, without the way to it and without reading and checking what was sent.
pub async fn store_alone(folder: &Path, length: Duration) -> Result<f64> {
    let plan: SitePlan = serde_json::from_str(PLAN).map_err(Error::other)?;
    let store = Store::open(&Database::Sqlite(folder.join("alone.sqlite")))
        .await
        .map_err(Error::other)?;
    let id = store.create(&plan).await.map_err(Error::other)?.id;
    let (begun, mut revision) = (Instant::now(), 1_u32);
    while begun.elapsed() < length {
        revision += 1;
        if store
            .save(&id, revision - 1, &plan)
            .await
            .map_err(Error::other)?
            != Save::Done(revision)
        {
            return Err(Error::other("a save was not kept"));
        }
    }
    let rate = f64::from(revision - 1) / begun.elapsed().as_secs_f64();
    store.close().await;
    Ok(rate)
}

/// What is sent to a bare handler that keeps rows.
pub fn rows() -> Next {
    let request = sent("PUT", "/", "");
    Arc::new(move |_, _| request.clone())
}

/// A bare SQLite file, written ahead, synchronous FULL.
pub async fn bare_file(folder: &Path) -> sqlx::Result<SqliteConnection> {
    let options = SqliteConnectOptions::new()
        .filename(folder.join("bare.sqlite"))
        .create_if_missing(true);
    let mut file = options
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .connect()
        .await?;
    sqlx::query("CREATE TABLE rows (number INTEGER PRIMARY KEY, document TEXT NOT NULL)")
        .execute(&mut file)
        .await?;
    Ok(file)
}

/// Puts one row into it, a transaction by itself.
pub async fn bare_row(file: &mut SqliteConnection, document: &str) -> sqlx::Result<()> {
    sqlx::query("INSERT INTO rows (document) VALUES ($1)")
        .bind(document)
        .execute(file)
        .await
        .map(drop)
}

/// Rows a second that a bare SQLite file takes.
pub async fn bare_rows(folder: &Path, length: Duration) -> sqlx::Result<f64> {
    let mut file = bare_file(folder).await?;
    let (begun, mut rows) = (Instant::now(), 0_u32);
    while begun.elapsed() < length {
        bare_row(&mut file, PLAN).await?;
        rows += 1;
    }
    Ok(f64::from(rows) / begun.elapsed().as_secs_f64())
}
