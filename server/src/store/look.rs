//! What a link opens, looked up without reading the plan: those who ask at once are answered by one question to the
//! database, which was sent after the last of them had come.

use std::collections::HashMap;

use jiff::Timestamp;
use tokio::sync::oneshot;

use super::batches::{Batches, Carrier};
use super::database::{Db, Row, Value};
use super::moment::{now, time};
use super::plans::revision_number;
use super::{Outcome, Right, Secret, Store, StoreFailure};

/// Questions on the way to the database at once: one more than is answered, so that neither side waits for the other.
const CARRIERS: usize = 2;
/// Most who are answered by one.
const MOST: usize = 512;
/// Different links in one question, when it is not of one alone.
const LINKS: usize = 8;

/// What the links that were asked for open now.
macro_rules! question {
    ($asked:literal) => {
        concat!(
            "WITH asked (digest) AS (VALUES ",
            $asked,
            ") SELECT links.digest, links.plan_id, links.opens, revisions.number, revisions.saved_at, \
             entries.number, entries.received_at FROM asked JOIN links ON links.digest = asked.digest \
             JOIN plans ON plans.id = links.plan_id \
             JOIN revisions ON revisions.plan_id = plans.id AND revisions.number = plans.revision \
             LEFT JOIN entries ON entries.plan_id = plans.id \
             AND entries.number = (SELECT max(number) FROM entries WHERE plan_id = plans.id) \
             WHERE links.revoked_at IS NULL AND (links.expires_at IS NULL OR links.expires_at > $1) \
             AND plans.removed_at IS NULL AND (plans.closes_at IS NULL OR plans.closes_at > $1)"
        )
    };
}

/// What a link opens, without the plan.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Look {
    /// The plan's name in the store.
    pub plan_id: String,
    /// What this link lets its holder do.
    pub right: Right,
    /// The plan's newest revision.
    pub revision: u32,
    /// When it was saved.
    pub saved_at: Timestamp,
    /// The number of the record's last entry and when it was received; none when nothing was entered.
    pub last_entry: Option<(i64, i64)>,
}

/// Whoever asks.
pub(super) struct Asked {
    digest: [u8; 32],
    answer: oneshot::Sender<Outcome<Option<Look>>>,
}

pub(super) type Looks = Batches<Asked>;

/// Nobody has asked.
pub(super) fn looks() -> Looks {
    Batches::new(CARRIERS, MOST)
}

impl Store {
    /// What a link opens now; `None` for a wrong, revoked or unknown one alike.
    ///
    /// # Errors
    /// The store's own.
    pub async fn look(&self, secret: &str) -> Outcome<Option<Look>> {
        let Some(secret) = Secret::parse(secret) else {
            return Ok(None);
        };
        let (answer, heard) = oneshot::channel();
        if let Some(carrier) = self.looks.add(Asked {
            digest: secret.digest(),
            answer,
        }) {
            tokio::spawn(carry(self.db.clone(), carrier));
        }
        heard
            .await
            .unwrap_or_else(|_| Err(StoreFailure::Away("the question broke off".to_owned())))
    }
}

async fn carry(db: Db, mut carrier: Carrier<Asked>) {
    while let Some(asked) = carrier.next() {
        match found(&db, &asked).await {
            Ok(found) => asked
                .into_iter()
                .for_each(|one| drop(one.answer.send(Ok(found.get(&one.digest).cloned())))),
            Err(failure) => asked
                .into_iter()
                .for_each(|one| drop(one.answer.send(Err(failure.again())))),
        }
    }
}

/// What the different links of those who ask open.
async fn found(db: &Db, asked: &[Asked]) -> Outcome<HashMap<[u8; 32], Look>> {
    let mut digests: Vec<[u8; 32]> = asked.iter().map(|one| one.digest).collect();
    digests.sort_unstable();
    digests.dedup();
    let mut found = HashMap::with_capacity(digests.len());
    for some in digests.chunks(LINKS) {
        for row in rows(db, some).await? {
            found.extend(look(&row)?);
        }
    }
    Ok(found)
}

async fn rows(db: &Db, digests: &[[u8; 32]]) -> Outcome<Vec<Row>> {
    let Some(first) = digests.first() else {
        return Ok(Vec::new());
    };
    // A question of one length is prepared once: what is missing is filled up with the first link.
    let (sql, links) = match digests.len() {
        1 => (question!("($2)"), 1),
        _ => (
            question!("($2), ($3), ($4), ($5), ($6), ($7), ($8), ($9)"),
            LINKS,
        ),
    };
    let links = (0..links).map(|place| Value::from(digests.get(place).unwrap_or(first)));
    let values: Vec<Value<'_>> = std::iter::once(Value::from(now())).chain(links).collect();
    db.rows(sql, &values).await
}

fn look(row: &Row) -> Outcome<Option<([u8; 32], Look)>> {
    let (digest, opens): (Vec<u8>, String) = (row.get(0)?, row.get(2)?);
    let (Ok(digest), Some(right)) = (digest.try_into(), Right::from_key(&opens)) else {
        return Ok(None);
    };
    let last_entry = row.get::<Option<i64>>(5)?.zip(row.get::<Option<i64>>(6)?);
    let (revision, saved_at) = (revision_number(row.get(3)?), time(row.get(4)?));
    Ok(Some((
        digest,
        Look {
            plan_id: row.get(1)?,
            right,
            revision,
            saved_at,
            last_entry,
        },
    )))
}
