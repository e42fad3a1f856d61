//! A helper's day on a telephone: from the link to the record, with a connection, without one, and without scripts.

use serde_json::{Value, json};
use stillground_tests::browser::Browser;
use stillground_tests::service::Kept;

use crate::access::{axe, nothing_found};
use crate::walk::Journey;

/// A plan, and its page opened by the helper's link on a telephone.
pub fn helper() -> (Journey, Kept) {
    let journey = Journey::new(360);
    let kept = journey.service.create(&json!({ "schema_version": 1, "title": "Quarry Lane pier", "work": { "start_date": "2027-04-19" } }));
    journey.open(&format!("/p/{}", kept.record));
    assert!(journey.path().ends_with("/record"), "{}", journey.path());
    (journey, kept)
}

pub fn of(task: &str, inner: &str) -> String {
    format!("form.record:has(input[name=task][value={task}]) {inner}")
}

/// Turns to a task.
pub fn unfold(browser: &Browser, task: &str) {
    let _ = browser.run(&format!("window.location.hash = '{task}'"));
}

/// Fills in who enters and presses a button of a task.
pub fn enter(browser: &Browser, task: &str, action: &str) {
    unfold(browser, task);
    browser.fill(&of(task, "input[name=who]"), "A. Helper");
    browser.press(&of(task, &format!("button[value={action}]")));
}

pub fn ticked(browser: &Browser, task: &str) {
    browser.wait(&format!(
        "return document.getElementById('{task}')?.closest('.task.done') != null"
    ));
}

/// What was typed lies in the browser under the plan's name, and the link's secret does not.
pub fn waits_in_the_browser(browser: &Browser, kept: &Kept, typed: &str) {
    let stored = browser
        .run("return JSON.stringify(Object.entries(localStorage))")
        .as_str()
        .unwrap()
        .to_owned();
    assert!(
        stored.contains(&format!("stillground.unsent.{}", kept.id)) && stored.contains(typed),
        "{stored}"
    );
    assert!(
        !stored.contains(&kept.record),
        "the link's secret does not lie in the browser"
    );
}

pub fn entries(journey: &Journey, kept: &Kept) -> Vec<Value> {
    journey.service.read(kept, &kept.view, "/entries").json()["entries"]
        .as_array()
        .unwrap()
        .clone()
}

pub fn connection(browser: &Browser, on: bool) {
    let _ = browser.devtools("Network.enable", &json!({}));
    let speed = if on { -1 } else { 0 };
    let conditions = json!({ "offline": !on, "latency": 0, "downloadThroughput": speed, "uploadThroughput": speed });
    let _ = browser.devtools("Network.emulateNetworkConditions", &conditions);
}

#[test]
fn a_day_goes_from_the_link_to_the_record_without_instruction() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let rules = axe();
    for task in ["services", "set_out", "dig"] {
        enter(browser, task, "done");
        ticked(browser, task);
    }
    journey.fits();
    unfold(browser, "inspect");
    browser.fill(&of("inspect", "#inspect-pit_depth"), "deep");
    enter(browser, "inspect", "keep");
    browser.wait("return document.getElementById('unsent').textContent.includes('Not taken')");
    nothing_found(&journey, &rules, "a form that was not taken");
    browser.press("#unsent button");
    assert_eq!(browser.holds("#inspect-pit_depth"), "deep");
    browser.fill(&of("inspect", "#inspect-pit_depth"), "1 m");
    browser.fill(&of("inspect", "#inspect-water_depth"), "60 cm");
    enter(browser, "inspect", "keep");
    browser.wait("return document.querySelector('.stop') != null");
    browser.wait("return window.location.hash === '#stops'");
    let stopped = browser.says(".stops");
    assert!(
        stopped.contains("Water at 0.6")
            && stopped.contains("do not pour")
            && stopped.contains("Ask: whoever made the plan"),
        "{stopped}"
    );
    assert!(browser.says("#unsent").is_empty());
    assert!(
        browser.all(&of("pour", "button[value=done]")).is_empty(),
        "what is held cannot be ticked off"
    );
    let _ = browser.run("for (const d of document.querySelectorAll('details')) d.open = true");
    journey.fits();
    nothing_found(&journey, &rules, "a stop");
    unfold(browser, "inspect");
    // What is told at the foot lies over what a person would scroll to first.
    let _ = browser.run("document.querySelector(\"input[name='item~water_depth~none']\").scrollIntoView({ block: 'center' })");
    browser.press(&of("inspect", "input[name='item~water_depth~none']"));
    enter(browser, "inspect", "keep");
    browser.wait("return document.querySelector('.stop') == null");
    enter(browser, "inspect", "done");
    ticked(browser, "inspect");
    assert_eq!(entries(&journey, &kept).len(), 7);
}

#[test]
fn nothing_that_is_entered_without_a_connection_is_lost() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    connection(browser, false);
    enter(browser, "services", "done");
    unfold(browser, "inspect");
    browser.fill(
        &of("inspect", "textarea[name=note]"),
        "roots on the north side",
    );
    enter(browser, "inspect", "keep");
    browser.wait(
        "return document.getElementById('unsent').textContent.includes('2 forms are not sent yet')",
    );
    waits_in_the_browser(browser, &kept, "roots+on+the+north+side");
    assert!(entries(&journey, &kept).is_empty());
    connection(browser, true);
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return document.getElementById('unsent').textContent === ''");
    ticked(browser, "services");
    let kept_now = entries(&journey, &kept);
    assert_eq!(kept_now.len(), 2);
    assert!(
        kept_now
            .iter()
            .all(|entry| entry["measured_at"].is_string()),
        "each with the time at which it was entered: {kept_now:?}"
    );
}

#[test]
fn a_photograph_taken_without_a_connection_is_sent_when_it_is_back_and_once() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    connection(browser, false);
    unfold(browser, "services");
    let choose = "const form = Array.from(document.querySelectorAll('form.photo')).find((form) => form.elements.task.value === 'services');
        const canvas = document.createElement('canvas');
        canvas.toBlob((blob) => {
            const chosen = new DataTransfer();
            chosen.items.add(new File([blob], 'x.png', { type: 'image/png' }));
            form.elements.photo.files = chosen.files;
            form.elements.who.value = 'A. Helper';
            form.requestSubmit();
        })";
    let _ = browser.run(choose);
    browser.wait("return document.getElementById('unsent').textContent.includes('1 photograph is not sent yet')");
    assert!(entries(&journey, &kept).is_empty());
    browser.open("about:blank");
    connection(browser, true);
    journey.open(&format!("/p/{}/record", kept.record));
    browser.wait("return document.querySelector('a[href*=\"/photos/\"]') != null");
    browser.wait("return document.getElementById('unsent').textContent === ''");
    let kept_now = entries(&journey, &kept);
    assert_eq!(
        (kept_now.len(), kept_now[0]["kind"].as_str().unwrap()),
        (1, "photo")
    );
    assert!(
        kept_now[0]["measured_at"].is_string(),
        "with the time at which it was taken: {kept_now:?}"
    );
}

#[test]
fn a_page_closed_before_the_connection_came_back_sends_when_it_is_opened_again() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    connection(browser, false);
    enter(browser, "services", "done");
    browser.wait(
        "return document.getElementById('unsent').textContent.includes('1 form is not sent yet')",
    );
    browser.open("about:blank");
    connection(browser, true);
    journey.open(&format!("/p/{}/record", kept.record));
    ticked(browser, "services");
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn what_a_withdrawn_link_could_not_send_goes_out_by_its_successor() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let bearer = format!("Bearer {}", kept.edit);
    let link = |method: &str| {
        journey.service.send(
            method,
            &kept.path("/links/record"),
            &[("authorization", &bearer)],
            b"",
        )
    };
    assert_eq!(link("DELETE").status, 204);
    enter(browser, "services", "done");
    browser.wait(
        "return document.getElementById('unsent').textContent.includes('opens the plan no more')",
    );
    let secret = link("POST").json()["secret"].as_str().unwrap().to_owned();
    journey.open(&format!("/p/{secret}/record"));
    ticked(browser, "services");
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn everything_is_entered_with_scripts_off() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    browser.scripts(false);
    journey.open(&format!("/p/{}/record", kept.record));
    browser.press("a[href='#services']");
    browser.fill(&of("services", "input[name=who]"), "B. Helper");
    browser.press(&of("services", "button[value=done]"));
    assert!(
        browser.says(".saved").contains("One entry was kept"),
        "{}",
        browser.says("#board")
    );
    assert_eq!(
        browser.holds(&of("set_out", "input[name=who]")),
        "B. Helper",
        "the name need not be typed again"
    );
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn the_owner_decides_on_a_stop_and_sees_it_on_the_plan() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    unfold(browser, "inspect");
    browser.fill(&of("inspect", "#inspect-water_depth"), "60 cm");
    enter(browser, "inspect", "keep");
    browser.wait("return document.querySelector('.stop') != null");
    journey.open(&format!("/p/{}/record", kept.edit));
    browser.fill(
        ".stop textarea",
        "Drained, the bottom rammed, looked at together",
    );
    browser.fill(".stop input[name=who]", "The owner");
    browser.press(".stop button");
    browser.wait("return document.querySelector('.stop') == null");
    journey.open(&format!("/p/{}/plan/recorded", kept.edit));
    let said = browser.says("section[aria-labelledby=record]");
    assert!(
        said.contains("a stop, since ended by The owner")
            && said.contains("Drained, the bottom rammed"),
        "{said}"
    );
}
