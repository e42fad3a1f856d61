//! The sheets of words: checks, assumptions, materials, schedule, cautions.

use stillground::figure::Unit;
use stillground::notes::{Check, Question, Verdict, When};
use stillground::stages::costs::LineCost;
use stillground::stages::materials::{Material, Supply};
use stillground::stages::schedule::Task;

use super::by_note;
use super::steps::lasting;
use crate::forms::questions;
use crate::lettering::Face;
use crate::views::money;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow};
use crate::views::pdf::table::{Cell, table};
use crate::views::words::{JUDGE_FIRST, answer, sentence};

/// All checks.
pub fn checks(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "Each line is a question. What is asked is compared with what can be given; the share is the first over the second. Above \
         nine tenths the answer is “yes, just”; “ask” means that somebody has to look first. Answers use the unfavourable end of what \
         is known about the ground. Checks of stillness forbid nothing: they say what the star does.",
    );
    for (title, question) in [
        ("Build it?", Question::Build),
        ("Still when left alone?", Question::Still),
    ] {
        flow.heading(title);
        check_table(flow, sheet, question);
    }
    let told = sheet
        .design
        .checks
        .iter()
        .filter(|check| check.verdict != Verdict::Holds && !check.note.is_empty());
    for (title, note) in by_note(told) {
        flow.heading(&title);
        flow.paragraph(note);
    }
}

fn check_table(flow: &mut Flow, sheet: &Sheet<'_>, question: Question) {
    let units = sheet.brief.units;
    let figure = |value: Option<f64>, unit| {
        value.map_or_else(
            || "–".into(),
            |value| Cell::Figure(units.figure(value, unit)),
        )
    };
    let row = |check: &Check| {
        let words = answer(check.verdict).to_owned();
        vec![
            Cell::Stack(vec![check.title.clone(), format!("[{}]", check.source)]),
            figure(check.demand, check.unit),
            figure(check.capacity, check.unit),
            figure(check.utilisation.map(|ratio| ratio * 100.0), Unit::PerCent),
            if check.verdict == Verdict::Holds {
                words.into()
            } else {
                Cell::Bold(words)
            },
        ]
    };
    let checks = sheet.design.checks.iter();
    let ours = checks.filter(|check| check.question == question);
    let rows: Vec<Vec<Cell>> = ours.map(row).collect();
    table(
        flow,
        &[
            ("What is checked, and by what", 4.4),
            ("Asked", 1.1),
            ("Can give", 1.1),
            ("Share", 0.6),
            ("Verdict", 0.7),
        ],
        &rows,
    );
}

/// Assumptions.
pub fn assumptions(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph("These questions were left open, so a cautious value is assumed for each. Each one that you measure or look up makes the plan truer.");
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .assumptions
        .iter()
        .map(|assumption| {
            vec![
                questions::label(&assumption.field).into(),
                questions::answer_words(assumption, sheet.brief.units).into(),
                assumption.why.clone().into(),
                assumption.effect.clone().into(),
            ]
        })
        .collect();
    table(
        flow,
        &[
            ("Question", 1.4),
            ("Assumed", 1.1),
            ("Why", 2.0),
            ("What it changes", 2.0),
        ],
        &rows,
    );
}

/// Materials.
pub fn materials(flow: &mut Flow, sheet: &Sheet<'_>) {
    judge_first(flow, sheet);
    let costs = &sheet.design.costs;
    let rows: Vec<Vec<Cell>> = sheet
        .design
        .materials
        .iter()
        .map(|line| material(sheet, line))
        .collect();
    if costs.is_empty() {
        table(
            flow,
            &[
                ("", 0.15),
                ("Item", 1.8),
                ("Quantity", 0.7),
                ("For what, and what to look for", 3.5),
            ],
            &rows,
        );
        return;
    }
    let columns = [
        ("", 0.15),
        ("Item", 1.7),
        ("Quantity", 0.7),
        ("For what, and what to look for", 2.5),
        ("Price", 0.9),
        ("Amount", 0.9),
    ];
    table(flow, &columns, &rows);
    flow.heading("What it comes to");
    let sum = |what: String, money| vec![what.into(), money::amount(costs, money).into()];
    let mut sums: Vec<Vec<Cell>> = costs
        .groups
        .iter()
        .map(|group| sum(group.group.heading().to_owned(), group.total))
        .collect();
    sums.push(vec![
        Cell::Bold(money::whole(costs).to_owned()),
        Cell::Bold(money::amount(costs, costs.total)),
    ]);
    table(flow, &[("Part of the work", 3.0), ("Amount", 1.2)], &sums);
    money::remarks(sheet.design)
        .iter()
        .for_each(|said| flow.paragraph(said));
    if costs.unpriced.len() > money::MOST_NAMES {
        flow.paragraph(&format!(
            "Without a price: {}.",
            money::unpriced(costs).join(" · ")
        ));
    }
}

/// Where the ground has to be judged first, nothing is ordered before.
pub fn judge_first(flow: &mut Flow, sheet: &Sheet<'_>) {
    if sheet.design.ground.ask_an_engineer.is_some() {
        flow.styled(Face::TextBold, BODY, JUDGE_FIRST);
    }
}

/// A line of the order by its name; what is not bought is said.
pub fn named(line: &Material) -> String {
    if line.supply == Supply::Buy {
        line.item.clone()
    } else {
        format!("{} ({})", line.item, line.supply.word())
    }
}

/// A line of the order, its price behind it where any line has one.
fn material(sheet: &Sheet<'_>, line: &Material) -> Vec<Cell> {
    let costs = &sheet.design.costs;
    let stock = money::lengths_sentence(costs, line);
    let offer = costs.line(line.id).and_then(LineCost::offer);
    let quoted = offer
        .and_then(|offer| offer.quoted_for.as_ref())
        .map(|was| format!("The price was quoted for “{was}”: ask again."));
    let said = [
        sentence(&line.purpose),
        sentence(&line.note),
        stock,
        quoted.unwrap_or_default(),
    ];
    let mut row = vec![
        Cell::Tick,
        named(line).into(),
        sheet.brief.units.figure(line.quantity, line.unit).into(),
        said.iter()
            .filter(|said| !said.is_empty())
            .map(String::as_str)
            .collect::<Vec<_>>()
            .join(" ")
            .into(),
    ];
    if !costs.is_empty() {
        row.push(
            offer
                .map(|offer| {
                    format!(
                        "{} × {}",
                        money::counted(offer),
                        money::per_unit(costs, offer)
                    )
                })
                .unwrap_or_default()
                .into(),
        );
        row.push(
            offer
                .map(|offer| money::amount(costs, offer.total))
                .unwrap_or_default()
                .into(),
        );
    }
    row
}

/// Schedule: how each is done stands on the sheet of its work, or here where no sheet is carried to it.
pub fn schedule(flow: &mut Flow, sheet: &Sheet<'_>) {
    let told = |task: &Task| match PARTS.iter().find(|(part, ..)| *part == task.part) {
        Some((part, _, Some(place))) if *part != When::Observing => {
            Cell::Text(format!("Sheet “{place}”"))
        }
        _ => task.why.clone().into(),
    };
    let row = |task: &Task| {
        vec![
            task.earliest.clone().into(),
            task.title.clone().into(),
            lasting(sheet.brief.units, task.lasts_h),
            told(task),
        ]
    };
    let rows: Vec<Vec<Cell>> = sheet.design.schedule.iter().map(row).collect();
    table(
        flow,
        &[
            ("Earliest", 0.8),
            ("Task", 2.0),
            ("Lasts", 0.6),
            ("How, and why so long", 2.4),
        ],
        &rows,
    );
}

/// Cautions: those of planning in full, and where each other part's stand, which is where the work is done.
pub fn cautions(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph("Local codes and the advice of licensed practice come before anything here. If you are not sure, stop and ask.");
    let count = |when: When| {
        sheet
            .design
            .cautions
            .iter()
            .filter(|caution| caution.when == when)
            .count()
    };
    let rows: Vec<Vec<Cell>> = PARTS
        .iter()
        .filter(|(when, _, _)| count(*when) > 0)
        .map(|(when, words, place)| {
            vec![
                (*words).into(),
                count(*when).to_string().into(),
                place.unwrap_or("here, below").into(),
            ]
        })
        .collect();
    flow.paragraph(
        "Each stands on the sheet of the work that it belongs to. Read them aloud to all who are there before that work begins.",
    );
    table(
        flow,
        &[
            ("Part of the work", 2.0),
            ("Cautions", 0.6),
            ("On the sheet", 2.0),
        ],
        &rows,
    );
    for (when, words, _) in PARTS
        .iter()
        .filter(|(when, _, place)| place.is_none() && count(*when) > 0)
    {
        flow.heading(words);
        sheet
            .design
            .cautions
            .iter()
            .filter(|caution| caution.when == *when)
            .for_each(|caution| flow.paragraph(&caution.text));
    }
}

/// The parts of the work, what they are called, and the sheet that has their cautions; none: the sheet of cautions itself.
pub const PARTS: &[(When, &str, Option<&str>)] = &[
    (When::Planning, "Planning and ordering", None),
    (When::Digging, "Digging", Some("Site and pit")),
    (
        When::Pouring,
        "Shuttering, steel and pouring",
        Some("Block and shuttering"),
    ),
    (When::Drilling, "Drilling", Some("Studs and holes")),
    (When::Bonding, "Resin and studs", Some("Studs and holes")),
    (When::Tightening, "Tightening", Some("Studs and holes")),
    (
        When::Lifting,
        "Lifting and setting the column",
        Some("Pier and plate"),
    ),
    (When::Wiring, "Wiring and earthing", Some("Pier and plate")),
    (
        When::Flooring,
        "Building the floor",
        Some("Observing floor"),
    ),
    (When::Measuring, "Measuring and mending", None),
    (When::Observing, "Observing", Some("What the star does")),
];
