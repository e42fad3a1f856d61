//! The set: which sheets there are, in which order.

mod build;
mod cover;
mod engineer;
mod figures;
pub(in crate::views::pdf) mod north;
mod paperwork;
mod reckoning;
mod record;
mod stillness;

use stillground::design::Design;

use crate::drawing::by_name;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::{Paper, Sheet};

/// One sheet of the set: its name and what is put on it.
type Put = fn(&mut Flow, &Sheet<'_>);

/// The sheets in order; the cover comes before them.
const SHEETS: &[(&str, Put)] = &[
    ("Site and pit", build::site),
    ("True north", north::north),
    ("Block and formwork", build::block),
    ("Pier and plate", build::pier),
    ("Studs and holes", build::studs),
    ("The studs, for the checking engineer", engineer::studs),
    ("Observing floor", stillness::floor),
    ("What the star does", stillness::motion),
    ("Checks", paperwork::checks),
    ("Assumptions", paperwork::assumptions),
    ("Materials", paperwork::materials),
    ("Schedule", paperwork::schedule),
    ("Cautions", paperwork::cautions),
    ("Record of the work", record::record),
    ("Wall card", record::card),
    ("Calculations", reckoning::calculations),
];

/// Lays out the set.
#[must_use]
pub fn set(sheet: &Sheet<'_>, paper: Paper) -> Flow {
    let mut flow = Flow::new(paper);
    flow.blank("Cover", true);
    let mut index = Vec::new();
    for (name, put) in SHEETS {
        index.push(((*name).to_owned(), flow.pages.len() + 1));
        flow.sheet(name);
        put(&mut flow, sheet);
    }
    // The cover is laid out last, since it has the index, and takes one page for as long as it fits on one.
    let mut cover = Flow::new(paper);
    cover::cover(&mut cover, sheet, &index, 0);
    let more = cover.pages.len() - 1;
    if more > 0 {
        cover = Flow::new(paper);
        cover::cover(&mut cover, sheet, &index, more);
    }
    flow.pages.splice(0..1, cover.pages);
    flow
}

/// Puts a drawing on the sheet, when the design has it.
fn draw(flow: &mut Flow, sheet: &Sheet<'_>, name: &str) {
    if let Some(drawing) = by_name(name, sheet.brief, sheet.design) {
        flow.drawing(drawing);
    }
}

/// The notes of the checks whose names begin so.
fn check_lines(flow: &mut Flow, sheet: &Sheet<'_>, prefix: &str) {
    paperwork::check_table(flow, sheet, |design: &Design| design.checks.iter().filter(|check| check.id.starts_with(prefix)).collect());
}

/// The cautions of one part of the work, where it is done.
fn cautions_of(flow: &mut Flow, sheet: &Sheet<'_>, parts: &[stillground::notes::When]) {
    let texts: Vec<&str> =
        sheet.design.cautions.iter().filter(|caution| parts.contains(&caution.when)).map(|caution| caution.text.as_str()).collect();
    if texts.is_empty() {
        return;
    }
    flow.heading("Before you begin here");
    texts.into_iter().for_each(|text| flow.paragraph(text));
}
