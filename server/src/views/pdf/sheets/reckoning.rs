//! The calculations: each with its formula, what went in, what came out, and where the formula stands.

use stillground::notes::Working;

use crate::views::engineer::{checking, of_the_studs};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// Calculations.
pub fn calculations(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Every figure of the plan can be followed here. The formula stands in the symbols of its source; figures are rounded for reading, \
         the engine reckons with all digits.",
    );
    // Those of the studs stand on the checking engineer's sheets, once is enough.
    let apart = checking(sheet.brief, sheet.design).is_some();
    if apart {
        flow.paragraph("Those of the studs, their plate and their torque stand on the sheets for the checking engineer.");
    }
    let workings = sheet.design.workings.iter().filter(|working| !(apart && of_the_studs(working)));
    let rows: Vec<Vec<Cell>> = workings.map(|working| row(sheet, working)).collect();
    table(flow, &[("What is found", 1.5), ("Formula", 2.0), ("With", 1.7), ("Result", 1.1), ("Source", 1.5)], &rows);
}

fn row(sheet: &Sheet<'_>, working: &Working) -> Vec<Cell> {
    let units = sheet.brief.units;
    let inputs: Vec<String> =
        working.inputs.iter().map(|input| format!("{}\u{a0}=\u{a0}{}", input.symbol, units.say(input.value, input.unit))).collect();
    vec![
        working.title.clone().into(),
        working.formula.into(),
        inputs.join(", ").into(),
        format!("{} = {}", working.symbol, units.say(working.value, working.unit)).into(),
        working.source.to_string().into(),
    ]
}
