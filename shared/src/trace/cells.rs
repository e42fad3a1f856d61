//! One cell of a table: a number, a moment, nothing, or words.

use crate::trace::Refusal;

/// What stands in a cell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Cell<'a> {
    /// A finite number.
    Number(f64),
    /// A moment: seconds, of the day or since 1970.
    Moment(f64),
    /// A date by itself.
    Date,
    /// Nothing, or a word for it.
    Missing,
    /// Anything else.
    Words(&'a str),
}

/// Years in which a record can have been made.
const YEARS: std::ops::RangeInclusive<i64> = 1990..=2100;

impl<'a> Cell<'a> {
    /// Reads a cell with this decimal mark.
    ///
    /// # Errors
    /// A date in a year in which nobody recorded anything.
    pub(super) fn read(text: &'a str, mark: char) -> Result<Self, Refusal> {
        let text = text.trim().trim_matches('"').trim();
        if is_missing(text) {
            return Ok(Self::Missing);
        }
        if let Some(number) = number(text, mark) {
            return Ok(if number.is_finite() {
                Self::Number(number)
            } else {
                Self::Missing
            });
        }
        moment(text).map(|found| found.unwrap_or(Self::Words(text)))
    }

    /// A number, a moment or a date; not nothing and not words.
    pub(super) fn is_figure(self) -> bool {
        matches!(self, Self::Number(_) | Self::Moment(_) | Self::Date)
    }
}

fn is_missing(text: &str) -> bool {
    text.is_empty()
        || [
            "nan", "na", "n/a", "null", "none", "-", "--", "inf", "-inf", "#n/a",
        ]
        .iter()
        .any(|word| text.eq_ignore_ascii_case(word))
}

/// A number; what begins with a digit, a sign or the mark, so that `inf` and `nan` are no numbers.
pub(super) fn number(text: &str, mark: char) -> Option<f64> {
    let first = text.chars().next()?;
    if !(first.is_ascii_digit() || matches!(first, '+' | '-' | '.' | ',')) || text.len() > 40 {
        return None;
    }
    if mark == '.' {
        return text.parse().ok();
    }
    if text.contains('.') {
        return None;
    }
    text.replacen(mark, ".", 1).parse().ok()
}

fn moment(text: &str) -> Result<Option<Cell<'static>>, Refusal> {
    if !text.starts_with(|c: char| c.is_ascii_digit()) || text.len() > 40 {
        return Ok(None);
    }
    let (day, clock) = match text.split_once(['T', ' ']) {
        Some((day, clock)) => (Some(day), Some(clock.trim())),
        None if text.contains(':') => (None, Some(text)),
        None => (Some(text), None),
    };
    let days = match day.map(date) {
        None => None,
        Some(Some(days)) => Some(days?),
        Some(None) => return Ok(None),
    };
    Ok(match (days, clock.map(of_day)) {
        (_, Some(None)) | (None, None) => None,
        (Some(_), None) => Some(Cell::Date),
        (days, Some(Some(seconds))) => Some(Cell::Moment(days.unwrap_or(0.0) * 86_400.0 + seconds)),
    })
}

/// Seconds of the day.
fn of_day(clock: &str) -> Option<f64> {
    let clock = clock.trim_end_matches('Z');
    let clock = clock.split_once('+').map_or(clock, |(clock, _)| clock);
    let mut parts = clock.split(':');
    let hours: f64 = whole(parts.next()?)?;
    let minutes: f64 = whole(parts.next()?)?;
    let seconds = match parts.next() {
        Some(seconds) => number(seconds, if seconds.contains(',') { ',' } else { '.' })?,
        None => 0.0,
    };
    let fits = parts.next().is_none() && hours < 24.0 && minutes < 60.0;
    (fits && (0.0..61.0).contains(&seconds)).then_some(hours * 3600.0 + minutes * 60.0 + seconds)
}

fn whole(digits: &str) -> Option<f64> {
    let is_whole =
        !digits.is_empty() && digits.len() <= 2 && digits.bytes().all(|b| b.is_ascii_digit());
    is_whole.then(|| digits.parse().ok()).flatten()
}

/// Days since 1970 of a date with its year first or last; none where it is no date.
fn date(text: &str) -> Option<Result<f64, Refusal>> {
    let parts: Vec<&str> = text.split(['-', '.', '/']).collect();
    let [a, b, c] = <[&str; 3]>::try_from(parts).ok()?;
    let read = |part: &str, most: usize| -> Option<i64> {
        let is_whole =
            !part.is_empty() && part.len() <= most && part.bytes().all(|b| b.is_ascii_digit());
        is_whole.then(|| part.parse().ok()).flatten()
    };
    let (year, month, day) = if a.len() == 4 {
        (read(a, 4)?, read(b, 2)?, read(c, 2)?)
    } else if c.len() == 4 {
        let (first, second) = (read(a, 2)?, read(b, 2)?);
        // Month first only where nothing else can be meant; within one night it makes no difference.
        if second > 12 {
            (read(c, 4)?, first, second)
        } else {
            (read(c, 4)?, second, first)
        }
    } else {
        return None;
    };
    if !((1..=12).contains(&month) && (1..=31).contains(&day)) {
        return None;
    }
    if !YEARS.contains(&year) {
        return Some(Err(Refusal::new(format!(
            "the file has a date in the year {year}; its clock was not set. Give the samples a second instead (rate), or \
             mend the dates"
        ))));
    }
    Some(Ok(since_1970(year, month, day)))
}

/// Days from 1 January 1970, by the civil calendar.
fn since_1970(year: i64, month: i64, day: i64) -> f64 {
    let year = if month <= 2 { year - 1 } else { year };
    let era = year.div_euclid(400);
    let of_era = year - era * 400;
    let of_year = (153 * ((month + 9) % 12) + 2) / 5 + day - 1;
    (era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719_468) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_by_their_decimal_mark() {
        assert_eq!(Cell::read(" -1.5e-3", '.'), Ok(Cell::Number(-1.5e-3)));
        assert_eq!(Cell::read("\"0,25\"", ','), Ok(Cell::Number(0.25)));
        assert_eq!(Cell::read("nan", '.'), Ok(Cell::Missing));
        assert_eq!(Cell::read("1e999", '.'), Ok(Cell::Missing));
        assert_eq!(Cell::read("on", '.'), Ok(Cell::Words("on")));
    }

    /// Days counted apart: 29 November 2026 is day 20 786 after 1 January 1970.
    #[test]
    fn moments_are_seconds() {
        assert_eq!(Cell::read("22:47:01.5", '.'), Ok(Cell::Moment(82_021.5)));
        let whole = 20_786.0 * 86_400.0 + 3661.0;
        for written in [
            "2026-11-29T01:01:01Z",
            "29.11.2026 01:01:01",
            "11/29/2026 01:01:01",
        ] {
            assert_eq!(
                Cell::read(written, '.'),
                Ok(Cell::Moment(whole)),
                "{written}"
            );
        }
        assert!(Cell::read("1900-01-01 00:00:00", '.').is_err());
    }
}
