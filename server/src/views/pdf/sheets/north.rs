//! True north on the day.

use crate::views::north::ways;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// True north, three ways.
pub fn north(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Plate, template and drawings have a mark for true north, the axis round which the sky turns. A compass points elsewhere, and \
         steel misleads it: find true north by one of these ways, and check it by another.",
    );
    told(flow, sheet);
}

/// Every way under its heading.
pub fn told(flow: &mut Flow, sheet: &Sheet<'_>) {
    for way in ways(sheet.brief, sheet.design) {
        flow.heading(way.title);
        way.says.iter().for_each(|said| flow.paragraph(said));
        let columns: Vec<(&str, f64)> = std::iter::once(way.names)
            .chain(way.columns.iter().map(String::as_str))
            .map(|head| (head, 1.0))
            .collect();
        let rows: Vec<Vec<Cell>> = way
            .rows
            .into_iter()
            .map(|row| row.into_iter().map(Cell::Text).collect())
            .collect();
        table(flow, &columns, &rows);
    }
}
