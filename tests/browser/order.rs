//! Ticking a delivery on a telephone: with scripts each tick goes out by itself and waits without a connection; without
//! scripts a button sends them; and prices are entered at a desk.

use serde_json::json;
use stillground_tests::browser::Browser;
use stillground_tests::service::{Kept, unknown};

use crate::access::{axe, nothing_found};
use crate::pictures::keep;
use crate::record::connection;
use crate::walk::Journey;

fn here(journey: &Journey, kept: &Kept) -> Vec<String> {
    let entries = journey.service.read(kept, &kept.view, "/entries").json();
    entries["materials"]
        .as_object()
        .unwrap()
        .keys()
        .cloned()
        .collect()
}

fn says(browser: &Browser, words: &str) {
    browser.wait(&format!(
        "return document.getElementById('unsent').textContent.includes('{words}')"
    ));
}

#[test]
fn a_tick_is_kept_without_a_connection_and_stands_on_another_telephone() {
    let journey = Journey::new(390);
    let browser = &journey.browser;
    let kept = journey.service.create(&unknown());
    journey.open(&format!("/p/{}/materials", kept.record));
    browser.press("#line-stud");
    says(browser, "say who ticks");
    browser.fill("#who", "A. Helper");
    browser.press("#line-nut");
    says(browser, "2 ticks kept");
    assert_eq!(here(&journey, &kept), ["nut", "stud"]);
    connection(browser, false);
    browser.press("#line-tube");
    browser.press("#line-stud");
    says(browser, "2 ticks not sent yet");
    journey.fits();
    nothing_found(&journey, &axe(), "ticks that wait");
    keep("materials-waiting-390.png", &browser.picture());
    connection(browser, true);
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return !document.getElementById('unsent').textContent.includes('not sent')");
    assert_eq!(here(&journey, &kept), ["nut", "tube"]);
    let other = Journey {
        service: journey.service,
        browser: Browser::start(),
    };
    other.browser.size(390, 800);
    other.open(&format!("/p/{}/materials", kept.edit));
    assert_eq!(
        other.browser.run("return ['nut', 'tube', 'stud'].map((line) => document.getElementById('line-' + line).checked)"),
        json!([true, true, false])
    );
    other.open(&format!("/p/{}/prices", kept.edit));
    other.browser.fill("[id='price~nut']", "dear");
    other.browser.follow("form.prices button");
    other.fits();
    nothing_found(&other, &axe(), "a price that is none");
    other.browser.fill("[id='price~nut']", "0.40");
    other.browser.follow("form.prices button");
    other.fits();
    nothing_found(&other, &axe(), "prices and a total");
}

#[test]
fn without_scripts_the_button_sends_the_ticks_and_prices_are_added_up() {
    for width in [390, 1280] {
        let journey = Journey::new(width);
        let browser = &journey.browser;
        browser.scripts(false);
        let kept = journey.service.create(&unknown());
        journey.open(&format!("/p/{}/prices", kept.edit));
        browser.fill("[id='currency']", "=1");
        browser.fill("[id='price~nut']", "0,40");
        browser.follow("form.prices button");
        assert!(browser.says(".summary").contains("1 to 12 letters"));
        keep(&format!("prices-wrong-{width}.png"), &browser.picture());
        browser.fill("[id='currency']", "EUR");
        browser.fill("[id='price~stud-rod-2m']", "17.5");
        browser.follow("form.prices button");
        assert!(journey.path().ends_with("/materials"));
        assert!(
            browser.says(".sum").contains("EUR"),
            "{}",
            browser.says(".sum")
        );
        browser.fill("#who", "A. Helper");
        browser.press("#line-stud");
        browser.follow("form.ticks button");
        assert!(browser.says(".saved").contains("One tick was kept"));
        assert_eq!(here(&journey, &kept), ["stud"]);
        keep(&format!("materials-{width}.png"), &browser.picture());
    }
}
