//! A helper without a connection: photographs that are not taken, a full browser, and a plan that changed meanwhile.

use serde_json::json;

use crate::access::{axe, nothing_found};
use crate::record::{connection, enter, entries, helper, of, unfold};

/// Chooses a picture of so many dots by so many at a task, and sends it.
fn photograph(task: &str, width: u32, height: u32) -> String {
    format!(
        "const form = Array.from(document.querySelectorAll('form.photo')).find((form) => form.elements.task.value === '{task}');
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [{width}, {height}];
        canvas.toBlob((blob) => {{
            const chosen = new DataTransfer();
            chosen.items.add(new File([blob], 'x.png', {{ type: 'image/png' }}));
            form.elements.photo.files = chosen.files;
            form.elements.who.value = 'A. Helper';
            form.requestSubmit();
        }})"
    )
}

const NO_PICTURE: &str =
    "const form = Array.from(document.querySelectorAll('form.photo')).find((form) => form.elements.task.value === 'dig');
    const chosen = new DataTransfer();
    chosen.items.add(new File(['words'], 'x.jpg', { type: 'image/jpeg' }));
    form.elements.photo.files = chosen.files;
    form.elements.who.value = 'A. Helper';
    form.requestSubmit()";

#[test]
fn a_photograph_that_is_not_taken_says_why_and_is_sent_again_saved_or_thrown_away() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let _ = browser.run(NO_PICTURE);
    browser.wait(
        "return document.getElementById('unsent').textContent.includes('This file is no JPEG')",
    );
    let said = browser.says("#unsent");
    assert!(
        said.contains("1 photograph was not taken, and kept on this device until you decide"),
        "{said}"
    );
    nothing_found(&journey, &axe(), "a photograph that was not taken");
    journey.fits();
    for words in ["Send it again", "Save it on this device", "Throw it away"] {
        assert!(said.contains(words), "{said}");
    }
    let _ = browser.run("document.getElementById('told').textContent = ''");
    browser.press("#unsent button:nth-of-type(1)");
    browser.wait("return document.getElementById('told').textContent.startsWith('Not taken')");
    browser.press("#unsent button:nth-of-type(3)");
    browser.wait("return document.getElementById('unsent').textContent === ''");
    assert!(entries(&journey, &kept).is_empty());
}

#[test]
fn a_photograph_goes_out_no_larger_than_it_is_kept() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    connection(browser, false);
    let _ = browser.run(&photograph("dig", 5000, 2500));
    browser.wait("return document.getElementById('unsent').textContent.includes('1 photograph is not sent yet')");
    let size = browser.run_until_called(
        "const done = arguments[0];
        indexedDB.open('stillground.photographs', 1).onsuccess = (event) => {
            event.target.result.transaction('waiting').objectStore('waiting').getAll().onsuccess = async (found) => {
                const one = found.target.result[0];
                const picture = await createImageBitmap(new Blob([one.bytes], { type: one.kind }));
                done([picture.width, picture.height]);
            };
        }",
    );
    assert_eq!(size, json!([2048, 1024]));
    connection(browser, true);
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return document.querySelector('a[href*=\"/photos/\"]') != null");
    assert_eq!(entries(&journey, &kept).len(), 1);
}

#[test]
fn what_this_device_has_no_room_for_is_said_at_once() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    let full = format!(
        "const done = arguments[0];
        const opening = indexedDB.open('stillground.photographs', 1);
        opening.onsuccess = () => {{
            const step = opening.result.transaction('waiting', 'readwrite');
            step.objectStore('waiting').put({{ id: 'large', plan: '{}', title: 'Dig', at: '2027-04-19', pairs: [], refused: 'x',
                kind: 'image/jpeg', bytes: new ArrayBuffer(64 * 1024 * 1024) }});
            step.oncomplete = () => done(true);
        }}",
        kept.id
    );
    let _ = browser.run_until_called(&full);
    let _ = browser.run(&photograph("dig", 30, 20));
    browser.wait("return document.getElementById('told').textContent.includes('64 MiB of photographs wait already')");
    let _ = browser.run("document.getElementById('record').dataset.largestPhoto = 10");
    let _ = browser.run(&photograph("dig", 30, 20));
    browser.wait("return document.getElementById('told').textContent.includes('could not be made smaller here')");
    assert!(entries(&journey, &kept).is_empty());
}

#[test]
fn a_plan_that_changed_meanwhile_is_said_and_what_is_typed_keeps_its_unit() {
    let (journey, kept) = helper();
    let browser = &journey.browser;
    connection(browser, false);
    unfold(browser, "inspect");
    browser.fill(&of("inspect", "#inspect-water_depth"), "0.6");
    enter(browser, "inspect", "keep");
    browser.wait("return document.querySelector('.pending')?.textContent.includes('Water, depth to it below the ground: 0.6')");
    browser.fill(&of("inspect", "#inspect-pit_depth"), "1");
    let plan = json!({ "schema_version": 1, "title": "Quarry Lane pier", "units": "imperial" });
    assert_eq!(journey.service.replace(&kept, 1, &plan).status, 200);
    connection(browser, true);
    let _ = browser.run("window.dispatchEvent(new Event('online'))");
    browser.wait("return document.querySelector('.stop') != null");
    let told = browser.says("#told");
    assert!(
        told.contains("It stops the work") && told.contains("it was revision 1 and is revision 2"),
        "{told}"
    );
    assert_eq!(browser.holds("#inspect-pit_depth"), "1 m");
    assert!(browser.says("header").contains("revision 2"));
    let value = entries(&journey, &kept)[0]["value"].as_f64().unwrap();
    assert!(
        (value - 0.6).abs() < 1e-9,
        "metres, as the box said, not feet: {value}"
    );
}
