//! Without a pointer.

use stillground_tests::browser::key;

use crate::walk::{Journey, STEPS};

#[test]
fn a_plan_is_begun_and_a_step_saved_by_keyboard_alone() {
    let journey = Journey::new(1280);
    let browser = &journey.browser;
    browser.scripts(false);
    journey.open("/");
    browser.keys(&[key::TAB]);
    assert_eq!(browser.attribute(&browser.focus(), "class"), "skip");
    browser.keys(&[key::ENTER, key::TAB]);
    browser.leaves(|| browser.keys(&[key::ENTER]));
    let path = journey.path();
    let root = path.strip_suffix("/short/ground").expect(&path);
    journey.open(&format!("{root}/site"));
    let title = browser.find("#title");
    for _ in 0..30 {
        browser.keys(&[key::TAB]);
        if browser.focus() == title {
            break;
        }
    }
    assert_eq!(
        browser.focus(),
        title,
        "the first question is reached by the tab key"
    );
    browser.keys(&["K", "e", "y", "s"]);
    browser.leaves(|| browser.keys(&[key::ENTER]));
    assert!(
        journey.browser.says(".masthead .of").contains("Keys"),
        "the enter key saves and stays"
    );
    assert!(journey.path().ends_with("/site"));
}

#[test]
fn every_control_can_be_reached_and_shows_its_focus() {
    let journey = Journey::new(360);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    for step in STEPS {
        journey.open(&format!("{root}/{step}"));
        let controls = browser.run(
            "return [...document.querySelectorAll('a[href], button, input:not([type=hidden]), summary, [tabindex]')]
               .filter(e => e.checkVisibility() && e.tabIndex >= 0 && (e.type !== 'radio' || e.checked)).length",
        );
        let expected = controls.as_u64().unwrap();
        let mut hidden = Vec::new();
        for _ in 0..expected {
            browser.keys(&[key::TAB]);
            let shows = browser.run(
                "const e = document.activeElement, s = getComputedStyle(e), r = e.getBoundingClientRect();
                 return s.outlineStyle !== 'none' && r.width > 0 && r.bottom > 0 && r.top < innerHeight ? '' : e.outerHTML.slice(0, 90)",
            );
            hidden.extend(
                shows
                    .as_str()
                    .filter(|text| !text.is_empty())
                    .map(str::to_owned),
            );
        }
        assert!(hidden.is_empty(), "{step}: {hidden:?}");
        let last =
            browser.run("return document.querySelector('footer').contains(document.activeElement)");
        assert_eq!(
            last, true,
            "{step}: the tab key ends in the footer after {expected} controls"
        );
    }
}
