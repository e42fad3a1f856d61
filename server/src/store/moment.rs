//! Moments as the database keeps them: microseconds since 1970, in universal time.

use jiff::{SignedDuration, Timestamp};

pub(super) fn now() -> i64 {
    Timestamp::now().as_microsecond()
}

pub(super) fn micros(duration: SignedDuration) -> i64 {
    i64::try_from(duration.as_micros()).unwrap_or(i64::MAX)
}

pub(super) fn time(micros: i64) -> Timestamp {
    Timestamp::from_microsecond(micros).unwrap_or(Timestamp::UNIX_EPOCH)
}
