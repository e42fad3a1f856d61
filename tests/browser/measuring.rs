//! A finished pier is measured: by a helper on a telephone without scripts, by the keyboard, and within the pages' budgets.

use serde_json::json;

use crate::access::{axe, nothing_found};
use crate::budgets::{Budget, EXAMPLES, hold};
use crate::record::{connection, entries, waits_in_the_browser};
use crate::walk::Journey;

const WAYS: [&str; 5] = ["knock", "lean", "pull", "walk", "level"];

#[test]
fn a_helper_enters_a_knock_on_a_telephone_without_scripts_and_the_owner_takes_it() {
    let journey = Journey::new(390);
    let kept = journey
        .service
        .create(&json!({ "schema_version": 1, "title": "Quarry Lane pier" }));
    let browser = &journey.browser;
    browser.scripts(false);
    journey.open(&format!("/p/{}/record", kept.record));
    // The item is folded on a telephone; without scripts the browser's driver cannot unfold it, and the link is followed by hand.
    let link = browser.find("section[aria-labelledby=measure] a[href$='/measure/knock']");
    let address = browser.attribute(&link, "href");
    journey.open(&address);
    journey.fits();
    browser.choose("#box-direction", "x");
    browser.choose("#box-with_mount", "yes");
    browser.fill("#box-frequency_hz", "14.2");
    browser.fill("#box-frequency_sd_hz", "much");
    browser.fill("#who", "A. Helper");
    browser.follow("form[action$='/measure/knock'] button.main");
    assert!(
        browser
            .says("main")
            .contains("Uncertainty of the frequency")
    );
    assert_eq!(browser.holds("#box-frequency_hz"), "14.2");
    journey.fits();
    browser.fill("#box-frequency_sd_hz", "0.1");
    browser.follow("form[action$='/measure/knock'] button.main");
    assert!(browser.says("main").contains("It was kept"));
    assert_eq!(entries(&journey, &kept).len(), 1);
    journey.open(&format!("/p/{}/commissioning", kept.edit));
    assert!(browser.says("main").contains("A. Helper"));
    browser.follow("form:has(input[value=take]) button");
    assert!(browser.says("main").contains("What the measurements say"));
    assert!(browser.says("main").contains("Take it back"));
    journey.fits();
}

#[test]
fn a_pull_is_entered_by_the_keyboard_alone() {
    let journey = Journey::new(1280);
    let kept = journey.service.create(&json!({ "schema_version": 1 }));
    journey.open(&format!("/p/{}/measure/pull", kept.edit));
    let browser = &journey.browser;
    let _ = browser.run("document.querySelector('#box-direction').focus()");
    let tab = "\u{e004}";
    browser.keys(&[
        "e", tab, "1", ".", "2", tab, "2", "0", "0", tab, "1", "8", tab, tab,
    ]);
    browser.leaves(|| browser.keys(&["\u{e007}"]));
    assert!(
        journey.path().ends_with("/commissioning"),
        "{}",
        journey.path()
    );
    assert!(browser.says("main").contains("What the measurements say"));
}

/// What is typed is on the device from the first letter, and goes out when the line is back, though the page was closed and the
/// units of the plan were changed meanwhile.
#[test]
fn what_is_measured_without_a_connection_is_kept_from_the_first_letter_and_sent_later() {
    let journey = Journey::new(390);
    let kept = journey
        .service
        .create(&json!({ "schema_version": 1, "title": "Quarry Lane pier" }));
    let browser = &journey.browser;
    let page = format!("/p/{}/measure/pull", kept.record);
    journey.open(&page);
    browser.choose("#box-direction", "y");
    browser.fill("#box-height_m", "1.2");
    browser.fill("#box-force_n", "2");
    journey.open(&format!("/p/{}/measure/knock", kept.record));
    assert_eq!(
        browser.holds("#box-frequency_hz"),
        "",
        "each way has its own"
    );
    journey.open(&page);
    assert_eq!(browser.holds("#box-direction"), "y");
    assert_eq!(browser.holds("#box-height_m"), "1.2");
    assert_eq!(browser.holds("#box-force_n"), "2");
    connection(browser, false);
    browser.fill("#box-force_n", "200");
    browser.fill("#box-tilt_arcsec", "18");
    browser.fill("#who", "A. Helper");
    browser.press("form.kept button.main");
    browser.wait(
        "return document.getElementById('unsent').textContent.includes('One form is not sent yet')",
    );
    journey.fits();
    nothing_found(&journey, &axe(), "a measurement that waits");
    waits_in_the_browser(browser, &kept, "tilt_arcsec=18");
    assert_eq!(
        browser.holds("#box-tilt_arcsec"),
        "",
        "the form is free for the next"
    );
    assert!(entries(&journey, &kept).is_empty());
    let plan = json!({ "schema_version": 1, "title": "Quarry Lane pier", "units": "imperial" });
    assert_eq!(journey.service.replace(&kept, 1, &plan).status, 200);
    connection(browser, true);
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return document.getElementById('unsent').textContent === ''");
    assert!(browser.says("#told").contains("Kept: A pull"));
    let all = entries(&journey, &kept);
    assert_eq!(all.len(), 1);
    let pull = &all[0]["measurement"]["pull"];
    assert_eq!(pull["direction"], json!("y"));
    assert_eq!(
        pull["height_m"],
        json!(1.2),
        "in the units that its box said"
    );
}

/// What waits goes out from the record's page too, and what cannot be taken comes back to its own form.
#[test]
fn a_measurement_that_waits_goes_out_from_any_page_and_comes_back_where_it_is_wrong() {
    let journey = Journey::new(390);
    let kept = journey.service.create(&json!({ "schema_version": 1 }));
    let browser = &journey.browser;
    journey.open(&format!("/p/{}/measure/pull", kept.record));
    connection(browser, false);
    for (force, tilt) in [("200", "18"), ("9000", "18")] {
        browser.choose("#box-direction", "x");
        browser.fill("#box-height_m", "1.2");
        browser.fill("#box-force_n", force);
        browser.fill("#box-tilt_arcsec", tilt);
        browser.fill("#who", "A. Helper");
        browser.press("form.kept button.main");
        browser.wait(
            "return document.getElementById('told').textContent.startsWith('Kept on this device')",
        );
    }
    connection(browser, true);
    journey.open(&format!("/p/{}/record", kept.record));
    browser.wait("return document.getElementById('unsent').textContent.includes('topple')");
    assert_eq!(entries(&journey, &kept).len(), 1);
    browser.leaves(|| browser.press("#unsent button"));
    assert!(
        journey.path().ends_with("/measure/pull"),
        "{}",
        journey.path()
    );
    browser.wait("return document.getElementById('unsent').textContent.includes('topple')");
    browser.press("#unsent button");
    assert_eq!(browser.holds("#box-force_n"), "9000");
    browser.fill("#box-force_n", "90");
    browser.leaves(|| browser.press("form.kept button.main"));
    assert!(browser.says("main").contains("It was kept"));
    assert_eq!(entries(&journey, &kept).len(), 2);
}

#[test]
fn a_way_to_measure_is_four_screens_of_a_telephone() {
    let journey = Journey::new(390);
    let rules = axe();
    let (page, way) = (
        Budget {
            phone_screens: 8.0,
            desk_screens: 4.0,
            words: 1200,
            kilobytes: 60,
        },
        Budget {
            phone_screens: 4.0,
            desk_screens: 2.5,
            words: 700,
            kilobytes: 30,
        },
    );
    for (name, text) in EXAMPLES {
        let mut plan: serde_json::Value = serde_json::from_str(text).unwrap();
        plan["commissioning"] = json!({
            "knocks": [
                { "direction": "x", "with_mount": true, "frequency_hz": 11.2, "frequency_sd_hz": 0.05 },
                { "direction": "x", "with_mount": false, "frequency_hz": 48.0, "frequency_sd_hz": 0.3 }
            ],
            "leans": [{ "x_m": 0.9, "y_m": 0.0, "mass_kg": 80.0, "tilt_arcsec": 0.41, "tilt_sd_arcsec": 0.07 }],
            "pulls": [{ "height_m": 1.2, "force_n": 200.0, "direction": "x", "tilt_arcsec": 30.0, "tilt_sd_arcsec": 2.0 }]
        });
        let kept = journey.service.create(&plan);
        hold(
            &journey,
            name,
            &format!("/p/{}/commissioning", kept.edit),
            &page,
        );
        hold(
            &journey,
            name,
            &format!("/p/{}/plan/proof", kept.view),
            &page,
        );
        for slug in WAYS {
            hold(
                &journey,
                name,
                &format!("/p/{}/measure/{slug}", kept.record),
                &way,
            );
        }
        journey.browser.size(390, 844);
        journey.browser.media("dark", "");
        for below in ["commissioning", "plan/proof", "measure/lean"] {
            journey.open(&format!("/p/{}/{below}", kept.edit));
            journey.fits();
            nothing_found(&journey, &rules, "390 px, dark");
        }
    }
}
