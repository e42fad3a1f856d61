//! The sheet of proof for the owner: as built, as measured, as foreseen, with what was found, to be signed and dated.

use stillground::figure::{Metre, Millimetre};

use crate::views::pages::commissioning::remedy;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};
use crate::views::proof::Proof;
use stillground::notes::Caution;

/// Whether there is anything to prove: a measurement in the plan, or a finding in the record.
pub fn is_there(sheet: &Sheet<'_>) -> bool {
    let fitted = sheet.design.fitted.as_ref();
    fitted.is_some_and(|fitted| !fitted.agreement.is_empty()) || !sheet.built.is_empty()
}

/// Whether it belongs to work on a pier that stands.
fn is_of_mending(caution: &Caution) -> bool {
    caution.id.starts_with("mend.")
}

/// Proof.
pub fn proof(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "What was built and measured, beside what was planned. The other sheets keep the plan’s own figures. This sheet is a record of \
         measurements; it replaces no inspection that local rules ask for.",
    );
    // Of symptoms alone nothing was measured.
    let found = Proof::of(sheet.brief, sheet.design).filter(|found| !found.agreement.is_empty());
    if let Some(found) = &found {
        measured(flow, sheet, found);
    }
    built(flow, sheet);
    if let Some(found) = found.as_ref().filter(|found| found.holds) {
        pier(flow, sheet, found);
        remedies(flow, sheet);
    }
    signed(flow);
}

/// What the record has, or room for it.
fn built(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.heading("As built");
    if sheet.built.is_empty() {
        flow.lead("The record has no entries. Write in what was measured on the site.");
        let (units, design) = (sheet.brief.units, sheet.design);
        let row = |what: &str, plan: String| vec![what.into(), plan.into(), Cell::Blank];
        let block = &design.block;
        let sides = format!(
            "{} by {}, {} deep",
            units.say(block.length, Metre),
            units.say(block.width, Metre),
            units.say(block.depth, Metre)
        );
        let tube = format!(
            "{} outside, wall {}",
            units.say(design.pier.outside_diameter, Millimetre),
            units.say(design.pier.wall, Millimetre)
        );
        let rows = [
            row("Block", sides),
            row("Tube", tube),
            row(
                "Gap under the base plate",
                units.say(design.pier.gap, Millimetre),
            ),
        ];
        table(
            flow,
            &[("What", 1.2), ("The plan", 1.4), ("Found", 1.6)],
            &rows,
        );
        return;
    }
    let rows: Vec<Vec<Cell>> = sheet
        .built
        .iter()
        .map(|line| {
            vec![
                line.title.clone().into(),
                line.planned.clone().into(),
                Cell::Said(line.found.clone()),
                line.verdict.into(),
                line.by.clone().into(),
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("What", 1.7),
            ("The plan", 1.2),
            ("Found", 1.3),
            ("Verdict", 0.8),
            ("When and who", 1.0),
        ],
        &rows,
    );
}

fn measured(flow: &mut Flow, sheet: &Sheet<'_>, found: &Proof) {
    flow.heading("As measured, and as foreseen");
    let rows: Vec<Vec<Cell>> = found
        .agreement
        .iter()
        .map(|one| {
            vec![
                one.what.clone().into(),
                Cell::Said(one.measured.clone()),
                Cell::Said(one.foreseen.clone()),
                Cell::Said(one.fitted.clone()),
                one.says.clone().into(),
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("Measurement", 1.8),
            ("Measured", 0.8),
            ("Foreseen", 0.8),
            ("This pier, fitted", 0.8),
            ("Verdict", 1.4),
        ],
        &rows,
    );
    super::draw(flow, sheet, "agreement");
    found.says.iter().for_each(|said| flow.paragraph(said));
    if !found.suspects.is_empty() {
        flow.heading("Unlikely to be right, most suspicious first");
        found
            .suspects
            .iter()
            .enumerate()
            .for_each(|(i, said)| flow.paragraph(&format!("{}. {said}", i + 1)));
    }
}

/// What was found of the pier, and its figures beside the planned ones.
fn pier(flow: &mut Flow, sheet: &Sheet<'_>, found: &Proof) {
    flow.heading("The pier itself");
    flow.lead("What was found, and in brackets where it lies nine times of ten.");
    let rows: Vec<Vec<Cell>> = found
        .unknowns
        .iter()
        .map(|one| {
            vec![
                one.what.into(),
                Cell::Said(one.planned.clone()),
                Cell::Said(one.found.clone()),
            ]
        })
        .collect();
    table(
        flow,
        &[("What", 1.6), ("Planned", 1.0), ("Found", 1.8)],
        &rows,
    );
    flow.heading("The plan’s figures, and this pier’s");
    let rows: Vec<Vec<Cell>> = found
        .figures
        .iter()
        .map(|one| {
            vec![
                one.what.into(),
                Cell::Said(one.planned.clone()),
                Cell::Said(one.fitted.clone()),
            ]
        })
        .collect();
    table(
        flow,
        &[("Figure", 1.6), ("Planned", 1.0), ("This pier", 1.8)],
        &rows,
    );
    super::draw(flow, sheet, "tilt-map-pier");
    if !found.card.is_empty() {
        flow.heading("While an exposure runs, on this pier");
        found.card.iter().for_each(|said| flow.paragraph(said));
    }
}

/// What would help, with its cautions.
fn remedies(flow: &mut Flow, sheet: &Sheet<'_>) {
    let found = remedy::lines(sheet.brief, sheet.design);
    if found.is_empty() {
        return;
    }
    flow.heading("What would help");
    let rows: Vec<Vec<Cell>> = found
        .into_iter()
        .map(|one| vec![one.says.into(), one.gain.into(), one.how.into()])
        .collect();
    table(
        flow,
        &[
            ("What is done", 1.8),
            ("What comes of it", 1.5),
            ("How", 1.0),
        ],
        &rows,
    );
    let cautions = sheet.design.cautions.iter();
    cautions
        .filter(|caution| is_of_mending(caution))
        .for_each(|caution| flow.paragraph(&caution.text));
}

/// Who stands for it.
fn signed(flow: &mut Flow) {
    flow.heading("Signed");
    let row = |who: &str| vec![who.into(), Cell::Blank, Cell::Blank, Cell::Blank];
    table(
        flow,
        &[
            ("Who", 0.8),
            ("Name", 1.4),
            ("Signature", 1.6),
            ("Date", 0.8),
        ],
        &[row("Measured by"), row("Built by"), row("Owner")],
    );
}
