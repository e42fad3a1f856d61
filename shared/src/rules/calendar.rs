//! Days of the calendar: the engine has no clock, and a schedule counts from a stated day.
//! Gregorian calendar, ISO 8601 notation year-month-day.

use crate::source::Source;

/// Where this comes from.
pub const SOURCE: Source = Source::from_memory("ISO 8601", "2004", "calendar date");

/// Lengths of the months from March on, so that the leap day is the last of a year.
const FROM_MARCH: [i64; 12] = [31, 30, 31, 30, 31, 31, 30, 31, 30, 31, 31, 29];

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
    let (year, month, day) = parts(date)?;
    Some(text_of(day_number(year, month, day) + days))
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
    let (year, month, day) = parts(date)?;
    Some(2_440_587.5 + (day_number(year, month, day) - day_number(1970, 1, 1)) as f64)
}

/// A date as a decimal year, the share of the year that has passed at its beginning added.
///
/// # Source
/// World Magnetic Model 2025, the reading of a date as a decimal year.
///
/// # Valid for
/// Days that the plan accepts.
pub fn decimal_year(date: &str) -> Option<f64> {
    let (year, month, day) = parts(date)?;
    let (start, end) = (day_number(year, 1, 1), day_number(year + 1, 1, 1));
    Some(year as f64 + (day_number(year, month, day) - start) as f64 / (end - start) as f64)
}

/// Date, hours, minutes and seconds of a Julian day, to the nearest second.
///
/// # Source
/// Gregorian calendar; a Julian day begins at noon.
pub fn moment(julian_day: f64) -> (String, u32, u32, u32) {
    let seconds = ((julian_day - 2_440_587.5) * 86_400.0).round() as i64;
    let (day, second) = (
        seconds.div_euclid(86_400),
        seconds.rem_euclid(86_400) as u32,
    );
    (
        text_of(day_number(1970, 1, 1) + day),
        second / 3600,
        second / 60 % 60,
        second % 60,
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
    let number = |date| parts(date).map(|(year, month, day)| day_number(year, month, day));
    Some(number(to)? - number(from)?)
}

fn parts(date: &str) -> Option<(i64, i64, i64)> {
    if !crate::site_plan::work::is_date(date) {
        return None;
    }
    let number =
        |range: std::ops::Range<usize>| date.get(range).and_then(|text| text.parse::<i64>().ok());
    Some((number(0..4)?, number(5..7)?, number(8..10)?))
}

/// Days since the first of March of the year 0, for years of Gregorian reckoning that begin in March.
fn day_number(year: i64, month: i64, day: i64) -> i64 {
    let (year, months) = if month > 2 {
        (year, month - 3)
    } else {
        (year - 1, month + 9)
    };
    let before: i64 = FROM_MARCH
        .iter()
        .take(usize::try_from(months).unwrap_or(0))
        .sum();
    365 * year + year / 4 - year / 100 + year / 400 + before + day - 1
}

/// The date of a day number.
fn text_of(number: i64) -> String {
    let mut year = number * 400 / 146_097;
    while day_number(year + 1, 3, 1) <= number {
        year += 1;
    }
    while day_number(year, 3, 1) > number {
        year -= 1;
    }
    let mut left = number - day_number(year, 3, 1);
    let mut month = 0;
    for length in FROM_MARCH {
        if left < length {
            break;
        }
        left -= length;
        month += 1;
    }
    let (year, month) = if month < 10 {
        (year, month + 3)
    } else {
        (year + 1, month - 9)
    };
    format!("{year:04}-{month:02}-{:02}", left + 1)
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
    }
}
