//! `docs/ground-validation.md` is what its command writes today: every word, and every table but those that need minutes;
//! the slow tests compare these too.

use stillground_tests::ground_page;

fn page() -> String {
    std::fs::read_to_string(stillground_tests::workspace().join(ground_page::PLACE)).unwrap()
}

#[test]
fn the_page_has_todays_words_and_names_its_command() {
    let page = page();
    assert_eq!(ground_page::missing_words(&page), Vec::<&str>::new());
    assert!(page.contains(
        "cargo run --release -p stillground-tests --no-default-features --example ground_validation"
    ));
}

#[test]
fn the_page_has_todays_figures() {
    let stale = ground_page::stale(&page());
    assert!(
        stale.is_empty(),
        "run the command that the page names; these tables are not today's: {stale:?}"
    );
}
