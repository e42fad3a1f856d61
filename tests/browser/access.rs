//! WCAG 2.2 AA, as far as a program can tell: the axe rules on every page, in light and dark, narrow and wide.

use serde_json::Value;

use stillground_tests::routes::to_walk;

use crate::walk::{Journey, STEPS};

/// The rules' program. A missing one is a failure, not a reason to skip.
pub fn axe() -> String {
    let path = std::env::var("AXE_JS")
        .expect("AXE_JS names axe.min.js of the npm package axe-core; tests/run installs it");
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"))
}

const RUN: &str = "const done = arguments[arguments.length - 1];
  axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], resultTypes: ['violations'], selectors: false })
    .then(r => done(r.violations.map(v => v.id + ': ' + v.nodes.map(n => n.html.slice(0, 120) + ' ' + (n.any[0] || n.all[0] || n.none[0] || {}).message).join(' | '))))
    .catch(e => done([String(e)]));";

/// Runs the rules on the page.
pub fn nothing_found(journey: &Journey, axe: &str, what: &str) {
    let _ = journey.browser.run(axe);
    let found = journey.browser.run_until_called(RUN);
    assert_eq!(
        found,
        Value::Array(Vec::new()),
        "{what} at {}",
        journey.path()
    );
}

/// Every page that there is, its path below the service: those of the router, one that is not there, and an old revision.
fn pages(journey: &Journey) -> Vec<String> {
    let root = journey.start_a_plan();
    let secret = root.strip_prefix("/p/").expect("a plan's own address");
    let mut pages = to_walk(secret);
    pages.extend(["/nowhere".to_owned(), format!("{root}/plan?rev=1")]);
    pages
}

#[test]
fn nothing_is_found_on_any_page() {
    let axe = axe();
    for (width, scheme) in [(360, "dark"), (1280, "light")] {
        let journey = Journey::new(width);
        journey.browser.media(scheme, "");
        for page in pages(&journey) {
            journey.open(&page);
            journey.fits();
            let _ = journey
                .browser
                .run("for (const d of document.querySelectorAll('details')) d.open = true");
            journey.fits();
            nothing_found(&journey, &axe, &format!("{width} px, {scheme}"));
        }
    }
}

#[test]
fn nothing_is_found_where_answers_are_wrong() {
    let axe = axe();
    let journey = Journey::new(360);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/anchors"));
    browser.fill("#anchors-torque_n_m", "180 kilos");
    browser.fill("#anchors-length_mm", "long");
    journey.save();
    nothing_found(&journey, &axe, "faults");
    journey.open(&format!("{root}/floor"));
    browser.follow("button[value='add:floor.stands']");
    browser.fill("#floor-stands-0-x_m", "1,250");
    journey.save();
    nothing_found(&journey, &axe, "a row with faults");
}

#[test]
fn a_page_fits_at_320_px_and_with_text_twice_as_large() {
    let journey = Journey::new(320);
    let root = journey.start_a_plan();
    for step in STEPS {
        journey.open(&format!("{root}/{step}"));
        journey.fits();
    }
    journey.browser.size(720, 900);
    for step in STEPS {
        journey.open(&format!("{root}/{step}"));
        let _ = journey
            .browser
            .run("document.documentElement.style.fontSize = '212%'");
        journey.fits();
    }
}
