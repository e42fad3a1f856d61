//! The site set: what is carried to the site, one side a day of work.

use stillground::notes::{Caution, When};
use stillground::record::{Item, items};
use stillground::stages::schedule::Task;

use super::steps::lasting;
use crate::drawing::{Drawing, on_a_side};
use crate::lettering::Face;
use crate::views::caution_lines::line;
use crate::views::pages::record::figures;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow, LEAST_LETTERING};
use crate::views::pdf::page::{Mark, Page};
use crate::views::pdf::table::{Cell, table};

/// A day of the work.
#[derive(Debug, Clone, Copy)]
pub struct Day {
    /// Its name, which is the sheet's.
    pub name: &'static str,
    /// What is drawn on it; the first that the plan has is drawn largest.
    drawings: &'static [&'static str],
    /// The sheet of the file that has the drawing large.
    larger: &'static str,
    /// The parts of the work that it has.
    parts: &'static [When],
}

/// The days in their order.
pub const DAYS: [Day; 5] = [
    Day {
        name: "Dig",
        drawings: &["pit"],
        larger: "Site and pit",
        parts: &[When::Digging],
    },
    Day {
        name: "Pour",
        drawings: &["section"],
        larger: "Block and shuttering",
        parts: &[When::Pouring],
    },
    Day {
        name: "Drill and bond",
        drawings: &["studs"],
        larger: "Studs and holes",
        parts: &[When::Drilling, When::Bonding],
    },
    Day {
        name: "Erect and tighten",
        drawings: &["column"],
        larger: "Pier and plate",
        parts: &[When::Lifting, When::Tightening],
    },
    Day {
        name: "Floor, wiring and proof",
        drawings: &["floor"],
        larger: "Observing floor",
        parts: &[
            When::Flooring,
            When::Wiring,
            When::Measuring,
            When::Observing,
        ],
    },
];

/// How much goes on the side.
#[derive(Debug, Clone, Copy)]
struct Room {
    /// Share of the usual space between lines and in tables.
    spacing_factor: f64,
    /// Share of the usual size of type.
    type_factor: f64,
    /// Most of the side's height that a drawing takes.
    drawing_ratio: f64,
    /// Whether it says how each task is done.
    how: bool,
}

/// Type is reduced to no less: a table's figures are then 7.7 points, its words 8.1.
pub(super) const LEAST_TYPE: f64 = 0.88;

/// Ways to fill the side, from the most to the least: the words on how a task is done go first, then space and a little of
/// the type, then the drawing gets smaller step by step.
fn rooms() -> impl Iterator<Item = Room> {
    const WITH_WORDS: [f64; 5] = [1.0, 0.7, 0.55, 0.45, 0.38];
    const WITHOUT: [f64; 15] = [
        1.0, 0.7, 0.6, 0.55, 0.5, 0.47, 0.44, 0.41, 0.38, 0.35, 0.32, 0.29, 0.26, 0.22, 0.18,
    ];
    const CLOSER: [(f64, f64); 5] = [
        (0.6, 1.0),
        (0.3, 1.0),
        (0.3, 0.94),
        (0.15, LEAST_TYPE),
        (0.03, LEAST_TYPE),
    ];
    let words = [1.0, 0.6, 0.3].into_iter().flat_map(|spacing_factor| {
        WITH_WORDS.map(|drawing_ratio| Room {
            spacing_factor,
            type_factor: 1.0,
            drawing_ratio,
            how: true,
        })
    });
    let bare = WITHOUT.into_iter().flat_map(|drawing_ratio| {
        CLOSER.map(|(spacing_factor, type_factor)| Room {
            spacing_factor,
            type_factor,
            drawing_ratio,
            how: false,
        })
    });
    words.chain(bare)
}

/// A day on one side, or on two where that is too little for all that it has: then nothing is drawn together needlessly.
pub fn day(flow: &mut Flow, sheet: &Sheet<'_>, day: &Day) {
    let before = flow.pages.len();
    let drawn: Vec<Vec<Drawing>> = day
        .drawings
        .iter()
        .map(|name| on_a_side(name, sheet.brief, sheet.design).collect())
        .collect();
    let fill = |flow: &mut Flow, room: Room, sides: usize| {
        let within = (room.spacing_factor, room.type_factor);
        closely(flow, before, within, day.name, |flow| {
            put(flow, sheet, day, &drawn, room);
        });
        flow.pages.len() <= before + sides
    };
    // A side whose drawings can all be read is better than one that says more, and two sides are better than letters too
    // small to read.
    for sides in [1, 2] {
        for room in rooms() {
            if fill(flow, room, sides) && flow.pages.iter().skip(before).all(is_read) {
                return;
            }
        }
    }
    let _any = rooms().find(|room| fill(flow, *room, 2));
}

/// Whether each drawing of a side has lettering that can be read.
fn is_read(page: &Page) -> bool {
    let marks = page.pieces.iter().flat_map(|piece| &piece.marks);
    marks.into_iter().all(|mark| match mark {
        Mark::Drawing {
            factor, drawing, ..
        } => drawing.least_lettering_mm() * factor >= LEAST_LETTERING,
        _ => true,
    })
}

/// Puts a sheet once more after so many pages, with a share of the usual space and of the size of type.
pub(super) fn closely(
    flow: &mut Flow,
    before: usize,
    (spacing_factor, type_factor): (f64, f64),
    name: &str,
    put: impl FnOnce(&mut Flow),
) {
    flow.back_to(before);
    (flow.spacing_factor, flow.type_factor) = (spacing_factor, type_factor);
    flow.sheet(name);
    put(flow);
    (flow.spacing_factor, flow.type_factor) = (1.0, 1.0);
}

fn put(flow: &mut Flow, sheet: &Sheet<'_>, day: &Day, drawn: &[Vec<Drawing>], room: Room) {
    let design = sheet.design;
    let tasks: Vec<&Task> = design
        .schedule
        .iter()
        .filter(|task| day.parts.contains(&task.part))
        .collect();
    let most = flow.full() * room.drawing_ratio;
    for all in drawn {
        if let Some(drawing) = flow.first_legible(all, most) {
            let larger = format!("Large on the file’s sheet “{}”.", day.larger);
            flow.drawing_within(drawing.clone(), most, &larger);
        }
    }
    cautions(flow, &design.cautions, day.parts);
    figures_of(flow, sheet, &tasks);
    order(flow, sheet, &tasks, room.how);
    entries(flow, sheet, &tasks);
}

fn cautions(flow: &mut Flow, all: &[Caution], parts: &[When]) {
    let here: Vec<&str> = all
        .iter()
        .filter(|caution| parts.contains(&caution.when))
        .map(line)
        .collect();
    if here.is_empty() {
        return;
    }
    flow.heading("Cautions, in full on their own sheet");
    let mut rows = Vec::new();
    for pair in here.chunks(2) {
        rows.push(vec![
            Cell::Bold(pair[0].to_owned()),
            Cell::Bold(pair.get(1).copied().unwrap_or_default().to_owned()),
        ]);
    }
    table(flow, &[("", 1.0), ("", 1.0)], &rows);
}

/// The figures of the tasks, each once, two beside each other.
fn figures_of(flow: &mut Flow, sheet: &Sheet<'_>, tasks: &[&Task]) {
    let mut known: Vec<(&str, String)> = Vec::new();
    for task in tasks {
        for figure in figures::of_design(task.id, sheet.brief, sheet.design) {
            if !known.contains(&figure) {
                known.push(figure);
            }
        }
    }
    if known.is_empty() {
        return;
    }
    let (short, long): (Vec<_>, Vec<_>) = known
        .into_iter()
        .partition(|(_, says)| says.chars().count() <= MOST_IN_A_CELL);
    let cells = |figure: Option<&(&str, String)>| match figure {
        Some((name, says)) => [Cell::from((*name).to_owned()), Cell::Bold(says.clone())],
        None => [Cell::from(""), Cell::from("")],
    };
    let rows: Vec<Vec<Cell>> = short
        .chunks(2)
        .map(|pair| {
            let [left, right] = [cells(pair.first()), cells(pair.get(1))];
            left.into_iter().chain(right).collect()
        })
        .collect();
    flow.heading("Figures");
    if !rows.is_empty() {
        table(
            flow,
            &[
                ("What", 1.2),
                ("Figure", 1.0),
                ("What", 1.2),
                ("Figure", 1.0),
            ],
            &rows,
        );
    }
    for (name, says) in long {
        flow.paragraph(&format!("{name}: {says}"));
    }
}

/// A figure that is longer stands in a line of its own.
const MOST_IN_A_CELL: usize = 26;

/// The tasks in their order: each with how it is done, or two beside each other where there is no room for that.
fn order(flow: &mut Flow, sheet: &Sheet<'_>, tasks: &[&Task], how: bool) {
    const TASK: [(&str, f64); 4] = [("", 0.15), ("Task", 1.6), ("From", 0.7), ("Lasts", 0.6)];
    if tasks.is_empty() {
        return;
    }
    let cells = |task: &Task| {
        vec![
            Cell::Tick,
            task.title.clone().into(),
            task.earliest.clone().into(),
            lasting(sheet.brief.units, task.lasts_h),
        ]
    };
    flow.heading("In this order");
    if how {
        let rows: Vec<Vec<Cell>> = tasks
            .iter()
            .map(|task| {
                let mut cells = cells(task);
                cells.push(task.why.clone().into());
                cells
            })
            .collect();
        let columns: Vec<(&str, f64)> = TASK
            .into_iter()
            .chain([("How, and why so long", 3.2)])
            .collect();
        table(flow, &columns, &rows);
        return;
    }
    // Down the left column first, then down the right one, as one reads.
    let half = tasks.len().div_ceil(2);
    let blank = || vec![Cell::from(""); 4];
    let rows: Vec<Vec<Cell>> = (0..half)
        .map(|row| {
            let right = tasks.get(row + half).map_or_else(blank, |task| cells(task));
            cells(tasks[row]).into_iter().chain(right).collect()
        })
        .collect();
    table(flow, &[TASK, TASK].concat(), &rows);
}

/// What is measured on the day, with room to write.
fn entries(flow: &mut Flow, sheet: &Sheet<'_>, tasks: &[&Task]) {
    let all = items(sheet.brief, sheet.design);
    let asked: Vec<&Item> = all
        .iter()
        .filter(|item| item.asked && stands_for_all(&item.id))
        .filter(|item| tasks.iter().any(|task| task.id == item.task))
        .collect();
    if asked.is_empty() {
        return;
    }
    let row = |item: &&Item| {
        let name = if item.id.contains(':') {
            format!("{}, and the others likewise", item.title)
        } else {
            item.title.clone()
        };
        [Cell::from(name), item.expected.clone().into(), Cell::Blank]
    };
    let blank = || [Cell::from(""), Cell::from(""), Cell::from("")];
    let rows: Vec<Vec<Cell>> = asked
        .chunks(2)
        .map(|pair| {
            let right = pair.get(1).map_or_else(blank, row);
            row(&pair[0]).into_iter().chain(right).collect()
        })
        .collect();
    flow.heading("Write down, and enter it into the record");
    table(
        flow,
        &[
            ("What", 1.25),
            ("The plan", 1.15),
            ("Found", 0.6),
            ("What", 1.25),
            ("The plan", 1.15),
            ("Found", 0.6),
        ],
        &rows,
    );
}

/// Of many studs and places one line stands for all.
fn stands_for_all(id: &str) -> bool {
    id.split(':').skip(1).all(|number| number == "1")
}

/// Every caution in full, by the part of the work that it belongs to.
pub fn cautions_in_full(flow: &mut Flow, sheet: &Sheet<'_>) {
    flow.paragraph(
        "They are not all there is to know. Where you live there are rules for digging, lifting and wiring; they come first.",
    );
    // Two sides hold them all where the parts stand a little closer.
    let usual = flow.spacing_factor;
    flow.spacing_factor = 0.5 * usual;
    for when in crate::views::words::WHENS {
        let all = sheet.design.cautions.iter();
        let here = all.filter(|caution| caution.when == when);
        let mut texts: Vec<String> = here.map(|caution| caution.text.to_string()).collect();
        if texts.is_empty() {
            continue;
        }
        flow.heading(crate::views::words::when(when));
        if when == When::Measuring {
            // Short ones, which share their lines.
            texts = vec![texts.join(" ")];
        }
        let put = |text: &String| flow.styled(Face::Text, BODY * 0.86, text);
        texts.iter().for_each(put);
    }
    flow.spacing_factor = usual;
}
