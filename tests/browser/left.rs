//! What was typed at a step and not saved, after the person went away: offered back, and kept only when they say so.

use crate::access::{axe, nothing_found};
use crate::walk::{Journey, WIDTHS};

const BACK: &str = "#typed button";

#[test]
fn whoever_leaves_a_step_by_a_link_is_offered_what_they_typed() {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    browser.fill("#title", "A pier on the hill");
    browser.fill("#site-frost_depth_m", "60 cm");
    journey.open(&format!("{root}/links"));
    assert!(
        browser.says("#typed").contains("was not saved"),
        "it is told at once: {}",
        browser.says("main")
    );
    nothing_found(&journey, &axe(), "answers that were left");
    journey.open(&format!("{root}/site"));
    assert_eq!(browser.holds("#title"), "", "nothing was saved");
    browser.follow(BACK);
    assert_eq!(browser.holds("#title"), "A pier on the hill");
    assert_eq!(browser.holds("#site-frost_depth_m"), "60 cm");
    journey.fits();
    journey.go_on();
    assert_eq!(journey.path(), format!("{root}/excavation"));
    assert!(
        !browser.says("main").contains("was not saved"),
        "{}",
        browser.says("main")
    );
    journey.open(&format!("{root}/site"));
    assert_eq!(browser.holds("#site-frost_depth_m"), "0.6");
    assert!(!browser.says("main").contains("was not saved"));
    let held = browser.run("return JSON.stringify(Object.entries(sessionStorage))");
    let secret = root.rsplit('/').next().unwrap();
    assert!(
        !held.as_str().unwrap().contains(secret),
        "never the link: {held}"
    );
}

#[test]
fn what_was_typed_is_thrown_away_when_the_person_says_so() {
    let journey = Journey::new(WIDTHS[1]);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    browser.fill("#title", "A pier on the hill");
    journey.open(&format!("{root}/revisions"));
    browser.press("#typed button");
    journey.open(&format!("{root}/site"));
    assert!(!browser.says("main").contains("was not saved"));
}

#[test]
fn a_save_without_a_connection_loses_nothing() {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    browser.fill("#title", "A pier on the hill");
    let offline = |off: bool| {
        browser.devtools(
            "Network.emulateNetworkConditions",
            &serde_json::json!({ "offline": off, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1 }),
        );
    };
    offline(true);
    browser.press("button.main[name=go]");
    std::thread::sleep(std::time::Duration::from_millis(500));
    offline(false);
    journey.open(&format!("{root}/site"));
    assert_eq!(browser.holds("#title"), "");
    browser.follow(BACK);
    assert_eq!(browser.holds("#title"), "A pier on the hill");
    journey.go_on();
    journey.open(&format!("{root}/site"));
    assert_eq!(browser.holds("#title"), "A pier on the hill");
    assert!(!browser.says("main").contains("was not saved"));
}
