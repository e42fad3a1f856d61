//! Requests that are not taken as they were sent.

use std::fmt::Display;

use axum::http::StatusCode;

use super::Trouble;

impl Trouble {
    /// A body that is no JSON at all.
    #[must_use]
    pub fn not_json(said: impl Display) -> Self {
        Self::new(
            StatusCode::BAD_REQUEST,
            "not_json",
            format!("The body is not JSON: {said}."),
        )
    }

    /// A body of another media type.
    #[must_use]
    pub fn media_type() -> Self {
        Self::new(
            StatusCode::UNSUPPORTED_MEDIA_TYPE,
            "media_type",
            "Send the plan as application/json.",
        )
    }

    /// A body that is not called a table.
    #[must_use]
    pub fn no_table_type() -> Self {
        Self::new(
            StatusCode::UNSUPPORTED_MEDIA_TYPE,
            "media_type",
            "This takes a table of samples: text/csv, text/plain or text/tab-separated-values.",
        )
    }

    /// A table that cannot be read, or that says too little.
    #[must_use]
    pub fn no_table(said: impl Display) -> Self {
        Self::new(
            StatusCode::UNPROCESSABLE_ENTITY,
            "table",
            format!("This record cannot be read: {said}."),
        )
    }

    /// A body that is no picture's.
    #[must_use]
    pub fn no_picture_type() -> Self {
        let said = "Send the photograph itself as image/jpeg, image/png or image/webp.";
        Self::new(StatusCode::UNSUPPORTED_MEDIA_TYPE, "media_type", said)
    }

    /// A body that is too large.
    #[must_use]
    pub fn too_large(most_bytes: usize) -> Self {
        let most = most_bytes / 1024;
        Self::new(
            StatusCode::PAYLOAD_TOO_LARGE,
            "too_large",
            format!("The body is larger than {most} KiB, which is the limit."),
        )
    }

    /// A photograph that is too large.
    #[must_use]
    pub fn photo_too_large(most_bytes: usize) -> Self {
        let most = most_bytes / (1024 * 1024);
        let said = format!(
            "The photograph is larger than {most} MiB, which is the limit. Send a smaller copy of it."
        );
        Self::new(StatusCode::PAYLOAD_TOO_LARGE, "photo_too_large", said)
    }

    /// A request that took too long to arrive.
    #[must_use]
    pub fn too_slow() -> Self {
        Self::new(
            StatusCode::REQUEST_TIMEOUT,
            "too_slow",
            "The request took too long to arrive. Nothing was changed; send it again.",
        )
    }

    /// A request that cannot be read.
    #[must_use]
    pub fn malformed(said: impl Into<String>) -> Self {
        Self::new(StatusCode::BAD_REQUEST, "malformed", said)
    }

    /// A method that the address does not take.
    #[must_use]
    pub fn method() -> Self {
        Self::new(
            StatusCode::METHOD_NOT_ALLOWED,
            "method",
            "This address does not take that method.",
        )
    }

    /// A form sent from another site.
    #[must_use]
    pub fn other_site() -> Self {
        let said = "This form was sent from another site and was not taken. Open the plan here and try again.";
        Self::new(StatusCode::FORBIDDEN, "other_site", said)
    }

    /// A body that came with a request which only reads.
    #[must_use]
    pub fn unasked_body() -> Self {
        Self::malformed("A request that only reads takes no body. Send it without one.")
    }
}
