//! The calculations: each with its formula, what went in, what came out, and where the formula stands.

use stillground::notes::{Opinion, Stage, Working};

use crate::views::engineer::{has_checking, of_the_studs};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, Column, table};
use crate::views::words::inputs;

/// Calculations.
pub fn calculations(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Every figure of the plan can be followed here. The formula stands in the symbols of its source; figures are rounded for reading, \
         the engine calculates with all digits.",
    );
    // Those of the studs stand on the checking engineer's sheets, once is enough.
    let apart = has_checking(sheet.brief, sheet.design);
    if apart {
        flow.paragraph("Those of the studs, their plate and their torque stand on the sheets for the checking engineer.");
    }
    let workings = sheet
        .design
        .workings
        .iter()
        .filter(|working| !(apart && of_the_studs(working)))
        .filter(|working| !(super::stands(sheet) && working.stage() == Stage::Excavation));
    let rows: Vec<Vec<Cell>> = workings.map(|working| row(sheet, working)).collect();
    table(flow, &COLUMNS, &rows);
    opinions(flow, &sheet.design.opinions);
}

/// Rules of thumb and other authors' formulas beside the plan's own.
fn opinions(flow: &mut Flow, found: &[Opinion]) {
    if found.is_empty() {
        return;
    }
    flow.heading("Other opinions beside the calculation");
    let row = |one: &Opinion| -> Vec<Cell> {
        vec![
            Cell::Stack(vec![one.title.clone(), format!("[{}]", one.source)]),
            one.says.clone().into(),
            one.calculation.clone().into(),
            one.verdict_words.clone().into(),
        ]
    };
    let rows: Vec<Vec<Cell>> = found.iter().map(row).collect();
    let columns = [
        ("Whose", 1.2),
        ("It says", 1.4),
        ("The calculation says", 1.8),
        ("Together", 1.8),
    ];
    table(flow, &columns, &rows);
}

fn row(sheet: &Sheet<'_>, working: &Working) -> Vec<Cell> {
    let units = sheet.brief.units;
    let inputs = inputs(working, units);
    let result = format!(
        "{}\u{a0}= {}",
        working.symbol,
        units.say(working.value, working.unit)
    );
    calculation(
        &working.title,
        working.formula,
        &inputs.join(", "),
        &result,
        &working.source.to_string(),
    )
}

/// Columns of calculations.
pub const COLUMNS: [Column<'static>; 3] = [
    ("What is found", 1.5),
    ("Formula, with what, and where it stands", 3.6),
    ("Result", 1.2),
];

/// A calculation: what goes into the formula and its source stand below it.
#[must_use]
pub fn calculation(
    title: &str,
    formula: &str,
    with: &str,
    result: &str,
    source: &str,
) -> Vec<Cell> {
    let below = if with.is_empty() {
        format!("[{source}]")
    } else {
        format!("{with} [{source}]")
    };
    // The result may go on behind its sign, wherever it is too long for its column.
    let result = result.replace("\u{a0}=\u{a0}", "\u{a0}= ");
    vec![
        title.into(),
        Cell::Stack(vec![formula.to_owned(), below]),
        result.into(),
    ]
}
