//! The studs for the engineer who checks and signs them.

use super::reckoning::{COLUMNS, calculation};
use crate::views::engineer::{Listing, checking};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// Inputs, actions, both codes with every factor, and a place to sign.
pub fn studs(flow: &mut Flow, sheet: &Sheet<'_>) {
    let Some(checking) = checking(sheet.brief, sheet.design) else {
        flow.paragraph("No studs are planned.");
        return;
    };
    checking.basis.iter().for_each(|said| flow.paragraph(said));
    put(flow, &checking.summary);
    flow.heading("Checked");
    flow.lead(checking.statement);
    let by_hand = |pair: &[&'static str]| pair.iter().flat_map(|what| [Cell::from(*what), Cell::Blank]).collect();
    let rows: Vec<Vec<Cell>> = checking.signature.chunks(2).map(by_hand).collect();
    table(flow, &[("What", 0.7), ("By hand", 1.2), ("What", 0.7), ("By hand", 1.2)], &rows);
    super::draw(flow, sheet, "breakout");
    checking.listings.iter().for_each(|listing| put(flow, listing));
    bends(flow, sheet);
}

fn bends(flow: &mut Flow, sheet: &Sheet<'_>) {
    let Some(flexure) = &sheet.design.anchors.flexure else { return };
    flow.heading("What tightening bends");
    flexure.says.iter().for_each(|said| flow.paragraph(said));
    super::draw(flow, sheet, "flexure");
}

fn put(flow: &mut Flow, listing: &Listing) {
    flow.heading(&listing.title);
    if let Some(rows) = reckoned(listing) {
        table(flow, &COLUMNS, &rows);
        return;
    }
    let rows: Vec<Vec<Cell>> = listing.rows.iter().map(|row| row.iter().map(|cell| cell.clone().into()).collect()).collect();
    table(flow, &listing.heads, &rows);
}

/// Calculations as on their own sheet; none for other listings.
fn reckoned(listing: &Listing) -> Option<Vec<Vec<Cell>>> {
    let heads: Vec<&str> = listing.heads.iter().map(|(head, _)| *head).collect();
    let ["What is found", "Formula", "With", "Result", "Clause and standing"] = heads.as_slice() else { return None };
    let row = |row: &Vec<String>| match row.as_slice() {
        [title, formula, with, result, source] => calculation(title, formula, with, result, source),
        _ => row.iter().cloned().map(Cell::from).collect(),
    };
    Some(listing.rows.iter().map(row).collect())
}
