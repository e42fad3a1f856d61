//! Who may begin a plan, and what is found again: invitations, recovery codes, the organiser's sessions, and how much may
//! be kept.

use jiff::{SignedDuration, Timestamp};
use stillground::site_plan::SitePlan;

use super::database::{Row, Work, values};
use super::moment::{micros, now, time};
use super::plans::{insert_plan, revoke_and_insert};
use super::{Created, Outcome, Right, Secret, Store, secret};

/// What has to be so for a plan to begin.
#[derive(Debug, Clone, Copy, Default)]
pub struct Terms<'t> {
    /// The code of an invitation, of which one use is taken; `None`: none is asked for.
    pub invitation: Option<&'t str>,
    /// Most plans kept.
    pub most_plans: Option<u32>,
}

/// What became of a plan that was to begin.
#[derive(Debug, Clone)]
pub enum Begun {
    /// It is on the disk.
    Done(Created),
    /// The invitation is unknown, used up, over or withdrawn.
    NotInvited,
    /// No more plans are kept.
    Full,
}

/// An invitation as the organiser sees it; its code is shown once, when it is made.
#[derive(Debug, Clone, PartialEq)]
pub struct Invitation {
    /// Its name in the store; no secret.
    pub id: String,
    /// For whom it is, in the organiser's words.
    pub said: String,
    /// Plans that may still begin with it.
    pub uses_left: u32,
    /// When it was made.
    pub made_at: Timestamp,
    /// When it ends.
    pub expires_at: Option<Timestamp>,
}

impl Store {
    /// Keeps a new plan, when the terms are met; one use of the invitation goes with it, or nothing happens.
    ///
    /// # Errors
    /// The store's own; nothing was kept then.
    pub async fn begin(&self, plan: &SitePlan, terms: Terms<'_>) -> Outcome<Begun> {
        let mut work = self.db.begin().await?;
        if let Some(code) = terms.invitation
            && !use_invitation(&mut work, code).await?
        {
            return work.give_up().await.map(|()| Begun::NotInvited);
        }
        if let Some(most) = terms.most_plans
            && count(&mut work, "SELECT count(*) FROM plans").await? >= i64::from(most)
        {
            return work.give_up().await.map(|()| Begun::Full);
        }
        let created = insert_plan(&mut work, plan).await?;
        work.commit().await?;
        Ok(Begun::Done(created))
    }

    /// Makes an invitation for so many plans; the code is in no other place.
    ///
    /// # Errors
    /// The store's own.
    pub async fn invite(
        &self,
        said: &str,
        uses: u32,
        lasts: Option<SignedDuration>,
    ) -> Outcome<Secret> {
        let (code, id, now) = (Secret::new()?, secret::plan_id()?, Timestamp::now());
        let ends = lasts.map(|lasts| now.as_microsecond().saturating_add(micros(lasts)));
        let mut work = self.db.begin().await?;
        let sql = "INSERT INTO invitations (digest, id, said, uses_left, made_at, expires_at) VALUES ($1, $2, $3, $4, $5, $6)";
        work.run(
            sql,
            values![&code.digest(), &id, said, uses, now.as_microsecond(), ends],
        )
        .await?;
        work.commit().await?;
        Ok(code)
    }

    /// The invitations with which a plan may still begin, newest first.
    ///
    /// # Errors
    /// The store's own.
    pub async fn invitations(&self) -> Outcome<Vec<Invitation>> {
        let sql = "SELECT id, said, uses_left, made_at, expires_at FROM invitations WHERE revoked_at IS NULL AND uses_left > 0 \
                   AND (expires_at IS NULL OR expires_at > $1) ORDER BY made_at DESC LIMIT 200";
        let line = |row: &Row| {
            let ends: Option<i64> = row.get(4)?;
            let uses: i64 = row.get(2)?;
            Ok(Invitation {
                id: row.get(0)?,
                said: row.get(1)?,
                uses_left: u32::try_from(uses).unwrap_or(u32::MAX),
                made_at: time(row.get(3)?),
                expires_at: ends.map(time),
            })
        };
        self.db
            .rows(sql, values![now()])
            .await?
            .iter()
            .map(line)
            .collect()
    }

    /// Withdraws an invitation.
    ///
    /// # Errors
    /// The store's own.
    pub async fn uninvite(&self, id: &str) -> Outcome<()> {
        self.change(
            "UPDATE invitations SET revoked_at = $1 WHERE id = $2 AND revoked_at IS NULL",
            id,
        )
        .await
    }

    /// Makes a code with which a lost edit link is replaced; an older one of the plan is over.
    ///
    /// # Errors
    /// The store's own.
    pub async fn recovery_code(&self, plan_id: &str) -> Outcome<Secret> {
        let code = Secret::new()?;
        let mut work = self.db.begin().await?;
        work.run(
            "DELETE FROM recoveries WHERE plan_id = $1",
            values![plan_id],
        )
        .await?;
        let sql = "INSERT INTO recoveries (digest, plan_id, made_at) VALUES ($1, $2, $3)";
        work.run(sql, values![&code.digest(), plan_id, now()])
            .await?;
        work.commit().await?;
        Ok(code)
    }

    /// When the plan's recovery code was made.
    ///
    /// # Errors
    /// The store's own.
    pub async fn recovery_since(&self, plan_id: &str) -> Outcome<Option<Timestamp>> {
        let row = self
            .db
            .row(
                "SELECT made_at FROM recoveries WHERE plan_id = $1",
                values![plan_id],
            )
            .await?;
        row.map(|row| row.get(0).map(time)).transpose()
    }

    /// A new edit link for a recovery code, which is used up by it; the old edit link opens nothing from now on.
    ///
    /// # Errors
    /// The store's own.
    pub async fn recover(&self, code: &str) -> Outcome<Option<Secret>> {
        let Some(code) = Secret::parse(code) else {
            return Ok(None);
        };
        let mut work = self.db.begin().await?;
        let sql = "SELECT recoveries.plan_id FROM recoveries JOIN plans ON plans.id = recoveries.plan_id \
                   WHERE digest = $1 AND plans.removed_at IS NULL AND (plans.closes_at IS NULL OR plans.closes_at > $2)";
        let Some(row) = work.row(sql, values![&code.digest(), now()]).await? else {
            return work.give_up().await.map(|()| None);
        };
        let plan_id: String = row.get(0)?;
        if work
            .run(
                "DELETE FROM recoveries WHERE digest = $1",
                values![&code.digest()],
            )
            .await?
            == 0
        {
            return work.give_up().await.map(|()| None);
        }
        let secret = revoke_and_insert(&mut work, &plan_id, Right::Edit, None).await?;
        work.commit().await?;
        Ok(Some(secret))
    }

    /// Opens a session of the organiser's that ends by itself.
    ///
    /// # Errors
    /// The store's own.
    pub async fn open_session(&self, mark: &[u8; 32], lasts: SignedDuration) -> Outcome<Secret> {
        let session = Secret::new()?;
        let ends = now().saturating_add(micros(lasts));
        let mut work = self.db.begin().await?;
        let sql = "INSERT INTO sessions (digest, mark, ends_at) VALUES ($1, $2, $3)";
        work.run(sql, values![&session.digest(), mark, ends])
            .await?;
        work.commit().await?;
        Ok(session)
    }

    /// The mark of the password with which an open session began.
    ///
    /// # Errors
    /// The store's own.
    pub async fn session_mark(&self, session: &str) -> Outcome<Option<Vec<u8>>> {
        let Some(session) = Secret::parse(session) else {
            return Ok(None);
        };
        let sql = "SELECT mark FROM sessions WHERE digest = $1 AND ends_at > $2";
        let row = self.db.row(sql, values![&session.digest(), now()]).await?;
        row.map(|row| row.get(0)).transpose()
    }

    /// Ends a session.
    ///
    /// # Errors
    /// The store's own.
    pub async fn close_session(&self, session: &str) -> Outcome<()> {
        let Some(session) = Secret::parse(session) else {
            return Ok(());
        };
        let mut work = self.db.begin().await?;
        work.run(
            "DELETE FROM sessions WHERE digest = $1",
            values![&session.digest()],
        )
        .await?;
        work.commit().await
    }

    /// Runs a change of which `$1` is the moment and `$2` a name.
    pub(super) async fn change(&self, sql: &'static str, name: &str) -> Outcome<()> {
        let mut work = self.db.begin().await?;
        work.run(sql, values![now(), name]).await?;
        work.commit().await
    }
}

/// Takes one use; of two who come at once for the last, one gets it.
async fn use_invitation(work: &mut Work, code: &str) -> Outcome<bool> {
    let Some(code) = Secret::parse(code.trim()) else {
        return Ok(false);
    };
    let sql = "UPDATE invitations SET uses_left = uses_left - 1 WHERE digest = $1 AND uses_left > 0 AND revoked_at IS NULL \
               AND (expires_at IS NULL OR expires_at > $2)";
    Ok(work.run(sql, values![&code.digest(), now()]).await? > 0)
}

async fn count(work: &mut Work, sql: &'static str) -> Outcome<i64> {
    work.row(sql, &[]).await?.map_or(Ok(0), |row| row.get(0))
}
