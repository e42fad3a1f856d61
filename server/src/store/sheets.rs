//! What a printed sheet's code names: a plan, by a word that opens nothing of it.
//!
//! The word is no secret of the plan's: whoever has a sheet has it. It is kept as it is, since it must be printed again,
//! and answers one question only, whether a revision is still the newest.

use jiff::Timestamp;

use super::database::values;
use super::moment::time;
use super::{Outcome, Store, secret};

/// The revision that stands, for whoever holds a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Standing {
    /// Number of the newest revision.
    pub revision: u32,
    /// When it was saved.
    pub saved_at: Timestamp,
}

impl Store {
    /// The word that the plan's sheets carry, the same on all of them; made when the first is printed.
    ///
    /// # Errors
    /// The store's own.
    pub async fn sheet_token(&self, plan_id: &str) -> Outcome<String> {
        let known = "SELECT token FROM sheets WHERE plan_id = $1";
        if let Some(row) = self.db.row(known, values![plan_id]).await? {
            return row.get(0);
        }
        let token = secret::sheet_token()?;
        let mut work = self.db.begin().await?;
        let sql =
            "INSERT INTO sheets (token, plan_id) VALUES ($1, $2) ON CONFLICT (plan_id) DO NOTHING";
        work.run(sql, values![&token, plan_id]).await?;
        // Of two who print at once, both carry the word of the one who came first.
        let kept = work
            .row(known, values![plan_id])
            .await?
            .map(|row| row.get(0))
            .transpose()?;
        work.commit().await?;
        Ok(kept.unwrap_or(token))
    }

    /// Which revision stands of the plan whose sheets carry a word; `None` for a word that is none.
    ///
    /// # Errors
    /// The store's own.
    pub async fn sheet(&self, token: &str) -> Outcome<Option<Standing>> {
        let sql = "SELECT plans.revision, revisions.saved_at FROM sheets JOIN plans ON plans.id = sheets.plan_id \
                   JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision WHERE sheets.token = $1 AND plans.removed_at IS NULL";
        let row = self.db.row(sql, values![token]).await?;
        row.map(|row| {
            Ok(Standing {
                revision: super::plans::revision_number(row.get(0)?),
                saved_at: time(row.get(1)?),
            })
        })
        .transpose()
    }
}
