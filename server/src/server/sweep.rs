//! What is done now and then beside the requests: once an hour, plans that were removed long enough ago go for good, and
//! sessions that are over; once a day, everything that is kept is read.

use std::time::Duration;

use crate::store::Store;

const EVERY: Duration = Duration::from_secs(3600);

/// Sweeps now and then, for ever. Several services on one database may do it at once.
pub(super) async fn sweep(store: Store) {
    loop {
        match store.sweep().await {
            Ok(0) => {}
            Ok(plans) => tracing::info!(plans, "removed plans are gone for good"),
            Err(error) => tracing::warn!(%error, "removed plans could not be swept away"),
        }
        tokio::time::sleep(EVERY).await;
    }
}

/// A service that has just started has other things to do first.
const FIRST_VERIFIED_AFTER: Duration = Duration::from_secs(20);
const VERIFIED_EVERY: Duration = Duration::from_secs(24 * 3600);

/// Reads everything that is kept once a day, so that damage is known before somebody needs what is damaged.
pub(super) async fn verify(store: Store) {
    tokio::time::sleep(FIRST_VERIFIED_AFTER).await;
    loop {
        match store.verify_in_the_background().await {
            Ok(found) if found.damaged.is_empty() => {}
            Ok(found) => tracing::error!(
                damaged = found.damaged.len(),
                "what was kept is damaged: `stillground verify` names it"
            ),
            Err(error) => tracing::warn!(%error, "what is kept could not be read through"),
        }
        tokio::time::sleep(VERIFIED_EVERY).await;
    }
}
