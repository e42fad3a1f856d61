//! How much a page may ask of whoever reads it: screens of a phone and of a desk, words shown, and bytes sent.

use serde_json::{Value, json};
use stillground_server::forms::short::Part;
use stillground_tests::service::Kept;

use crate::walk::Journey;

pub const EXAMPLES: [(&str, &str); 6] = [
    (
        "shallow rock",
        include_str!("../examples/club-on-shallow-rock.json"),
    ),
    (
        "everything unknown",
        include_str!("../examples/everything-unknown.json"),
    ),
    (
        "firm clay",
        include_str!("../examples/firm-clay-garden.json"),
    ),
    ("quarry lane", include_str!("../examples/quarry-lane.json")),
    ("sandy water", include_str!("../examples/sandy-water.json")),
    ("inch garden", include_str!("../examples/inch-garden.json")),
];

/// Screens and words that a page may take, and its bytes when they are sent compressed.
#[derive(Clone, Copy)]
pub struct Budget {
    pub phone_screens: f64,
    pub desk_screens: f64,
    pub words: u64,
    pub kilobytes: u64,
}

const PHONE: (u32, u32) = (390, 844);
const DESK: (u32, u32) = (1280, 900);

/// Height in screens down to the last line of the content.
fn screens(journey: &Journey, (width, height): (u32, u32), path: &str) -> f64 {
    journey.browser.size(width, height);
    journey.open(path);
    let tall = journey.browser.run(
        "return document.querySelector('main > *').getBoundingClientRect().bottom + window.scrollY",
    );
    tall.as_f64().unwrap() / f64::from(height)
}

pub fn hold(journey: &Journey, name: &str, path: &str, budget: &Budget) {
    let phone = screens(journey, PHONE, path);
    assert!(
        phone <= budget.phone_screens,
        "{name}, {path}: {phone:.1} phone screens"
    );
    let desk = screens(journey, DESK, path);
    assert!(
        desk <= budget.desk_screens,
        "{name}, {path}: {desk:.2} desk screens"
    );
    // What a drawing says is looked at, not read in a row; what is only heard is not shown.
    let words = journey.browser.run(
        "const drawn = [...document.querySelectorAll('main svg, main .visually-hidden')]; \
         drawn.forEach(e => { e.style.display = 'none'; }); \
         const count = document.querySelector('main').innerText.split(/\\s+/).filter(w => /\\w/.test(w)).length; \
         drawn.forEach(e => { e.style.display = ''; }); \
         return count",
    );
    assert!(
        words.as_u64().unwrap() <= budget.words,
        "{name}, {path}: {words} words"
    );
    let document = path.split('#').next().unwrap_or_default();
    let sent = journey
        .service
        .send("GET", document, &[("accept-encoding", "gzip")], b"");
    // The front page may hold plans of this browser and is sent as it is: it packs to a fifth.
    let packed = if path == "/" { 5 } else { 1 };
    assert_eq!(
        sent.header("content-encoding"),
        if path == "/" { "" } else { "gzip" },
        "{path}"
    );
    let kilobytes = sent.body.len() as u64 / packed / 1000;
    assert!(
        kilobytes <= budget.kilobytes,
        "{name}, {path}: {kilobytes} kB"
    );
}

/// The examples, each in either system of units.
pub fn in_both_units(journey: &Journey) -> Vec<(&'static str, Kept)> {
    let mut kept = Vec::new();
    for (name, text) in EXAMPLES {
        for units in ["metric", "imperial"] {
            let mut plan: Value = serde_json::from_str(text).unwrap();
            plan["units"] = json!(units);
            kept.push((name, journey.service.create(&plan)));
        }
    }
    kept
}

/// The plan's first page says what to do, and no more.
#[test]
fn the_plan_in_short_is_one_screen_of_a_desk_and_three_of_a_phone() {
    let journey = Journey::new(1280);
    let budget = Budget {
        phone_screens: 3.0,
        desk_screens: 1.0,
        words: 250,
        kilobytes: 30,
    };
    for (name, kept) in in_both_units(&journey) {
        for link in [&kept.edit, &kept.view] {
            hold(&journey, name, &format!("/p/{link}/plan"), &budget);
        }
    }
}

/// Every chapter can be reached from the plan's first page, and leads back to it.
#[test]
fn the_chapters_lead_from_the_first_page_and_back() {
    let journey = Journey::new(390);
    journey.open("/example/plan");
    let count = journey.browser.all(".chapters li a").len();
    assert_eq!(count, 9, "all but what was recorded");
    let links = journey.browser.run(
        "return [...document.querySelectorAll('.chapters li a')].map(a => a.getAttribute('href'))",
    );
    for link in links.as_array().unwrap() {
        let link = link.as_str().unwrap();
        journey.open(link);
        assert_eq!(journey.path(), link);
        journey.fits();
        journey.browser.follow(".up a");
        assert_eq!(journey.path(), "/example/plan");
    }
}

/// Addresses from the time when the plan was one page lead to the chapter that holds what they meant.
#[test]
fn an_old_address_within_the_plan_leads_to_its_chapter() {
    let journey = Journey::new(1280);
    for (old, chapter) in [
        ("checks", "checks"),
        ("materials", "order"),
        ("cautions", "days"),
        ("workings", "calculations"),
        ("assumptions", "taken"),
        ("engineer", "engineer"),
    ] {
        journey.open(&format!("/example/plan#{old}"));
        let leads = journey.browser.run(&format!(
            "return document.getElementById('{old}').closest('li').querySelector('a').getAttribute('href')"
        ));
        assert_eq!(leads, format!("/example/plan/{chapter}"));
    }
}

/// The short way: two taps to begin, twelve at most to a plan, whatever is left open, also without scripts.
#[test]
fn the_short_way_ends_in_a_plan_after_twelve_taps() {
    for (width, scripts) in [(390, false), (1280, true)] {
        let journey = Journey::new(width);
        let browser = &journey.browser;
        browser.scripts(scripts);
        journey.open("/");
        let mut taps = 0;
        let mut tap = |selector: &str| {
            browser.follow(selector);
            taps += 1;
        };
        tap(".starts button");
        assert!(journey.path().ends_with("/short/ground"));
        journey.fits();
        browser.press("input[name='site.soil'][value=firm_clay]");
        tap("button[value=next]");
        assert!(journey.path().ends_with("/short/telescope"));
        for (path, typed) in [
            ("excavation-max_depth_m", "0.5 m"),
            ("excavation-max_length_m", "0.9 m"),
        ] {
            browser.fill(&format!("#{path}"), typed);
        }
        browser.fill("#load-mass_kg", "25 kg");
        journey.fits();
        tap("button[value=next]");
        browser.press("input[name=use][value=deep_sky]");
        browser.press("input[name='floor.kind'][value=ground]");
        tap("button[value=next]");
        let answered = 6;
        assert!(journey.path().ends_with("/ways"), "{}", journey.path());
        assert!(taps + answered <= 12, "{taps} and {answered}");
    }
}

#[test]
fn the_front_page_and_the_short_way_keep_to_their_budgets() {
    let journey = Journey::new(1280);
    let front = Budget {
        phone_screens: 2.0,
        desk_screens: 1.5,
        words: 250,
        kilobytes: 12,
    };
    hold(&journey, "front", "/", &front);
    let root = journey.start_a_plan();
    let page = Budget {
        phone_screens: 2.0,
        desk_screens: 1.0,
        words: 250,
        kilobytes: 15,
    };
    for part in Part::ALL {
        hold(
            &journey,
            "short",
            &format!("{root}/short/{}", part.slug()),
            &page,
        );
    }
}
