//! Reading settings one after another, so that all that is wrong is told at once.

use std::fs::File;
use std::io::Read;
use std::net::SocketAddr;
use std::path::Path;

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
    let text = whole(file, LARGEST)?.ok_or_else(|| {
        format!("({shown}) is larger than {LARGEST} bytes: it is not a file with one secret")
    })?;
    let text = String::from_utf8(text).map_err(|_| format!("({shown}) is no text in UTF-8"))?;
    match text.lines().next().map(str::trim) {
        Some(line) if !line.is_empty() => Ok(line.to_owned()),
        Some(_) if !text.trim().is_empty() => Err(format!(
            "({shown}): its first line is empty; the secret stands on the first line"
        )),
        _ => Err(format!("({shown}) is empty")),
    }
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

/// Whether log lines are JSON.
pub(super) fn log(text: &str) -> Result<bool, String> {
    match text.to_ascii_lowercase().as_str() {
        "text" => Ok(false),
        "json" => Ok(true),
        _ => Err("write text or json".to_owned()),
    }
}
