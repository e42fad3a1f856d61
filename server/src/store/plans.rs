//! Plans, their revisions and their links.

use jiff::Timestamp;
use stillground::design::ENGINE_VERSION;
use stillground::site_plan::{Prices, SitePlan};

use super::database::{Row, Work, values};
use super::moment::{now, time};
use super::{
    Created, Deed, LinkState, Links, Opened, Outcome, Revision, Right, Saved, Secret, Store,
    StoreFailure, digest, secret,
};

/// Revisions in one list.
pub const REVISIONS_ON_A_PAGE: u32 = 100;

/// The revision of a plan that stands.
pub(super) const NEWEST: &str = "SELECT revisions.number, revisions.document, revisions.saved_at, revisions.plan_id, revisions.title, \
    revisions.digest FROM plans \
    JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision WHERE plans.id = $1";

impl Store {
    /// Keeps a new plan as its revision 1 and makes its three links.
    ///
    /// # Errors
    /// The store's own; nothing was kept then.
    pub async fn create(&self, plan: &SitePlan) -> Outcome<Created> {
        let mut work = self.db.begin().await?;
        let created = insert_plan(&mut work, plan).await?;
        work.commit().await?;
        Ok(created)
    }

    /// Opens a plan by the secret of a link; `None` for a wrong, revoked or unknown one alike.
    ///
    /// # Errors
    /// The store's own.
    pub async fn open_link(&self, secret: &str) -> Outcome<Option<Opened>> {
        let Some(secret) = Secret::parse(secret) else {
            return Ok(None);
        };
        let sql = "SELECT revisions.number, revisions.document, revisions.saved_at, revisions.plan_id, revisions.title, revisions.digest, \
                   links.opens, links.opened_at, revisions.engine FROM links \
                   JOIN plans ON plans.id = links.plan_id \
                   JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision \
                   WHERE links.digest = $1 AND links.revoked_at IS NULL AND (links.expires_at IS NULL OR links.expires_at > $2) \
                   AND plans.removed_at IS NULL AND (plans.closes_at IS NULL OR plans.closes_at > $2)";
        let Some(row) = self.db.row(sql, values![&secret.digest(), now()]).await? else {
            return Ok(None);
        };
        let opens: String = row.get(6)?;
        let Some(right) = Right::from_key(&opens) else {
            return Ok(None);
        };
        let plan_id: String = row.get(3)?;
        let (store, plan, before) = (self.clone(), plan_id.clone(), row.get(7)?);
        let link = secret.digest();
        tokio::spawn(async move { store.note_opening(&plan, link, before).await });
        let mut saved = self.damage.seen(saved(&row))?;
        if !right.may(Deed::ReadPrices) {
            saved.plan.prices = Prices::default();
        }
        Ok(Some(Opened {
            plan_id,
            right,
            saved,
            engine: row.get(8)?,
        }))
    }

    /// The plan's revisions below a number, newest first, at most [`REVISIONS_ON_A_PAGE`].
    ///
    /// # Errors
    /// The store's own.
    pub async fn revisions(&self, plan_id: &str, below: Option<u32>) -> Outcome<Vec<Revision>> {
        let sql = "SELECT number, title, saved_at, engine FROM revisions WHERE plan_id = $1 AND number < $2 ORDER BY number DESC LIMIT $3";
        let (below, most) = (below.map_or(i64::MAX, i64::from), REVISIONS_ON_A_PAGE);
        let line = |row: &Row| {
            Ok(Revision {
                revision: revision_number(row.get(0)?),
                title: row.get(1)?,
                saved_at: time(row.get(2)?),
                engine: row.get(3)?,
            })
        };
        self.db
            .rows(sql, values![plan_id, below, most])
            .await?
            .iter()
            .map(line)
            .collect()
    }

    /// One revision; `None` when there is none of that number.
    ///
    /// # Errors
    /// The store's own.
    pub async fn revision(&self, plan_id: &str, number: u32) -> Outcome<Option<Saved>> {
        let sql = "SELECT number, document, saved_at, plan_id, title, digest FROM revisions WHERE plan_id = $1 AND number = $2";
        let row = self.db.row(sql, values![plan_id, number]).await?;
        self.damage.seen(row.as_ref().map(saved).transpose())
    }

    /// Revokes the plan's links of a right and makes a new one.
    ///
    /// # Errors
    /// The store's own. [`StoreFailure::NotFound`] when there is no such plan.
    pub async fn replace_link(&self, plan_id: &str, right: Right) -> Outcome<Secret> {
        self.replace_link_until(plan_id, right, None).await
    }

    /// The same with a link that opens nothing after a while.
    ///
    /// # Errors
    /// The store's own. [`StoreFailure::NotFound`] when there is no such plan.
    pub async fn replace_link_until(
        &self,
        plan_id: &str,
        right: Right,
        until: Option<Timestamp>,
    ) -> Outcome<Secret> {
        let mut work = self.db.begin().await?;
        let secret = revoke_and_insert(&mut work, plan_id, right, until).await?;
        work.commit().await?;
        Ok(secret)
    }

    /// Revokes the plan's links of a right.
    ///
    /// # Errors
    /// The store's own.
    pub async fn revoke(&self, plan_id: &str, right: Right) -> Outcome<()> {
        let mut work = self.db.begin().await?;
        revoke_links(&mut work, plan_id, right, Timestamp::now().as_microsecond()).await?;
        work.commit().await
    }

    /// Which rights have a live link.
    ///
    /// # Errors
    /// The store's own.
    pub async fn links(&self, plan_id: &str) -> Outcome<Vec<LinkState>> {
        let sql = "SELECT opens, max(made_at), max(expires_at), max(opened_at) FROM links WHERE plan_id = $1 AND revoked_at IS NULL \
                   AND (expires_at IS NULL OR expires_at > $2) GROUP BY opens";
        let rows = self.db.rows(sql, values![plan_id, now()]).await?;
        let alive: Vec<(String, i64, Option<i64>, Option<i64>)> = rows
            .iter()
            .map(|row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?)))
            .collect::<Outcome<_>>()?;
        let state = |right: Right| {
            let found = alive.iter().find(|(opens, ..)| opens == right.key());
            LinkState {
                right,
                made_at: found.map(|&(_, at, ..)| time(at)),
                expires_at: found.and_then(|&(_, _, at, _)| at).map(time),
                opened_at: found.and_then(|&(.., at)| at).map(time),
            }
        };
        Ok(Right::ALL.into_iter().map(state).collect())
    }
}

/// Adds a new plan with its first revision and its three links within a transaction.
pub(super) async fn insert_plan(work: &mut Work, plan: &SitePlan) -> Outcome<Created> {
    let (id, links) = (secret::plan_id()?, Links::new()?);
    let now = now();
    work.run(
        "INSERT INTO plans (id, revision, created_at) VALUES ($1, 1, $2)",
        values![&id, now],
    )
    .await?;
    insert_revision(work, &id, 1, plan, now, Some(ENGINE_VERSION)).await?;
    insert_links(work, &id, &links, now).await?;
    Ok(Created { id, links })
}

/// Keeps others from changing what hangs on a plan until the end of a transaction.
///
/// # Errors
/// There is no such plan.
pub(super) async fn hold(work: &mut Work, plan_id: &str) -> Outcome<()> {
    let sql = "UPDATE plans SET revision = revision WHERE id = $1";
    match work.run(sql, values![plan_id]).await? {
        0 => Err(StoreFailure::NotFound),
        _ => Ok(()),
    }
}

/// Revokes the plan's links of a right and makes a new one, which may end by itself, within a transaction.
pub(super) async fn revoke_and_insert(
    work: &mut Work,
    plan_id: &str,
    right: Right,
    until: Option<Timestamp>,
) -> Outcome<Secret> {
    let (secret, now) = (Secret::new()?, now());
    // The plan is held until the end, so that of two who replace a link at once only one link stays alive.
    hold(work, plan_id).await?;
    revoke_links(work, plan_id, right, now).await?;
    insert_link(work, plan_id, right, &secret, now).await?;
    if let Some(until) = until {
        let sql = "UPDATE links SET expires_at = $1 WHERE digest = $2";
        work.run(sql, values![until.as_microsecond(), &secret.digest()])
            .await?;
    }
    Ok(secret)
}

pub(super) async fn insert_revision(
    work: &mut Work,
    plan_id: &str,
    number: i64,
    plan: &SitePlan,
    now: i64,
    engine: Option<&str>,
) -> Outcome<()> {
    let sql = "INSERT INTO revisions (plan_id, number, title, document, saved_at, digest, engine) VALUES ($1, $2, $3, $4, $5, $6, $7)";
    let document = serde_json::to_string(plan)?;
    let sum = digest::of_revision(plan_id, number, plan.title.as_deref(), &document, now);
    work.run(
        sql,
        values![plan_id, number, &plan.title, &document, now, &sum, engine],
    )
    .await
    .map(drop)
}

pub(super) async fn insert_links(
    work: &mut Work,
    plan_id: &str,
    links: &Links,
    now: i64,
) -> Outcome<()> {
    for (right, secret) in [
        (Right::Edit, &links.edit),
        (Right::Record, &links.record),
        (Right::View, &links.view),
    ] {
        insert_link(work, plan_id, right, secret, now).await?;
    }
    Ok(())
}

async fn insert_link(
    work: &mut Work,
    plan_id: &str,
    right: Right,
    secret: &Secret,
    now: i64,
) -> Outcome<()> {
    let sql = "INSERT INTO links (digest, plan_id, opens, made_at) VALUES ($1, $2, $3, $4)";
    work.run(sql, values![&secret.digest(), plan_id, right.key(), now])
        .await
        .map(drop)
}

async fn revoke_links(work: &mut Work, plan_id: &str, right: Right, now: i64) -> Outcome<()> {
    let sql =
        "UPDATE links SET revoked_at = $1 WHERE plan_id = $2 AND opens = $3 AND revoked_at IS NULL";
    work.run(sql, values![now, plan_id, right.key()])
        .await
        .map(drop)
}

/// A revision from a row that begins with its number, document, time, plan, title and digest.
///
/// # Errors
/// [`StoreFailure::DamagedRow`] when it is not what was kept.
pub(super) fn saved(row: &Row) -> Outcome<Saved> {
    let (number, at): (i64, i64) = (row.get(0)?, row.get(2)?);
    let plan_id: String = row.get(3)?;
    let named = || format!("revision {number} of plan {plan_id}");
    let document: String = digest::readable(row.get(1), named)?;
    let title: Option<String> = digest::readable(row.get(4), named)?;
    let sum = digest::of_revision(&plan_id, number, title.as_deref(), &document, at);
    digest::check(row, 5, &sum, named)?;
    Ok(Saved {
        revision: revision_number(number),
        plan: serde_json::from_str(&document)?,
        saved_at: time(at),
    })
}

/// Revisions are counted up from 1 one at a time: none is ever beyond 32 bits.
pub(super) fn revision_number(number: i64) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
