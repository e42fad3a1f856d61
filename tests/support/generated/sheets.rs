//! What is wrong with the sheets of a design, whatever its plan.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground_server::drawing;
use stillground_server::views::pdf::{self, Paper, Sheet};
use stillground_server::views::{csv, ics, svg};

/// Faults of every drawing and print: none at all, a figure that is none, letters that no reader of XML takes.
#[must_use]
pub fn sheet_faults(brief: &Brief, design: &Design) -> Vec<String> {
    let mut found: Vec<String> = drawing::NAMES
        .iter()
        .filter_map(|name| Some((name, svg::write(&drawing::by_name(name, brief, design)?))))
        .flat_map(|(name, text)| text_faults(name, &text))
        .collect();
    found.extend(text_faults(
        "materials",
        &csv::materials(design, brief.units),
    ));
    found.extend(text_faults(
        "schedule",
        &ics::schedule(design, &[], "made-up", 1, "2027-04-19"),
    ));
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
    for paper in [Paper::A4, Paper::Letter] {
        for (name, print) in [
            ("plan", pdf::plan(&sheet, paper)),
            ("file", pdf::file(&sheet, paper)),
            ("template", pdf::template(&sheet, paper)),
        ] {
            match print {
                Ok(bytes) if bytes.starts_with(b"%PDF-") => {}
                Ok(_) => found.push(format!("the {name} is no PDF")),
                Err(fault) => found.push(format!("the {name}: {fault}")),
            }
        }
    }
    found
}

fn text_faults(name: &str, text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut words = text.split(|c: char| !c.is_alphanumeric());
    found.extend(
        words
            .find(|word| matches!(*word, "NaN" | "inf"))
            .map(|word| format!("{name} shows {word}")),
    );
    let markup = text.contains("<script") && name != "materials" && name != "schedule";
    if markup {
        found.push(format!("{name} holds markup of the plan's"));
    }
    found
}
