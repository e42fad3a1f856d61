//! How much steps, chapters, today and a task may ask of whoever reads them.

use serde_json::{Value, json};
use stillground_server::forms::chapter::Chapter;
use stillground_server::forms::step::Step;
use stillground_tests::service::Kept;

use crate::budgets::{Budget, EXAMPLES, hold};
use crate::record::{enter, helper, ticked};
use crate::walk::Journey;

fn plans(journey: &Journey) -> Vec<(String, Kept)> {
    let of = |(name, text): (&str, &str)| {
        let mut plan: Value = serde_json::from_str(text).unwrap();
        plan["work"]["start_date"] = json!("2027-04-19");
        (name.to_owned(), journey.service.create(&plan))
    };
    EXAMPLES.into_iter().map(of).collect()
}

/// Every page that is over its budget, each with what it takes.
fn over(journey: &Journey, pages: &[(String, String)], budget: &Budget) -> Vec<String> {
    let holds = |(name, path): &(String, String)| {
        let tried = std::panic::AssertUnwindSafe(|| hold(journey, name, path, budget));
        std::panic::catch_unwind(tried)
            .err()
            .map(|said| said.downcast_ref::<String>().cloned().unwrap_or_default())
    };
    pages.iter().filter_map(holds).collect()
}

#[test]
fn a_step_is_four_screens_of_a_telephone() {
    let journey = Journey::new(1280);
    let budget = Budget {
        phone_screens: 4.0,
        desk_screens: 2.5,
        words: 700,
        kilobytes: 30,
    };
    let mut pages = Vec::new();
    for (name, kept) in plans(&journey) {
        // The plan is held by a test of its own, in short and chapter by chapter.
        for step in Step::ALL.iter().filter(|step| **step != Step::Plan) {
            pages.push((name.clone(), format!("/p/{}/{}", kept.edit, step.slug())));
        }
    }
    assert_eq!(pages.len(), 36);
    let over = over(&journey, &pages, &budget);
    assert!(over.is_empty(), "{over:#?}");
}

/// Chapters that are as long as what they list, and why that is no burden.
const AS_LONG_AS_IT_TAKES: [(Chapter, &str); 5] = [
    (
        Chapter::Checks,
        "every check, looked up by whoever doubts one",
    ),
    (Chapter::Taken, "every answer that nobody gave"),
    (
        Chapter::Calculations,
        "every line of calculation, looked up by its name",
    ),
    (Chapter::Engineer, "the studs for whoever checks them"),
    (
        Chapter::Recorded,
        "what was entered on site, as much as there is",
    ),
];

#[test]
fn a_chapter_is_eight_screens_of_a_telephone() {
    let journey = Journey::new(1280);
    let budget = Budget {
        phone_screens: 8.0,
        desk_screens: 4.0,
        words: 1200,
        kilobytes: 60,
    };
    let mut pages = Vec::new();
    for (name, kept) in plans(&journey) {
        let without: Vec<Chapter> = AS_LONG_AS_IT_TAKES.iter().map(|(it, _)| *it).collect();
        // Where nothing was measured there is no proof; `measuring` holds it to the same budget.
        let there = |it: &&Chapter| !without.contains(it) && **it != Chapter::Proof;
        for chapter in Chapter::ALL.iter().filter(there) {
            pages.push((
                name.clone(),
                format!("/p/{}/plan/{}", kept.view, chapter.slug()),
            ));
        }
    }
    assert_eq!(pages.len(), 30);
    let over = over(&journey, &pages, &budget);
    assert!(over.is_empty(), "{over:#?}");
}

/// Today and its tasks are one document, so that the day goes on without a connection: its bytes are theirs together.
#[test]
fn today_is_two_screens_of_a_telephone_and_a_task_three() {
    let journey = Journey::new(1280);
    let (today, task) = (
        Budget {
            phone_screens: 2.0,
            desk_screens: 1.0,
            words: 200,
            kilobytes: 40,
        },
        Budget {
            phone_screens: 3.0,
            desk_screens: 2.0,
            words: 400,
            kilobytes: 40,
        },
    );
    // On rock a dozen cautions stand above the drawing and five boxes below it.
    let looked_at = Budget {
        phone_screens: 3.25,
        words: 440,
        ..task
    };
    let (mut days, mut tasks, mut pits) = (Vec::new(), Vec::new(), Vec::new());
    for (name, kept) in plans(&journey) {
        let path = format!("/p/{}/record", kept.record);
        pits.push((name.clone(), format!("{path}#inspect")));
        for id in [
            "services",
            "dig",
            "form",
            "pour",
            "drill",
            "bond",
            "level",
            "torque",
            "torque_week",
            "measure",
        ] {
            tasks.push((name.clone(), format!("{path}#{id}")));
        }
        days.push((name, path));
    }
    assert_eq!((days.len(), tasks.len(), pits.len()), (6, 60, 6));
    let over = [
        over(&journey, &days, &today),
        over(&journey, &tasks, &task),
        over(&journey, &pits, &looked_at),
    ]
    .concat();
    assert!(over.is_empty(), "{over:#?}");
}

#[test]
fn one_task_is_in_sight_and_what_is_typed_outlives_the_page() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let shown = || {
        let count = "return [...document.querySelectorAll('.view')].filter(e => e.offsetHeight > 0 || getComputedStyle(e).display === 'contents').map(e => e.getAttribute('aria-labelledby')).filter(Boolean)";
        browser.run(count)
    };
    assert_eq!(shown(), json!(["today-title"]));
    browser.press("a[href='#services']");
    assert_eq!(shown(), json!(["services"]));
    browser.press("section[aria-labelledby=services] .up a");
    assert_eq!(shown(), json!(["today-title"]));
    let _ = browser.run("window.location.hash = 'inspect'");
    browser.fill("#inspect-note", "roots on the north side");
    browser.open("about:blank");
    journey.open(&format!("/p/{}/record#inspect", kept.record));
    assert_eq!(browser.holds("#inspect-note"), "roots on the north side");
}

#[test]
fn the_owner_takes_a_shallower_pit_into_the_plan_and_back() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let pit = journey.service.read(&kept, &kept.view, "/design").json()["excavation"]["depth_m"]
        .as_f64()
        .unwrap();
    for task in ["services", "set_out", "dig"] {
        enter(browser, task, "done");
        ticked(browser, task);
    }
    let _ = browser.run("window.location.hash = 'inspect'");
    browser.fill("#inspect-pit_depth", &format!("{} m", pit - 0.1));
    enter(browser, "inspect", "keep");
    browser.wait("return document.querySelector('.stop') != null");
    journey.open(&format!("/p/{}/record", kept.edit));
    browser.follow("a[href$='/found']");
    browser.follow("a[href*='/found?entry=']");
    assert!(
        browser
            .says("main")
            .contains("What changes when the plan has this"),
        "{}",
        browser.says("main")
    );
    browser.follow("button.main");
    assert!(
        browser
            .says("main")
            .contains("The plan has it now, as revision 2")
    );
    let depth = || journey.service.read(&kept, &kept.view, "").json()["block"]["depth_m"].as_f64();
    assert!((depth().unwrap() - (pit - 0.1)).abs() < 1e-9);
    assert!(
        journey
            .service
            .get(&format!("/p/{}/record", kept.record))
            .text()
            .contains("as planned")
    );
    browser.follow(".notice button");
    assert_eq!(depth(), None, "as it was");
}
