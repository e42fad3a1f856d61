//! The plan on paper, printed by the browser.

use std::io::Write;
use std::process::{Command, Stdio};

use crate::walk::Journey;

const A4: (f64, f64) = (21.0, 29.7);
const LETTER: (f64, f64) = (21.59, 27.94);

/// The text of a PDF, by the program `pdftotext`.
fn text(pdf: &[u8]) -> String {
    let mut program = Command::new("pdftotext")
        .args(["-raw", "-", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("pdftotext, of poppler-utils");
    let mut input = program.stdin.take().unwrap();
    let bytes = pdf.to_vec();
    let writer = std::thread::spawn(move || input.write_all(&bytes));
    let output = program.wait_with_output().unwrap();
    writer.join().unwrap().unwrap();
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

#[test]
fn the_plan_prints_on_either_paper_without_a_lost_line() {
    let journey = Journey::new(1280);
    let mut looked_at = 0;
    for chapter in [
        "",
        "/order",
        "/days",
        "/checks",
        "/taken",
        "/calculations",
        "/engineer",
    ] {
        looked_at += a_page_prints_whole(&journey, chapter);
    }
    assert!(looked_at > 200, "{looked_at}");
}

/// Holds a page of the plan against what it prints, and says how many lines were looked for.
fn a_page_prints_whole(journey: &Journey, chapter: &str) -> usize {
    let browser = &journey.browser;
    journey.open(&format!("/example/plan{chapter}"));
    browser.media("light", "print");
    let rows = browser.run("return [...document.querySelectorAll('tbody th[scope=row], .workings .title, .cautions li, .verdicts dt, h2, h3')].filter(e => e.checkVisibility()).map(e => e.firstChild.textContent)");
    let folded = browser.run("const all = [...document.querySelectorAll('.workings .title')]; return [all.length, all.filter(e => !e.checkVisibility({contentVisibilityAuto: true})).length]");
    assert!(
        (chapter != "/calculations" || folded[0].as_u64() > Some(100)) && folded[1] == 0,
        "calculations, and those folded away on paper: {folded}"
    );
    let rows: Vec<String> = rows
        .as_array()
        .unwrap()
        .iter()
        .map(|row| row.as_str().unwrap().to_owned())
        .collect();
    assert!(!rows.is_empty(), "{chapter}");
    browser.media("light", "");
    for (name, (width, height)) in [("a4", A4), ("letter", LETTER)] {
        let pdf = browser.print(width, height);
        let kept = format!("plan{}-{name}.pdf", chapter.replace('/', "-"));
        crate::pictures::keep(&kept, &pdf);
        let printed = letters(&text(&pdf));
        for row in &rows {
            let start: String = letters(row).chars().take(60).collect();
            assert!(
                printed.contains(&start),
                "{chapter}, {name}: “{row}” is not on the paper"
            );
        }
    }
    rows.len()
}

#[test]
fn nothing_is_wider_than_the_paper() {
    let journey = Journey::new(1280);
    let browser = &journey.browser;
    browser.media("light", "print");
    for (name, millimetres) in [("A4", 210.0 - 26.0), ("Letter", 215.9 - 26.0)] {
        let pixels = (millimetres / 25.4 * 96.0) as u32;
        browser.size(pixels, 1000);
        for page in [
            "plan",
            "plan/drawings",
            "plan/order",
            "plan/checks",
            "plan/calculations",
            "site",
            "anchors",
        ] {
            journey.open(&format!("/example/{page}"));
            let wide = browser.run(
                "return [...document.querySelectorAll('main *')].filter(e => e.checkVisibility() && e.getBoundingClientRect().right > innerWidth + 1)
                   .map(e => e.tagName + ' ' + e.textContent.slice(0, 60))",
            );
            assert_eq!(wide, serde_json::json!([]), "{name}, {page}");
        }
    }
}

#[test]
fn what_is_folded_on_a_phone_lies_open_on_paper_in_any_browser() {
    let journey = Journey::new(360);
    let browser = &journey.browser;
    journey.open("/example/plan/calculations");
    // Counted by the attribute that every browser knows, not by what a style sheet of today does to the content.
    let closed = "return document.querySelectorAll('details:not([open])').length";
    let parts = "return document.querySelectorAll('details.part:not([open])').length";
    assert!(
        browser.run(parts).as_u64() >= Some(1),
        "long parts are folded on a narrow screen"
    );
    let before = browser.run(closed);
    let _ = browser.run("window.dispatchEvent(new Event('beforeprint'))");
    assert_eq!(
        browser.run(closed),
        0,
        "everything lies open before it is printed"
    );
    let _ = browser.run("window.dispatchEvent(new Event('afterprint'))");
    assert_eq!(
        browser.run(closed),
        before,
        "and is folded again afterwards"
    );
    journey.open("/example/plan/taken#assumptions");
    assert_eq!(
        browser.run("return document.getElementById('assumptions').closest('details').open"),
        true
    );
    browser.scripts(false);
    journey.open("/example/plan/checks");
    assert!(
        browser.all("details.part:not([open])").is_empty(),
        "without scripts nothing is folded away"
    );
    browser.scripts(true);
}
