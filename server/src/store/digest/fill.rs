//! Rows from before there were digests get theirs when the store is brought up to date. One that cannot be read by then
//! gets none, and is told as damaged from then on.

use stillground::record::Entry;
use stillground::site_plan::SitePlan;

use super::{Sum, of_entry, of_photo, of_revision};
use crate::store::Outcome;
use crate::store::connection::{Line, Row, values};

/// Rows in one question.
const AT_ONCE: i64 = 100;

/// A kind of row: how rows are asked for, counted on by plan and place, and how a digest is put to one.
struct Kind {
    rows: &'static str,
    put: &'static str,
    digest: fn(&Row) -> Outcome<Sum>,
}

/// Every question begins with the plan and the place, a number or a name, both as text.
const KINDS: [Kind; 3] = [
    Kind {
        rows: "SELECT plan_id, number, title, document, saved_at FROM revisions \
               WHERE digest IS NULL AND (plan_id > $1 OR plan_id = $1 AND number > $2) ORDER BY plan_id, number LIMIT $3",
        put: "UPDATE revisions SET digest = $1 WHERE plan_id = $2 AND number = $3",
        digest: revision,
    },
    Kind {
        rows: "SELECT plan_id, number, id, document, received_at FROM entries \
               WHERE digest IS NULL AND (plan_id > $1 OR plan_id = $1 AND number > $2) ORDER BY plan_id, number LIMIT $3",
        put: "UPDATE entries SET digest = $1 WHERE plan_id = $2 AND number = $3",
        digest: entry,
    },
    Kind {
        rows: "SELECT photos.plan_id, entries.number, photos.id, photos.picture FROM photos \
               JOIN entries ON entries.plan_id = photos.plan_id AND entries.id = photos.id WHERE photos.digest IS NULL \
               AND (photos.plan_id > $1 OR photos.plan_id = $1 AND entries.number > $2) \
               ORDER BY photos.plan_id, entries.number LIMIT $3",
        put: "UPDATE photos SET digest = $1 WHERE plan_id = $2 \
              AND id = (SELECT id FROM entries WHERE entries.plan_id = photos.plan_id AND entries.number = $3)",
        digest: photo,
    },
];

/// Puts a digest to every row that has none and can be read.
///
/// # Errors
/// The database's own.
pub(in crate::store) async fn fill(line: &mut Line<'_>) -> Outcome<()> {
    for kind in KINDS {
        let (mut plan, mut number) = (String::new(), 0_i64);
        loop {
            let rows = line
                .rows(kind.rows, values![&plan, number, AT_ONCE])
                .await?;
            if rows.is_empty() {
                break;
            }
            for row in rows {
                (plan, number) = (row.get(0)?, row.get(1)?);
                if let Ok(sum) = (kind.digest)(&row) {
                    line.run(kind.put, values![&sum, &plan, number]).await?;
                }
            }
        }
    }
    Ok(())
}

fn revision(row: &Row) -> Outcome<Sum> {
    let (plan, number, at): (String, i64, i64) = (row.get(0)?, row.get(1)?, row.get(4)?);
    let (title, document): (Option<String>, String) = (row.get(2)?, row.get(3)?);
    serde_json::from_str::<SitePlan>(&document)?;
    Ok(of_revision(&plan, number, title.as_deref(), &document, at))
}

fn entry(row: &Row) -> Outcome<Sum> {
    let (plan, number, at): (String, i64, i64) = (row.get(0)?, row.get(1)?, row.get(4)?);
    let (id, document): (String, String) = (row.get(2)?, row.get(3)?);
    serde_json::from_str::<Entry>(&document)?;
    Ok(of_entry(&plan, number, &id, &document, at))
}

fn photo(row: &Row) -> Outcome<Sum> {
    let (plan, id, picture): (String, String, Vec<u8>) = (row.get(0)?, row.get(2)?, row.get(3)?);
    Ok(of_photo(&plan, &id, &picture))
}
