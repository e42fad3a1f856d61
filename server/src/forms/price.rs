//! What a person types as a price: figures only, since the unit stands beside the box.

use stillground::site_plan::prices::price_problem;

/// Longest text that is repeated in an answer.
const SHOWN: usize = 40;

/// Reads a price; none for an empty box. Read digit by digit, so that what was typed is what is kept.
///
/// # Errors
/// A whole sentence for what is no price, or can be read in two ways.
pub fn read(text: &str) -> Result<Option<f64>, String> {
    let plain: String = text
        .trim()
        .chars()
        .filter(|c| !matches!(c, ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}' | '\'' | '’'))
        .collect();
    if plain.is_empty() {
        return Ok(None);
    }
    let (sign, digits) = match plain.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => ("-", rest),
        None => ("", plain.as_str()),
    };
    let shown: String = text.trim().chars().take(SHOWN).collect();
    let no_price = || {
        format!(
            "“{shown}” is not a price this page can read. Write figures only, for instance 145.50, or leave it empty."
        )
    };
    if !digits
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '.' | ','))
    {
        return Err(no_price());
    }
    let figure = match separated(digits) {
        Reading::One(figure) => figure,
        Reading::Two(whole, part) => {
            return Err(format!(
                "“{shown}” can be read in two ways. Write {whole} or {part}0, whichever you mean."
            ));
        }
        Reading::None => return Err(no_price()),
    };
    let price: f64 = format!("{sign}{figure}").parse().map_err(|_| no_price())?;
    price_problem(price).map_or(Ok(Some(price)), Err)
}

enum Reading {
    /// Digits with a point.
    One(String),
    /// As a whole number, and with a decimal mark.
    Two(String, String),
    None,
}

fn separated(run: &str) -> Reading {
    let marks: Vec<char> = run.chars().filter(|c| !c.is_ascii_digit()).collect();
    let Some(&last) = marks.last() else {
        return Reading::One(run.to_owned());
    };
    let same = marks.iter().all(|mark| *mark == last);
    match marks.len() {
        1 => one_mark(run, last),
        _ if same => grouped(run, last).map_or(Reading::None, Reading::One),
        _ => match run.rsplit_once(last) {
            Some((before, after)) if !before.contains(last) && !after.is_empty() => {
                let other = if last == '.' { ',' } else { '.' };
                grouped(before, other).map_or(Reading::None, |whole| {
                    Reading::One(format!("{whole}.{after}"))
                })
            }
            _ => Reading::None,
        },
    }
}

/// A mark before exactly three digits may part thousands or decimals.
fn one_mark(run: &str, mark: char) -> Reading {
    let (before, after) = run.split_once(mark).unwrap_or((run, ""));
    if before.is_empty() || after.is_empty() {
        return Reading::None;
    }
    if after.len() == 3 && before.len() <= 3 && !before.starts_with('0') {
        return Reading::Two(format!("{before}{after}"), format!("{before}.{after}"));
    }
    Reading::One(format!("{before}.{after}"))
}

/// Whole thousands with marks between them.
fn grouped(run: &str, mark: char) -> Option<String> {
    let groups: Vec<&str> = run.split(mark).collect();
    let (first, rest) = groups.split_first()?;
    let fits = (1..=3).contains(&first.len()) && rest.iter().all(|group| group.len() == 3);
    (fits
        && groups
            .iter()
            .all(|group| group.bytes().all(|byte| byte.is_ascii_digit())))
    .then(|| groups.concat())
}

#[cfg(test)]
mod tests {
    use super::read;

    #[test]
    fn prices_are_read_as_people_write_them() {
        for (text, price) in [
            ("145.50", 145.5),
            ("145,50", 145.5),
            ("1 234,50", 1234.5),
            ("1,234.50", 1234.5),
            ("1.234,50", 1234.5),
            ("1'234.50", 1234.5),
            ("1.234.567", 1_234_567.0),
            ("0.045", 0.045),
            ("0", 0.0),
            (" 12 ", 12.0),
        ] {
            assert_eq!(read(text), Ok(Some(price)), "{text}");
        }
        assert_eq!(read("  "), Ok(None));
    }

    #[test]
    fn what_is_no_price_is_said_and_what_has_two_readings_is_asked() {
        for text in [
            "abc", "1e12", "NaN", "inf", "=1+1", "12 EUR", ".", ",5", "5.", "1,23,4", "1.2,3.4",
            "--5", "٣",
        ] {
            assert!(
                read(text).is_err_and(|said| said.contains("is not a price")),
                "{text}"
            );
        }
        for text in ["-5", "1000000000000", "1000000000.01"] {
            assert!(
                read(text).is_err_and(|said| said.contains("outside the range of 0 to")),
                "{text}"
            );
        }
        assert!(read("0.00001").is_err_and(|said| said.contains("four decimals")));
        for text in ["1,234", "1.234"] {
            assert!(
                read(text).is_err_and(|said| said.contains("1234 or 1.2340")),
                "{text}"
            );
        }
        assert!(read(&"x".repeat(5000)).is_err_and(|said| said.len() < 200));
    }
}
