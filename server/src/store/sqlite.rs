//! The store on a SQLite file: one connection writes, several read.

use std::path::Path;
use std::time::Duration;

use jiff::Timestamp;
use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqlitePool, SqlitePoolOptions, SqliteSynchronous};
use sqlx::{Connection, Sqlite as Db, Transaction};
use stillground::site_plan::SitePlan;

use super::file::StoreFile;
use super::{Created, LinkState, Links, Opened, Outcome, Revision, Right, Save, Saved, Secret, StoreFailure, migration, secret};

/// How long a writer waits for another before it says that the store is busy.
const BUSY: Duration = Duration::from_secs(5);
/// Connections that read; each has a thread of its own.
const READERS: u32 = 4;

/// The store on a SQLite file.
#[derive(Clone)]
pub(super) struct Sqlite {
    writer: SqlitePool,
    readers: SqlitePool,
    file: StoreFile,
}

impl Sqlite {
    pub(super) async fn open(path: &Path) -> Outcome<Self> {
        if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
            make_private_folder(folder)?;
        }
        let options = options(path);
        let writer = pool(1)
            .before_acquire(|connection, _| Box::pin(is_fresh(connection)))
            .connect_with(options.clone().create_if_missing(true))
            .await?;
        migration::run(&mut *writer.acquire().await?).await?;
        let readers = pool(READERS).connect_with(options.pragma("query_only", "ON")).await?;
        Ok(Self { writer, readers, file: StoreFile::at(path)? })
    }

    pub(super) async fn create(&self, plan: &SitePlan) -> Outcome<Created> {
        let id = secret::plan_id()?;
        let links = Links { edit: Secret::new()?, record: Secret::new()?, view: Secret::new()? };
        let now = Timestamp::now().as_microsecond();
        let mut transaction = self.begin().await?;
        sqlx::query("INSERT INTO plans (id, revision, created_at) VALUES ($1, 1, $2)")
            .bind(&id)
            .bind(now)
            .execute(&mut *transaction)
            .await?;
        insert_revision(&mut transaction, &id, 1, plan, now).await?;
        for (right, secret) in [(Right::Edit, &links.edit), (Right::Record, &links.record), (Right::View, &links.view)] {
            insert_link(&mut transaction, &id, right, secret, now).await?;
        }
        transaction.commit().await?;
        Ok(Created { id, links })
    }

    pub(super) async fn open_link(&self, secret: &Secret) -> Outcome<Option<Opened>> {
        let row: Option<(String, String, i64, String, i64)> = sqlx::query_as(
            "SELECT links.plan_id, links.opens, revisions.number, revisions.document, revisions.saved_at FROM links \
             JOIN plans ON plans.id = links.plan_id \
             JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision \
             WHERE links.digest = $1 AND links.revoked_at IS NULL",
        )
        .bind(secret.digest().as_slice())
        .fetch_optional(&self.readers)
        .await?;
        let Some((plan_id, opens, number, document, saved_at)) = row else { return Ok(None) };
        let Some(right) = Right::from_key(&opens) else { return Ok(None) };
        Ok(Some(Opened { plan_id, right, saved: saved(number, &document, saved_at)? }))
    }

    pub(super) async fn save(&self, plan_id: &str, base_revision: u32, plan: &SitePlan) -> Outcome<Save> {
        let mut transaction = self.begin().await?;
        let next = i64::from(base_revision) + 1;
        let moved = sqlx::query("UPDATE plans SET revision = $1 WHERE id = $2 AND revision = $3")
            .bind(next)
            .bind(plan_id)
            .bind(i64::from(base_revision))
            .execute(&mut *transaction)
            .await?;
        if moved.rows_affected() == 0 {
            transaction.rollback().await?;
            let current = self.newest(plan_id).await?.ok_or(StoreFailure::NotFound)?;
            return Ok(Save::Stale { current: Box::new(current) });
        }
        insert_revision(&mut transaction, plan_id, next, plan, Timestamp::now().as_microsecond()).await?;
        transaction.commit().await?;
        Ok(Save::Done(base_revision + 1))
    }

    async fn newest(&self, plan_id: &str) -> Outcome<Option<Saved>> {
        let row: Option<(i64, String, i64)> = sqlx::query_as(
            "SELECT revisions.number, revisions.document, revisions.saved_at FROM plans \
             JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision WHERE plans.id = $1",
        )
        .bind(plan_id)
        .fetch_optional(&self.readers)
        .await?;
        row.map(|(number, document, saved_at)| saved(number, &document, saved_at)).transpose()
    }

    pub(super) async fn revisions(&self, plan_id: &str) -> Outcome<Vec<Revision>> {
        let rows: Vec<(i64, Option<String>, i64)> =
            sqlx::query_as("SELECT number, title, saved_at FROM revisions WHERE plan_id = $1 ORDER BY number DESC")
                .bind(plan_id)
                .fetch_all(&self.readers)
                .await?;
        Ok(rows
            .into_iter()
            .map(|(number, title, saved_at)| Revision { revision: revision_number(number), title, saved_at: time(saved_at) })
            .collect())
    }

    pub(super) async fn revision(&self, plan_id: &str, number: u32) -> Outcome<Option<Saved>> {
        let row: Option<(i64, String, i64)> =
            sqlx::query_as("SELECT number, document, saved_at FROM revisions WHERE plan_id = $1 AND number = $2")
                .bind(plan_id)
                .bind(i64::from(number))
                .fetch_optional(&self.readers)
                .await?;
        row.map(|(number, document, saved_at)| saved(number, &document, saved_at)).transpose()
    }

    pub(super) async fn replace_link(&self, plan_id: &str, right: Right) -> Outcome<Secret> {
        let secret = Secret::new()?;
        let now = Timestamp::now().as_microsecond();
        let mut transaction = self.begin().await?;
        let known: i64 = sqlx::query_scalar("SELECT count(*) FROM plans WHERE id = $1").bind(plan_id).fetch_one(&mut *transaction).await?;
        if known == 0 {
            return Err(StoreFailure::NotFound);
        }
        revoke_links(&mut transaction, plan_id, right, now).await?;
        insert_link(&mut transaction, plan_id, right, &secret, now).await?;
        transaction.commit().await?;
        Ok(secret)
    }

    pub(super) async fn revoke(&self, plan_id: &str, right: Right) -> Outcome<()> {
        let mut transaction = self.begin().await?;
        revoke_links(&mut transaction, plan_id, right, Timestamp::now().as_microsecond()).await?;
        Ok(transaction.commit().await?)
    }

    pub(super) async fn links(&self, plan_id: &str) -> Outcome<Vec<LinkState>> {
        let rows: Vec<(String, i64)> =
            sqlx::query_as("SELECT opens, max(made_at) FROM links WHERE plan_id = $1 AND revoked_at IS NULL GROUP BY opens")
                .bind(plan_id)
                .fetch_all(&self.readers)
                .await?;
        let made_at = |right: Right| rows.iter().find(|(opens, _)| opens == right.key()).map(|&(_, at)| time(at));
        Ok(Right::ALL.into_iter().map(|right| LinkState { right, made_at: made_at(right) }).collect())
    }

    pub(super) async fn ping(&self) -> Outcome<()> {
        self.file.is_there()?;
        let _: i64 = sqlx::query_scalar("SELECT count(*) FROM (SELECT 1 FROM plans LIMIT 1)").fetch_one(&self.readers).await?;
        Ok(())
    }

    pub(super) async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }

    /// Begins to write. The lock is taken at once: a transaction that began as a reader could not wait for another's.
    async fn begin(&self) -> Outcome<Transaction<'static, Db>> {
        self.file.is_there()?;
        Ok(self.writer.begin_with("BEGIN IMMEDIATE").await?)
    }
}

pub(super) fn options(path: &Path) -> SqliteConnectOptions {
    SqliteConnectOptions::new()
        .filename(path)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .busy_timeout(BUSY)
}

/// Whether a connection may be used again. A full disk ends a transaction inside SQLite, and the connection counts it as
/// open for ever: such a one is closed and another is made.
async fn is_fresh(connection: &mut SqliteConnection) -> sqlx::Result<bool> {
    // A rollback may still be on its way to the connection's thread; the answer comes after it.
    connection.ping().await?;
    Ok(!connection.is_in_transaction())
}

fn pool(connections: u32) -> SqlitePoolOptions {
    SqlitePoolOptions::new()
        .max_connections(connections)
        .acquire_timeout(BUSY * 2)
        .idle_timeout(None)
        .max_lifetime(None)
        .test_before_acquire(false)
}

/// Makes a folder that only its owner may read, and those above it; one that is there is left as it is.
pub(super) fn make_private_folder(folder: &Path) -> std::io::Result<()> {
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder)
}

async fn insert_revision(transaction: &mut Transaction<'static, Db>, plan_id: &str, number: i64, plan: &SitePlan, now: i64) -> Outcome<()> {
    sqlx::query("INSERT INTO revisions (plan_id, number, title, document, saved_at) VALUES ($1, $2, $3, $4, $5)")
        .bind(plan_id)
        .bind(number)
        .bind(&plan.title)
        .bind(serde_json::to_string(plan)?)
        .bind(now)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

async fn insert_link(transaction: &mut Transaction<'static, Db>, plan_id: &str, right: Right, secret: &Secret, now: i64) -> Outcome<()> {
    sqlx::query("INSERT INTO links (digest, plan_id, opens, made_at) VALUES ($1, $2, $3, $4)")
        .bind(secret.digest().as_slice())
        .bind(plan_id)
        .bind(right.key())
        .bind(now)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

async fn revoke_links(transaction: &mut Transaction<'static, Db>, plan_id: &str, right: Right, now: i64) -> Outcome<()> {
    sqlx::query("UPDATE links SET revoked_at = $1 WHERE plan_id = $2 AND opens = $3 AND revoked_at IS NULL")
        .bind(now)
        .bind(plan_id)
        .bind(right.key())
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

fn saved(number: i64, document: &str, saved_at: i64) -> Outcome<Saved> {
    Ok(Saved { revision: revision_number(number), plan: serde_json::from_str(document)?, saved_at: time(saved_at) })
}

/// Revisions are counted up from 1 one at a time: none is ever beyond 32 bits.
fn revision_number(number: i64) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

fn time(micros: i64) -> Timestamp {
    Timestamp::from_microsecond(micros).unwrap_or(Timestamp::UNIX_EPOCH)
}
