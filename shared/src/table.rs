//! The tables that the program carries, in `shared/data`: read once, each figure by the name of its column.

use std::fmt;
use std::sync::OnceLock;

use csv::{ReaderBuilder, StringRecord, Trim};

use crate::source::Standing;

/// A table that the program carries.
#[derive(Debug)]
pub struct Table {
    /// Its file in `shared/data`.
    pub file: &'static str,
    /// Its text.
    pub text: &'static str,
    rows: OnceLock<Vec<Row>>,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    cells: StringRecord,
    columns: StringRecord,
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
    /// A table of a file and its text.
    pub const fn new(file: &'static str, text: &'static str) -> Self {
        Self {
            file,
            text,
            rows: OnceLock::new(),
        }
    }

    /// Every row below the first line; one that is no row of the table is left out, which a test shows never to happen.
    pub fn rows(&self) -> &[Row] {
        self.rows.get_or_init(|| {
            let mut reader = ReaderBuilder::new()
                .trim(Trim::All)
                .from_reader(self.text.as_bytes());
            let columns = reader.headers().cloned().unwrap_or_default();
            reader
                .records()
                .filter_map(Result::ok)
                .map(|cells| Row {
                    cells,
                    columns: columns.clone(),
                })
                .collect()
        })
    }

    /// The row of a name.
    pub fn row(&self, name: &str) -> Option<&Row> {
        self.rows().iter().find(|row| row.name() == name)
    }
}

impl Row {
    /// Its name, the first cell.
    pub fn name(&self) -> &str {
        self.cells.get(0).unwrap_or_default()
    }

    /// A cell; empty where there is none.
    pub fn text(&self, column: &str) -> &str {
        self.columns
            .iter()
            .position(|name| name == column)
            .and_then(|at| self.cells.get(at))
            .unwrap_or_default()
    }

    /// A number.
    ///
    /// # Errors
    /// The row and the column, where there is none.
    pub fn number(&self, column: &'static str) -> Result<f64, Missing> {
        let found = self.text(column).parse::<f64>().ok();
        found
            .filter(|value| value.is_finite())
            .ok_or_else(|| Missing {
                row: self.name().to_owned(),
                column,
            })
    }

    /// A number, or none.
    pub fn maybe(&self, column: &'static str) -> Option<f64> {
        self.number(column).ok()
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

#[cfg(test)]
mod tests {
    use super::*;

    static SAMPLE: Table = Table::new(
        "sample.csv",
        "name,size,source,standing\nA,1.5,\"Book, page 3\",read\nB,,none,judgement\n",
    );

    #[test]
    fn quoted_cells_keep_their_commas_and_what_is_missing_is_named() {
        let found = SAMPLE.rows();
        assert_eq!(found.len(), 2);
        assert_eq!(found[0].text("source"), "Book, page 3");
        assert_eq!(found[0].number("size"), Ok(1.5));
        assert_eq!(found[0].standing(), Standing::Read);
        let missing = found[1].number("size").unwrap_err();
        assert_eq!(missing.to_string(), "row B has no size");
        assert!(found[1].value("size").is_nan() && SAMPLE.row("C").is_none());
    }
}
