//! Work: when it is done, in what weather, and by how many.

use crate::field::{Problem, section};
use crate::path;
use crate::site_plan::{HOUSE, SitePlan};
use crate::source::Source;

section! {
    /// Work.
    pub struct Work in work {
        numbers {
            /// Mean temperature of air and ground while the concrete hardens.
            temperature_c: Celsius, -20.0..=45.0, "below -20 and above 45 nobody pours",
                asks "How warm is it while the concrete hardens?",
                hint "The mean of days and nights. In the cold, everything waits longer.",
                takes 10.0, because "a cool spring or autumn",
                changes "days before drilling and loading", from Source::judgement("cool season");
            /// Hours by which the clocks of the place are ahead of universal time (UTC) on the start day, summer time included.
            utc_offset_h: Hour, -12.0..=14.0, "clocks anywhere are between 12 hours behind and 14 hours ahead of universal time",
                asks "Hours that your clocks are ahead of universal time (UTC)",
                hint "On the start day, summer time included; behind is negative, for instance -5. For north by the sun and the pole star.",
                unknown "Times for finding north are given in universal time alone.";
        }
        counts {
            /// People at work.
            people: 1..=20, "from one person to a large gang",
                asks "How many of you are there?",
                hint "It sets how long the digging and pouring take.",
                takes 2.0, because "lifting and pouring ask for two",
                changes "how long the work takes", from HOUSE;
        }
        others {
            /// Day on which digging starts, year-month-day.
            start_date: String,
                asks "On which day do you start digging?",
                hint "Write year-month-day, for instance 2027-04-19. The schedule then shows dates.",
                unknown "The schedule counts days from the first.";
        }
    }
}

/// A start day that is no date.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let Some(date) = &plan.work.start_date else {
        return Vec::new();
    };
    if is_date(date) {
        return Vec::new();
    }
    vec![Problem {
        fields: vec![path!(work.start_date).into()],
        value: None,
        said: "This is no day of the calendar; write year-month-day, for instance 2027-04-19."
            .into(),
    }]
}

/// Whether a text is a day of the Gregorian calendar between 1900 and 2999, written year-month-day.
pub fn is_date(text: &str) -> bool {
    parts(text).is_some()
}

fn parts(text: &str) -> Option<(u32, u32, u32)> {
    let bytes = text.as_bytes();
    if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' || !text.is_ascii() {
        return None;
    }
    if !text
        .bytes()
        .enumerate()
        .all(|(i, byte)| matches!(i, 4 | 7) || byte.is_ascii_digit())
    {
        return None;
    }
    let (year, month, day) = (
        text[0..4].parse().ok()?,
        text[5..7].parse().ok()?,
        text[8..10].parse().ok()?,
    );
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return None,
    };
    ((1900..=2999).contains(&year) && (1..=days).contains(&day)).then_some((year, month, day))
}

#[cfg(test)]
mod tests {
    use super::is_date;

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
        ] {
            assert!(!is_date(text), "{text}");
        }
    }
}
