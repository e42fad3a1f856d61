//! Pages as they were written, kept for as long as what they say is true.
//!
//! A link is looked up in the store for every request, kept page or not: one that was revoked, replaced or has expired
//! opens nothing, whichever instance did it.

use axum::body::Bytes;
use axum::response::{Html, IntoResponse, Response};
use moka::sync::Cache;

use crate::forms::step::Step;
use crate::store::Look;

/// Most bytes of pages that are kept: all those of some twenty plans that are in use.
const MOST_BYTES: u64 = 24 * 1024 * 1024;

/// Everything that the text of a kept page depends on, besides the settings, which stay as they are while the service
/// runs. A revision never changes once it is saved, and to a record entries are only ever added.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Leaf {
    /// Address below which the plan's pages stand, with the link's secret: it decides what the reader may do.
    pub root: String,
    /// The page.
    pub page: Step,
    /// What the link opened; none for the example.
    pub look: Option<Look>,
    /// The revision on the sheet whose code led to the plan.
    pub printed: Option<u32>,
}

impl Leaf {
    /// A page of a plan as a link opened it. On the steps stands nothing of the record.
    #[must_use]
    pub fn of(root: String, page: Step, look: Look) -> Self {
        let last_entry = look.last_entry.filter(|_| page == Step::Plan);
        Self {
            root,
            page,
            look: Some(Look { last_entry, ..look }),
            printed: None,
        }
    }

    /// A page of the example.
    #[must_use]
    pub const fn of_example(root: String, page: Step) -> Self {
        Self {
            root,
            page,
            look: None,
            printed: None,
        }
    }

    /// The plan's page as the code on a sheet leads to it: what it says of the sheet follows from its revision and from the
    /// one that stands. On other pages, and of a revision that there never was, nothing is said.
    #[must_use]
    pub fn of_sheet(self, revision: Option<u32>) -> Self {
        let newest = self.look.as_ref().map_or(0, |look| look.revision);
        let printed =
            revision.filter(|revision| self.page == Step::Plan && (1..=newest).contains(revision));
        Self { printed, ..self }
    }
}

/// The pages that are kept. Cheap to clone.
#[derive(Clone)]
pub struct Written(Cache<Leaf, Bytes>);

impl Written {
    /// Nothing yet.
    #[must_use]
    pub fn new() -> Self {
        let weight = |_: &Leaf, text: &Bytes| u32::try_from(text.len()).unwrap_or(u32::MAX);
        Self(
            Cache::builder()
                .max_capacity(MOST_BYTES)
                .weigher(weight)
                .build(),
        )
    }

    /// A page as it is kept.
    #[must_use]
    pub fn kept(&self, leaf: &Leaf) -> Option<Response> {
        self.0.get(leaf).map(|text| Html(text).into_response())
    }

    /// Keeps a page that was written.
    #[must_use]
    pub fn keep(&self, leaf: Leaf, text: String) -> Response {
        let text = Bytes::from(text);
        self.0.insert(leaf, text.clone());
        Html(text).into_response()
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

    use crate::store::Right;
    use jiff::Timestamp;

    fn look(revision: u32) -> Look {
        let plan_id = "plan".to_owned();
        Look {
            plan_id,
            right: Right::View,
            revision,
            saved_at: Timestamp::UNIX_EPOCH,
            last_entry: None,
        }
    }

    fn leaf(page: Step, look: Look) -> Leaf {
        Leaf::of("/p/secret".to_owned(), page, look)
    }

    async fn text(kept: Option<Response>) -> Option<String> {
        Some(String::from_utf8(to_bytes(kept?.into_body(), 1024).await.unwrap().to_vec()).unwrap())
    }

    #[tokio::test]
    async fn a_page_stands_for_its_revision_and_for_no_other() {
        let written = Written::new();
        let site = leaf(Step::Site, look(1));
        assert!(written.kept(&site).is_none());
        assert_eq!(
            text(Some(written.keep(site.clone(), "first".to_owned())))
                .await
                .unwrap(),
            "first"
        );
        assert_eq!(text(written.kept(&site)).await.unwrap(), "first");
        let put_back = Look {
            saved_at: Timestamp::MAX,
            ..look(1)
        };
        for other in [
            leaf(Step::Site, look(2)),
            leaf(Step::Floor, look(1)),
            leaf(Step::Site, put_back),
        ] {
            assert!(written.kept(&other).is_none(), "{other:?}");
        }
    }

    #[tokio::test]
    async fn the_plan_is_written_anew_after_an_entry_and_a_step_is_not() {
        let written = Written::new();
        let after = || Look {
            last_entry: Some((1, 7)),
            ..look(1)
        };
        for page in [Step::Site, Step::Plan] {
            let _ = written.keep(leaf(page, look(1)), "before".to_owned());
        }
        assert_eq!(
            text(written.kept(&leaf(Step::Site, after())))
                .await
                .unwrap(),
            "before"
        );
        assert!(written.kept(&leaf(Step::Plan, after())).is_none());
    }

    #[test]
    fn a_sheet_of_a_revision_that_there_never_was_leads_to_the_plan_as_it_stands() {
        let printed = |page, revision| leaf(page, look(2)).of_sheet(Some(revision)).printed;
        assert_eq!(
            [0, 1, 2, 3].map(|revision| printed(Step::Plan, revision)),
            [None, Some(1), Some(2), None]
        );
        assert_eq!(printed(Step::Site, 1), None);
    }
}
