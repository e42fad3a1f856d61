//! Pages as they were written, kept for as long as what they say is true.
//!
//! A link is looked up in the store for every request, kept page or not: one that was revoked, replaced or has expired
//! opens nothing, whichever instance did it.

use axum::body::Bytes;
use axum::response::{Html, IntoResponse, Response};
use jiff::Timestamp;
use moka::sync::Cache;

use crate::error::Trouble;

/// Most bytes of pages that are kept: a hundred of the longest.
const MOST_BYTES: u64 = 12 * 1024 * 1024;

/// Everything that the text of a kept page depends on, besides the settings, which stay as they are while the service
/// runs. A revision never changes once it is saved.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Leaf {
    /// Address below which the plan's pages stand, with the link's secret: it decides what the reader may do.
    pub root: String,
    /// The page's name in the address.
    pub page: &'static str,
    /// The plan.
    pub plan_id: String,
    /// Its revision.
    pub revision: u32,
    /// When it was saved: a database put back to an earlier state counts its revisions anew.
    pub saved_at: Option<Timestamp>,
}

/// The pages that are kept. Cheap to clone.
#[derive(Clone)]
pub struct Written(Cache<Leaf, Bytes>);

impl Written {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        let weight = |_: &Leaf, text: &Bytes| u32::try_from(text.len()).unwrap_or(u32::MAX);
        Self(Cache::builder().max_capacity(MOST_BYTES).weigher(weight).build())
    }

    /// A page as it is kept, or else as it is written now.
    ///
    /// # Errors
    /// What went wrong while it was written; nothing is kept then.
    pub async fn page(&self, leaf: Leaf, write: impl Future<Output = Result<Html<String>, Trouble>>) -> Result<Response, Trouble> {
        if let Some(kept) = self.0.get(&leaf) {
            return Ok(Html(kept).into_response());
        }
        let text = Bytes::from(write.await?.0);
        self.0.insert(leaf, text.clone());
        Ok(Html(text).into_response())
    }
}

impl Default for Written {
    fn default() -> Self {
        Self::new()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use axum::body::to_bytes;

    fn leaf(revision: u32) -> Leaf {
        Leaf { root: "/p/secret".to_owned(), page: "site", plan_id: "plan".to_owned(), revision, saved_at: None }
    }

    async fn text(written: &Written, leaf: Leaf, now: &str) -> String {
        let page = written.page(leaf, async { Ok(Html(now.to_owned())) }).await.unwrap();
        String::from_utf8(to_bytes(page.into_body(), 1024).await.unwrap().to_vec()).unwrap()
    }

    #[tokio::test]
    async fn a_page_is_written_once_for_a_revision_and_anew_for_the_next() {
        let written = Written::new();
        assert_eq!(text(&written, leaf(1), "first").await, "first");
        assert_eq!(text(&written, leaf(1), "never asked").await, "first");
        assert_eq!(text(&written, leaf(2), "second").await, "second");
        let again = Leaf { saved_at: Some(Timestamp::UNIX_EPOCH), ..leaf(1) };
        assert_eq!(text(&written, again, "put back and changed").await, "put back and changed");
    }

    #[tokio::test]
    async fn what_could_not_be_written_is_not_kept() {
        let written = Written::new();
        assert!(written.page(leaf(1), async { Err(Trouble::nothing_here()) }).await.is_err());
        assert_eq!(text(&written, leaf(1), "now").await, "now");
    }
}
