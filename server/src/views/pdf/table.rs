//! Tables: columns with wrapped text, figures aligned at the decimal mark, head repeated on each page.

use stillground::figure::Figure;

use crate::drawing::at;
use crate::lettering::{self, Face};
use crate::views::pdf::flow::{Flow, LEADING_RATIO, LEFT, SMALL, TOP};
use crate::views::pdf::page::{Mark, Role};

/// A cell.
#[derive(Debug, Clone)]
pub enum Cell {
    /// Text.
    Text(String),
    /// Text that must be seen.
    Bold(String),
    /// Several texts, each on lines of its own.
    Stack(Vec<String>),
    /// A figure with its unit.
    Figure(Figure),
    /// Figures and signs among words.
    Said(String),
    /// Room to write in.
    Blank,
    /// A box to tick.
    Tick,
}

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Cell {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<Figure> for Cell {
    fn from(figure: Figure) -> Self {
        Self::Figure(figure)
    }
}

/// A column: its head and its share of the width.
pub type Column<'a> = (&'a str, f64);

/// Room between columns, mm.
const GUTTER: f64 = 3.0;
const PAD: f64 = 0.9;
const SIZE: f64 = SMALL + 0.1;

struct Table {
    number: usize,
    /// Size of its type, mm.
    size: f64,
    heads: Vec<String>,
    /// Left edge and width of each column.
    columns: Vec<(f64, f64)>,
    /// In each column, how far the decimal mark stands from the left.
    marks: Vec<f64>,
}

/// Lays out a table.
pub fn table(flow: &mut Flow, columns: &[Column<'_>], rows: &[Vec<Cell>]) {
    if rows.is_empty() {
        return;
    }
    let table = measure(flow, columns, rows);
    let pad = PAD * flow.spacing_factor;
    let wrapped: Vec<Vec<Vec<String>>> = rows
        .iter()
        .map(|row| {
            row.iter()
                .zip(&table.columns)
                .map(|(cell, &(_, width))| lines(cell, width, table.size))
                .collect()
        })
        .collect();
    let heights: Vec<f64> = wrapped
        .iter()
        .map(|row| height(row, pad, table.size))
        .collect();
    flow.need(head_height(&table, pad) + together(flow, &heights));
    head(flow, &table, false);
    for (i, (row, wrapped)) in rows.iter().zip(&wrapped).enumerate() {
        // A last row does not go to the next page alone: the one before it goes with it.
        let with = if i > 0 && i + 2 == rows.len() {
            heights[i] + heights[i + 1]
        } else {
            heights[i]
        };
        if flow.left() < with && flow.y > TOP && i > 0 {
            flow.turn();
            head(flow, &table, true);
        }
        for (column, (cell, lines)) in row.iter().zip(wrapped).enumerate() {
            let marks = place(cell, lines, &table, column, flow.y + pad + table.size);
            flow.put(
                Role::Cell {
                    table: table.number,
                    row: i + 1,
                    head: false,
                },
                marks,
            );
        }
        flow.y += heights[i];
        rule(flow, 0.12);
    }
    flow.y += 3.5 * flow.spacing_factor;
}

fn height(row: &[Vec<String>], pad: f64, size: f64) -> f64 {
    row.iter().map(Vec::len).max().unwrap_or(1).max(1) as f64 * size * LEADING_RATIO + 2.0 * pad
}

/// The height that is kept together at the head of a table: all of a short one, four rows of a long one.
fn together(flow: &Flow, heights: &[f64]) -> f64 {
    let all: f64 = heights.iter().sum();
    if all < flow.full() * SHORT_RATIO {
        all
    } else {
        heights.iter().take(4).sum()
    }
}

/// A table that takes less than so much of a page is never parted.
const SHORT_RATIO: f64 = 0.35;

fn heads(table: &Table) -> Vec<Vec<String>> {
    table
        .heads
        .iter()
        .zip(&table.columns)
        .map(|(head, &(_, width))| lettering::wrap(Face::FiguresBold, head, table.size, width))
        .collect()
}

/// Height of the head; a table whose columns have no names has none.
fn head_height(table: &Table, pad: f64) -> f64 {
    if table.heads.iter().all(String::is_empty) {
        return 0.0;
    }
    height(&heads(table), pad, table.size)
}

fn measure(flow: &mut Flow, columns: &[Column<'_>], rows: &[Vec<Cell>]) -> Table {
    let size = SIZE * flow.type_factor;
    let total: f64 = columns.iter().map(|(_, share)| share).sum();
    let room = flow.room() - GUTTER * (columns.len().max(1) - 1) as f64;
    let mut x = LEFT;
    let mut placed = Vec::new();
    for (_, share) in columns {
        let width = room * share / total;
        placed.push((x, width));
        x += width + GUTTER;
    }
    let whole = |cell: &Cell| match cell {
        Cell::Figure(figure) => lettering::width(Face::Figures, whole_part(&figure.digits), size),
        _ => 0.0,
    };
    let marks = (0..columns.len())
        .map(|i| {
            rows.iter()
                .filter_map(|row| row.get(i))
                .map(whole)
                .fold(0.0, f64::max)
        })
        .collect();
    Table {
        number: flow.next_table(),
        size,
        heads: columns.iter().map(|(head, _)| (*head).to_owned()).collect(),
        columns: placed,
        marks,
    }
}

fn whole_part(digits: &str) -> &str {
    digits.split_once('.').map_or(digits, |(whole, _)| whole)
}

/// The head; one that repeats on a further page is no part of what is read.
fn head(flow: &mut Flow, table: &Table, again: bool) {
    rule(flow, 0.35);
    let wrapped = heads(table);
    let (pad, tall) = (
        PAD * flow.spacing_factor,
        head_height(table, PAD * flow.spacing_factor),
    );
    for ((x, _), lines) in table.columns.iter().zip(wrapped) {
        let marks = lines
            .into_iter()
            .enumerate()
            .map(|(i, text)| Mark::Text {
                at: at(
                    *x,
                    flow.y + pad + table.size * (1.0 + i as f64 * LEADING_RATIO),
                ),
                size: table.size,
                face: Face::FiguresBold,
                text,
            })
            .collect();
        flow.put(
            if again {
                Role::Ornament
            } else {
                Role::Cell {
                    table: table.number,
                    row: 0,
                    head: true,
                }
            },
            marks,
        );
    }
    flow.y += tall;
    if tall > 0.0 {
        rule(flow, 0.25);
    }
}

fn rule(flow: &mut Flow, weight: f64) {
    let (y, right) = (flow.y, LEFT + flow.room());
    flow.put(
        Role::Ornament,
        vec![Mark::Rule {
            from: at(LEFT, y),
            to: at(right, y),
            weight,
        }],
    );
}

fn lines(cell: &Cell, width: f64, size: f64) -> Vec<String> {
    match cell {
        Cell::Text(text) => lettering::wrap(Face::Text, text, size * 1.05, width),
        Cell::Bold(text) => lettering::wrap(Face::TextBold, text, size * 1.05, width),
        Cell::Stack(texts) => texts
            .iter()
            .flat_map(|text| lettering::wrap(Face::Text, text, size * 1.05, width))
            .collect(),
        Cell::Said(text) => lettering::wrap(Face::Figures, text, size, width),
        Cell::Blank => vec![String::new(); 2],
        Cell::Figure(_) | Cell::Tick => vec![String::new()],
    }
}

fn place(cell: &Cell, lines: &[String], table: &Table, column: usize, base: f64) -> Vec<Mark> {
    let (x, width) = table.columns[column];
    let size = table.size;
    match cell {
        Cell::Text(_) | Cell::Bold(_) | Cell::Stack(_) | Cell::Said(_) => {
            let (face, size) = match cell {
                Cell::Bold(_) => (Face::TextBold, size * 1.05),
                Cell::Said(_) => (Face::Figures, size),
                _ => (Face::Text, size * 1.05),
            };
            let place = |(i, text): (usize, &String)| Mark::Text {
                at: at(x, base + i as f64 * size * LEADING_RATIO),
                size,
                face,
                text: text.clone(),
            };
            lines
                .iter()
                .enumerate()
                .filter(|(_, text)| !text.is_empty())
                .map(place)
                .collect()
        }
        Cell::Figure(figure) => {
            let mark = x + table.marks[column];
            let (start, text) = (
                mark - lettering::width(Face::Figures, whole_part(&figure.digits), size),
                figure.to_string(),
            );
            // Where a long figure would run into the next column, the column's edge comes before the decimal mark.
            let start = start
                .min(x + width - lettering::width(Face::Figures, &text, size))
                .max(x);
            vec![Mark::Text {
                at: at(start, base),
                size,
                face: Face::Figures,
                text,
            }]
        }
        Cell::Tick => {
            let (left, top, side) = (x, base - size * 0.8, size * 0.9);
            let corners = [
                at(left, top),
                at(left + side, top),
                at(left + side, top + side),
                at(left, top + side),
            ];
            (0..4)
                .map(|i| Mark::Rule {
                    from: corners[i],
                    to: corners[(i + 1) % 4],
                    weight: 0.2,
                })
                .collect()
        }
        // The rule below the row is what is written on.
        Cell::Blank => Vec::new(),
    }
}
