//! Which column is the time and which are the measurement, and the series that come of them.

use crate::trace::cells::Cell;
use crate::trace::clock::{self, Clock, TimeUnit};
use crate::trace::layout::{Layout, is_comment};
use crate::trace::names::{is_time_by_name, seconds_in, words};
use crate::trace::said;
use crate::trace::sides::{self, Column};
use crate::trace::{Asked, Kind, Refusal};

/// Most columns of measurements that are kept.
const MOST_VALUES: usize = 3;

/// The columns to keep.
#[derive(Debug)]
pub(super) struct Chosen {
    pub(super) layout: Layout,
    pub(super) time: Option<usize>,
    pub(super) unit: TimeUnit,
    pub(super) values: Vec<usize>,
    pub(super) notes: Option<usize>,
    pub(super) remarks: Vec<String>,
}

/// The columns that were kept.
#[derive(Debug, Default)]
pub(super) struct Table {
    /// Times as they are written; empty where there are none.
    pub(super) times: Vec<f64>,
    /// What was measured, less each column's first value; not a number where a cell was empty.
    pub(super) values: Vec<Vec<f32>>,
    /// The first value of each column.
    pub(super) first: Vec<f64>,
    /// Row and words of notes beside the figures.
    pub(super) notes: Vec<(usize, String)>,
    /// Lines that could not be read.
    pub(super) unread: usize,
}

impl Table {
    /// Rows.
    pub(super) fn rows(&self) -> usize {
        self.values.first().map_or(0, Vec::len)
    }
}

/// One column as a series.
#[derive(Debug, Clone)]
pub(super) struct Series {
    pub(super) name: String,
    /// Seconds from the first row.
    pub(super) t: Vec<f64>,
    pub(super) y: Vec<f64>,
}

/// A table that was read.
#[derive(Debug)]
pub(super) struct Read {
    pub(super) kind: Kind,
    pub(super) series: Vec<Series>,
    pub(super) clock: Clock,
    /// Seconds from the first row and words.
    pub(super) notes: Vec<(f64, String)>,
    pub(super) unit: String,
    /// Every column of measurements.
    pub(super) columns: Vec<Column>,
    pub(super) remarks: Vec<String>,
}

/// What one column of the first lines holds.
#[derive(Default, Clone)]
struct Seen {
    numbers: Vec<f64>,
    moments: usize,
    words: usize,
}

impl Seen {
    fn rises(&self) -> bool {
        let rising = self
            .numbers
            .windows(2)
            .filter(|pair| pair[1] >= pair[0])
            .count();
        let (first, last) = (self.numbers.first(), self.numbers.last());
        self.numbers.len() >= 5 && rising * 20 >= (self.numbers.len() - 1) * 19 && first < last
    }

    fn counts(&self) -> bool {
        self.numbers.len() >= 5
            && self
                .numbers
                .windows(2)
                .all(|pair| (pair[1] - pair[0] - 1.0).abs() < 1e-9)
    }

    fn stays(&self) -> bool {
        self.numbers.windows(2).all(|pair| pair[0] == pair[1])
    }
}

/// Chooses the columns.
///
/// # Errors
/// A column that was named is not there, or nothing says when the samples were taken.
pub(super) fn choose(layout: Layout, lines: &[String], asked: &Asked) -> Result<Chosen, Refusal> {
    let mut seen = vec![Seen::default(); layout.columns];
    for line in lines.iter().filter(|line| !is_comment(line)) {
        if !layout.written.is_row(line)? {
            continue;
        }
        for (cell, seen) in layout.written.cells(line).iter().zip(&mut seen) {
            match Cell::read(cell, layout.written.mark)? {
                Cell::Number(number) => seen.numbers.push(number),
                Cell::Moment(_) => seen.moments += 1,
                Cell::Words(_) => seen.words += 1,
                Cell::Date | Cell::Missing => {}
            }
        }
    }
    let mut remarks = vec![format!("Read with {}.", layout.written.said())];
    let (time, unit) = time(&layout, &seen, asked, &mut remarks)?;
    let values = values(&layout, &seen, time, asked, &mut remarks)?;
    let notes = (0..layout.columns)
        .filter(|column| Some(*column) != time && !values.contains(column))
        .find(|column| {
            let name = layout.names[*column].to_lowercase();
            seen[*column].words > 0
                || ["note", "event", "what", "remark"]
                    .iter()
                    .any(|word| name.contains(word))
        });
    Ok(Chosen {
        layout,
        time,
        unit,
        values,
        notes,
        remarks,
    })
}

fn time(
    layout: &Layout,
    seen: &[Seen],
    asked: &Asked,
    remarks: &mut Vec<String>,
) -> Result<(Option<usize>, TimeUnit), Refusal> {
    let by_name = |column: usize| {
        let name = &layout.names[column];
        words(name)
            .iter()
            .skip(1)
            .rev()
            .find_map(|word| seconds_in(word))
            .or_else(|| {
                seconds_in(words(name).first()?.as_str())
                    .filter(|_| words(name).len() == 1 && name.len() > 1)
            })
    };
    let unit_of = |column: usize| match by_name(column) {
        _ if seen[column].moments > seen[column].numbers.len() => TimeUnit::Moments,
        Some(seconds) => TimeUnit::Said(seconds),
        None => TimeUnit::Unsaid,
    };
    if let Some(rate) = asked.rate_hz {
        remarks.push(format!(
            "Samples are taken at the {} a second that were stated.",
            said(rate)
        ));
        if asked.time.is_none() {
            let beside = (0..layout.columns)
                .find(|c| is_time_by_name(&layout.names[*c]) || seen[*c].moments > 0);
            if let Some(beside) = beside {
                remarks.push(format!(
                    "The file's own times (“{}”) are not used.",
                    layout.names[beside]
                ));
                return Ok((None, TimeUnit::Unsaid));
            }
            return Ok((None, TimeUnit::Unsaid));
        }
    }
    if let Some(asked) = &asked.time {
        let (name, unit) = match asked.rsplit_once(':') {
            Some((name, unit)) if seconds_in(unit).is_some() => (name, seconds_in(unit)),
            _ => (asked.as_str(), None),
        };
        let column = layout.column(name)?;
        return Ok((
            Some(column),
            unit.map_or_else(|| unit_of(column), TimeUnit::Said),
        ));
    }
    let found = (0..layout.columns)
        .find(|c| seen[*c].moments > 0)
        .or_else(|| {
            (0..layout.columns).find(|c| {
                layout.has_names
                    && is_time_by_name(&layout.names[*c])
                    && seen[*c].numbers.len() >= 5
            })
        })
        .or_else(|| (layout.columns > 1 && seen[0].rises() && !seen[0].counts()).then_some(0));
    match found {
        Some(column) => {
            remarks.push(format!("Times: “{}”.", layout.names[column]));
            Ok((Some(column), unit_of(column)))
        }
        None => Err(Refusal::new(
            "nothing in the file says when the samples were taken; say how many there are a second (rate)",
        )),
    }
}

fn values(
    layout: &Layout,
    seen: &[Seen],
    time: Option<usize>,
    asked: &Asked,
    remarks: &mut Vec<String>,
) -> Result<Vec<usize>, Refusal> {
    if let Some(asked) = &asked.value {
        return layout.several(asked, MOST_VALUES);
    }
    let usable: Vec<usize> = (0..layout.columns)
        .filter(|c| Some(*c) != time && seen[*c].numbers.len() >= 5)
        .filter(|c| {
            layout.columns == 1 || !(seen[*c].counts() || is_time_by_name(&layout.names[*c]))
        })
        .collect();
    let moving = |c: &&usize| !seen[**c].stays();
    // With coarse steps a sensor may rest at one level until the knock.
    let mut all: Vec<usize> = usable.iter().filter(moving).copied().collect();
    if all.is_empty() {
        all = usable;
    }
    // Columns whose names say which way they measure go before a magnitude, a temperature or a count.
    let sided = |c: &usize| sides::by_name(&layout.names[*c]).is_some();
    let is_sided = all.iter().any(sided);
    let wanted = all.iter().copied().filter(|c| !is_sided || sided(c));
    let kept: Vec<usize> = wanted.take(MOST_VALUES).collect();
    if kept.is_empty() {
        return Err(Refusal::new(
            "no column of measurements was found beside the times; name it (value)",
        ));
    }
    let names = |columns: &[usize]| {
        columns
            .iter()
            .map(|c| format!("“{}”", layout.names[*c]))
            .collect::<Vec<_>>()
            .join(", ")
    };
    remarks.push(format!("Measurements: {}.", names(&kept)));
    let left: Vec<usize> = all.into_iter().filter(|c| !kept.contains(c)).collect();
    if !left.is_empty() {
        remarks.push(format!(
            "Not looked at: {}. Name a column to have it.",
            names(&left)
        ));
    }
    Ok(kept)
}

/// The table as series, with its clock.
///
/// # Errors
/// The times or the measurements cannot be used.
pub(super) fn finish(chosen: Chosen, table: Table, asked: &Asked) -> Result<Read, Refusal> {
    let Chosen {
        layout,
        unit,
        values: columns,
        mut remarks,
        ..
    } = chosen;
    if table.unread > 0 {
        remarks.push(format!(
            "{} lines could not be read and are left out.",
            table.unread
        ));
    }
    let rows = table.rows();
    let unit_name = columns
        .first()
        .and_then(|c| words(&layout.names[*c]).last().cloned())
        .unwrap_or_default();
    let (t, clock) = clock::find(table.times, rows, unit, asked, &mut remarks)?;
    let kind = asked.kind.unwrap_or_else(|| {
        let of_places = ["px", "pix", "pixel", "pixels", "arcsec"].contains(&unit_name.as_str());
        let kind = if of_places || clock.rate_hz < 4.0 {
            Kind::Lean
        } else {
            Kind::Knock
        };
        let said = if kind == Kind::Lean {
            "a star's places while somebody steps (lean)"
        } else {
            "a knock's swing (knock)"
        };
        remarks.push(format!("Taken for {said}; say so if it is not."));
        kind
    });
    let Table {
        mut values,
        mut first,
        notes,
        ..
    } = table;
    let notes = notes
        .into_iter()
        .filter_map(|(row, words)| Some((*t.get(row)?, words)))
        .collect();
    let mut names: Vec<String> = columns.iter().map(|c| layout.names[*c].clone()).collect();
    let mut columns = sides::ways(&names, &first, kind, &mut remarks);
    if kind == Kind::Knock {
        // One column is answered; the others are let go of before anything is worked out.
        let chosen = sides::swinging(&columns, &values, clock.rate_hz, &mut remarks);
        for (n, column) in columns.iter_mut().enumerate() {
            column.used = n == chosen;
        }
        (values, first) = (vec![values.swap_remove(chosen)], vec![first[chosen]]);
        names = vec![names.swap_remove(chosen)];
    }
    let mut series = Vec::new();
    let mut times = Some(t);
    let last = values.len() - 1;
    for (n, ((name, kept), first)) in names.into_iter().zip(values).zip(first).enumerate() {
        // An offset is of no interest for a swing, and costs digits.
        let offset = if kind == Kind::Lean && first.is_finite() {
            first
        } else {
            0.0
        };
        let is_whole = kept.iter().all(|value| value.is_finite());
        let missing = kept.iter().filter(|value| !value.is_finite()).count();
        let all = if n == last {
            times.take()
        } else {
            times.clone()
        };
        let mut at = all.unwrap_or_default();
        if !is_whole {
            let mut values = kept.iter();
            at.retain(|_| values.next().is_some_and(|value| value.is_finite()));
        }
        let y: Vec<f64> = kept
            .iter()
            .filter(|value| value.is_finite())
            .map(|value| f64::from(*value) + offset)
            .collect();
        if missing > 0 {
            remarks.push(format!(
                "“{name}” has no figure in {missing} of {rows} rows; they are left out."
            ));
        }
        if y.len() >= 8 {
            series.push(Series { name, t: at, y });
        }
    }
    if series.is_empty() {
        return Err(Refusal::new(
            "the columns of measurements hold hardly any figures",
        ));
    }
    Ok(Read {
        kind,
        series,
        clock,
        notes,
        unit: unit_name,
        columns,
        remarks,
    })
}
