//! Answers typed as people type them, good and bad.

use crate::walk::{Journey, STEPS, WIDTHS};

/// Walks every step forward with an answer or two on each, and reads them back.
fn walks_every_step(width: u32, scripts: bool) {
    let journey = Journey::new(width);
    let browser = &journey.browser;
    browser.scripts(scripts);
    let root = journey.start_a_plan();
    browser.fill("#title", "A pier on the hill");
    browser.press("input[value=stiff_clay]");
    journey.fits();
    journey.go_on();
    browser.fill("#excavation-max_depth_m", "90 cm");
    browser.fill("#excavation-max_length_m", "4' 3\"");
    journey.go_on();
    browser.press("input[value='C30/37']");
    journey.go_on();
    browser.fill("#load-mass_kg", "100 lb");
    journey.go_on();
    browser.fill("#anchors-torque_n_m", "60 lbf ft");
    journey.go_on();
    browser.follow("button[value='add:floor.stands']");
    browser.fill("#floor-stands-0-name", "Observer");
    browser.fill("#floor-stands-0-x_m", "0");
    browser.fill("#floor-stands-0-y_m", "-1,2");
    browser.fill("#floor-stands-0-mass_kg", "80");
    journey.fits();
    journey.go_on();
    assert_eq!(journey.path(), format!("{root}/plan"));
    assert!(browser.says(".masthead").contains("A pier on the hill"));
    journey.fits();

    journey.open(&format!("{root}/excavation"));
    assert_eq!(browser.holds("#excavation-max_depth_m"), "0.9");
    assert_eq!(browser.holds("#excavation-max_length_m"), "1.2954");
    journey.open(&format!("{root}/pier"));
    assert_eq!(browser.holds("#load-mass_kg"), "45.359237");
    journey.open(&format!("{root}/anchors"));
    assert_eq!(browser.holds("#anchors-torque_n_m"), "81.3490768999");
    journey.open(&format!("{root}/floor"));
    assert_eq!(browser.holds("#floor-stands-0-y_m"), "-1.2");
}

#[test]
fn every_step_is_walked_on_a_narrow_screen_without_scripts() {
    walks_every_step(WIDTHS[0], false);
}

#[test]
fn every_step_is_walked_on_a_wide_screen_without_scripts() {
    walks_every_step(WIDTHS[1], false);
}

#[test]
fn every_step_is_walked_on_a_narrow_screen_with_scripts() {
    walks_every_step(WIDTHS[0], true);
}

#[test]
fn every_step_is_walked_on_a_wide_screen_with_scripts() {
    walks_every_step(WIDTHS[1], true);
}

#[test]
fn steps_are_visited_in_any_order_and_lose_nothing() {
    let journey = Journey::new(1280);
    journey.browser.scripts(false);
    let root = journey.start_a_plan();
    journey.browser.fill("#site-frost_depth_m", "60 cm");
    journey.browser.follow("nav.steps button[value=floor]");
    assert_eq!(journey.path(), format!("{root}/floor"));
    journey.browser.fill("#floor-gap_mm", "3/4 in");
    journey.browser.follow("nav.steps button[value=site]");
    assert_eq!(journey.browser.holds("#site-frost_depth_m"), "0.6");
    journey.browser.follow("nav.steps button[value=floor]");
    assert_eq!(journey.browser.holds("#floor-gap_mm"), "19.05");
}

#[test]
fn an_ambiguous_figure_is_asked_about_and_the_choice_is_taken() {
    let journey = Journey::new(360);
    let browser = &journey.browser;
    browser.scripts(false);
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/excavation"));
    browser.fill("#excavation-max_depth_m", "1,250");
    journey.go_on();
    assert_eq!(journey.path(), format!("{root}/excavation"));
    assert_eq!(browser.holds("#excavation-max_depth_m"), "1,250");
    assert_eq!(browser.attribute(&browser.focus(), "id"), "to-put-right");
    let said = browser.says(".field.wrong");
    assert!(said.contains("1.25 m") && said.contains("1250 m"), "{said}");
    journey.fits();
    browser.press("input[name='excavation.max_depth_m~reading'][value='1.25 m']");
    journey.go_on();
    journey.open(&format!("{root}/excavation"));
    assert_eq!(browser.holds("#excavation-max_depth_m"), "1.25");
}

#[test]
fn a_torque_in_kilos_is_asked_about_with_its_three_readings() {
    let journey = Journey::new(1280);
    let browser = &journey.browser;
    browser.scripts(false);
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/anchors"));
    browser.fill("#anchors-torque_n_m", "180 kilos");
    journey.save();
    let said = browser.says(".field.wrong");
    for reading in [
        "180 newton metres",
        "180 kilogram-force metres",
        "180 pound-force feet",
        "pulls each stud with",
    ] {
        assert!(said.contains(reading), "{reading} is not in: {said}");
    }
    browser.press("input[value='180 lbf ft']");
    journey.save();
    assert_eq!(browser.holds("#anchors-torque_n_m"), "244.0472307");
}

#[test]
fn bad_answers_keep_what_was_typed_and_the_summary_says_the_same_as_the_field() {
    for scripts in [false, true] {
        let journey = Journey::new(360);
        let browser = &journey.browser;
        browser.scripts(scripts);
        let root = journey.start_a_plan();
        journey.open(&format!("{root}/excavation"));
        browser.fill("#excavation-max_depth_m", "knee deep");
        browser.fill("#excavation-max_width_m", "900 m");
        journey.go_on();
        assert_eq!(browser.attribute(&browser.focus(), "id"), "to-put-right");
        assert_eq!(browser.holds("#excavation-max_depth_m"), "knee deep");
        let summary = browser.says("#to-put-right");
        for field in ["max_depth_m", "max_width_m"] {
            let error = browser.says(&format!("#excavation-{field}-error"));
            let words = error.trim_start_matches("To put right:").trim();
            assert!(summary.contains(words), "“{words}” is not in “{summary}”");
        }
        browser.press("#to-put-right a[href='#excavation-max_depth_m']");
        assert!(browser.address().ends_with("#excavation-max_depth_m"));
        journey.fits();
    }
}

#[test]
fn a_plan_opens_only_for_reading_by_its_view_link() {
    let journey = Journey::new(1280);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/links"));
    browser.follow("section:has(#link-view) button[value=replace]");
    let link = browser.holds("#address-view");
    browser.open(&link);
    assert!(journey.path().ends_with("/plan"), "{}", journey.path());
    for step in STEPS {
        journey.open(&format!(
            "{}/{step}",
            link.split_once("://")
                .unwrap()
                .1
                .split_once('/')
                .map(|(_, path)| format!("/{path}"))
                .unwrap()
        ));
        assert!(browser.all("main form, main input").is_empty(), "{step}");
        journey.fits();
    }
}

#[test]
fn a_save_on_an_old_revision_shows_both_and_lets_the_person_choose() {
    let journey = Journey::new(360);
    let browser = &journey.browser;
    browser.scripts(false);
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/excavation"));
    browser.fill("#excavation-max_depth_m", "1.1");
    let other =
        "go=stay&base=1&shown_in=metric&excavation.max_depth_m=0.7&excavation.max_width_m=1.5";
    let kind = [("content-type", "application/x-www-form-urlencoded")];
    let saved = journey.service.send(
        "POST",
        &format!("{root}/excavation"),
        &kind,
        other.as_bytes(),
    );
    assert_eq!(saved.status, 303, "{}", saved.text());
    journey.go_on();
    let said = browser.says("main");
    assert!(said.contains("0.7") && said.contains("1.1"), "{said}");
    journey.fits();
    browser.press("input[name='keep~excavation.max_depth_m'][value=mine]");
    browser.press("input[name='keep~excavation.max_width_m'][value=theirs]");
    browser.follow("button.main");
    assert_eq!(browser.holds("#excavation-max_depth_m"), "1.1");
    assert_eq!(browser.holds("#excavation-max_width_m"), "1.5");
}

#[test]
fn the_panel_follows_what_is_typed_where_scripts_run() {
    let journey = Journey::new(1280);
    let browser = &journey.browser;
    let root = journey.start_a_plan();
    journey.open(&format!("{root}/footing"));
    let before = browser.says("#panel");
    browser.fill("#block-length_m", "1.37");
    browser.wait("return document.getElementById('panel').textContent.includes('1.37')");
    assert!(!before.contains("1.37"));
    journey.open(&format!("{root}/footing"));
    assert_eq!(
        browser.holds("#block-length_m"),
        "",
        "what is only typed is not saved"
    );
}
