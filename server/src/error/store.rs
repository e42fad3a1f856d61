//! What a person is told when the store cannot do what was asked.

use axum::http::StatusCode;
use axum::http::header::RETRY_AFTER;

use super::Trouble;
use crate::store::StoreFailure;

impl Trouble {
    fn store(said: &str, error: &StoreFailure) -> Self {
        tracing::error!(error = %error, "the store could not do what was asked");
        Self::new(StatusCode::SERVICE_UNAVAILABLE, "store", said).with_header(RETRY_AFTER, "10")
    }
}

impl From<StoreFailure> for Trouble {
    fn from(failure: StoreFailure) -> Self {
        match &failure {
            StoreFailure::NotFound => Self::no_such_link(),
            StoreFailure::Busy => Self::store(
                "The store is busy. Nothing was changed; try again in a few seconds.",
                &failure,
            ),
            StoreFailure::Full => Self::store(
                "The disk of this service is full. Nothing was changed; tell whoever runs it.",
                &failure,
            ),
            StoreFailure::Away(_) => Self::store(
                "The store does not answer just now. Nothing was changed; try again in a few seconds.",
                &failure,
            ),
            StoreFailure::Unsure(_) => {
                let said = "The store was lost at the moment of saving: what you sent may have been kept or not.";
                Self::store(said, &failure).with_code("store_unsure")
            }
            StoreFailure::ReadOnly(_) | StoreFailure::Gone(_) => Self::store(
                "The store cannot be written just now. Nothing was changed; tell whoever runs this service.",
                &failure,
            ),
            // The file, or the disk below it: what is there may be read again when the disk is mended, or from a copy.
            StoreFailure::Damaged(_) | StoreFailure::Foreign(_) => Self::store(
                "The store cannot be read just now. Nothing was changed; tell whoever runs this service.",
                &failure,
            ),
            StoreFailure::DamagedRow(_) => Self::store(
                "What was kept here is damaged on the service's disk and is not shown, so that nobody works by it. Nothing was \
                 changed. Other plans and revisions are not touched; tell whoever runs this service, who can bring it back \
                 from a copy.",
                &failure,
            )
            .with_code("store_damaged"),
            StoreFailure::Quota => Self::quota(),
            _ => Self::broken("using the store", &failure),
        }
    }
}
