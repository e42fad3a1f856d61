//! Texts: which marks a person's may hold, whatever prints, in one list for plans, records, names and settings alike; and the
//! letter that a sentence begins with.

/// Why a text cannot be taken as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unfit {
    /// A control character, such as NUL.
    Control,
    /// A mark that no eye sees.
    Unseen,
    /// A letter that was garbled on its way.
    Garbled,
}

impl Unfit {
    /// What a person is told.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Control => "This holds a control character, which cannot be printed.",
            Self::Unseen => {
                "This holds an unseen mark that hides something, breaks the line or turns the direction of the text after it; \
                 type it again."
            }
            Self::Garbled => "A letter of this was garbled on its way; type it again.",
        }
    }
}

/// What is wrong with a text of one line.
pub fn unfit(text: &str) -> Option<Unfit> {
    text.chars().find_map(unfit_mark)
}

/// What is wrong with a text of several lines.
pub fn unfit_lines(text: &str) -> Option<Unfit> {
    text.chars()
        .filter(|mark| !matches!(mark, '\n' | '\r' | '\t'))
        .find_map(unfit_mark)
}

/// A text without the marks that may not stand in it, for what is shortened rather than refused.
pub fn fit(text: &str) -> String {
    text.chars()
        .filter(|&mark| unfit_mark(mark).is_none())
        .collect()
}

fn unfit_mark(mark: char) -> Option<Unfit> {
    match mark {
        _ if mark.is_control() => Some(Unfit::Control),
        _ if is_unseen(mark) => Some(Unfit::Unseen),
        // The mark that stands for a letter that could not be read, and code points that are none and that XML refuses.
        '\u{fffd}'..='\u{ffff}' => Some(Unfit::Garbled),
        _ => None,
    }
}

/// Separators of lines and the marks of the Unicode bidirectional algorithm (UAX 9) that reach beyond the text; spaces
/// without width, soft hyphens, annotations and tags, in which words can be hidden. The joiners and the two marks of
/// direction that Persian, Hindi and Hebrew are spelt with are taken.
const fn is_unseen(mark: char) -> bool {
    matches!(
        mark,
        '\u{ad}'
            | '\u{180e}'
            | '\u{200b}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{2069}'
            | '\u{feff}'
            | '\u{fff9}'..='\u{fffb}'
            | '\u{e0000}'..='\u{e007f}'
    )
}

/// A title within a sentence: without its capital.
#[must_use]
pub fn lower(title: &str) -> String {
    let mut letters = title.chars();
    letters
        .next()
        .map(|first| first.to_lowercase().chain(letters).collect())
        .unwrap_or_default()
}

/// A text with a capital letter.
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_eye_sees_is_unfit_and_every_script_is_spelt() {
        for (text, why) in [
            ("a\0b", Unfit::Control),
            ("a\u{202e}b", Unfit::Unseen),
            ("a\u{200b}b", Unfit::Unseen),
            ("a\u{e0041}b", Unfit::Unseen),
            ("a\u{feff}b", Unfit::Unseen),
            ("a\u{fffd}b", Unfit::Garbled),
        ] {
            assert_eq!(unfit(text), Some(why), "{text:?}");
            assert_eq!(unfit_lines(text), Some(why), "{text:?}");
            assert_eq!(fit(text), "ab");
        }
        for text in [
            "Quarry Lane",
            "\u{645}\u{6cc}\u{200c}\u{62e}\u{648}\u{627}\u{647}\u{645}",
            "\u{671b}\u{9060}\u{93e1} \u{1f52d}",
            "\u{5e9}\u{5e7}\u{200f}!",
        ] {
            assert_eq!(unfit(text), None, "{text:?}");
        }
        assert_eq!(unfit("two\nlines"), Some(Unfit::Control));
        assert_eq!(unfit_lines("two\r\n\tlines"), None);
    }
}
