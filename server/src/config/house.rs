//! A house's own look: its name and its colours, refused where the words on them could not be read.

mod contrast;

use std::fmt::Write as _;

use contrast::{Colour, ratio};
use sha2::{Digest, Sha256};

/// Least contrast of text against its ground (WCAG 2.2, success criterion 1.4.3, level AA).
const TEXT: f64 = 4.5;
/// Least contrast of a control's edge and of a mark (WCAG 2.2, success criterion 1.4.11, level AA).
const EDGE: f64 = 3.0;
/// Longest name of a house, letters.
const LONGEST_NAME: usize = 60;

/// A house's own look.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct House {
    /// Its name.
    pub name: Option<String>,
    /// Its colours, where it has chosen any.
    pub look: Option<Look>,
}

/// Colours of a house, checked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// The style sheet that sets them.
    pub sheet: String,
    /// A digest of it, which stands in its address.
    pub edition: String,
    /// The colour of the rule on printed sheets: red, green and blue.
    pub accent: [u8; 3],
}

/// The colours of one scheme, and what each is called in the setting.
#[derive(Debug, Clone, Copy)]
struct Scheme {
    paper: Colour,
    ink: Colour,
    soft: Colour,
    line: Colour,
    accent: Colour,
}

/// The planner's own, as `static/style/base.css` has them.
const LIGHT: Scheme = Scheme {
    paper: Colour(0xfb, 0xf8, 0xf0),
    ink: Colour(0x19, 0x17, 0x14),
    soft: Colour(0x57, 0x51, 0x4a),
    line: Colour(0x8d, 0x86, 0x7b),
    accent: Colour(0x1b, 0x4f, 0x94),
};
const DARK: Scheme = Scheme {
    paper: Colour(0x17, 0x15, 0x12),
    ink: Colour(0xef, 0xe9, 0xdc),
    soft: Colour(0xb9, 0xb1, 0xa3),
    line: Colour(0x85, 0x7d, 0x70),
    accent: Colour(0x93, 0xbd, 0xf0),
};
const WHITE: Colour = Colour(255, 255, 255);
const NEAR_BLACK: Colour = Colour(0x10, 0x12, 0x16);

/// Reads the name of a house.
///
/// # Errors
/// What is wrong with it.
pub fn name(text: &str) -> Result<Option<String>, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    if text.chars().count() > LONGEST_NAME || stillground::text::unfit(text).is_some() {
        return Err(format!("write one line of at most {LONGEST_NAME} letters"));
    }
    Ok(Some(text.to_owned()))
}

/// Reads colours as `accent=#7a2e1d, dark-accent=#f0b49c` and checks that what is written in them can be read.
///
/// # Errors
/// Every colour that is none, and every pair that is too much alike, with its contrast.
pub fn look(text: &str) -> Result<Option<Look>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let (mut light, mut dark) = (LIGHT, DARK);
    for part in text
        .split([',', ';'])
        .map(str::trim)
        .filter(|part| !part.is_empty())
    {
        let (key, value) = part
            .split_once('=')
            .ok_or_else(|| format!("{part}: write name=#rrggbb"))?;
        let colour = Colour::parse(value.trim())
            .ok_or_else(|| format!("{part}: a colour is written #rrggbb"))?;
        let (scheme, key) = match key.trim().strip_prefix("dark-") {
            Some(key) => (&mut dark, key),
            None => (&mut light, key.trim()),
        };
        *scheme
            .part(key)
            .ok_or_else(|| format!("{part}: the colours are paper, ink, soft, line and accent, and the same with dark- before"))? = colour;
    }
    let mut wrong = light.faults("");
    wrong.extend(dark.faults("dark-"));
    if ratio(light.accent, WHITE) < EDGE {
        wrong.push(format!(
            "accent on the white of a printed sheet is {:.2} to 1, at least {EDGE} is needed",
            ratio(light.accent, WHITE)
        ));
    }
    if !wrong.is_empty() {
        return Err(wrong.join("; "));
    }
    let mut sheet = String::new();
    let _ = write!(
        sheet,
        ":root {{\n{}}}\n\n@media (prefers-color-scheme: dark) {{\n  :root {{\n{}  }}\n}}\n",
        light.css(),
        dark.css()
    );
    let edition = data_encoding::HEXLOWER.encode(&Sha256::digest(&sheet)[..6]);
    let Colour(r, g, b) = light.accent;
    Ok(Some(Look {
        sheet,
        edition,
        accent: [r, g, b],
    }))
}

impl Scheme {
    fn part(&mut self, key: &str) -> Option<&mut Colour> {
        match key {
            "paper" => Some(&mut self.paper),
            "ink" => Some(&mut self.ink),
            "soft" => Some(&mut self.soft),
            "line" => Some(&mut self.line),
            "accent" => Some(&mut self.accent),
            _ => None,
        }
    }

    /// White or near-black, whichever reads better on the accent.
    fn on_accent(&self) -> Colour {
        if ratio(WHITE, self.accent) >= ratio(NEAR_BLACK, self.accent) {
            WHITE
        } else {
            NEAR_BLACK
        }
    }

    fn faults(&self, prefix: &str) -> Vec<String> {
        let pairs = [
            ("ink", self.ink, "paper", self.paper, TEXT),
            ("soft", self.soft, "paper", self.paper, TEXT),
            ("accent", self.accent, "paper", self.paper, TEXT),
            (
                "the words on buttons",
                self.on_accent(),
                "accent",
                self.accent,
                TEXT,
            ),
            ("line", self.line, "paper", self.paper, EDGE),
        ];
        let alike = |(one, a, other, b, least): (&str, Colour, &str, Colour, f64)| {
            let found = ratio(a, b);
            (found < least).then(|| {
                format!("{one} on {prefix}{other} is {found:.2} to 1, at least {least} is needed")
            })
        };
        pairs.into_iter().filter_map(alike).collect()
    }

    fn css(&self) -> String {
        let pairs = [
            ("paper", self.paper),
            ("ink", self.ink),
            ("soft", self.soft),
            ("line", self.line),
            ("accent", self.accent),
        ];
        let mut text = String::new();
        for (key, colour) in pairs.into_iter().chain([("on-accent", self.on_accent())]) {
            let _ = writeln!(text, "  --{key}: {colour};");
        }
        text
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn the_planners_own_colours_can_be_read() {
        assert!(LIGHT.faults("").is_empty(), "{:?}", LIGHT.faults(""));
        assert!(DARK.faults("").is_empty(), "{:?}", DARK.faults(""));
    }

    #[test]
    fn colours_that_cannot_be_read_are_refused_with_their_contrast() {
        let said = look("accent=#ffe680").unwrap_err();
        assert!(
            said.contains("accent on paper is 1.") && said.contains("4.5"),
            "{said}"
        );
        assert!(
            look("dark-ink=#333333")
                .unwrap_err()
                .contains("ink on dark-paper")
        );
        assert!(look("line=#e0e0e0").unwrap_err().contains("at least 3"));
        for wrong in [
            "accent",
            "accent=red",
            "accent=#12",
            "shadow=#000000",
            "accent=#1b4f94}body{display:none",
        ] {
            assert!(look(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn colours_that_can_be_read_become_a_style_sheet() {
        let look = look("accent=#7a2e1d, dark-accent=#f0b49c")
            .unwrap()
            .unwrap();
        assert!(
            look.sheet.contains("--accent: #7a2e1d;")
                && look.sheet.contains("--on-accent: #ffffff;"),
            "{}",
            look.sheet
        );
        assert_eq!(look.accent, [0x7a, 0x2e, 0x1d]);
        assert_eq!(super::look(" "), Ok(None));
    }

    #[test]
    fn a_name_is_one_short_line() {
        assert_eq!(
            name("  Ashdown Field Observers "),
            Ok(Some("Ashdown Field Observers".to_owned()))
        );
        assert!(name("two\nlines").is_err() && name(&"x".repeat(61)).is_err());
    }
}
