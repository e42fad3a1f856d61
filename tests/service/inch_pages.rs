//! Pages, sheets and lists of plans in inches, read as their reader reads them: every dimension can be measured with an inch tape or
//! asked for at a counter.
//!
//! `STILLGROUND_READ` names a folder for the text of each, to be read line by line.

use std::time::Duration;

use serde_json::{Value, json};
use stillground_tests::example;
use stillground_tests::routes::of_a_plan;
use stillground_tests::service::{Service, start};

use crate::sheets::tool;

/// Words of the other family: threads, classes of concrete and steel, tube, cement.
const METRIC_PARTS: [&str; 22] = [
    "M8",
    "M10",
    "M12",
    "M16",
    "M20",
    "M24",
    "C20/25",
    "C25/30",
    "C28/35",
    "C30/37",
    "C35/45",
    "C40/50",
    "S235",
    "S275",
    "S355",
    "CHS",
    "A4-70",
    "A4-80",
    "B500",
    "CEM",
    "class 8.8",
    "M22",
];
/// Units of the other system.
const METRIC_UNITS: [&str; 22] = [
    "mm", "cm", "m", "km", "kg", "t", "N", "kN", "MN", "MPa", "kPa", "GPa", "l", "ml", "°C", "K",
    "m²", "m³", "mm²", "mm³", "litre", "litres",
];
/// Lines that name the other family by intention: the question which of the two is sold, and how a unit is typed.
const NAMED: [&str; 2] = ["Metric: tube and plate in millimetres", "Type the unit too"];
/// Finer than a tape's last mark, in: told by thousandths, and felt or read off a gauge.
const FINER_THAN_A_TAPE_IN: f64 = 1.0 / 16.0;

/// What is written for whoever checks the arithmetic: decimals of an inch, and formulas and sources in the units of their standard.
const FOR_A_CHECKER: [&str; 4] = [
    "/plan/checks",
    "/plan/calculations",
    "/plan/engineer",
    "/file.pdf",
];

fn bare() -> Value {
    // A calendar needs a first day; everything else is open.
    json!({ "schema_version": 1, "units": "imperial", "stock": "inch", "work": { "start_date": "2027-05-10" } })
}

/// A page as text: what stands between the tags and in the boxes, a line for each block.
fn text_of(page: &str) -> String {
    let mut text = String::new();
    let mut rest = page;
    while let Some((before, after)) = rest.split_once('<') {
        text.push_str(before);
        for hidden in ["script", "style"] {
            if after.starts_with(hidden) {
                let end = format!("</{hidden}");
                rest = after.split_once(&end).map_or("", |(_, after)| after);
            }
        }
        let (tag, after) = if rest.len() < after.len() {
            rest.split_once('>').unwrap_or((rest, ""))
        } else {
            after.split_once('>').unwrap_or((after, ""))
        };
        let name: String = tag
            .trim_start_matches('/')
            .chars()
            .take_while(|c| c.is_ascii_alphanumeric())
            .collect();
        if ![
            "b", "strong", "em", "a", "span", "sup", "sub", "abbr", "tspan",
        ]
        .contains(&name.as_str())
        {
            text.push('\n');
        }
        if name == "input" && !tag.contains("hidden") {
            for attribute in ["value=\"", "placeholder=\""] {
                if let Some((_, held)) = tag.split_once(attribute) {
                    text.push_str(held.split('"').next().unwrap_or_default());
                    text.push('\n');
                }
            }
        }
        rest = after;
    }
    text.push_str(rest);
    for (coded, plain) in [
        ("&nbsp;", " "),
        ("&#160;", " "),
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&#34;", "\""),
        ("&#39;", "'"),
        ("&amp;", "&"),
        ("&#60;", "<"),
        ("&#62;", ">"),
        ("&#38;", "&"),
    ] {
        text = text.replace(coded, plain);
    }
    text
}

/// Lines with ordinary spaces, without the thin ones between thousands.
fn lines(text: &str) -> impl Iterator<Item = String> {
    let plain = text
        .replace(['\u{a0}', '\u{202f}'], " ")
        .replace('\u{2009}', "");
    let lines: Vec<String> = plain
        .lines()
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .filter(|line| !line.is_empty())
        .collect();
    lines.into_iter()
}

/// A number with what stands behind it.
struct Amount<'a> {
    number: &'a str,
    unit: String,
    before: &'a str,
    after: &'a str,
}

fn amounts(line: &str) -> Vec<Amount<'_>> {
    let mut found = Vec::new();
    let mut last = ' ';
    let mut rest = line.char_indices().peekable();
    while let Some((at, c)) = rest.next() {
        if !c.is_ascii_digit() || last.is_alphanumeric() || ['.', ',', '/'].contains(&last) {
            last = c;
            continue;
        }
        let number: &str = &line[at..];
        let end = number
            .char_indices()
            .find(|&(i, c)| {
                !(c.is_ascii_digit()
                    || ([',', '.'].contains(&c)
                        && number[i + 1..].starts_with(|c: char| c.is_ascii_digit())))
            })
            .map_or(number.len(), |(i, _)| i);
        let (number, after) = number.split_at(end);
        let unit_text = after.strip_prefix(' ').unwrap_or(after);
        let unit: String = match unit_text.chars().next() {
            Some('\u{2033}' | '"') => "in".to_owned(),
            Some('\u{2032}' | '\'') => "ft".to_owned(),
            _ => unit_text
                .chars()
                .take_while(|c| c.is_alphabetic() || ['²', '³', '⁴', '°'].contains(c))
                .collect(),
        };
        found.push(Amount {
            number,
            unit,
            before: &line[..at],
            after,
        });
        while rest.peek().is_some_and(|&(i, _)| i < at + end) {
            rest.next();
        }
        last = '0';
    }
    found
}

/// What no inch tape measures and no counter of this family sells.
fn wrong(line: &str, checker: bool) -> Vec<String> {
    if NAMED.iter().any(|named| line.starts_with(named)) {
        return Vec::new();
    }
    let mut wrong = Vec::new();
    for amount in amounts(line) {
        let decimal = amount.number.contains('.');
        let value: f64 = amount.number.replace(',', "").parse().unwrap_or(f64::NAN);
        let per = amount
            .after
            .trim_start_matches(|c: char| c == ' ' || c.is_alphabetic())
            .starts_with(['/', '²', '³', '⁴']);
        match amount.unit.as_str() {
            _ if checker => {}
            "in" | "inch" | "inches"
                if decimal && !per && value >= FINER_THAN_A_TAPE_IN && !amount.is_wall(value) =>
            {
                wrong.push(format!("decimal inches {}", amount.number));
            }
            "ft" | "feet" | "foot" if decimal && !per => {
                wrong.push(format!("decimal feet {}", amount.number));
            }
            unit if METRIC_UNITS.contains(&unit)
                && !stands_beside(&amount)
                && !amount.is_focal_length(line)
                && !amount.is_reading(line) =>
            {
                wrong.push(format!("{} {unit}", amount.number));
            }
            _ => {}
        }
    }
    for part in METRIC_PARTS {
        let stands = |at: usize| {
            let before = line[..at].chars().next_back();
            let after = line[at + part.len()..].chars().next();
            !before.is_some_and(char::is_alphanumeric) && !after.is_some_and(char::is_alphanumeric)
        };
        if line.match_indices(part).any(|(at, _)| stands(at)) {
            wrong.push(part.to_owned());
        }
    }
    wrong
}

impl Amount<'_> {
    /// The wall of a pipe, which is asked for by its thousandths.
    fn is_wall(&self, value: f64) -> bool {
        let table = include_str!("../../shared/data/tubes.csv");
        let walls = table
            .lines()
            .filter_map(|row| row.rsplit(',').next()?.parse::<f64>().ok());
        let mut walls = walls.filter(|wall| (wall - value).abs() < 1e-9);
        walls.next().is_some()
    }

    /// A telescope's focal length of 1,000 mm, which nobody measures or buys by its inches.
    fn is_focal_length(&self, line: &str) -> bool {
        let plain = line.strip_prefix("Assumed: ").unwrap_or(line);
        self.number == "1000" && self.unit == "mm" && plain == "1000 mm"
    }

    /// A torque that is read in each of the three units that a number can be meant in.
    fn is_reading(&self, line: &str) -> bool {
        let said = format!("{} N m", self.number);
        self.unit == "N"
            && self.after.starts_with(" N m")
            && (line == said || line.starts_with(&format!("{said} ")) || self.number == "180")
    }
}

/// A metric figure in brackets behind an imperial one, for whoever has the other tape.
fn stands_beside(amount: &Amount) -> bool {
    let behind = amount.after.split_once('(').map(|(_, behind)| behind);
    let inches_behind = behind.and_then(|behind| behind.split(')').next());
    let near = amount.after.find('(').is_some_and(|at| at < 12);
    if near
        && inches_behind.is_some_and(|text| {
            [" in", "\u{2033}", "ft"]
                .iter()
                .any(|unit| text.contains(unit))
        })
    {
        return true;
    }
    let opened = amount.before.rfind('(');
    opened.is_some_and(|at| {
        !amount.before[at..].contains(')')
            && amount.before[..at].trim_end().ends_with(|c: char| {
                c.is_alphanumeric() || ['\u{2033}', '\u{2032}', '"', '\''].contains(&c)
            })
    })
}

/// Every address of a plan with its text.
fn read(service: &Service, plan: &Value) -> Vec<(String, String)> {
    let kept = service.create(plan);
    let mut addresses = of_a_plan(&kept.edit);
    addresses.push(format!("/p/{}/record", kept.record));
    let mut read = Vec::new();
    for address in addresses {
        let mut answer = service.get(&address);
        for _ in 0..60 {
            // Busy: it says when to ask again.
            if answer.status != 503 {
                break;
            }
            std::thread::sleep(Duration::from_secs(2));
            answer = service.get(&address);
        }
        if answer.status != 200 {
            continue;
        }
        let kind = answer.header("content-type").to_owned();
        let text = if kind.contains("pdf") {
            tool("pdftotext", &["-layout"], &answer.body)
        } else if kind.contains("html") || kind.contains("svg") {
            text_of(&answer.text())
        } else if kind.contains("text") || kind.contains("dxf") || kind.contains("csv") {
            answer.text().replace("\r\n ", "")
        } else {
            continue;
        };
        let name = address
            .replace(&kept.edit, "EDIT")
            .replace(&kept.record, "RECORD");
        read.push((name, text));
    }
    read
}

#[test]
fn nothing_of_a_plan_in_inches_is_out_of_reach_of_a_tape_or_a_counter() {
    let service = start();
    let mut left = Vec::new();
    let inch_garden = serde_json::to_value(example("inch-garden")).unwrap();
    for (name, plan) in [("inch-garden", inch_garden), ("bare", bare())] {
        let read = read(&service, &plan);
        assert!(read.len() >= 50, "{name}: {} pages", read.len());
        for kind in [
            "/plan.pdf",
            "/file.pdf",
            "/template.pdf",
            "/template.dxf",
            "/materials.csv",
            "/schedule.ics",
        ] {
            assert!(
                read.iter().any(|(address, _)| address.ends_with(kind)),
                "{name}: {kind}"
            );
        }
        for (address, text) in read {
            if let Some(folder) = std::env::var_os("STILLGROUND_READ") {
                let file = format!("{name}{}", address.replace('/', "_"));
                let shown: Vec<String> = lines(&text).collect();
                std::fs::write(std::path::Path::new(&folder).join(file), shown.join("\n")).unwrap();
            }
            let checker = FOR_A_CHECKER.iter().any(|end| address.ends_with(end));
            for line in lines(&text) {
                for what in wrong(&line, checker) {
                    left.push(format!("{name} {address}: {what}  ← {line}"));
                }
            }
        }
    }
    left.sort();
    left.dedup();
    assert!(left.is_empty(), "{} lines\n{}", left.len(), left.join("\n"));
}

#[test]
fn the_reading_finds_what_it_is_for() {
    for line in [
        "a plate of 10.63 in",
        "Embedment 4.921″",
        "1.5 ft of tube",
        "stud M16",
        "a gap of 25 mm",
        "C30/37",
        "a torque of 60 N m",
    ] {
        assert_eq!(
            wrong(line, false).len(),
            1,
            "{line}: {:?}",
            wrong(line, false)
        );
    }
    for line in [
        "3′ 6 1/2″ and 10 5/8″",
        "8 5/8″ × 0.322″ pipe (NPS 8 schedule 40)",
        "within 0.004 in",
        "2″ (50.8 mm) at full size",
        "12.5 ft/s and 3.2 ft²",
        "4,000 psi, 5/8″-11",
        "120 lbf ft",
    ] {
        assert!(
            wrong(line, false).is_empty(),
            "{line}: {:?}",
            wrong(line, false)
        );
    }
}
