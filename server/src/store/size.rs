//! How much of the disk a plan takes: its revisions, the entries of its record, and its photographs, in bytes.

use super::database::{Work, values};
use super::{Outcome, Store};

/// The bytes of the plan whose name stands in a statement as `$name`.
macro_rules! bytes_of {
    ($name:literal) => {
        concat!(
            "CAST(coalesce((SELECT sum(octet_length(document)) FROM revisions AS every WHERE every.plan_id = ",
            $name,
            "), 0) + coalesce((SELECT sum(octet_length(document)) FROM entries AS every WHERE every.plan_id = ",
            $name,
            "), 0) + coalesce((SELECT sum(octet_length(picture)) FROM photos AS every WHERE every.plan_id = ",
            $name,
            "), 0) AS BIGINT)"
        )
    };
}
pub(super) use bytes_of;

/// The bytes of one plan.
pub(super) const SIZE: &str = concat!("SELECT ", bytes_of!("$1"));

/// Whether so much more fits beside what is there.
pub(super) fn fits(size: Option<i64>, more: usize, most: u32) -> bool {
    let more = i64::try_from(more).unwrap_or(i64::MAX);
    size.unwrap_or(0).saturating_add(more) <= i64::from(most)
}

impl Store {
    /// Whether a plan may take so many bytes more, within a transaction.
    pub(super) async fn may_take(
        &self,
        work: &mut Work,
        plan_id: &str,
        more: usize,
    ) -> Outcome<bool> {
        let Some(most) = self.quotas.plan_bytes else {
            return Ok(true);
        };
        let size = work.row(SIZE, values![plan_id]).await?;
        let size = size.map(|row| row.get::<i64>(0)).transpose()?;
        Ok(fits(size, more, most))
    }
}
