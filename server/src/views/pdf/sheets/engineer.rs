//! The studs for the engineer who checks and signs them.

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
    flow.paragraph(checking.statement);
    let rows: Vec<Vec<Cell>> = checking.signature.iter().map(|what| vec![(*what).into(), Cell::Blank]).collect();
    table(flow, &[("What", 0.7), ("By hand", 2.3)], &rows);
    flow.turn();
    checking.listings.iter().for_each(|listing| put(flow, listing));
}

fn put(flow: &mut Flow, listing: &Listing) {
    flow.heading(&listing.title);
    let rows: Vec<Vec<Cell>> = listing.rows.iter().map(|row| row.iter().map(|cell| cell.clone().into()).collect()).collect();
    table(flow, &listing.heads, &rows);
}
