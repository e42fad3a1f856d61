//! What a link opens, looked up without reading the plan.

use super::database::values;
use super::moment::now;
use super::plans::revision_number;
use super::{Outcome, Right, Secret, Store};

/// What a link opens, without the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LinkScope {
    /// The plan's name in the store.
    pub plan_id: String,
    /// What this link lets its holder do.
    pub right: Right,
    /// The plan's newest revision.
    pub revision: u32,
}

impl Store {
    /// What a link opens now; `None` for a wrong, revoked or unknown one alike.
    ///
    /// # Errors
    /// The store's own.
    pub async fn look(&self, secret: &str) -> Outcome<Option<LinkScope>> {
        let Some(secret) = Secret::parse(secret) else {
            return Ok(None);
        };
        let sql = "SELECT links.plan_id, links.opens, plans.revision FROM links JOIN plans ON plans.id = links.plan_id \
                   WHERE links.digest = $1 AND links.revoked_at IS NULL AND (links.expires_at IS NULL OR links.expires_at > $2) \
                   AND plans.removed_at IS NULL AND (plans.closes_at IS NULL OR plans.closes_at > $2)";
        let Some(row) = self.db.row(sql, values![&secret.digest(), now()]).await? else {
            return Ok(None);
        };
        let (plan_id, opens, revision): (String, String, i64) =
            (row.get(0)?, row.get(1)?, row.get(2)?);
        Ok(Right::from_key(&opens).map(|right| LinkScope {
            plan_id,
            right,
            revision: revision_number(revision),
        }))
    }
}
