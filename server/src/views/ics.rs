//! The schedule as a calendar.

use icalendar::{Calendar, Component, Event, Property};
use stillground::design::Design;
use stillground::rules::calendar::days_after;
use stillground::stages::schedule::Task;

/// Hour of the clock at which a working day begins.
const MORNING_H: f64 = 8.0;
/// Longest line, bytes, without its end (RFC 5545, 3.1).
const MOST_BYTES: usize = 75;
/// Hours of a day.
const DAY_H: f64 = 24.0;

/// A task that an earlier revision had and this one has not.
#[derive(Debug, Clone)]
pub struct Gone {
    /// The task as it was.
    pub task: Task,
    /// The day on which that revision began, year-month-day.
    pub start: String,
}

/// The schedule as an iCalendar file (RFC 5545) that begins on `start`, year-month-day: the same bytes each time.
///
/// A task keeps its name from revision to revision and carries the revision as its sequence, so that a calendar that
/// read an earlier one moves the task instead of adding another; one of `gone`, which an earlier revision had, is cancelled
/// at its old place. Work stands in local time without a zone, since it is
/// done where the pier stands; a wait takes whole days and leaves them free. A start that is no date gives no tasks.
#[must_use]
pub fn schedule(
    design: &Design,
    gone: &[Gone],
    plan_id: &str,
    revision: u32,
    start: &str,
) -> String {
    let mut calendar = Calendar::empty();
    for (key, value) in [
        ("VERSION", "2.0"),
        ("PRODID", "-//Stillground//Schedule//EN"),
        ("CALSCALE", "GREGORIAN"),
        ("METHOD", "PUBLISH"),
    ] {
        calendar.append_property(Property::new(key, value));
    }
    for task in &design.schedule {
        let words = (task.title.as_str(), description(design, task));
        if let Some(mut event) = event(task, words, plan_id, revision, start) {
            calendar.push(event.done());
        }
    }
    for Gone { task, start } in gone {
        let words = (
            task.title.as_str(),
            "The plan was changed and has this task no longer.".to_owned(),
        );
        if let Some(mut event) = event(task, words, plan_id, revision, start) {
            calendar.push(event.add_property("STATUS", "CANCELLED").done());
        }
    }
    folded(&calendar.to_string().replace("\r\n ", ""))
}

/// Lines folded at 75 bytes, never within a character; the library's own folding lets a last piece grow to 76.
fn folded(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 21 / 20);
    for line in text.split_inclusive("\r\n") {
        let mut used = 0;
        for c in line.chars() {
            if used + c.len_utf8() > MOST_BYTES && !matches!(c, '\r' | '\n') {
                out.push_str("\r\n ");
                used = 1;
            }
            out.push(c);
            used += c.len_utf8();
        }
    }
    out
}

fn event(
    task: &Task,
    (title, description): (&str, String),
    plan_id: &str,
    revision: u32,
    start: &str,
) -> Option<Event> {
    let mut event = Event::new();
    event
        .uid(&format!("{}.{}@stillground", task.id, plain(plan_id)))
        .add_property("DTSTAMP", format!("{}T000000Z", compact(start, 0)?))
        .sequence(revision)
        .summary(title)
        .description(&description);
    if task.wait {
        event.append_property(date("DTSTART", start, day_of(task.earliest_h))?);
        event.append_property(date("DTEND", start, day_of(task.done_h) + 1)?);
        event.add_property("TRANSP", "TRANSPARENT");
    } else {
        event.add_property("DTSTART", moment(start, task.earliest_h)?);
        event.add_property("DTEND", moment(start, task.done_h)?);
        event.add_property("TRANSP", "OPAQUE");
    }
    Some(event)
}

/// A name without signs that a calendar might trip over: a plan printed from a file is named by its title.
fn plain(name: &str) -> String {
    name.chars()
        .map(|c| if c.is_alphanumeric() { c } else { '-' })
        .collect()
}

/// Why it is done then, and what can hurt at it.
fn description(design: &Design, task: &Task) -> String {
    let cautions = design
        .cautions
        .iter()
        .filter(|caution| !task.wait && caution.when == task.part);
    let lines: Vec<&str> = std::iter::once(task.why.as_str())
        .chain(cautions.map(|caution| caution.text.as_str()))
        .collect();
    lines
        .iter()
        .filter(|line| !line.is_empty())
        .copied()
        .collect::<Vec<_>>()
        .join("\n\n")
}

fn day_of(hour: f64) -> i64 {
    (hour / DAY_H + 1e-9).floor().clamp(0.0, 100_000.0) as i64
}

fn compact(start: &str, days: i64) -> Option<String> {
    days_after(start, days).map(|date| date.replace('-', ""))
}

fn date(key: &str, start: &str, days: i64) -> Option<Property> {
    let mut property = Property::new(key, compact(start, days)?);
    Some(property.add_parameter("VALUE", "DATE").done())
}

/// Local date and time of an hour of the schedule, whose days begin in the morning.
fn moment(start: &str, hour: f64) -> Option<String> {
    let minutes = ((hour + MORNING_H) * 60.0).round();
    let days = (minutes / (DAY_H * 60.0)).floor();
    let left = minutes - days * DAY_H * 60.0;
    let (hours, minutes) = ((left / 60.0).floor(), left % 60.0);
    Some(format!(
        "{}T{hours:02.0}{minutes:02.0}00",
        compact(start, days.clamp(0.0, 100_000.0) as i64)?
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::decided::design_plan;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    fn design() -> Design {
        design_plan(&SitePlan::unknown(), &NoShelf).unwrap()
    }

    #[test]
    fn the_same_plan_gives_the_same_bytes() {
        let design = design();
        assert_eq!(
            schedule(&design, &[], "a1", 3, "2027-04-19"),
            schedule(&design, &[], "a1", 3, "2027-04-19")
        );
    }

    #[test]
    fn a_changed_plan_updates_its_tasks_in_place() {
        let design = design();
        let names = |text: &str| {
            text.lines()
                .filter(|line| line.starts_with("UID:"))
                .map(str::to_owned)
                .collect::<Vec<_>>()
        };
        let (first, second) = (
            schedule(&design, &[], "a1", 3, "2027-04-19"),
            schedule(&design, &[], "a1", 4, "2027-05-03"),
        );
        assert_eq!(names(&first), names(&second));
        assert_eq!(names(&first).len(), design.schedule.len());
        assert!(first.contains("SEQUENCE:3\r\n") && second.contains("SEQUENCE:4\r\n"));
    }

    #[test]
    fn a_task_that_is_gone_is_cancelled_under_its_own_name() {
        let mut design = design();
        let task = design.schedule.remove(0);
        let uid = format!("UID:{}.a1@stillground", task.id);
        let text = schedule(
            &design,
            &[Gone {
                task,
                start: "2027-04-19".to_owned(),
            }],
            "a1",
            2,
            "2027-05-03",
        );
        let event = text
            .split("BEGIN:VEVENT")
            .find(|event| event.contains(&uid))
            .unwrap();
        assert!(
            event.contains("STATUS:CANCELLED\r\n")
                && event.contains("SEQUENCE:2\r\n")
                && event.contains("DTSTART:20270419")
        );
        assert_eq!(text.matches("STATUS:CANCELLED").count(), 1);
    }

    #[test]
    fn a_title_makes_a_plain_name() {
        assert!(
            schedule(&design(), &[], "Quarry; Lane", 0, "2027-04-19")
                .contains("UID:pour.Quarry--Lane@stillground\r\n")
        );
    }

    #[test]
    fn work_has_hours_and_a_wait_has_days() {
        let text = schedule(&design(), &[], "a1", 1, "2027-04-19");
        assert!(text.contains("DTSTART:20270419T080000\r\n"), "{text}");
        assert!(text.contains("DTSTART;VALUE=DATE:20270420\r\n"), "{text}");
        assert!(text.starts_with("BEGIN:VCALENDAR\r\n") && text.ends_with("END:VCALENDAR\r\n"));
    }

    #[test]
    fn no_line_is_longer_than_the_format_allows_and_unfolding_gives_the_words_back() {
        let design = design();
        let text = schedule(&design, &[], "a1", 1, "2027-04-19");
        assert!(text.matches("BEGIN:VEVENT").count() > 20, "{text}");
        for line in text.split("\r\n") {
            assert!(line.len() <= 75, "{} bytes: {line}", line.len());
        }
        let whole = text.replace("\r\n ", "");
        for task in &design.schedule {
            let title = task.title.replace(',', "\\,").replace(';', "\\;");
            assert!(whole.contains(&title), "{title}");
        }
    }

    #[test]
    fn no_start_no_tasks() {
        assert!(!schedule(&design(), &[], "a1", 1, "soon").contains("VEVENT"));
    }
}
