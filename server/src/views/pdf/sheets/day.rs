//! The site set: what is carried to the site, one side a day of work.

use stillground::notes::{Caution, When};
use stillground::record::{Item, items};
use stillground::stages::materials::Material;
use stillground::stages::schedule::Task;

use super::paperwork;
use super::steps::{lasting, title};
use crate::drawing::by_name;
use crate::lettering::Face;
use crate::views::caution_lines::line;
use crate::views::pages::record::figures;
use crate::views::pdf::Sheet;
use crate::views::pdf::flow::{BODY, Flow};
use crate::views::pdf::table::{Cell, table};

/// A day of the work.
#[derive(Debug, Clone, Copy)]
pub struct Day {
    /// Its name, which is the sheet's.
    pub name: &'static str,
    /// What is drawn on it; the first that the plan has is drawn largest.
    drawings: &'static [&'static str],
    /// The parts of the work that it has.
    parts: &'static [When],
}

/// The days in their order.
pub const DAYS: [Day; 5] = [
    Day {
        name: "Dig",
        drawings: &["pit"],
        parts: &[When::Digging],
    },
    Day {
        name: "Pour",
        drawings: &["section"],
        parts: &[When::Pouring],
    },
    Day {
        name: "Drill and bond",
        drawings: &["studs"],
        parts: &[When::Drilling, When::Bonding],
    },
    Day {
        name: "Erect and tighten",
        drawings: &["column"],
        parts: &[When::Lifting, When::Tightening],
    },
    Day {
        name: "Floor, wiring and proof",
        drawings: &["floor"],
        parts: &[When::Flooring, When::Wiring, When::Observing],
    },
];

/// How much goes on the side.
#[derive(Debug, Clone, Copy)]
struct Room {
    /// Share of the usual space between lines and in tables.
    spacing_factor: f64,
    /// Most of the side's height that a drawing takes.
    drawing_ratio: f64,
    /// Whether it says how each task is done.
    how: bool,
}

/// Ways to fill the side, from the most to the least: the words on how a task is done go before the drawing gets small.
fn rooms() -> impl Iterator<Item = Room> {
    const WITH_WORDS: [f64; 5] = [1.0, 0.7, 0.55, 0.45, 0.38];
    const WITHOUT: [f64; 9] = [1.0, 0.7, 0.55, 0.45, 0.38, 0.32, 0.27, 0.22, 0.18];
    let words = [1.0, 0.6, 0.3].map(|spacing| (spacing, true, &WITH_WORDS[..]));
    let bare = [0.6, 0.3, 0.15].map(|spacing| (spacing, false, &WITHOUT[..]));
    words
        .into_iter()
        .chain(bare)
        .flat_map(|(spacing_factor, how, ratios)| {
            ratios.iter().map(move |&drawing_ratio| Room {
                spacing_factor,
                drawing_ratio,
                how,
            })
        })
}

/// A day on one side.
pub fn day(flow: &mut Flow, sheet: &Sheet<'_>, day: &Day) {
    let before = flow.pages.len();
    for room in rooms() {
        flow.back_to(before);
        flow.spacing_factor = room.spacing_factor;
        flow.sheet(day.name);
        put(flow, sheet, day, room);
        flow.spacing_factor = 1.0;
        if flow.pages.len() == before + 1 {
            return;
        }
    }
}

fn put(flow: &mut Flow, sheet: &Sheet<'_>, day: &Day, room: Room) {
    let design = sheet.design;
    let tasks: Vec<&Task> = design
        .schedule
        .iter()
        .filter(|task| day.parts.contains(&task.part))
        .collect();
    for name in day.drawings {
        if let Some(drawing) = by_name(name, sheet.brief, design) {
            let most = flow.full() * room.drawing_ratio;
            flow.drawing_within(drawing, most);
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

/// What is ordered, on one side where it goes on one.
pub fn order_of(flow: &mut Flow, sheet: &Sheet<'_>, name: &str) {
    let before = flow.pages.len();
    for spacing_factor in [1.0, 0.6, 0.3, 0.1, 0.0] {
        flow.back_to(before);
        flow.spacing_factor = spacing_factor;
        flow.sheet(name);
        materials(flow, sheet);
        flow.spacing_factor = 1.0;
        if flow.pages.len() == before + 1 {
            return;
        }
    }
}

/// Lines to tick off, two beside each other. Where there are prices, the order as the file has it.
fn materials(flow: &mut Flow, sheet: &Sheet<'_>) {
    if !sheet.design.costs.is_empty() {
        paperwork::materials(flow, sheet);
        return;
    }
    paperwork::judge_first(flow, sheet);
    let lines = &sheet.design.materials;
    let cells = |line: Option<&Material>| match line {
        Some(line) => vec![
            Cell::Tick,
            paperwork::named(line).into(),
            Cell::Figure(sheet.brief.units.figure(line.quantity, line.unit)),
        ],
        None => vec![Cell::from(""), Cell::from(""), Cell::from("")],
    };
    // Down the left column first, then down the right one, as one reads.
    let half = lines.len().div_ceil(2);
    let rows: Vec<Vec<Cell>> = (0..half)
        .map(|row| {
            let (left, right) = (lines.get(row), lines.get(row + half));
            cells(left).into_iter().chain(cells(right)).collect()
        })
        .collect();
    table(
        flow,
        &[
            ("", 0.12),
            ("Item", 2.45),
            ("How many", 0.5),
            ("", 0.12),
            ("Item", 2.45),
            ("How many", 0.5),
        ],
        &rows,
    );
    flow.small("What each is for, and what to look for when it comes: the sheet “Materials” of the file, and the page “Order”.");
}

fn order(flow: &mut Flow, sheet: &Sheet<'_>, tasks: &[&Task], how: bool) {
    if tasks.is_empty() {
        return;
    }
    let row = |task: &&Task| {
        let mut cells = vec![
            Cell::Tick,
            title(task).into(),
            task.earliest.clone().into(),
            lasting(sheet.brief.units, task.lasts_h),
        ];
        if how {
            cells.push(task.why.clone().into());
        }
        cells
    };
    let rows: Vec<Vec<Cell>> = tasks.iter().map(row).collect();
    let mut columns = vec![("", 0.15), ("Task", 1.6), ("From", 0.7), ("Lasts", 0.6)];
    if how {
        columns.push(("How, and why so long", 3.2));
    }
    flow.heading("In this order");
    table(flow, &columns, &rows);
}

/// What is measured on the day, with room to write.
fn entries(flow: &mut Flow, sheet: &Sheet<'_>, tasks: &[&Task]) {
    let all = items(sheet.brief, sheet.design);
    let asked: Vec<&Item> = all
        .iter()
        .filter(|item| tasks.iter().any(|task| task.id == item.task) && stands_for_all(&item.id))
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
            ("What", 1.5),
            ("The plan", 0.9),
            ("Found", 0.6),
            ("What", 1.5),
            ("The plan", 0.9),
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
    for when in crate::views::words::WHENS {
        let here = sheet.design.cautions.iter();
        let here: Vec<&Caution> = here.filter(|caution| caution.when == when).collect();
        if here.is_empty() {
            continue;
        }
        flow.heading(crate::views::words::when(when));
        for caution in here {
            flow.styled(Face::Text, BODY * 0.86, &caution.text);
        }
    }
}
