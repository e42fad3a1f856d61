//! Small tables of named figures.

use stillground::stages::figures::{Figure, Shown};

use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// Figures of the engine's stages, one a row.
pub fn figures(flow: &mut Flow, sheet: &Sheet<'_>, chosen: &[Figure]) {
    put(flow, rows(sheet, chosen));
}

/// The rows of the table.
pub fn rows(sheet: &Sheet<'_>, chosen: &[Figure]) -> Vec<Vec<Cell>> {
    let units = sheet.brief.units;
    let row = |figure: &Figure| {
        let shown = match (figure.of)(sheet.brief, sheet.design) {
            Shown::One(amount) => units.figure(amount.value, amount.unit).into(),
            other => Cell::Said(other.say(units)),
        };
        vec![figure.label.into(), shown]
    };
    chosen.iter().map(row).collect()
}

/// A row that says words of this sheet's own.
pub fn said(name: &str, words: &str) -> Vec<Cell> {
    vec![name.into(), Cell::Said(words.to_owned())]
}

/// Puts the table on the page. Many figures stand in two columns.
pub fn put(flow: &mut Flow, rows: Vec<Vec<Cell>>) {
    if rows.len() < 5 {
        table(flow, &[("What", 1.0), ("How much", 1.2)], &rows);
        return;
    }
    let blank = || vec![Cell::from(""), Cell::from("")];
    let mut rows = rows.into_iter();
    let mut pairs = Vec::new();
    while let Some(left) = rows.next() {
        pairs.push(
            left.into_iter()
                .chain(rows.next().unwrap_or_else(blank))
                .collect(),
        );
    }
    table(
        flow,
        &[
            ("What", 1.15),
            ("How much", 1.0),
            ("What", 1.15),
            ("How much", 1.0),
        ],
        &pairs,
    );
}
