//! What is done once an hour: plans that were removed long enough ago go for good, and sessions that are over.

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
