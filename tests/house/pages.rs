//! No page is forgotten: what the router has is what the tests walk.

use std::collections::BTreeSet;

use stillground_tests::routes::{SHOWN, Shown, pages, to_walk};

use crate::files;

/// A new page is in the attacks' walk by itself; here somebody has to say how the browser's suite holds it, or why not.
#[test]
fn every_address_that_is_read_says_what_it_shows_and_what_holds_it() {
    let read: BTreeSet<String> = pages()
        .into_iter()
        .filter(|route| route.read)
        .map(|route| route.path)
        .collect();
    let said: BTreeSet<String> = SHOWN.iter().map(|(path, _)| (*path).to_owned()).collect();
    assert_eq!(said.len(), SHOWN.len(), "an address stands twice in SHOWN");
    assert_eq!(
        read, said,
        "routes of the pages, and what tests/support/routes.rs says of them"
    );
    for (path, shown) in SHOWN {
        if let Shown::AsLongAsItTakes(why) | Shown::NoPage(why) | Shown::NotOpened(why) = shown {
            assert!(why.split_whitespace().count() >= 2, "{path}: {why}");
        }
    }
}

#[test]
fn what_is_said_to_hold_a_page_is_a_test_of_the_browsers_suite() {
    let suite: String = files("tests/browser", &[".rs"])
        .into_iter()
        .map(|(_, text)| text)
        .collect();
    let mut named = 0;
    for (path, shown) in SHOWN {
        if let Shown::Within(test) | Shown::Elsewhere(test) = shown {
            assert!(
                suite.contains(&format!("#[test]\nfn {test}()")),
                "{path} is said to be held by {test}"
            );
            named += 1;
        }
    }
    assert!(named >= 8, "{named}");
}

/// Steps, chapters and parts stand for several pages each.
#[test]
fn the_walk_has_every_step_chapter_and_part() {
    let walk = to_walk("it");
    for page in [
        "/p/it/plan",
        "/p/it/short/people",
        "/p/it/plan/recorded",
        "/example/floor",
        "/versions",
    ] {
        assert!(walk.iter().any(|known| known == page), "{page}: {walk:?}");
    }
    assert!(
        walk.iter().all(|page| !page.contains(['{', '}'])),
        "{walk:?}"
    );
}
