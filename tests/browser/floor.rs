//! Places, route and posts on the drawing of the floor: moved by keys, mouse and finger, and the star's answer follows.

use serde_json::{Value, json};
use stillground_tests::browser::key;

use crate::walk::Journey;

/// The floor's step of the example's plan, its drawing ready to be moved.
fn floor(width: u32) -> Journey {
    let journey = Journey::new(width);
    let plan: Value = serde_json::from_str(include_str!("../examples/quarry-lane.json")).unwrap();
    let kept = journey.service.create(&plan);
    journey.open(&format!("/p/{}/floor", kept.edit));
    journey
        .browser
        .wait("return document.querySelector('#floor-plan svg g.stand') != null");
    journey
}

/// What the star does, in the line below the drawing.
fn star(journey: &Journey) -> String {
    journey.browser.says("#floor-plan .star")
}

fn follows(journey: &Journey, before: &str) {
    journey.browser.wait(&format!(
        "return document.querySelector('#floor-plan .star').textContent.trim() !== {}",
        json!(before)
    ));
}

fn number(journey: &Journey, id: &str) -> f64 {
    journey.browser.holds(id).parse().unwrap()
}

/// Middle of a mark on the screen.
fn middle(journey: &Journey, mark: &str) -> (f64, f64) {
    let at = journey.browser.run(&format!(
        "const one = document.querySelector('#floor-plan svg g.{mark}'); \
         one.scrollIntoView({{ block: 'center' }}); \
         const box = one.querySelector('.touch').getBoundingClientRect(); \
         return [box.left + box.width / 2, box.top + box.height / 2]"
    ));
    (at[0].as_f64().unwrap(), at[1].as_f64().unwrap())
}

fn mouse(journey: &Journey, kind: &str, (x, y): (f64, f64)) {
    let button = if kind == "mouseMoved" { 1 } else { 0 };
    let _ = journey.browser.devtools(
        "Input.dispatchMouseEvent",
        &json!({ "type": kind, "x": x, "y": y, "button": "left", "buttons": button, "clickCount": 1 }),
    );
}

fn finger(journey: &Journey, kind: &str, at: Option<(f64, f64)>) {
    let points: Vec<Value> = at
        .into_iter()
        .map(|(x, y)| json!({ "x": x, "y": y }))
        .collect();
    let _ = journey.browser.devtools(
        "Input.dispatchTouchEvent",
        &json!({ "type": kind, "touchPoints": points }),
    );
}

#[test]
fn a_place_is_moved_by_keys_and_the_star_follows() {
    let journey = floor(1280);
    let browser = &journey.browser;
    assert!(!star(&journey).is_empty());
    let before = star(&journey);
    let east = number(&journey, "#floor-stands-0-x_m");
    let _ = browser.run("document.querySelector('#floor-plan svg g.stand').focus()");
    browser.keys(&[key::RIGHT, key::RIGHT, key::RIGHT, key::RIGHT, key::RIGHT]);
    let moved = number(&journey, "#floor-stands-0-x_m");
    assert!((moved - east - 0.5).abs() < 1e-9, "{east} to {moved}");
    assert_eq!(
        browser.run("return document.activeElement.closest('g.stand') !== null"),
        json!(true),
        "the keys stay with the place"
    );
    assert!(browser.says("#floor-plan [role=status]").contains("east"));
    follows(&journey, &before);
}

#[test]
fn a_place_is_moved_by_mouse_and_by_finger_and_the_star_follows() {
    for (width, by_finger) in [(1280, false), (390, true)] {
        let journey = floor(width);
        let before = star(&journey);
        let at = middle(&journey, "stand");
        let east = number(&journey, "#floor-stands-0-x_m");
        let to = (at.0 + 40.0, at.1 + 30.0);
        if by_finger {
            finger(&journey, "touchStart", Some(at));
            finger(&journey, "touchMove", Some(to));
            finger(&journey, "touchEnd", None);
        } else {
            mouse(&journey, "mousePressed", at);
            mouse(&journey, "mouseMoved", to);
            mouse(&journey, "mouseReleased", to);
        }
        let moved = number(&journey, "#floor-stands-0-x_m");
        assert!(moved > east, "{east} to {moved}");
        follows(&journey, &before);
        let now = middle(&journey, "stand");
        assert!((now.0 - at.0 - 40.0).abs() < 25.0, "{at:?} to {now:?}");
    }
}

/// What is typed stays under the eye that types it, and the picture is there soon after the service answered.
#[test]
fn a_change_redraws_soon_and_moves_nothing_that_is_typed() {
    for width in [390, 1280] {
        for (step, id, typed) in [
            ("floor", "floor-stands-0-x_m", "1.9"),
            ("footing", "block-length_m", "1.31"),
        ] {
            let journey = floor(width);
            let browser = &journey.browser;
            let address = browser.address().replace("/floor", &format!("/{step}"));
            browser.open(&address);
            let _ = browser.run(&format!(
                "const box = document.getElementById('{id}'); \
                 for (let fold = box.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true; \
                 box.scrollIntoView({{ block: 'center' }}); box.focus(); box.select(); \
                 window.answered = 0; window.drawn = 0; \
                 const ask = window.fetch; \
                 window.fetch = async (...all) => {{ const reply = await ask(...all); const text = await reply.text(); \
                   window.answered = performance.now(); return new Response(text, {{ status: reply.status }}); }}; \
                 new MutationObserver(() => {{ window.drawn = performance.now(); }}).observe(document.getElementById('panel'), {{ childList: true }})"
            ));
            let top = format!("return document.getElementById('{id}').getBoundingClientRect().top");
            let before = browser.run(&top).as_f64().unwrap();
            let letters: Vec<String> = typed.chars().map(String::from).collect();
            browser.keys(&letters.iter().map(String::as_str).collect::<Vec<_>>());
            // A busy machine takes its time to answer; what is held is the time from the answer on.
            for _ in 0..120 {
                if browser.run("return window.drawn > 0") == json!(true) {
                    break;
                }
                std::thread::sleep(std::time::Duration::from_millis(500));
            }
            let took = browser
                .run("return window.drawn > 0 ? window.drawn - window.answered : 1e6")
                .as_f64()
                .unwrap();
            assert!(took < 100.0, "{step} at {width}: {took} ms");
            let after = browser.run(&top).as_f64().unwrap();
            assert!(
                (after - before).abs() < 1.0,
                "{step} at {width}: from {before} to {after}"
            );
            assert_eq!(browser.holds(&format!("#{id}")), typed);
            assert_eq!(
                browser.attribute(&browser.focus(), "id"),
                id,
                "the focus stays in the box"
            );
        }
    }
}
