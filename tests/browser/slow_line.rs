//! A telephone on a slow line: how soon the plan can be read, and how little is sent for it.

use serde_json::{Value, json};

use crate::budgets::EXAMPLES;
use crate::walk::Journey;

/// 1.6 Mbit/s, in bytes a second.
const DOWN: u32 = 200_000;
const UP: u32 = 100_000;
const LATENCY_MS: u32 = 150;

fn slow(journey: &Journey) {
    let _ = journey.browser.devtools("Network.enable", &json!({}));
    let line = json!({ "offline": false, "latency": LATENCY_MS, "downloadThroughput": DOWN, "uploadThroughput": UP });
    let _ = journey
        .browser
        .devtools("Network.emulateNetworkConditions", &line);
}

/// When the first words stood on the screen, ms, and bytes that came over the line for the page.
fn read(journey: &Journey, path: &str) -> (f64, u64) {
    journey.browser.open("about:blank");
    journey.open(path);
    journey
        .browser
        .wait("return performance.getEntriesByName('first-contentful-paint').length > 0");
    let found = journey.browser.run(
        "const all = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]; \
         return [performance.getEntriesByName('first-contentful-paint')[0].startTime, \
                 all.reduce((sum, one) => sum + one.transferSize, 0)]",
    );
    (found[0].as_f64().unwrap(), found[1].as_u64().unwrap())
}

#[test]
fn the_plan_is_read_soon_on_a_slow_line_and_costs_little_the_second_time() {
    let journey = Journey::new(390);
    let mut plans = 0;
    for (name, text) in EXAMPLES {
        let plan: Value = serde_json::from_str(text).unwrap();
        let kept = journey.service.create(&plan);
        let path = format!("/p/{}/plan", kept.view);
        // Its design is worked out once, when it is saved or first looked at; the line is what is measured.
        while journey.service.get(&path).status == 503 {
            std::thread::sleep(std::time::Duration::from_millis(500));
        }
        slow(&journey);
        let _ = journey
            .browser
            .devtools("Network.clearBrowserCache", &json!({}));
        let (first, _) = read(&journey, &path);
        assert!(first < 1500.0, "{name}: {first} ms");
        let (second, bytes) = read(&journey, &path);
        assert!(second < 1500.0, "{name}: {second} ms the second time");
        assert!(bytes <= 60_000, "{name}: {bytes} bytes the second time");
        plans += 1;
    }
    assert_eq!(plans, 6);
}

/// What each kind of page runs, as it is sent.
#[test]
fn no_page_has_more_than_fifteen_kilobytes_of_script() {
    let journey = Journey::new(390);
    let plan: Value = serde_json::from_str(EXAMPLES[3].1).unwrap();
    let kept = journey.service.create(&plan);
    let pages = [
        "site",
        "floor",
        "short/ground",
        "plan",
        "plan/checks",
        "answers",
        "ways",
        "record",
        "materials",
        "measure/knock",
        "commissioning",
        "links",
        "prices",
    ];
    let mut most = 0;
    for page in pages {
        journey.open(&format!("/p/{}/{page}", kept.edit));
        let bytes = journey.browser.run(
            "return performance.getEntriesByType('resource').filter(one => one.name.endsWith('.js')) \
               .reduce((sum, one) => sum + one.encodedBodySize, 0)",
        );
        let bytes = bytes.as_u64().unwrap();
        assert!(bytes <= 15_000, "{page}: {bytes} bytes of script");
        most = most.max(bytes);
    }
    assert!(most > 1000, "{most}: the scripts were counted");
}
