//! A finished pier is measured: by a helper on a telephone without scripts, by the keyboard, and within the pages' budgets.

use serde_json::json;

use crate::access::{axe, nothing_found};
use crate::budgets::{Budget, EXAMPLES, hold};
use crate::record::entries;
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
    let _ = browser.run("document.querySelector('#direction').focus()");
    let tab = "\u{e004}";
    browser.keys(&[
        tab, "1", ".", "2", tab, "2", "0", "0", tab, "1", "8", tab, tab,
    ]);
    browser.leaves(|| browser.keys(&["\u{e007}"]));
    assert!(
        journey.path().ends_with("/commissioning"),
        "{}",
        journey.path()
    );
    assert!(browser.says("main").contains("What the measurements say"));
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
