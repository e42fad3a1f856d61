//! What is done, in its order: on the sheet of the work that it belongs to, with how and why.

use stillground::figure::{Unit, Units};
use stillground::notes::When;
use stillground::stages::schedule::Task;

use crate::views::pdf::Sheet;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// The tasks of some parts of the work.
pub fn steps(flow: &mut Flow, sheet: &Sheet<'_>, parts: &[When]) {
    let tasks = sheet
        .design
        .schedule
        .iter()
        .filter(|task| parts.contains(&task.part));
    let row = |task: &Task| {
        vec![
            task.title.clone().into(),
            lasting(sheet.brief.units, task.lasts_h),
            task.why.clone().into(),
        ]
    };
    let rows: Vec<Vec<Cell>> = tasks.map(row).collect();
    if rows.is_empty() {
        return;
    }
    flow.heading("In this order");
    table(
        flow,
        &[("Task", 1.7), ("Lasts", 0.6), ("How, and why so long", 3.5)],
        &rows,
    );
}

/// How long it lasts.
pub fn lasting(units: Units, hours: f64) -> Cell {
    if hours >= 48.0 {
        units.figure(hours / 24.0, Unit::Day).into()
    } else {
        units.figure(hours, Unit::Hour).into()
    }
}
