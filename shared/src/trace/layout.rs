//! How a table is written: separator, decimal mark, names of the columns. Found by trying each on the first lines.

use crate::trace::Refusal;
use crate::trace::cells::Cell;

/// Most columns in a line.
const MOST_COLUMNS: usize = 64;

/// Separator and decimal mark; a space stands for any white space.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Written {
    pub(super) separator: char,
    pub(super) mark: char,
}

const TRIED: [Written; 7] = [
    Written {
        separator: ',',
        mark: '.',
    },
    Written {
        separator: ';',
        mark: '.',
    },
    Written {
        separator: ';',
        mark: ',',
    },
    Written {
        separator: '\t',
        mark: '.',
    },
    Written {
        separator: '\t',
        mark: ',',
    },
    Written {
        separator: ' ',
        mark: '.',
    },
    Written {
        separator: ' ',
        mark: ',',
    },
];

impl Written {
    /// Cells of a line, empty ones at its end left out.
    pub(super) fn cells(self, line: &str) -> Vec<&str> {
        let mut cells: Vec<&str> = if self.separator == ' ' {
            line.split_whitespace().take(MOST_COLUMNS + 1).collect()
        } else {
            line.split(self.separator).take(MOST_COLUMNS + 1).collect()
        };
        while cells.last().is_some_and(|cell| cell.trim().is_empty()) {
            let _ = cells.pop();
        }
        cells
    }

    fn figures(self, line: &str) -> Result<(usize, usize), Refusal> {
        let (mut figures, mut words) = (0, 0);
        for cell in self.cells(line) {
            match Cell::read(cell, self.mark)? {
                cell if cell.is_figure() => figures += 1,
                Cell::Words(_) => words += 1,
                _ => {}
            }
        }
        Ok((figures, words))
    }

    /// Whether a line holds figures.
    pub(super) fn is_row(self, line: &str) -> Result<bool, Refusal> {
        let (figures, words) = self.figures(line)?;
        Ok(figures > 0 && figures >= words)
    }

    /// In words.
    pub(super) fn said(self) -> String {
        let separator = match self.separator {
            ',' => "commas",
            ';' => "semicolons",
            '\t' => "tabs",
            _ => "spaces",
        };
        let mark = if self.mark == ',' { "comma" } else { "point" };
        format!("columns apart by {separator}, decimal {mark}")
    }
}

/// What the first lines say.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layout {
    pub(super) written: Written,
    pub(super) names: Vec<String>,
    pub(super) has_names: bool,
    pub(super) columns: usize,
}

/// Whether a line is a remark of whoever made the file.
pub(super) fn is_comment(line: &str) -> bool {
    ["#", "%", "//", "\"#", "!"]
        .iter()
        .any(|sign| line.starts_with(sign))
}

impl Layout {
    /// A column by its name or its number from one.
    pub(super) fn column(&self, asked: &str) -> Result<usize, Refusal> {
        let asked = asked.trim();
        let same = |name: &String| name.eq_ignore_ascii_case(asked);
        if let Some(found) = self.names.iter().position(same) {
            return Ok(found);
        }
        match asked.parse::<usize>() {
            Ok(number) if (1..=self.columns).contains(&number) => Ok(number - 1),
            _ => {
                let known: Vec<&str> = self.names.iter().take(12).map(String::as_str).collect();
                let asked = asked.chars().filter(|c| !c.is_control()).take(40);
                Err(Refusal::new(format!(
                    "there is no column “{}”; the columns are {}",
                    asked.collect::<String>(),
                    known.join(", ")
                )))
            }
        }
    }

    /// One column by its name, or several with commas between.
    pub(super) fn several(&self, asked: &str, most: usize) -> Result<Vec<usize>, Refusal> {
        let whole = self.column(asked);
        if whole.is_ok() || !asked.contains(',') {
            return Ok(vec![whole?]);
        }
        let mut found = Vec::new();
        for name in asked.split(',').filter(|name| !name.trim().is_empty()) {
            let column = self.column(name)?;
            if !found.contains(&column) {
                found.push(column);
            }
        }
        if found.is_empty() || found.len() > most {
            return Err(Refusal::new(format!(
                "{} columns are named; at least one and at most {most} are read",
                found.len()
            )));
        }
        Ok(found)
    }
    /// Finds it from the first lines.
    ///
    /// # Errors
    /// There are no figures in them, or too many columns.
    pub(super) fn find(lines: &[String]) -> Result<Self, Refusal> {
        let mut best: Option<(f64, Written, usize)> = None;
        for written in TRIED {
            let mut counts = [0_usize; MOST_COLUMNS + 2];
            let (mut figures, mut words) = (0, 0);
            for line in lines.iter().filter(|line| !is_comment(line)) {
                let (f, w) = written.figures(line)?;
                if f > 0 && f >= w {
                    counts[f.min(MOST_COLUMNS + 1)] += 1;
                    figures += f;
                    words += w;
                } else {
                    words += w.min(1);
                }
            }
            let (columns, rows) = counts
                .iter()
                .enumerate()
                .skip(1)
                .max_by_key(|(_, rows)| **rows)
                .map_or((0, 0), |(columns, rows)| (columns, *rows));
            if rows == 0 {
                continue;
            }
            let score = rows as f64 * figures as f64 / (figures + 3 * words) as f64
                + 0.1 * columns.min(8) as f64;
            if best.is_none_or(|(most, ..)| score > most + 1e-9) {
                best = Some((score, written, columns));
            }
        }
        let (_, written, columns) = best.ok_or_else(|| {
            Refusal::new("no line of figures was found in the file; a plain table is needed, one sample a line")
        })?;
        if columns > MOST_COLUMNS {
            return Err(Refusal::new(format!(
                "the table has more than {MOST_COLUMNS} columns; keep the time and up to three columns of measurements"
            )));
        }
        let written = undecided(written, lines)?;
        Self::named(written, lines)
    }

    fn named(written: Written, lines: &[String]) -> Result<Self, Refusal> {
        let mut before: Vec<&str> = Vec::new();
        let mut columns = 0;
        for line in lines {
            let row = !is_comment(line) && written.is_row(line)?;
            if row {
                columns = columns.max(written.cells(line).len());
            } else if columns == 0 {
                before.push(line);
            }
        }
        let title = before.iter().rev().find_map(|line| {
            let plain = line.trim_start_matches(['#', '%', '/', '!', '"', ' ']);
            let cells = written.cells(plain);
            (cells.len() >= columns.min(2) && cells.len() <= columns + 1 && !cells.is_empty()).then(
                || {
                    cells
                        .iter()
                        .map(|cell| cell.trim().trim_matches('"').to_owned())
                        .collect::<Vec<_>>()
                },
            )
        });
        let has_names = title.is_some();
        let mut names = title.unwrap_or_default();
        columns = columns.max(names.len());
        for number in names.len() + 1..=columns {
            names.push(format!("column {number}"));
        }
        for (i, name) in names.iter_mut().enumerate() {
            // What a file says is shown on a page: short, and without what is no letter.
            *name = name.chars().filter(|c| !c.is_control()).take(40).collect();
            if name.is_empty() {
                *name = format!("column {}", i + 1);
            }
        }
        Ok(Self {
            written,
            names,
            has_names,
            columns,
        })
    }
}

/// A single column with a decimal comma looks like two of whole numbers.
fn undecided(written: Written, lines: &[String]) -> Result<Written, Refusal> {
    if written.separator != ',' {
        return Ok(written);
    }
    let mut last: Option<i64> = None;
    let (mut rises, mut rows) = (0, 0);
    for line in lines.iter().filter(|line| !is_comment(line)) {
        if !written.is_row(line)? {
            continue;
        }
        let cells = written.cells(line);
        let [first, second] = cells.as_slice() else {
            return Ok(written);
        };
        let digits = second.len() >= 2 && second.bytes().all(|b| b.is_ascii_digit());
        let (Ok(first), true) = (first.trim().parse::<i64>(), digits) else {
            return Ok(written);
        };
        rises += usize::from(last.is_some_and(|last| first > last));
        last = Some(first);
        rows += 1;
    }
    let is_decimal = rows >= 5 && rises * 3 < rows;
    Ok(if is_decimal {
        Written {
            separator: ' ',
            mark: ',',
        }
    } else {
        written
    })
}
