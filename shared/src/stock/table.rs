//! The reader of the catalogue's tables: rows of cells apart by commas, quoted where a cell has commas in it.

use std::fmt;

use crate::source::Standing;

/// A table that the program carries.
#[derive(Debug, Clone, Copy)]
pub struct Table {
    /// Its file in `shared/data`.
    pub file: &'static str,
    /// Its text.
    pub text: &'static str,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    cells: Vec<&'static str>,
    columns: Vec<&'static str>,
}

/// A cell that is not there or holds no number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Missing {
    /// The row's name.
    pub row: String,
    /// The column.
    pub column: &'static str,
}

impl fmt::Display for Missing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "row {} has no {}", self.row, self.column)
    }
}

impl Table {
    /// Every row below the first line.
    pub fn rows(self) -> impl Iterator<Item = Row> {
        let columns: Vec<&'static str> = self.text.lines().next().map(cells).unwrap_or_default();
        self.text
            .lines()
            .skip(1)
            .filter(|line| !line.trim().is_empty())
            .map(move |line| Row {
                cells: cells(line),
                columns: columns.clone(),
            })
    }

    /// The row of a name.
    pub fn row(self, name: &str) -> Option<Row> {
        let line = self
            .text
            .lines()
            .skip(1)
            .find(|line| line.split(',').next() == Some(name))?;
        Some(Row {
            cells: cells(line),
            columns: self.text.lines().next().map(cells).unwrap_or_default(),
        })
    }
}

impl Row {
    /// Its name, the first cell.
    pub fn name(&self) -> &'static str {
        self.cells.first().copied().unwrap_or_default()
    }

    /// A cell; empty where there is none.
    pub fn text(&self, column: &str) -> &'static str {
        self.columns
            .iter()
            .position(|name| *name == column)
            .and_then(|at| self.cells.get(at).copied())
            .unwrap_or_default()
    }

    /// A number.
    ///
    /// # Errors
    /// The row and the column, where there is none.
    pub fn number(&self, column: &'static str) -> Result<f64, Missing> {
        self.text(column).parse().map_err(|_| Missing {
            row: self.name().to_owned(),
            column,
        })
    }

    /// A number, or not a number where there is none, which every check reports as unknown.
    pub fn value(&self, column: &'static str) -> f64 {
        self.number(column).unwrap_or(f64::NAN)
    }

    /// How the row's source was met.
    pub fn standing(&self) -> Standing {
        match self.text("standing") {
            "read" => Standing::Read,
            "second_hand" => Standing::SecondHand,
            "derived" => Standing::Derived,
            "common_practice" => Standing::CommonPractice,
            "judgement" => Standing::Judgement,
            _ => Standing::FromMemory,
        }
    }
}

/// The cells of a line.
fn cells(line: &'static str) -> Vec<&'static str> {
    let mut found = Vec::new();
    let mut rest = line.trim_end();
    loop {
        if let Some(quoted) = rest.strip_prefix('"') {
            let (cell, after) = quoted.split_once('"').unwrap_or((quoted, ""));
            found.push(cell);
            match after.strip_prefix(',') {
                Some(after) => rest = after,
                None => return found,
            }
        } else {
            match rest.split_once(',') {
                Some((cell, after)) => {
                    found.push(cell);
                    rest = after;
                }
                None => {
                    found.push(rest);
                    return found;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SAMPLE: Table = Table {
        file: "sample.csv",
        text: "name,size,source,standing\nA,1.5,\"Book, page 3\",read\nB,,none,judgement\n",
    };

    #[test]
    fn quoted_cells_keep_their_commas_and_what_is_missing_is_named() {
        let found: Vec<Row> = SAMPLE.rows().collect();
        assert_eq!(found.len(), 2);
        assert_eq!(found[0].text("source"), "Book, page 3");
        assert_eq!(found[0].number("size"), Ok(1.5));
        assert_eq!(found[0].standing(), Standing::Read);
        let missing = found[1].number("size").unwrap_err();
        assert_eq!(missing.to_string(), "row B has no size");
        assert!(found[1].value("size").is_nan() && SAMPLE.row("C").is_none());
    }
}
