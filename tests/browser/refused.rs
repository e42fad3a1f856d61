//! A save that is refused, as the person sees it who typed: why, and everything typed still there to be sent again.

use std::path::PathBuf;

use serde_json::json;
use stillground_server::config::Settings;
use stillground_tests::service::start_with;

use crate::access::{axe, nothing_found};
use crate::record::{entries, of, unfold};
use crate::walk::{Journey, WIDTHS};

const AGAIN: &str = "form:has(input[type=hidden]) button.main:not([name])";

/// The store's file, and where it lies while it is away.
fn store(journey: &Journey) -> [PathBuf; 2] {
    let data = journey.service.folder().unwrap().join("data");
    ["stillground.sqlite", "aside.sqlite"].map(|name| data.join(name))
}

/// Types a title, has the save refused, and sends it again when the store is back.
fn a_step_is_saved_in_the_end(scripts: bool) {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    browser.scripts(scripts);
    let root = journey.start_a_plan();
    browser.fill("#title", "Pier \"A\" & <b>the</b> hill");
    let [there, aside] = store(&journey);
    std::fs::rename(&there, &aside).unwrap();
    journey.go_on();
    assert!(
        browser.says("h1").contains("Not just now"),
        "{}",
        browser.says("main")
    );
    assert!(
        browser
            .says("main")
            .contains("What you typed is held on this page"),
        "{}",
        browser.says("main")
    );
    journey.fits();
    if scripts {
        nothing_found(&journey, &axe(), "a save that was refused");
    }
    browser.follow(AGAIN);
    assert!(
        browser.says("h1").contains("Not just now"),
        "it is held however often it is refused"
    );
    std::fs::rename(&aside, &there).unwrap();
    browser.follow(AGAIN);
    assert_eq!(journey.path(), format!("{root}/excavation"));
    journey.open(&format!("{root}/site"));
    assert_eq!(browser.holds("#title"), "Pier \"A\" & <b>the</b> hill");
}

#[test]
fn what_was_typed_at_a_step_is_sent_again_when_the_store_is_back_with_scripts() {
    a_step_is_saved_in_the_end(true);
}

#[test]
fn what_was_typed_at_a_step_is_sent_again_when_the_store_is_back_without_scripts() {
    a_step_is_saved_in_the_end(false);
}

#[test]
fn what_a_helper_typed_is_sent_again_and_kept_once_without_scripts() {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    let kept = journey
        .service
        .create(&json!({ "schema_version": 1, "title": "Quarry Lane pier" }));
    browser.scripts(false);
    journey.open(&format!("/p/{}/record", kept.record));
    unfold(browser, "inspect");
    browser.fill(
        &of("inspect", "textarea[name=note]"),
        "roots on the north side",
    );
    browser.fill(&of("inspect", "input[name=who]"), "A. Helper");
    let [there, aside] = store(&journey);
    std::fs::rename(&there, &aside).unwrap();
    browser.follow(&of("inspect", "button[value=keep]"));
    assert!(
        browser
            .says("main")
            .contains("What you typed is held on this page"),
        "{}",
        browser.says("main")
    );
    std::fs::rename(&aside, &there).unwrap();
    browser.follow(AGAIN);
    assert!(
        browser.says("main").contains("roots on the north side"),
        "{}",
        browser.says("main")
    );
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn a_helpers_script_says_that_the_planner_takes_nothing_and_sends_it_by_itself_later() {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    let kept = journey
        .service
        .create(&json!({ "schema_version": 1, "title": "Quarry Lane pier" }));
    journey.open(&format!("/p/{}/record", kept.record));
    let [there, aside] = store(&journey);
    std::fs::rename(&there, &aside).unwrap();
    unfold(browser, "inspect");
    browser.fill(
        &of("inspect", "textarea[name=note]"),
        "roots on the north side",
    );
    crate::record::enter(browser, "inspect", "keep");
    browser.wait("return document.getElementById('unsent').textContent.includes('does not take it just now')");
    std::fs::rename(&aside, &there).unwrap();
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return document.getElementById('unsent').textContent === ''");
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn whoever_meets_a_quota_is_told_what_to_do_and_what_they_typed_is_held() {
    let settings = Settings {
        most_revisions: Some("1".to_owned()),
        ..Settings::default()
    };
    let journey = Journey {
        service: start_with(settings),
        ..Journey::new(WIDTHS[0])
    };
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    browser.fill("#title", "One too many");
    journey.go_on();
    let said = browser.says("main");
    for words in [
        "This plan is full",
        "Nothing was saved",
        "ask whoever runs this planner",
        "What you typed is held on this page",
    ] {
        assert!(said.contains(words), "{words}: {said}");
    }
    nothing_found(&journey, &axe(), "a plan that is full");
    assert_eq!(
        browser.run("return document.querySelector('input[name=title]').value"),
        "One too many"
    );
    assert!(journey.path().starts_with(&root));
}
