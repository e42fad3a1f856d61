//! Reading settings one after another, so that all that is wrong is told at once.

use std::fs::File;
use std::io::Read;
use std::net::SocketAddr;
use std::num::NonZeroUsize;
use std::path::Path;
use std::time::Duration;

use super::{BadSetting, BadSettings};

/// Largest file with a secret in it, bytes.
const LARGEST: u64 = 16 * 1024;

/// What was found wrong so far.
#[derive(Default)]
pub(super) struct Reading(Vec<BadSetting>);

impl Reading {
    /// The value, or a note of what is wrong with it.
    pub(super) fn take<T>(&mut self, name: &'static str, found: Result<T, String>) -> Option<T> {
        found
            .map_err(|said| self.0.push(BadSetting { name, said }))
            .ok()
    }

    /// A value that may be left out; an empty text is left out.
    pub(super) fn optional<T>(
        &mut self,
        name: &'static str,
        text: Option<&str>,
        parse: fn(&str) -> Result<T, String>,
    ) -> Option<T> {
        text.map(str::trim)
            .filter(|text| !text.is_empty())
            .and_then(|text| self.take(name, parse(text)))
    }

    /// A value with a default.
    pub(super) fn or_default<T: Default>(
        &mut self,
        name: &'static str,
        text: Option<&str>,
        parse: fn(&str) -> Result<T, String>,
    ) -> T {
        self.optional(name, text, parse).unwrap_or_default()
    }

    /// A secret, stated or in a file.
    pub(super) fn text_or_file(
        &mut self,
        name: &'static str,
        text: Option<&str>,
        file: Option<&Path>,
    ) -> Option<String> {
        match (
            text.filter(|text| !text.is_empty()),
            file.filter(|file| !file.as_os_str().is_empty()),
        ) {
            (Some(_), Some(_)) => self.take(
                name,
                Err(format!(
                    "it is stated, and {name}_FILE too; leave one of them out"
                )),
            ),
            (Some(text), None) => Some(text.to_owned()),
            (None, Some(file)) => self.take(
                name,
                secret(file).map_err(|said| format!("{name}_FILE {said}")),
            ),
            (None, None) => None,
        }
    }

    /// Whether all was fine.
    pub(super) fn end(self) -> Result<(), BadSettings> {
        if self.0.is_empty() {
            Ok(())
        } else {
            Err(BadSettings(self.0))
        }
    }
}

/// The first line of a file, which is never repeated in a message.
pub(super) fn secret(file: &Path) -> Result<String, String> {
    let shown = file.display();
    let text = secret_text(file)?;
    match text.lines().next().map(str::trim) {
        Some(line) if !line.is_empty() => Ok(line.to_owned()),
        Some(_) if !text.trim().is_empty() => Err(format!(
            "({shown}): its first line is empty; the secret stands on the first line"
        )),
        _ => Err(format!("({shown}) is empty")),
    }
}

/// The text of a file with secrets in it, which is never repeated in a message.
pub(super) fn secret_text(file: &Path) -> Result<String, String> {
    let shown = file.display();
    let bytes = whole(file, LARGEST)?.ok_or_else(|| {
        format!("({shown}) is larger than {LARGEST} bytes: it is not a file with secrets")
    })?;
    String::from_utf8(bytes).map_err(|_| format!("({shown}) is no text in UTF-8"))
}

/// All that stands in a file; `None`: it is longer than `most` bytes. No more than that is read, of a device without an end neither.
pub(super) fn whole(file: &Path, most: u64) -> Result<Option<Vec<u8>>, String> {
    let mut bytes = Vec::new();
    let read = File::open(file).and_then(|open| open.take(most + 1).read_to_end(&mut bytes));
    read.map_err(|error| format!("({}): {error}", file.display()))?;
    Ok((bytes.len() as u64 <= most).then_some(bytes))
}

/// An address in figures with its port.
pub(super) fn address(text: &str) -> Result<SocketAddr, String> {
    text.parse().map_err(|_| {
        format!("\u{201c}{text}\u{201d} is no address in figures with a port of at most 65535; write 127.0.0.1:8080 or [::1]:8080")
    })
}

/// A limit: a whole number.
pub(super) fn count(text: &str) -> Result<u32, String> {
    text.parse().map_err(|_| {
        format!(
            "\u{201c}{text}\u{201d} is no whole number from 0 to {}; write 500",
            u32::MAX
        )
    })
}

/// Whether something is done that is not done by itself.
pub(super) fn yes_or_no(text: &str) -> Result<bool, String> {
    match text.to_ascii_lowercase().as_str() {
        "yes" => Ok(true),
        "no" => Ok(false),
        _ => Err("write yes or no".to_owned()),
    }
}

/// A stretch of time, `90s`, `30m`, `6h` or `1d`, from a second to a year.
///
/// # Errors
/// What would be right.
pub fn stretch(text: &str) -> Result<Duration, String> {
    let wrong = || {
        format!(
            "\u{201c}{text}\u{201d} is no stretch of time from 1s to 366d; write 90s, 30m, 6h or 1d"
        )
    };
    let (number, unit) = text
        .trim()
        .split_at_checked(text.trim().len().saturating_sub(1))
        .ok_or_else(wrong)?;
    let unit = match unit {
        "s" => 1,
        "m" => 60,
        "h" => 3600,
        "d" => 86_400,
        _ => return Err(wrong()),
    };
    let seconds = number
        .parse::<u32>()
        .ok()
        .and_then(|number| u64::from(number).checked_mul(unit))
        .filter(|seconds| (1..=366 * 86_400).contains(seconds))
        .ok_or_else(wrong)?;
    Ok(Duration::from_secs(seconds))
}

/// How many copies are kept.
///
/// # Errors
/// What would be right.
pub fn copies(text: &str) -> Result<NonZeroUsize, String> {
    text.trim()
        .parse()
        .ok()
        .filter(|kept: &NonZeroUsize| kept.get() <= 10_000)
        .ok_or_else(|| {
            format!("\u{201c}{text}\u{201d} is no whole number from 1 to 10000; write 14")
        })
}

/// Whether log lines are JSON.
pub(super) fn log(text: &str) -> Result<bool, String> {
    match text.to_ascii_lowercase().as_str() {
        "text" => Ok(false),
        "json" => Ok(true),
        _ => Err("write text or json".to_owned()),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn a_stretch_of_time_has_a_unit_and_a_bound() {
        for (text, seconds) in [
            ("1s", 1),
            ("30m", 1800),
            (" 6h", 21_600),
            ("366d", 31_622_400),
        ] {
            assert_eq!(
                stretch(text).unwrap(),
                Duration::from_secs(seconds),
                "{text}"
            );
        }
        for wrong in ["", "6", "0s", "6 h", "-1s", "367d", "1w", "h", "1.5h", "6µ"] {
            assert!(stretch(wrong).is_err(), "{wrong}");
        }
        assert!(copies("1").is_ok() && copies("0").is_err() && copies("x").is_err());
    }
}
