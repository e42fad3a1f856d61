//! Every statement finds its rows by an index: a store of a hundred thousand plans answers as quickly as a small one.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::fs;
use std::path::Path;

use sqlx::sqlite::SqliteConnection;
use sqlx::{AssertSqlSafe, Connection};

use super::schema::{SCHEMA, sqlite_steps};

/// Tables that grow with the plans; the others hold what one house has, and stay small.
const GROWING: &[&str] = &["plans", "revisions", "links", "entries", "photos", "sheets"];
/// Statements that go through a whole table all the same: asked only where a house has set a most for its plans.
const WHOLE_TABLES: &[&str] = &["SELECT count(*) FROM plans"];

#[tokio::test]
async fn no_statement_goes_through_a_whole_table() {
    let mut connection = SqliteConnection::connect("sqlite::memory:").await.unwrap();
    sqlite_steps(&mut connection, 0, SCHEMA).await.unwrap();
    let mut looked_at = 0;
    for (file, sql) in statements() {
        if WHOLE_TABLES.contains(&sql.as_str()) {
            continue;
        }
        let plan: Vec<(i64, i64, i64, String)> =
            sqlx::query_as(AssertSqlSafe(format!("EXPLAIN QUERY PLAN {sql}")))
                .fetch_all(&mut connection)
                .await
                .unwrap();
        let grows = |step: &str| {
            step.strip_prefix("SCAN ")
                .and_then(|rest| rest.split(' ').next())
                .is_some_and(|table| GROWING.contains(&table))
        };
        let whole = plan.iter().find(|(.., step)| grows(step));
        assert!(whole.is_none(), "{file}: {sql}\n{whole:?}");
        looked_at += 1;
    }
    assert!(looked_at >= 20, "only {looked_at} statements were found");
}

/// A plan is weighed with each save: were its documents read for that, each save would cost more than the one before.
#[tokio::test]
async fn a_plan_is_weighed_without_reading_what_it_holds() {
    let mut connection = SqliteConnection::connect("sqlite::memory:").await.unwrap();
    sqlite_steps(&mut connection, 0, SCHEMA).await.unwrap();
    let sql = AssertSqlSafe(format!("EXPLAIN QUERY PLAN {}", super::size::SIZE));
    let steps: Vec<(i64, i64, i64, String)> = sqlx::query_as(sql)
        .fetch_all(&mut connection)
        .await
        .unwrap();
    let reading: Vec<&str> = steps
        .iter()
        .map(|(.., step)| step.as_str())
        .filter(|step| step.starts_with("SEARCH"))
        .collect();
    assert_eq!(reading.len(), 3, "{steps:?}");
    for step in reading {
        assert!(step.contains("COVERING INDEX"), "{step}");
    }
}

/// The statements in the files of this module, which know nothing of a database but their text.
fn statements() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/store");
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        // These speak of the database itself; the organiser's list is of everything.
        if path.is_dir() || ["schema.rs", "archive.rs", "tests.rs"].contains(&name.as_str()) {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        for literal in text.split('"').skip(1).step_by(2) {
            let sql = literal
                .split("\\\n")
                .map(str::trim_start)
                .collect::<String>();
            // A text that ends in the middle is put together with others; what comes of it stands below.
            let whole = |sql: &&str| !sql.ends_with([' ', ',', '(', '=']);
            for sql in sql.split("; ").filter(whole).filter(|sql| {
                ["SELECT ", "UPDATE ", "DELETE ", "INSERT "]
                    .iter()
                    .any(|verb| sql.starts_with(verb))
            }) {
                found.push((name.clone(), sql.to_owned()));
            }
        }
    }
    found.push(("size.rs".to_owned(), super::size::SIZE.to_owned()));
    found
}
