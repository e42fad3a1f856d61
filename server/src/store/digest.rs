//! The digest that is kept with each row whose loss nothing else would show: revisions, entries, photographs.
//!
//! It tells damage, not malice: whoever can write to the file can write a digest too. It covers where the row stands as
//! well as what it says, so that a row that was moved is found as well as one that was changed.

mod fill;

use sha2::{Digest, Sha256};

use super::connection::Row;
use super::{Outcome, StoreFailure};

pub(super) use fill::fill;

/// SHA-256, FIPS 180-4.
pub(super) type Sum = [u8; 32];

/// The digest of a revision.
pub(super) fn of_revision(
    plan_id: &str,
    number: i64,
    title: Option<&str>,
    document: &str,
    saved_at: i64,
) -> Sum {
    of(&[
        b"revision",
        plan_id.as_bytes(),
        &number.to_be_bytes(),
        &[u8::from(title.is_some())],
        title.unwrap_or_default().as_bytes(),
        document.as_bytes(),
        &saved_at.to_be_bytes(),
    ])
}

/// The digest of an entry.
pub(super) fn of_entry(
    plan_id: &str,
    number: i64,
    id: &str,
    document: &str,
    received_at: i64,
) -> Sum {
    of(&[
        b"entry",
        plan_id.as_bytes(),
        &number.to_be_bytes(),
        id.as_bytes(),
        document.as_bytes(),
        &received_at.to_be_bytes(),
    ])
}

/// The digest of a photograph.
pub(super) fn of_photo(plan_id: &str, id: &str, picture: &[u8]) -> Sum {
    of(&[b"photo", plan_id.as_bytes(), id.as_bytes(), picture])
}

/// Each part goes in with its length, so that no two rows run together into the same bytes.
fn of(parts: &[&[u8]]) -> Sum {
    let mut hash = Sha256::new();
    for part in parts {
        hash.update((part.len() as u64).to_be_bytes());
        hash.update(part);
    }
    hash.finalize().into()
}

/// Nothing, when the row's digest, which stands in `column`, is the one of what was read.
///
/// # Errors
/// [`StoreFailure::DamagedRow`] with the row's name.
pub(super) fn check(
    row: &Row,
    column: usize,
    sum: &Sum,
    named: impl FnOnce() -> String,
) -> Outcome<()> {
    match row.get::<Option<Vec<u8>>>(column) {
        Ok(Some(kept)) if kept == sum => Ok(()),
        _ => Err(StoreFailure::DamagedRow(named())),
    }
}

/// A value that cannot be read as its kind, such as a text that is none any more, is damage to its row.
pub(super) fn readable<T>(value: Outcome<T>, named: impl FnOnce() -> String) -> Outcome<T> {
    value.map_err(|failure| match failure {
        StoreFailure::Database(sqlx::Error::ColumnDecode { .. }) => {
            StoreFailure::DamagedRow(named())
        }
        other => other,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_tells_every_part_of_a_row_and_where_one_ends() {
        let of = |plan, number, title, document, at| of_revision(plan, number, title, document, at);
        let sum = of("p", 1, Some("a"), "{}", 5);
        for other in [
            of("q", 1, Some("a"), "{}", 5),
            of("p", 2, Some("a"), "{}", 5),
            of("p", 1, None, "{}", 5),
            of("p", 1, Some("a{"), "}", 5),
            of("p", 1, Some("a"), "{ }", 5),
            of("p", 1, Some("a"), "{}", 6),
        ] {
            assert_ne!(sum, other);
        }
        assert_ne!(
            of("p", 1, None, "{}", 5),
            of("p", 1, Some(""), "{}", 5),
            "no title and an empty one"
        );
    }
}
