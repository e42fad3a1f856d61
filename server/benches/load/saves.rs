//! Saves over HTTP, each on the disk before it is acknowledged, and beside them the same bytes put into a bare SQLite file.

use std::io::{Error, Result};
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use sqlx::ConnectOptions;
use sqlx::sqlite::{SqliteConnectOptions, SqliteJournalMode, SqliteSynchronous};

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
    let text = |value: &serde_json::Value| value.as_str().map(str::to_owned).ok_or_else(|| Error::other("no plan was made"));
    Ok(Kept { id: text(&body["id"])?, edit: text(&body["links"]["edit"])?, view: text(&body["links"]["view"])? })
}

/// Saves from so many people at once, each on a plan of their own, each save on top of the one before.
pub async fn save(planner: &Planner, people: usize, length: Duration) -> Result<Seen> {
    drive(planner.socket, people, length, savers(planner, people).await?).await
}

/// What so many people send, one after the other.
pub async fn savers(planner: &Planner, people: usize) -> Result<Next> {
    let mut plans = Vec::new();
    for _ in 0..people {
        plans.push(create(planner).await?);
    }
    Ok(Arc::new(move |person, nth| {
        let Kept { id, edit, .. } = &plans[person];
        sent("PUT", &format!("/api/v1/plans/{id}"), &format!("Authorization: Bearer {edit}\r\nIf-Match: \"{}\"\r\n", nth + 1))
    }))
}

fn sent(method: &str, path: &str, headers: &str) -> Vec<u8> {
    let length = PLAN.len();
    let head = format!("{method} {path} HTTP/1.1\r\nHost: pier.example\r\nContent-Type: application/json\r\nContent-Length: {length}\r\n");
    format!("{head}{headers}\r\n{PLAN}").into_bytes()
}

/// Rows a second that a bare SQLite file takes: one a transaction, written ahead, synchronous FULL.
pub async fn bare_rows(folder: &Path, length: Duration) -> sqlx::Result<f64> {
    let options = SqliteConnectOptions::new().filename(folder.join("bare.sqlite")).create_if_missing(true);
    let mut file = options.journal_mode(SqliteJournalMode::Wal).synchronous(SqliteSynchronous::Full).connect().await?;
    sqlx::query("CREATE TABLE rows (number INTEGER PRIMARY KEY, document TEXT NOT NULL)").execute(&mut file).await?;
    let (begun, mut rows) = (Instant::now(), 0_u32);
    while begun.elapsed() < length {
        sqlx::query("INSERT INTO rows (document) VALUES ($1)").bind(PLAN).execute(&mut file).await?;
        rows += 1;
    }
    Ok(f64::from(rows) / begun.elapsed().as_secs_f64())
}
