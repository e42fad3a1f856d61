//! How long a save takes until it is on the disk: `cargo bench -p stillground-server --bench saves`.
//!
//! Beside it the same bytes put into a bare SQLite file, one row a transaction, written ahead, synchronous FULL. Goal: at
//! least half as many saves as rows.
#![allow(
    clippy::expect_used,
    missing_docs,
    reason = "a bench that cannot start says so by stopping"
)]

use std::path::Path;

use divan::Bencher;
use sqlx::ConnectOptions;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqliteSynchronous};
use stillground::site_plan::SitePlan;
use stillground_server::config::{Config, Settings};
use stillground_server::store::{Save, Store};
use tokio::runtime::{Builder, Runtime};

const PLAN: &str = include_str!("../../tests/examples/quarry-lane.json");

fn main() {
    divan::main();
}

fn runtime() -> Runtime {
    Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime")
}

#[divan::bench(min_time = 2)]
fn save(bencher: Bencher<'_, '_>) {
    let (folder, runtime) = (tempfile::tempdir().expect("a folder"), runtime());
    let plan: SitePlan = serde_json::from_str(PLAN).expect("the example is a plan");
    let config = Config::new(Settings {
        data: Some(folder.path().to_path_buf()),
        ..Settings::default()
    })
    .expect("settings");
    let (store, id) = runtime.block_on(async {
        let store = Store::open(&config.database).await.expect("a store");
        let id = store.create(&plan).await.expect("a plan").id;
        (store, id)
    });
    let mut revision = 1;
    bencher.bench_local(|| {
        let saved = runtime
            .block_on(store.save(&id, revision, &plan))
            .expect("a save");
        revision += 1;
        assert_eq!(saved, Save::Done(revision));
    });
    runtime.block_on(store.close());
}

#[divan::bench(min_time = 2)]
fn bare_row(bencher: Bencher<'_, '_>) {
    let (folder, runtime) = (tempfile::tempdir().expect("a folder"), runtime());
    let mut file = runtime.block_on(bare(folder.path())).expect("a file");
    bencher.bench_local(|| {
        let insert = sqlx::query("INSERT INTO rows (document) VALUES ($1)").bind(PLAN);
        runtime.block_on(insert.execute(&mut file)).expect("a row")
    });
}

async fn bare(folder: &Path) -> sqlx::Result<SqliteConnection> {
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
