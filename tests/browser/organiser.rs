//! The organiser's pages, a lost link and the front page of a house that invites: the axe rules, and pictures.

use serde_json::json;
use stillground_server::config::Settings;
use stillground_tests::browser::Browser;
use stillground_tests::service::start_with;
use tempfile::TempDir;

use crate::access::{axe, nothing_found};
use crate::pictures::keep;
use crate::walk::Journey;

const PASSWORD: &str = "twenty letters and more";

/// A house with a name, colours and an organiser; the folder of the password is kept by the caller.
fn house(width: u32) -> (Journey, TempDir) {
    let folder = TempDir::new().unwrap();
    let (file, defaults) = (
        folder.path().join("password"),
        folder.path().join("house.json"),
    );
    std::fs::write(&file, PASSWORD).unwrap();
    let known = json!({ "plan": { "schema_version": 1, "code": "eurocode", "site": { "frost_depth_m": 0.85 } }, "tubes_mm": [[168.3, 6.3], [219.1, 8.0]] });
    std::fs::write(&defaults, known.to_string()).unwrap();
    let settings = Settings {
        house_name: Some("Ashdown Field Observers".to_owned()),
        colours: Some("accent=#7a2e1d,dark-accent=#f0b49c".to_owned()),
        who_creates: Some("invited".to_owned()),
        organiser_token_file: Some(file),
        defaults_file: Some(defaults),
        ..Settings::default()
    };
    let browser = Browser::start();
    browser.size(width, 900);
    (
        Journey {
            service: start_with(settings),
            browser,
        },
        folder,
    )
}

#[test]
fn the_organisers_pages_are_walked_without_a_finding() {
    let axe = axe();
    for (width, scheme) in [(360, "dark"), (1280, "light")] {
        let (journey, _folder) = house(width);
        let browser = &journey.browser;
        browser.media(scheme, "");
        let look = |name: &str| {
            journey.fits();
            nothing_found(&journey, &axe, &format!("{name}, {width} px, {scheme}"));
            keep(&format!("{name}-{width}-{scheme}.png"), &browser.picture());
        };
        journey.open("/");
        look("invited-front");
        journey.open("/recover");
        look("recover");
        journey.open("/organiser");
        browser.fill("#password", "a wrong one");
        browser.follow("button.main");
        look("organiser-door");
        browser.fill("#password", PASSWORD);
        browser.follow("button.main");
        browser.fill("#said", "the autumn course");
        browser.fill("#uses", "4");
        browser.follow("button[value=make]");
        let code = browser.holds("#once");
        look("organiser-code");
        journey.open("/");
        browser.follow(".starts button.main");
        assert!(
            journey.path().ends_with("/short/ground"),
            "the organiser needs no code: {}",
            journey.path()
        );
        let root = journey.path().trim_end_matches("/short/ground").to_owned();
        journey.open(&format!("{root}/site"));
        look("house-site");
        journey.open(&format!("{root}/pier"));
        look("house-pier");
        journey.open(&format!("{root}/links"));
        browser.follow("button[value=recovery]");
        assert_eq!(browser.holds("#recovery-code").len(), 32);
        look("house-links");
        journey.open("/organiser");
        let shown =
            browser.run("return document.querySelector('button[value=link]').checkVisibility()");
        assert_eq!(
            shown, false,
            "what cannot be taken back is not pressed by mistake"
        );
        browser.press("summary");
        look("organiser-shelf");
        browser.follow("button[value=link]");
        look("organiser-new-link");
        let made = browser.holds("#once");
        journey.open(&format!("{root}/site"));
        assert!(
            browser.says("h1").contains("Nothing opens here"),
            "the old edit link opens nothing"
        );
        browser.open(&made);
        assert!(
            journey.path().ends_with("/plan") && !browser.all(".next a").is_empty(),
            "the new one edits: {made}"
        );
        journey.open("/organiser");
        browser.follow("button[value=remove]");
        journey.open("/organiser?removed=yes");
        look("organiser-removed");
        browser.follow("button[value=restore]");
        journey.open("/organiser");
        browser.follow("form[action$='/out'] button");
        journey.open("/");
        browser.fill("#code", &code);
        browser.follow(".starts button.main");
        assert!(
            journey.path().ends_with("/short/ground"),
            "{}",
            journey.path()
        );
    }
}
