//! Writes `docs/ground-validation.md`, or says with `-- --check` whether the one there is what the code gives today; times
//! are not compared.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a command of the repository's own, run by hand"
)]

use stillground_tests::ground_page;

fn main() {
    let place = stillground_tests::workspace().join(ground_page::PLACE);
    if std::env::args().any(|argument| argument == "--check") {
        let page = std::fs::read_to_string(place).expect("the page is there");
        let stale = ground_page::stale_thoroughly(&page);
        assert!(
            stale.is_empty(),
            "these tables are not what the code gives today: {stale:?}"
        );
        return;
    }
    std::fs::write(place, ground_page::page()).expect("the docs folder can be written to");
}
