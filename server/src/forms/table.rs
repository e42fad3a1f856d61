//! A product's table typed in one line: rows between semicolons, each a temperature, a colon, and two figures apart by a
//! stroke, for instance `40: 7 / 10; 60: 5.5 / 8`. Temperatures in °C; a comma in a figure counts as its point.

/// Rows as the line that one would type.
#[must_use]
pub fn write(rows: &[[f64; 3]]) -> String {
    rows.iter()
        .map(|[at, first, second]| format!("{at}: {first} / {second}"))
        .collect::<Vec<_>>()
        .join("; ")
}

/// The rows of a line; none where a part of it cannot be read.
#[must_use]
pub fn read(line: &str) -> Option<Vec<[f64; 3]>> {
    line.split(';')
        .map(str::trim)
        .filter(|row| !row.is_empty())
        .map(row)
        .collect()
}

fn row(text: &str) -> Option<[f64; 3]> {
    let (at, figures) = text.split_once(':')?;
    let (first, second) = figures.split_once('/')?;
    Some([figure(at)?, figure(first)?, figure(second)?])
}

fn figure(text: &str) -> Option<f64> {
    text.trim()
        .replace(',', ".")
        .replace('\u{2212}', "-")
        .parse()
        .ok()
        .filter(|value: &f64| value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_again() {
        let rows = vec![[40.0, 7.0, 10.0], [60.0, 5.5, 8.0]];
        assert_eq!(write(&rows), "40: 7 / 10; 60: 5.5 / 8");
        assert_eq!(read(&write(&rows)), Some(rows));
        assert_eq!(read("\u{2212}5: 90 / 24;"), Some(vec![[-5.0, 90.0, 24.0]]));
        assert_eq!(read("40: 7"), None);
        assert_eq!(read("warm: 7 / 10"), None);
    }
}
