//! The sheets of words: checks, assumptions, materials, schedule, cautions.

use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::notes::{Check, Verdict, When};

use crate::forms::questions;
use crate::lettering::Face;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow};
use crate::views::pdf::table::{Cell, table};
use crate::views::words::{JUDGE_FIRST, mark};

/// All checks.
pub fn checks(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Each line holds what is asked against what can be given; the share is the first over the second. Above nine tenths a check is \
         called close. Verdicts use the unfavourable end of what is known about the ground.",
    );
    check_table(flow, sheet, |design| design.checks.iter().collect());
    for check in sheet.design.checks.iter().filter(|check| check.verdict != Verdict::Holds && !check.note.is_empty()) {
        flow.heading(&format!("{}: {}", check.title, mark(check.verdict)));
        flow.paragraph(&check.note);
    }
}

/// Some of the checks as a table.
pub fn check_table(flow: &mut Flow, sheet: &Sheet<'_>, pick: impl Fn(&Design) -> Vec<&Check>) {
    let units = sheet.brief.units;
    let figure = |value: Option<f64>, unit| value.map_or_else(|| "–".into(), |value| Cell::Figure(units.figure(value, unit)));
    let rows: Vec<Vec<Cell>> = pick(sheet.design)
        .into_iter()
        .map(|check| {
            let words = mark(check.verdict).to_owned();
            vec![
                check.title.clone().into(),
                figure(check.demand, check.unit),
                figure(check.capacity, check.unit),
                figure(check.utilisation.map(|ratio| ratio * 100.0), Unit::PerCent),
                if check.verdict == Verdict::Holds { words.into() } else { Cell::Bold(words) },
                check.source.to_string().into(),
            ]
        })
        .collect();
    if rows.is_empty() {
        return;
    }
    flow.heading("Checks");
    table(flow, &[("What is checked", 2.3), ("Asked", 1.0), ("Can give", 1.0), ("Share", 0.6), ("Verdict", 0.6), ("Source", 2.2)], &rows);
}

/// Assumptions.
pub fn assumptions(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph("Nobody said these; the planner took them. Each one that you measure or look up makes the plan truer.");
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .assumptions
        .iter()
        .map(|assumption| {
            vec![
                questions::label(assumption.field).into(),
                questions::answer_words(assumption, sheet.brief.units).into(),
                assumption.why.clone().into(),
                assumption.effect.clone().into(),
            ]
        })
        .collect();
    table(flow, &[("Question", 1.4), ("Taken", 1.1), ("Why", 2.0), ("What it changes", 2.0)], &rows);
}

/// Materials.
pub fn materials(flow: &mut Flow, sheet: &Sheet<'_>) {
    if sheet.design.ground.ask_an_engineer.is_some() {
        flow.styled(Face::TextBold, BODY, JUDGE_FIRST);
    }
    let units = sheet.brief.units;
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .materials
        .iter()
        .map(|line| {
            vec![
                Cell::Tick,
                line.item.clone().into(),
                units.figure(line.quantity, line.unit).into(),
                line.purpose.clone().into(),
                line.note.clone().into(),
            ]
        })
        .collect();
    table(flow, &[("", 0.15), ("Item", 1.8), ("Quantity", 0.8), ("For", 1.4), ("Note", 1.9)], &rows);
}

/// Schedule.
pub fn schedule(flow: &mut Flow, sheet: &Sheet<'_>) {
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .schedule
        .iter()
        .map(|task| {
            let title = if task.wait { format!("Wait: {}", task.title) } else { task.title.clone() };
            vec![task.earliest.clone().into(), title.into(), lasting(sheet.brief.units, task.lasts_h), task.why.clone().into()]
        })
        .collect();
    table(flow, &[("Earliest", 0.8), ("Task", 1.8), ("Lasts", 0.6), ("Why then, and so long", 2.6)], &rows);
}

fn lasting(units: Units, hours: f64) -> Cell {
    if hours >= 48.0 { units.figure(hours / 24.0, Unit::Day).into() } else { units.figure(hours, Unit::Hour).into() }
}

/// Cautions, by the part of the work.
pub fn cautions(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph("Local codes and the advice of licensed practice come before anything here. Who is not sure stops and asks.");
    for (when, words) in PARTS {
        let texts: Vec<_> = sheet.design.cautions.iter().filter(|caution| caution.when == *when).collect();
        if texts.is_empty() {
            continue;
        }
        flow.heading(words);
        for caution in texts {
            flow.paragraph(&caution.text);
        }
    }
}

/// The parts of the work, and what they are called.
pub const PARTS: &[(When, &str)] = &[
    (When::Planning, "Planning and ordering"),
    (When::Digging, "Digging"),
    (When::Pouring, "Formwork, steel and pouring"),
    (When::Drilling, "Drilling"),
    (When::Bonding, "Resin and studs"),
    (When::Lifting, "Lifting and setting the column"),
    (When::Tightening, "Tightening"),
    (When::Flooring, "Building the floor"),
    (When::Wiring, "Wiring and earthing"),
    (When::Observing, "Observing"),
];
