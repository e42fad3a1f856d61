//! Days of the calendar: the engine has no clock, and a schedule counts from a stated day.
//! Gregorian calendar, ISO 8601 notation year-month-day.

use std::ops::RangeInclusive;

use jiff::civil::{self, Date};
use jiff::{SignedDuration, Span};

use crate::source::Source;

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory("ISO 8601", "2004", "calendar date");

/// The day from which the days of a Julian day are counted here, and that day's beginning.
const EPOCH: (Date, f64) = (civil::date(1970, 1, 1), 2_440_587.5);
/// Years of which a plan may speak.
const YEARS: RangeInclusive<i16> = 1900..=2999;

/// Whether a text is a day of the Gregorian calendar between 1900 and 2999, written year-month-day.
///
/// # Source
/// ISO 8601, the extended format of a calendar date.
pub fn is_date(text: &str) -> bool {
    day(text).is_some()
}

/// A day of the calendar so many days after another, both written year-month-day.
///
/// # Source
/// Gregorian calendar: a leap year every fourth year, not every hundredth, but every four-hundredth.
///
/// # Valid for
/// Days that the plan accepts (1900 to 2999); none for a text that is no date.
///
/// # Example
/// ```
/// use stillground::rules::calendar::days_after;
/// assert_eq!(days_after("2028-02-28", 2).as_deref(), Some("2028-03-01"));
/// ```
pub fn days_after(date: &str, days: i64) -> Option<String> {
    let days = Span::new().try_days(days).ok()?;
    Some(day(date)?.checked_add(days).ok()?.to_string())
}

/// Julian day of a date's beginning; it ends in one half.
///
/// # Source
/// Meeus 1998, chapter 7: the day 1970-01-01 begins at 2 440 587.5.
///
/// # Valid for
/// Days that the plan accepts.
///
/// # Example
/// ```
/// use stillground::rules::calendar::julian_day;
/// assert_eq!(julian_day("2000-01-01"), Some(2_451_544.5));
/// ```
pub fn julian_day(date: &str) -> Option<f64> {
    let (epoch, julian_day) = EPOCH;
    Some(julian_day + f64::from(from_to(epoch, day(date)?)?))
}

/// A date as a decimal year, the share of the year that has passed at its beginning added.
///
/// # Source
/// World Magnetic Model 2025, the reading of a date as a decimal year.
///
/// # Valid for
/// Days that the plan accepts.
pub fn decimal_year(date: &str) -> Option<f64> {
    let day = day(date)?;
    let gone = f64::from(day.day_of_year() - 1) / f64::from(day.days_in_year());
    Some(f64::from(day.year()) + gone)
}

/// Date, hours, minutes and seconds of a Julian day, to the nearest second.
///
/// # Source
/// Gregorian calendar; a Julian day begins at noon.
///
/// # Valid for
/// Days that the plan accepts.
pub fn moment(julian_day: f64) -> (String, i8, i8, i8) {
    let (epoch, beginning) = EPOCH;
    let seconds = ((julian_day - beginning) * 86_400.0).round() as i64;
    let moment = epoch
        .at(0, 0, 0, 0)
        .saturating_add(SignedDuration::from_secs(seconds));
    (
        moment.date().to_string(),
        moment.hour(),
        moment.minute(),
        moment.second(),
    )
}

/// Days from one day of the calendar to another, negative when the other comes first.
///
/// # Source
/// Gregorian calendar, as [`days_after`].
///
/// # Valid for
/// As [`days_after`]; none where either is no date.
pub fn days_between(from: &str, to: &str) -> Option<i64> {
    from_to(day(from)?, day(to)?).map(i64::from)
}

fn from_to(from: Date, to: Date) -> Option<i32> {
    Some(to.since(from).ok()?.get_days())
}

/// The day that a text names; none where it is written in another way or lies outside the years.
fn day(text: &str) -> Option<Date> {
    let written = text.as_bytes();
    let is_whole = written.len() == 10 && written[4] == b'-' && written[7] == b'-';
    let day: Date = is_whole.then(|| text.parse().ok()).flatten()?;
    YEARS.contains(&day.year()).then_some(day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_counted_over_months_and_leap_years() {
        for (from, days, to) in [
            ("2027-04-19", 0, "2027-04-19"),
            ("2027-12-31", 1, "2028-01-01"),
            ("2028-02-28", 1, "2028-02-29"),
            ("2027-02-28", 1, "2027-03-01"),
            ("2100-02-28", 1, "2100-03-01"),
            ("2000-02-28", 1, "2000-02-29"),
            ("2027-01-01", 365, "2028-01-01"),
            ("1970-01-01", 20_000, "2024-10-04"),
        ] {
            assert_eq!(
                days_after(from, days).as_deref(),
                Some(to),
                "{from} + {days}"
            );
        }
        assert_eq!(days_after("2027-02-30", 1), None);
        assert_eq!(days_between("2028-02-28", "2028-03-01"), Some(2));
        assert_eq!(days_between("2028-03-01", "2027-12-31"), Some(-61));
    }

    #[test]
    fn days_are_numbered_and_told_again() {
        assert_eq!(julian_day("1987-04-10"), Some(2_446_895.5));
        assert_eq!(decimal_year("2026-01-01"), Some(2026.0));
        assert!((decimal_year("2026-07-02").unwrap() - 2_026.498_630).abs() < 1e-6);
        assert_eq!(
            moment(2_461_041.5 + 0.75),
            ("2026-01-01".to_owned(), 18, 0, 0)
        );
        assert_eq!(
            moment(2_461_041.5 - 0.000_001),
            ("2026-01-01".to_owned(), 0, 0, 0)
        );
    }

    #[test]
    fn only_days_of_the_calendar_are_dates() {
        assert!(is_date("2028-02-29"));
        for text in [
            "2027-02-29",
            "2027-13-01",
            "27-01-01",
            "2027-04-31",
            "tomorrow!!",
            "2027-1-001",
            "+027-01-01",
            "2027-W16-1",
            "1899-12-31",
            "3000-01-01",
        ] {
            assert!(!is_date(text), "{text}");
        }
    }

    #[test]
    fn four_centuries_run_without_a_gap() {
        let mut seen = "1999-12-31".to_owned();
        for day in 0..146_097 {
            let next = days_after("2000-01-01", day).unwrap();
            assert!(next > seen, "{seen} then {next}");
            seen = next;
        }
        assert_eq!(
            days_after("2000-01-01", 146_097).as_deref(),
            Some("2400-01-01")
        );
        assert_eq!(days_between("2000-01-01", "2400-01-01"), Some(146_097));
    }
}
