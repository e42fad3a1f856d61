//! What the service makes of an example: sheets, drawings, lists, and its pages with secrets and clocks left out.

use stillground::decided::decide;
use stillground::halfspace::Shelf;
use stillground::site_plan::SitePlan;
use stillground_server::drawing;
use stillground_server::forms::chapter::Chapter;
use stillground_server::forms::step::Step;
use stillground_server::views::pdf::{self, Paper, Sheet};
use stillground_server::views::{csv, ics, svg};
use stillground_tests::example;
use stillground_tests::service::{Kept, Service, start};

use super::Outputs;

/// Sheets, drawings and lists.
pub fn prints(name: &str, plan: &SitePlan, shelf: &dyn Shelf, outputs: &mut Outputs) {
    let decided = decide(plan, shelf).expect("an example can be planned with");
    let (brief, design) = (&decided.brief, &decided.design);
    for drawing in drawing::NAMES {
        if let Some(drawn) = drawing::by_name(drawing, brief, design) {
            outputs.insert(
                format!("drawings/{name} {drawing}.svg"),
                svg::write(&drawn).into_bytes(),
            );
        }
    }
    outputs.insert(
        format!("lists/{name} materials.csv"),
        csv::materials(design, brief.units).into_bytes(),
    );
    outputs.insert(
        format!("lists/{name} schedule.ics"),
        ics::schedule(design, &[], "made-up", 1, "2027-04-19").into_bytes(),
    );
    let sheet = Sheet {
        brief,
        design,
        revision: Some(1),
        date: Some("1 March 2027"),
        view_link: None,
        check_link: None,
        letterhead: None,
        built: &[],
    };
    for (size, paper) in [("A4", Paper::A4), ("Letter", Paper::Letter)] {
        for (set, print) in [
            ("plan", pdf::plan(&sheet, paper)),
            ("file", pdf::file(&sheet, paper)),
            ("template", pdf::template(&sheet, paper)),
        ] {
            let bytes = print.expect("a print");
            outputs.insert(format!("sheets/{name} {set} {size}.pdf"), bytes);
        }
    }
}

/// Each step and each chapter of the examples as a browser gets them, and the description of the interface.
pub fn pages(examples: &[&str], outputs: &mut Outputs) {
    let service = start();
    outputs.insert(
        "interface/openapi.json".to_owned(),
        without_secrets(&service, None, &service.get("/api/v1/openapi.json").text()),
    );
    for name in examples {
        let plan = serde_json::to_value(example(name)).expect("a document");
        let kept = service.create(&plan);
        let steps = Step::ALL.map(|step| format!("{}/{}", kept.edit, step.slug()));
        let chapters = Chapter::ALL.map(|chapter| format!("{}/plan/{}", kept.edit, chapter.slug()));
        for address in steps.into_iter().chain(chapters) {
            let page = service.get(&format!("/p/{address}"));
            let file = address.split_once('/').map_or("", |(_, below)| below);
            let text = format!("{}\n{}", page.status, page.text());
            outputs.insert(
                format!("pages/{name} {}.html", file.replace('/', " ")),
                without_secrets(&service, Some(&kept), &text),
            );
        }
    }
}

/// The text without what differs each time: links, the service's own address, and moments.
fn without_secrets(service: &Service, kept: Option<&Kept>, text: &str) -> Vec<u8> {
    let mut text = text.replace(&service.socket.to_string(), "ADDRESS");
    if let Some(kept) = kept {
        for (secret, name) in [
            (&kept.edit, "EDIT"),
            (&kept.record, "RECORD"),
            (&kept.view, "VIEW"),
            (&kept.id, "PLAN"),
        ] {
            text = text.replace(secret.as_str(), name);
        }
    }
    without_moments(&text).into_bytes()
}

/// The text with the moment after each "saved" left out: `saved 2027-04-19, 12:30 UTC`, whatever space is between.
fn without_moments(text: &str) -> String {
    let mut parts = text.split(SAVED);
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| {
        let rest = part.split_once("UTC").map_or(part, |(_, rest)| rest);
        text + SAVED + rest
    })
}

/// What stands before the moment of a revision.
const SAVED: &str = "saved 20";
