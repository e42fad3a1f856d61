//! What is ordered, in the site set: lines to tick off when they come, and what they come to where there are prices.

use stillground::stages::materials::Material;

use super::day::{LEAST_TYPE, closely};
use super::paperwork;
use crate::views::money;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// Shares of the usual space and of the size of type, from the widest to the closest.
const WITHIN: [(f64, f64); 6] = [
    (1.0, 1.0),
    (0.6, 1.0),
    (0.3, 1.0),
    (0.3, 0.94),
    (0.3, LEAST_TYPE),
    (0.15, LEAST_TYPE),
];

/// What is ordered, on one side where it goes on one, else on as few as it takes with room to read.
pub fn order(flow: &mut Flow, sheet: &Sheet<'_>, name: &str) {
    const MOST_SIDES: usize = 4;
    let before = flow.pages.len();
    for sides in 1..=MOST_SIDES {
        for within in WITHIN {
            closely(flow, before, within, name, |flow| put(flow, sheet));
            if flow.pages.len() <= before + sides {
                return;
            }
        }
    }
}

fn put(flow: &mut Flow, sheet: &Sheet<'_>) {
    paperwork::judge_first(flow, sheet);
    lines(flow, sheet);
    if !sheet.design.costs.is_empty() {
        sums(flow, sheet);
    }
    flow.small("What each is for, and what to look for when it comes: the sheet “Materials” of the file, and the page “Order”.");
}

/// Two lines beside each other: down the left column first, then down the right one, as one reads.
fn lines(flow: &mut Flow, sheet: &Sheet<'_>) {
    const COLUMNS: [(&str, f64); 3] = [("", 0.12), ("Item", 2.45), ("How many", 0.5)];
    let cells = |line: &Material| {
        vec![
            Cell::Tick,
            paperwork::named(line).into(),
            Cell::Figure(sheet.brief.units.figure(line.quantity, line.unit)),
        ]
    };
    let lines = sheet.design.materials.iter().map(cells).collect();
    beside(flow, &COLUMNS, lines);
}

/// What the parts of the work come to, in a line: what is ticked off on the site has no need of each price.
fn sums(flow: &mut Flow, sheet: &Sheet<'_>) {
    let costs = &sheet.design.costs;
    let parts: Vec<String> = costs
        .groups
        .iter()
        .map(|group| {
            format!(
                "{} {}",
                group.group.heading(),
                money::amount(costs, group.total)
            )
        })
        .collect();
    flow.small(&format!(
        "What it comes to: {}. {} {}. The price of each line stands on the sheet “Materials” of the file.",
        parts.join(" · "),
        money::whole(costs),
        money::amount(costs, costs.total)
    ));
    let remarks = money::remarks(sheet.design);
    remarks.iter().for_each(|said| flow.small(said));
}

/// A list in two halves beside each other.
fn beside(flow: &mut Flow, columns: &[(&str, f64)], lines: Vec<Vec<Cell>>) {
    let half = lines.len().div_ceil(2);
    let blank = || vec![Cell::from(""); columns.len()];
    let mut left = lines;
    let mut right = left.split_off(half).into_iter();
    let rows: Vec<Vec<Cell>> = left
        .into_iter()
        .map(|row| {
            let beside = right.next().unwrap_or_else(blank);
            row.into_iter().chain(beside).collect()
        })
        .collect();
    table(flow, &[columns, columns].concat(), &rows);
}
