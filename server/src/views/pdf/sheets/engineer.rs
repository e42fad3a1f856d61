//! The studs for the engineer who checks and signs them.

use super::calculations::{COLUMNS, calculation};
use crate::views::engineer::{Listing, checking};
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, Column, table};

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
    let by_hand = |pair: &[&'static str]| {
        pair.iter()
            .flat_map(|what| [Cell::from(*what), Cell::Blank])
            .collect()
    };
    let rows: Vec<Vec<Cell>> = checking.signature.chunks(2).map(by_hand).collect();
    table(
        flow,
        &[
            ("What", 0.7),
            ("By hand", 1.2),
            ("What", 0.7),
            ("By hand", 1.2),
        ],
        &rows,
    );
    super::draw(flow, sheet, "breakout");
    checking
        .listings
        .iter()
        .for_each(|listing| put(flow, listing));
    bends(flow, sheet);
}

fn bends(flow: &mut Flow, sheet: &Sheet<'_>) {
    let Some(flexure) = &sheet.design.anchors.flexure else {
        return;
    };
    flow.heading("What tightening bends");
    flexure.says.iter().for_each(|said| flow.paragraph(said));
    super::draw(flow, sheet, "flexure");
}

fn put(flow: &mut Flow, listing: &Listing) {
    flow.heading(&listing.title);
    if let Some((columns, rows)) = inputs(listing)
        .or_else(|| reckoned(listing))
        .or_else(|| judged(listing))
    {
        table(flow, &columns, &rows);
        return;
    }
    let rows: Vec<Vec<Cell>> = listing
        .rows
        .iter()
        .map(|row| row.iter().map(|cell| cell.clone().into()).collect())
        .collect();
    table(flow, &listing.heads, &rows);
}

/// Columns and rows of a listing that stands on paper otherwise than on the page.
type Folded = Option<(Vec<Column<'static>>, Vec<Vec<Cell>>)>;

fn heads(listing: &Listing) -> Vec<&'static str> {
    listing.heads.iter().map(|(head, _)| *head).collect()
}

/// Inputs in two columns, read down the left one first; none for other listings.
fn inputs(listing: &Listing) -> Folded {
    let ["Input", "Value", "From"] = heads(listing).as_slice() else {
        return None;
    };
    let half = listing.rows.len().div_ceil(2);
    let (left, right) = listing.rows.split_at(half);
    let cells = |row: Option<&Vec<String>>| {
        (0..3)
            .map(|i| Cell::from(row.map_or_else(String::new, |row| row[i].clone())))
            .collect()
    };
    let row = |i: usize| -> Vec<Cell> {
        [cells(left.get(i)), cells(right.get(i))]
            .into_iter()
            .flat_map(|cells: Vec<Cell>| cells)
            .collect()
    };
    Some((
        [1.3, 0.8, 0.6, 1.2, 1.5, 0.6]
            .into_iter()
            .zip(listing.heads.iter().chain(&listing.heads))
            .map(|(share, (head, _))| (*head, share))
            .collect(),
        (0..half).map(row).collect(),
    ))
}

/// Checks with their source below what is checked; none for other listings.
fn judged(listing: &Listing) -> Folded {
    let [
        "What is checked",
        "Asked",
        "Can give",
        "Used",
        "Verdict",
        "Source",
    ] = heads(listing).as_slice()
    else {
        return None;
    };
    let row = |row: &Vec<String>| match row.as_slice() {
        [title, middle @ .., source] => {
            std::iter::once(Cell::Stack(vec![title.clone(), format!("[{source}]")]))
                .chain(middle.iter().cloned().map(Cell::from))
                .collect()
        }
        _ => Vec::new(),
    };
    let columns = vec![
        ("What is checked, and by what", 4.4),
        ("Asked", 1.1),
        ("Can give", 1.1),
        ("Used", 0.6),
        ("Verdict", 0.7),
    ];
    Some((columns, listing.rows.iter().map(row).collect()))
}

/// Calculations as on their own sheet; none for other listings.
fn reckoned(listing: &Listing) -> Folded {
    let [
        "What is found",
        "Formula",
        "With",
        "Result",
        "Clause and standing",
    ] = heads(listing).as_slice()
    else {
        return None;
    };
    let row = |row: &Vec<String>| match row.as_slice() {
        [title, formula, with, result, source] => calculation(title, formula, with, result, source),
        _ => row.iter().cloned().map(Cell::from).collect(),
    };
    Some((COLUMNS.to_vec(), listing.rows.iter().map(row).collect()))
}
