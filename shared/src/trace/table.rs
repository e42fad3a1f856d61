//! Reads a table piece by piece: what is kept is the time and up to three columns, whatever else stands in the file.

use crate::trace::cells::Cell;
use crate::trace::columns::{self, Chosen, Table};
use crate::trace::layout::{Layout, is_comment};
use crate::trace::{Asked, Kind, MOST_BYTES, MOST_ROWS, Refusal, Trace, knock, lean};

/// Longest line, bytes.
const LONGEST_LINE: usize = 8192;
/// Lines by which the layout is found.
const FIRST_LINES: usize = 240;
/// Most notes that are kept.
const MOST_NOTES: usize = 400;

/// A table that comes in pieces.
#[derive(Debug)]
pub struct Reader {
    asked: Asked,
    bytes: usize,
    line: Vec<u8>,
    first: Vec<String>,
    chosen: Option<Chosen>,
    table: Table,
}

impl Reader {
    /// Begins a table.
    ///
    /// # Errors
    /// What is said of it cannot be: a rate or a scale out of range.
    pub fn new(asked: Asked) -> Result<Self, Refusal> {
        let within = |value: Option<f64>, least: f64, most: f64, what: &str| match value {
            Some(value) if !(least..=most).contains(&value) => Err(Refusal::new(format!(
                "{what} must be between {least} and {most}, and is {value}"
            ))),
            _ => Ok(()),
        };
        within(
            asked.rate_hz,
            0.01,
            100_000.0,
            "the rate, samples a second,",
        )?;
        within(
            asked.scale_arcsec_per_unit.map(f64::abs),
            1e-6,
            1e6,
            "the scale, seconds of arc in one unit,",
        )?;
        if asked.at_s.iter().any(|at| !at.is_finite()) {
            return Err(Refusal::new("the times of the steps must be seconds"));
        }
        let [none, both] = [0, 2].map(|count| asked.towards_deg.len() == count);
        let is_bearing = |deg: &f64| (-360.0..=360.0).contains(deg);
        if !(none || both && asked.towards_deg.iter().all(is_bearing)) {
            return Err(Refusal::new(
                "the bearings of the columns must be two, in degrees from north",
            ));
        }
        Ok(Self {
            asked,
            bytes: 0,
            line: Vec::new(),
            first: Vec::new(),
            chosen: None,
            table: Table::default(),
        })
    }

    /// Takes the next piece.
    ///
    /// # Errors
    /// The file is no plain table, or larger than what is read.
    pub fn push(&mut self, piece: &[u8]) -> Result<(), Refusal> {
        self.bytes += piece.len();
        if self.bytes > MOST_BYTES {
            return Err(Refusal::new(format!(
                "the file is larger than {} MiB, the most that is read; cut out the minute of the measurement",
                MOST_BYTES >> 20
            )));
        }
        for &byte in piece {
            match byte {
                b'\n' | b'\r' => self.end_line()?,
                b'\t' | b' '..=b'~' | 0x80.. => {
                    if self.line.len() >= LONGEST_LINE {
                        return Err(Refusal::new(format!(
                            "a line is longer than {LONGEST_LINE} characters; a plain table is needed, one sample a line"
                        )));
                    }
                    self.line.push(byte);
                }
                _ => {
                    return Err(Refusal::new(
                        "the file is no plain text; save the table as CSV (UTF-8) and send that",
                    ));
                }
            }
        }
        Ok(())
    }

    /// Answers what was read.
    ///
    /// # Errors
    /// The table has no rows, or says too little.
    pub fn finish(mut self) -> Result<Trace, Refusal> {
        self.end_line()?;
        if self.chosen.is_none() {
            self.settle()?;
        }
        let Some(chosen) = self.chosen else {
            return Err(Refusal::new("the file is empty"));
        };
        let (rows, unread) = (self.table.rows(), self.table.unread);
        if rows < 8 {
            return Err(Refusal::new(format!(
                "the table has {rows} rows of figures; a measurement has hundreds"
            )));
        }
        if unread * 5 > rows {
            return Err(Refusal::new(format!(
                "{unread} of {} lines could not be read as figures; the file is damaged or no table",
                rows + unread
            )));
        }
        let read = columns::finish(chosen, self.table, &self.asked)?;
        Ok(match read.kind {
            Kind::Knock => knock::answer(read),
            Kind::Lean => lean::answer(read, &self.asked),
        })
    }

    fn end_line(&mut self) -> Result<(), Refusal> {
        let bytes = std::mem::take(&mut self.line);
        let text = String::from_utf8_lossy(&bytes);
        let line = text
            .trim_start_matches('\u{feff}')
            .trim_matches(['\r', '\n']);
        if !line.trim().is_empty() {
            if self.chosen.is_none() {
                self.first.push(line.to_owned());
                if self.first.len() >= FIRST_LINES {
                    self.settle()?;
                }
            } else {
                self.row(line)?;
            }
        }
        drop(text);
        self.line = bytes;
        self.line.clear();
        Ok(())
    }

    /// Decides the layout, and reads the lines that it was decided by.
    fn settle(&mut self) -> Result<(), Refusal> {
        let first = std::mem::take(&mut self.first);
        if first.is_empty() {
            return Err(Refusal::new("the file is empty"));
        }
        let layout = Layout::find(&first)?;
        let chosen = columns::choose(layout, &first, &self.asked)?;
        // Room for as many rows as the longest file has: what is not written to takes no memory, and nothing has to be moved
        // as the table grows, which would take twice as much.
        let length: usize = first.iter().map(|line| line.len() + 1).sum();
        let rows = (MOST_BYTES * first.len() / length.max(1)).min(MOST_ROWS);
        self.table.values = chosen
            .values
            .iter()
            .map(|_| Vec::with_capacity(rows))
            .collect();
        if chosen.time.is_some() {
            self.table.times.reserve_exact(rows);
        }
        self.table.first = vec![f64::NAN; chosen.values.len()];
        self.chosen = Some(chosen);
        first.iter().try_for_each(|line| self.row(line))
    }

    fn row(&mut self, line: &str) -> Result<(), Refusal> {
        let Some(chosen) = &self.chosen else {
            return Ok(());
        };
        if is_comment(line) {
            return Ok(());
        }
        let written = chosen.layout.written;
        if self.table.rows() == 0 && !written.is_row(line)? {
            return Ok(());
        }
        let cells = written.cells(line);
        let cell = |column: usize| {
            cells
                .get(column)
                .map_or(Ok(Cell::Missing), |text| Cell::read(text, written.mark))
        };
        if let Some(column) = chosen.time {
            match cell(column)? {
                Cell::Number(time) | Cell::Moment(time) => self.table.times.push(time),
                _ => {
                    self.table.unread += 1;
                    return Ok(());
                }
            }
        }
        if self.table.rows() >= MOST_ROWS {
            return Err(Refusal::new(format!(
                "the table has more than {MOST_ROWS} rows, the most that is read; cut out the minute of the measurement"
            )));
        }
        for (i, &column) in chosen.values.iter().enumerate() {
            let value = match cell(column)? {
                Cell::Number(value) if value.abs() < 1e12 => {
                    if self.table.first[i].is_nan() {
                        self.table.first[i] = value;
                    }
                    (value - self.table.first[i]) as f32
                }
                _ => f32::NAN,
            };
            self.table.values[i].push(value);
        }
        if let Some(column) = chosen.notes
            && let Cell::Words(words) = cell(column)?
            && self.table.notes.len() < MOST_NOTES
            && self
                .table
                .notes
                .last()
                .is_none_or(|(_, last)| last != words)
        {
            let words = words.chars().filter(|c| !c.is_control()).take(40).collect();
            self.table.notes.push((self.table.rows() - 1, words));
        }
        Ok(())
    }
}
