//! Moments as the database keeps them: microseconds since 1970, in universal time.

use std::sync::atomic::{AtomicI64, Ordering};

use jiff::{SignedDuration, Timestamp};

/// The latest moment that this process has seen.
static LATEST: AtomicI64 = AtomicI64::new(i64::MIN);

/// The moment by which links end: it never goes back, so that a link that ended stays so when the clock is set back.
pub(super) fn now() -> i64 {
    let now = Timestamp::now().as_microsecond();
    LATEST.fetch_max(now, Ordering::Relaxed).max(now)
}

pub(super) fn micros(duration: SignedDuration) -> i64 {
    i64::try_from(duration.as_micros()).unwrap_or(i64::MAX)
}

pub(super) fn time(micros: i64) -> Timestamp {
    Timestamp::from_microsecond(micros).unwrap_or(Timestamp::UNIX_EPOCH)
}
