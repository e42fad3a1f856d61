//! Five people who have never seen it begin a plan: a garden, a club on rock, wet sand, a deck in feet and inches, and one
//! who knows nothing. What each of them taps and reads is counted, and printed with `--nocapture`.

use std::time::{Duration, Instant};

use stillground_tests::browser::Browser;

use crate::pictures::keep;
use crate::walk::Journey;

/// Answers of one page: radio buttons by name and value, boxes by identifier and what is typed.
struct Page {
    chosen: &'static [(&'static str, &'static str)],
    typed: &'static [(&'static str, &'static str)],
}

struct Beginning {
    name: &'static str,
    pages: [Page; 3],
}

const NOTHING: Page = Page {
    chosen: &[],
    typed: &[],
};

const BEGINNINGS: [Beginning; 5] = [
    Beginning {
        name: "garden",
        pages: [
            Page {
                chosen: &[("site.soil", "firm_clay")],
                typed: &[],
            },
            Page {
                chosen: &[("excavation.method", "hand")],
                typed: &[
                    ("excavation-max_depth_m", "1 m"),
                    ("excavation-max_length_m", "1.2 m"),
                    ("load-mass_kg", "40"),
                ],
            },
            Page {
                chosen: &[("use", "deep_sky"), ("floor.kind", "ground")],
                typed: &[],
            },
        ],
    },
    Beginning {
        name: "club on rock",
        pages: [
            Page {
                chosen: &[("site.soil", "rock")],
                typed: &[],
            },
            Page {
                chosen: &[("excavation.method", "machine")],
                typed: &[
                    ("excavation-max_depth_m", "0.5"),
                    ("load-mass_kg", "120 kg"),
                ],
            },
            Page {
                chosen: &[("use", "deep_sky"), ("floor.kind", "slab")],
                typed: &[],
            },
        ],
    },
    Beginning {
        name: "wet sand",
        pages: [
            Page {
                chosen: &[("site.soil", "loose_sand")],
                typed: &[],
            },
            Page {
                chosen: &[("excavation.method", "hand")],
                typed: &[
                    ("site-groundwater_depth_m", "60 cm"),
                    ("excavation-max_depth_m", "80 cm"),
                    ("load-mass_kg", "25"),
                ],
            },
            Page {
                chosen: &[("use", "planetary"), ("floor.kind", "ground")],
                typed: &[],
            },
        ],
    },
    Beginning {
        name: "imperial deck",
        pages: [
            Page {
                chosen: &[("units", "imperial"), ("site.soil", "medium_sand")],
                typed: &[],
            },
            // Boxes are in feet and pounds by now, so that a bare figure means what its reader takes it for.
            Page {
                chosen: &[],
                typed: &[
                    ("site-groundwater_depth_m", "10"),
                    ("excavation-max_depth_m", "4"),
                    ("excavation-max_length_m", "3' 6\""),
                    ("load-mass_kg", "90"),
                ],
            },
            Page {
                chosen: &[("use", "deep_sky"), ("floor.kind", "deck")],
                typed: &[],
            },
        ],
    },
    Beginning {
        name: "knows nothing",
        pages: [NOTHING, NOTHING, NOTHING],
    },
];

/// Words in sight on the page.
fn words(browser: &Browser) -> u64 {
    let count = "return document.querySelector('main').innerText.split(/\\s+/).filter(w => /\\w/.test(w)).length";
    browser.run(count).as_u64().unwrap()
}

/// Waits until the search for the piers that fit has ended; a machine that is busy with other work takes its time.
fn looked_at(browser: &Browser) {
    let end = Instant::now() + Duration::from_secs(300);
    while browser.run("return document.getElementById('going') !== null") == true {
        assert!(Instant::now() < end, "the search does not end");
        std::thread::sleep(Duration::from_millis(200));
    }
}

#[test]
fn five_beginnings_end_in_a_plan_without_a_wrong_turn() {
    for width in [390, 1280] {
        for beginning in &BEGINNINGS {
            let journey = Journey::new(width);
            let browser = &journey.browser;
            let (mut taps, mut read, mut shots) = (0, 0, 0);
            let mut look = |journey: &Journey| {
                read += words(&journey.browser);
                shots += 1;
                let name = beginning.name.replace(' ', "-");
                keep(
                    &format!("begin-{name}-{width}-{shots}.png"),
                    &journey.browser.picture(),
                );
                journey.fits();
            };
            journey.open("/");
            look(&journey);
            browser.follow(".starts button");
            taps += 1;
            for page in &beginning.pages {
                look(&journey);
                for (name, value) in page.chosen {
                    browser.press(&format!("input[name='{name}'][value='{value}']"));
                }
                for (id, typed) in page.typed {
                    browser.fill(&format!("#{id}"), typed);
                }
                browser.follow("button[value=next]");
                taps += 1 + page.chosen.len() + page.typed.len();
                let refused = browser.all("#to-put-right");
                assert!(
                    refused.is_empty(),
                    "{}: {}",
                    beginning.name,
                    browser.says("main")
                );
            }
            looked_at(browser);
            // A slow machine looks at them in several goes.
            for _ in 0..20 {
                if browser.all("a.main[href$='/ways']").is_empty() {
                    break;
                }
                browser.follow("a.main[href$='/ways']");
            }
            look(&journey);
            assert!(journey.path().ends_with("/ways"), "{}", journey.path());
            let take = "button[name=way]";
            if browser.all(take).is_empty() {
                let said = browser.says("main");
                assert!(
                    [
                        "What stands in the way",
                        "The plan stands so",
                        "Go on looking"
                    ]
                    .iter()
                    .any(|words| said.contains(words)),
                    "{}: {said}",
                    beginning.name
                );
                browser.follow("nav.up a");
            } else {
                browser.follow(take);
            }
            taps += 1;
            look(&journey);
            assert!(journey.path().ends_with("/plan"), "{}", journey.path());
            let said = browser.says("main");
            assert!(
                said.contains("Build it?") && !said.contains("was not saved"),
                "{said}"
            );
            assert!(taps <= 13, "{}: {taps} taps", beginning.name);
            println!(
                "{} at {width}: {taps} taps, {read} words on {shots} pages",
                beginning.name
            );
        }
    }
}
