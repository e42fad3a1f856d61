//! Every answer on one page: each leads to its question and back, with scripts and without.

use serde_json::json;

use crate::budgets::{Budget, hold, in_both_units};
use crate::walk::Journey;

#[test]
fn all_answers_stand_on_one_page_of_eight_screens() {
    let journey = Journey::new(1280);
    let budget = Budget {
        phone_screens: 8.0,
        desk_screens: 4.0,
        words: 1200,
        kilobytes: 30,
    };
    for (name, kept) in in_both_units(&journey) {
        let path = format!("/p/{}/answers", kept.edit);
        hold(&journey, name, &path, &budget);
    }
}

#[test]
fn an_answer_is_changed_from_the_list_and_leads_back_to_its_row() {
    for (width, scripts) in [(390, false), (1280, true)] {
        let journey = Journey::new(width);
        let browser = &journey.browser;
        browser.scripts(scripts);
        let root = journey.start_a_plan();
        journey.open(&format!("{root}/answers"));
        journey.fits();
        assert!(browser.says("#site-frost_depth_m").contains("Assumed"));
        let links = browser.run(
            "const names = [...document.querySelectorAll('.act a')].map(a => a.textContent); \
             return [names.length, new Set(names).size]",
        );
        assert!(
            links[0].as_u64().unwrap() > 80 && links[0] == links[1],
            "{links}"
        );
        // A question that few can answer lies two folds deep at its step.
        for (step, id, typed, stands) in [
            ("site", "site-frost_depth_m", "60 cm", "0.6 m"),
            ("anchors", "anchors-min_edge_mm", "45 mm", "45 mm"),
        ] {
            let change = format!("#{id} .act a");
            let _ = browser.run(&format!(
                "const fold = document.getElementById('{id}').closest('details'); if (fold) fold.open = true"
            ));
            browser.follow(&change);
            assert_eq!(journey.path(), format!("{root}/{step}"));
            let seen = format!("return document.getElementById('{id}').checkVisibility()");
            assert_eq!(browser.run(&seen), json!(true), "{id}");
            browser.fill(&format!("#{id}"), "knee deep");
            browser.follow("button.main[name=go]");
            assert_eq!(journey.path(), format!("{root}/{step}"), "not clear yet");
            browser.fill(&format!("#{id}"), typed);
            browser.follow("button.main[name=go]");
            assert_eq!(journey.path(), format!("{root}/answers"));
            assert!(browser.address().ends_with(&format!("#{id}")));
            let row = browser.says(&format!("#{id}")).replace('\u{a0}', " ");
            assert!(row.contains(stands) && !row.contains("Assumed"), "{row}");
        }
        assert!(
            !browser.says("main").contains("was not saved"),
            "{}",
            browser.says("main")
        );
    }
}

/// Whoever may only look sees the same list and no way to change it.
#[test]
fn a_reader_sees_all_answers_and_changes_none() {
    let journey = Journey::new(390);
    journey.open("/example/answers");
    journey.fits();
    assert!(journey.browser.all(".act a, main form").is_empty());
    assert!(journey.browser.says("main").contains("said, "));
}
