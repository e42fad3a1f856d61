//! Pictures of every page, for a person to look at: `target/screenshots`.

use std::path::PathBuf;

use crate::walk::{Journey, STEPS, WIDTHS};

fn folder() -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(
        || stillground_tests::workspace().join("target"),
        PathBuf::from,
    );
    target.join("screenshots")
}

/// Keeps a picture or a PDF.
pub fn keep(name: &str, bytes: &[u8]) {
    std::fs::create_dir_all(folder()).unwrap();
    std::fs::write(folder().join(name), bytes).unwrap();
}

#[test]
#[ignore = "for a person to look at: `tests/run slow`"]
fn pictures_of_every_page() {
    let journey = Journey::new(WIDTHS[0]);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    for width in WIDTHS {
        browser.size(width, 900);
        for scheme in ["light", "dark"] {
            browser.media(scheme, "");
            let shoot = |name: &str, path: &str| {
                journey.open(path);
                keep(&format!("{name}-{width}-{scheme}.png"), &browser.picture());
            };
            shoot("front", "/");
            shoot("nowhere", "/nowhere");
            shoot("links", &format!("{root}/links"));
            for step in STEPS {
                shoot(step, &format!("{root}/{step}"));
                shoot(&format!("example-{step}"), &format!("/example/{step}"));
            }
        }
    }
}
