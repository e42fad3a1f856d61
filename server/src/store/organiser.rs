//! The organiser's shelf: every plan by its title and age, closed, opened again, removed, and brought back for a while.

use std::collections::HashMap;
use std::sync::{Arc, Mutex};

use jiff::{SignedDuration, Timestamp};

use super::database::{Row, values};
use super::moment::{micros, now, time};
use super::plans::revision_number;
use super::size::bytes_of;
use super::{Outcome, Store};

/// How long a removed plan can be brought back.
pub const KEPT_AFTER_REMOVAL: SignedDuration = SignedDuration::from_hours(30 * 24);
/// An opening is noted again after this long.
const NOTED_EVERY: SignedDuration = SignedDuration::from_hours(24);
/// Plans on a page of the shelf.
pub const ON_A_PAGE: usize = 50;

/// A plan on the shelf. What is in it is not shown: the organiser keeps plans, and reads none.
#[derive(Debug, Clone, PartialEq)]
pub struct Shelved {
    /// Its name in the store.
    pub id: String,
    /// Its title.
    pub title: Option<String>,
    /// Its newest revision.
    pub revision: u32,
    /// When it began.
    pub created_at: Timestamp,
    /// When it was saved last.
    pub saved_at: Timestamp,
    /// From when its links open nothing.
    pub closes_at: Option<Timestamp>,
    /// When it was removed.
    pub removed_at: Option<Timestamp>,
    /// Bytes of all its revisions, entries and photographs.
    pub size: u64,
    /// When it was opened last, to the day; none before that was noted.
    pub opened_at: Option<Timestamp>,
}

/// The openings that this process has noted or is about to, so that many who read at once are one errand to the disk.
#[derive(Debug, Clone, Default)]
pub(super) struct Openings(Arc<Mutex<HashMap<[u8; 32], i64>>>);

/// Openings that are remembered; then all are forgotten, and each link is noted once more.
const MOST_OPENINGS: usize = 10_000;

impl Openings {
    /// Whether nobody noted this link lately; from now on somebody has.
    fn first(&self, link: &[u8; 32], now: i64, lately: impl Fn(i64) -> bool) -> bool {
        let Ok(mut noted) = self.0.lock() else {
            return false;
        };
        if noted.get(link).copied().is_some_and(lately) {
            return false;
        }
        if noted.len() >= MOST_OPENINGS {
            noted.clear();
        }
        noted.insert(*link, now);
        true
    }
}

/// Which plans are asked for.
#[derive(Debug, Clone, Copy, Default)]
pub struct Sought<'s> {
    /// Part of the title, in any case.
    pub title: &'s str,
    /// Those that were removed, or those that were not.
    pub removed: bool,
    /// Those that began before this moment, for the next page.
    pub before: Option<Timestamp>,
}

/// Plans with what is shown of each, when they meet a condition.
macro_rules! shelf {
    ($removed:literal) => {
        concat!(
            "SELECT plans.id, revisions.title, plans.revision, plans.created_at, revisions.saved_at, plans.closes_at, \
             plans.removed_at, ",
            bytes_of!("plans.id"),
            ", plans.opened_at FROM plans \
             JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision WHERE plans.removed_at ",
            $removed,
            " AND plans.created_at < $1 AND (lower(revisions.title) LIKE $2 ESCAPE '!' OR lower(revisions.title) LIKE $4 ESCAPE '!' \
             OR lower(revisions.title) LIKE $5 ESCAPE '!' OR $2 = '%%') ORDER BY plans.created_at DESC LIMIT $3"
        )
    };
}

const KEPT: &str = shelf!("IS NULL");
const REMOVED: &str = shelf!("IS NOT NULL");

impl Store {
    /// The plans asked for, the youngest first, at most [`ON_A_PAGE`] and one that says that there are more.
    ///
    /// # Errors
    /// The store's own.
    pub async fn shelf(&self, sought: Sought<'_>) -> Outcome<Vec<Shelved>> {
        let before = sought
            .before
            .map_or(i64::MAX, |before| before.as_microsecond());
        let most = i64::try_from(ON_A_PAGE).unwrap_or(50) + 1;
        let sql = if sought.removed { REMOVED } else { KEPT };
        let [small, large, typed] = patterns(sought.title);
        self.db
            .rows(sql, values![before, &small, most, &large, &typed])
            .await?
            .iter()
            .map(shelved)
            .collect()
    }

    /// How many plans are kept, those removed and not yet gone among them.
    ///
    /// # Errors
    /// The store's own.
    pub async fn plan_count(&self) -> Outcome<u64> {
        let row = self.db.row("SELECT count(*) FROM plans", &[]).await?;
        let count: i64 = row.map_or(Ok(0), |row| row.get(0))?;
        Ok(u64::try_from(count).unwrap_or(0))
    }

    /// Closes a plan from a moment on: its links open nothing then. `None` opens it again.
    ///
    /// # Errors
    /// The store's own.
    pub async fn close_plan(&self, plan_id: &str, at: Option<Timestamp>) -> Outcome<()> {
        let mut work = self.db.begin().await?;
        let at = at.map(Timestamp::as_microsecond);
        work.run(
            "UPDATE plans SET closes_at = $1 WHERE id = $2",
            values![at, plan_id],
        )
        .await?;
        work.commit().await
    }

    /// Removes a plan: its links open nothing, and after [`KEPT_AFTER_REMOVAL`] it is gone.
    ///
    /// # Errors
    /// The store's own.
    pub async fn remove_plan(&self, plan_id: &str) -> Outcome<()> {
        self.change(
            "UPDATE plans SET removed_at = $1 WHERE id = $2 AND removed_at IS NULL",
            plan_id,
        )
        .await
    }

    /// Brings a removed plan back; its links open it again. Whether there was one.
    ///
    /// # Errors
    /// The store's own.
    pub async fn bring_back(&self, plan_id: &str) -> Outcome<bool> {
        let mut work = self.db.begin().await?;
        let sql = "UPDATE plans SET removed_at = NULL WHERE id = $1 AND removed_at > $2";
        let back = work.run(sql, values![plan_id, oldest()]).await?;
        work.commit().await?;
        Ok(back > 0)
    }

    /// Erases a removed plan at once and for good, with its record and its photographs. Whether there was one.
    ///
    /// # Errors
    /// The store's own.
    pub async fn erase_plan(&self, plan_id: &str) -> Outcome<bool> {
        let sql = "DELETE FROM plans WHERE id = $1 AND removed_at IS NOT NULL";
        Ok(self.db.run(sql, values![plan_id]).await? > 0)
    }

    /// Notes that a plan was opened by a link, by its digest, once a day at most.
    pub(super) async fn note_opening(&self, plan_id: &str, link: [u8; 32], before: Option<i64>) {
        let now = now();
        let lately = |at: i64| now.saturating_sub(at) < micros(NOTED_EVERY);
        if before.is_some_and(lately) || !self.openings.first(&link, now, lately) {
            return;
        }
        if let Err(error) = self.write_opening(plan_id, link, now).await {
            // Reading goes on where nothing can be written.
            tracing::debug!(%error, "an opening could not be noted");
        }
    }

    async fn write_opening(&self, plan_id: &str, link: [u8; 32], now: i64) -> Outcome<()> {
        let mut work = self.db.begin().await?;
        let of_plan = "UPDATE plans SET opened_at = $1 WHERE id = $2";
        work.run(of_plan, values![now, plan_id]).await?;
        let of_link = "UPDATE links SET opened_at = $1 WHERE digest = $2";
        work.run(of_link, values![now, &link]).await?;
        work.commit().await
    }

    /// Lets go for good what was removed long enough ago, and sessions that are over. How many plans went.
    ///
    /// # Errors
    /// The store's own.
    pub async fn sweep(&self) -> Outcome<u64> {
        self.sweep_before(oldest()).await
    }

    /// Writes down that links are over whose time is: a service that starts with its clock set back does not open them.
    async fn end_links(&self) -> Outcome<()> {
        let over =
            "SELECT plan_id FROM links WHERE revoked_at IS NULL AND expires_at <= $1 LIMIT 1";
        if self.db.row(over, values![now()]).await?.is_some() {
            let sql = "UPDATE links SET revoked_at = expires_at WHERE revoked_at IS NULL AND expires_at <= $1";
            self.db.run(sql, values![now()]).await?;
        }
        Ok(())
    }

    async fn sweep_before(&self, moment: i64) -> Outcome<u64> {
        self.end_links().await?;
        let due = self
            .db
            .row(
                "SELECT id FROM plans WHERE removed_at <= $1 LIMIT 1",
                values![moment],
            )
            .await?;
        let over = self
            .db
            .row(
                "SELECT ends_at FROM sessions WHERE ends_at <= $1 LIMIT 1",
                values![now()],
            )
            .await?;
        if due.is_none() && over.is_none() {
            return Ok(0);
        }
        let mut work = self.db.begin().await?;
        let gone = work
            .run("DELETE FROM plans WHERE removed_at <= $1", values![moment])
            .await?;
        work.run("DELETE FROM sessions WHERE ends_at <= $1", values![now()])
            .await?;
        work.commit().await?;
        Ok(gone)
    }
}

/// Before this moment a removed plan cannot be brought back.
fn oldest() -> i64 {
    now().saturating_sub(micros(KEPT_AFTER_REMOVAL))
}

/// A text as a part of a title, its own signs of a pattern taken literally: in small letters, with its other letters than
/// a to z in capitals, and with those as they were typed. SQLite, and PostgreSQL in some places, make only a to z small.
fn patterns(text: &str) -> [String; 3] {
    let literal = text
        .trim()
        .replace('!', "!!")
        .replace('%', "!%")
        .replace('_', "!_");
    let small = literal.to_ascii_lowercase();
    let large = small
        .chars()
        .flat_map(|sign| {
            if sign.is_ascii() {
                vec![sign]
            } else {
                sign.to_uppercase().collect()
            }
        })
        .collect();
    [literal.to_lowercase(), large, small].map(|text: String| format!("%{text}%"))
}

fn shelved(row: &Row) -> Outcome<Shelved> {
    let (closes, removed, size): (Option<i64>, Option<i64>, Option<i64>) =
        (row.get(5)?, row.get(6)?, row.get(7)?);
    let opened: Option<i64> = row.get(8)?;
    Ok(Shelved {
        id: row.get(0)?,
        title: row.get(1)?,
        revision: revision_number(row.get(2)?),
        created_at: time(row.get(3)?),
        saved_at: time(row.get(4)?),
        closes_at: closes.map(time),
        removed_at: removed.map(time),
        size: u64::try_from(size.unwrap_or(0)).unwrap_or(0),
        opened_at: opened.map(time),
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::config::Database;

    #[test]
    fn signs_of_a_pattern_are_taken_literally() {
        assert_eq!(patterns(" 50% of_It! ")[0], "%50!% of!_it!!%");
    }

    #[tokio::test]
    async fn titles_are_found_in_small_letters_and_capitals_of_every_alphabet() {
        let folder =
            std::env::temp_dir().join(format!("stillground-sought-{}", std::process::id()));
        let store = Store::open(&Database::Sqlite(folder.join("a.sqlite")))
            .await
            .unwrap();
        for title in [Some("Östhang"), Some("KÜHLE höhe"), Some("plain"), None] {
            let mut plan = stillground::site_plan::SitePlan::unknown();
            plan.title = title.map(str::to_owned);
            store.create(&plan).await.unwrap();
        }
        for (title, found) in [
            ("östhang", 1),
            ("Östhang", 1),
            ("STHANG", 1),
            ("kühle", 1),
            ("Höhe", 1),
            ("Plain", 1),
            ("", 4),
            ("x", 0),
        ] {
            let shelf = store
                .shelf(Sought {
                    title,
                    removed: false,
                    before: None,
                })
                .await
                .unwrap();
            assert_eq!(shelf.len(), found, "{title}");
        }
        store.close().await;
        std::fs::remove_dir_all(folder).unwrap();
    }

    #[tokio::test]
    async fn a_removed_plan_comes_back_within_its_days_and_is_gone_after_them() {
        let folder = std::env::temp_dir().join(format!("stillground-sweep-{}", std::process::id()));
        let store = Store::open(&Database::Sqlite(folder.join("a.sqlite")))
            .await
            .unwrap();
        let created = store
            .create(&stillground::site_plan::SitePlan::unknown())
            .await
            .unwrap();
        let secret = created.links.edit.reveal();
        store.remove_plan(&created.id).await.unwrap();
        assert!(store.open_link(secret).await.unwrap().is_none());
        assert_eq!(store.sweep().await.unwrap(), 0, "its days are not over");
        assert!(store.bring_back(&created.id).await.unwrap());
        assert!(store.open_link(secret).await.unwrap().is_some());
        store.remove_plan(&created.id).await.unwrap();
        assert_eq!(
            store.sweep_before(now() + 1).await.unwrap(),
            1,
            "as it would be thirty days later"
        );
        assert!(!store.bring_back(&created.id).await.unwrap());
        assert_eq!(store.plan_count().await.unwrap(), 0);
        store.close().await;
        std::fs::remove_dir_all(folder).unwrap();
    }
}
