//! The typefaces as the drawings and the sheets use them: which characters they have, and how wide a text runs.

use std::collections::HashMap;
use std::sync::{Arc, LazyLock, Mutex, PoisonError};

use rustybuzz::{Direction, Face as Shaper, GlyphBuffer, Script, ShapePlan, UnicodeBuffer};

/// What stands for a character that no face has.
pub const REPLACEMENT: char = '◊';

/// A face of the two families.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// Reading.
    Text,
    /// Reading, set apart.
    TextItalic,
    /// Headings.
    TextBold,
    /// Figures and lettering of drawings.
    Figures,
    /// The same, heavier.
    FiguresBold,
}

impl Face {
    /// Every face.
    pub const ALL: [Self; 5] = [
        Self::Text,
        Self::TextItalic,
        Self::TextBold,
        Self::Figures,
        Self::FiguresBold,
    ];

    /// The font file.
    #[must_use]
    pub fn bytes(self) -> &'static [u8] {
        match self {
            Self::Text => include_bytes!("../../static/font/text-regular.ttf"),
            Self::TextItalic => include_bytes!("../../static/font/text-italic.ttf"),
            Self::TextBold => include_bytes!("../../static/font/text-bold.ttf"),
            Self::Figures => include_bytes!("../../static/font/figures-regular.ttf"),
            Self::FiguresBold => include_bytes!("../../static/font/figures-bold.ttf"),
        }
    }

    /// The face to fall back on for a character that this one lacks.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Text | Self::TextItalic => Self::Figures,
            Self::TextBold => Self::FiguresBold,
            Self::Figures => Self::Text,
            Self::FiguresBold => Self::TextBold,
        }
    }

    fn shaper(self) -> Option<&'static Shaper<'static>> {
        static SHAPERS: LazyLock<[Option<Shaper<'static>>; 5]> =
            LazyLock::new(|| Face::ALL.map(|face| Shaper::from_slice(face.bytes(), 0)));
        SHAPERS[self as usize].as_ref()
    }

    /// Whether the face has the character.
    #[must_use]
    pub fn has(self, c: char) -> bool {
        self.shaper()
            .is_some_and(|shaper| shaper.glyph_index(c).is_some())
    }
}

/// A text as it will be set: runs of one face each, with nothing in them that the faces lack.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting {
    /// The runs in order.
    pub runs: Vec<Run>,
    /// How many characters stand as [`REPLACEMENT`].
    pub replaced: usize,
}

/// A run of one face.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Its face.
    pub face: Face,
    /// Its text.
    pub text: String,
}

/// Sets a text in a face, falling back to the other family and then to the replacement.
#[must_use]
pub fn set(face: Face, text: &str) -> Setting {
    let mut setting = Setting {
        runs: Vec::new(),
        replaced: 0,
    };
    for c in text.chars().filter(|c| !is_invisible(*c)) {
        let (face, c) = if face.has(c) {
            (face, c)
        } else if face.other().has(c) {
            (face.other(), c)
        } else if let Some(like) = likeness(c) {
            (face, like)
        } else {
            setting.replaced += 1;
            (face, REPLACEMENT)
        };
        match setting.runs.last_mut() {
            Some(run) if run.face == face => run.text.push(c),
            _ => setting.runs.push(Run {
                face,
                text: c.into(),
            }),
        }
    }
    setting
}

/// Marks that join or turn other characters and print nothing themselves.
fn is_invisible(c: char) -> bool {
    matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}')
        || c.is_control()
}

/// A character of the faces that means the same.
fn likeness(c: char) -> Option<char> {
    Some(match c {
        '⌀' => 'Ø',
        '□' | '☐' => '◊',
        '●' | '■' => '•',
        '⊥' | '⟂' => '┴',
        '\u{3000}' | '\u{2001}' | '\u{2003}' => ' ',
        _ => return None,
    })
    .filter(|like| Face::Text.has(*like) || Face::Figures.has(*like))
}

/// How wide a text runs, in the unit of `size`.
#[must_use]
pub fn width(face: Face, text: &str, size: f64) -> f64 {
    set(face, text)
        .runs
        .iter()
        .map(|run| run_width(run, size))
        .sum()
}

/// How wide one run is.
#[must_use]
pub fn run_width(run: &Run, size: f64) -> f64 {
    let Some(shaper) = run.face.shaper() else {
        return 0.0;
    };
    let advance: i32 = shaped(run, shaper)
        .glyph_positions()
        .iter()
        .map(|glyph| glyph.x_advance)
        .sum();
    f64::from(advance) * size / f64::from(shaper.units_per_em())
}

/// How a face sets the letters of a script. To find it out takes longer than to set a line by it, so it is kept: the faces
/// have letters of some few scripts and of no other.
fn shaped(run: &Run, shaper: &'static Shaper<'static>) -> GlyphBuffer {
    type Plans = HashMap<(Face, Script, Direction), Arc<ShapePlan>>;
    static PLANS: LazyLock<Mutex<Plans>> = LazyLock::new(Mutex::default);
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(&run.text);
    buffer.guess_segment_properties();
    let (direction, script) = (buffer.direction(), buffer.script());
    let plan = {
        let mut plans = PLANS.lock().unwrap_or_else(PoisonError::into_inner);
        let plan = plans
            .entry((run.face, script, direction))
            .or_insert_with(|| {
                let known = Some(script).filter(|script| *script != rustybuzz::script::UNKNOWN);
                Arc::new(ShapePlan::new(shaper, direction, known, None, &[]))
            });
        Arc::clone(plan)
    };
    rustybuzz::shape_with_plan(shaper, &plan, buffer)
}

/// Breaks a text into lines no wider than `most`. A word longer than a line is broken where it must be.
#[must_use]
pub fn wrap(face: Face, text: &str, size: f64, most: f64) -> Vec<String> {
    let space = width(face, " ", size);
    let mut lines = Vec::new();
    let (mut line, mut length) = (String::new(), 0.0);
    for word in text.split([' ', '\n']).filter(|word| !word.is_empty()) {
        let wide = width(face, word, size);
        if !line.is_empty() && length + space + wide <= most {
            line.push(' ');
            line.push_str(word);
            length += space + wide;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        line = if wide > most {
            broken(face, word, size, most, &mut lines)
        } else {
            word.to_owned()
        };
        length = if wide > most {
            width(face, &line, size)
        } else {
            wide
        };
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// Puts all but the end of an overlong word on lines of their own; gives the end.
fn broken(face: Face, word: &str, size: f64, most: f64, lines: &mut Vec<String>) -> String {
    let (mut piece, mut length) = (String::new(), 0.0);
    for c in word.chars() {
        let wide = width(face, c.encode_utf8(&mut [0; 4]), size);
        if length + wide > most && !piece.is_empty() {
            lines.push(std::mem::take(&mut piece));
            length = 0.0;
        }
        piece.push(c);
        length += wide;
    }
    piece
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;

    #[test]
    fn every_symbol_of_a_unit_is_in_the_faces() {
        for unit in stillground::figure::Unit::ALL {
            for text in [unit.symbol(), unit.imperial_symbol()] {
                assert_eq!(set(Face::Text, text).replaced, 0, "{text}");
                assert!(text.chars().all(|c| Face::Figures.has(c)), "{text}");
            }
        }
    }

    #[test]
    fn the_space_between_thousands_is_narrow_in_every_face() {
        for face in Face::ALL {
            let number = set(face, "25\u{202f}740");
            assert!(number.runs.len() == 1 && number.replaced == 0, "{face:?}");
            let space = width(face, "25\u{202f}740", 1.0) - width(face, "25740", 1.0);
            assert!(
                space > 0.05 && space < width(face, "0", 1.0) / 2.0,
                "{face:?} {space}"
            );
        }
    }

    #[test]
    fn a_kept_way_of_setting_gives_what_a_new_one_gives() {
        let texts = [
            "",
            "3.5",
            "Pier 12",
            "AV fi To",
            "τ ≤ σ",
            "Ω 3",
            "⌀ 16 × 125",
            "→",
        ];
        for (face, text) in Face::ALL
            .into_iter()
            .flat_map(|face| texts.map(|text| (face, text)))
        {
            for run in set(face, text).runs {
                let shaper = run.face.shaper().unwrap();
                let mut buffer = UnicodeBuffer::new();
                buffer.push_str(&run.text);
                let places = |set: GlyphBuffer| -> Vec<[i32; 4]> {
                    set.glyph_positions()
                        .iter()
                        .map(|it| [it.x_advance, it.y_advance, it.x_offset, it.y_offset])
                        .collect()
                };
                let anew = places(rustybuzz::shape(shaper, &[], buffer));
                for _ in 0..2 {
                    assert_eq!(places(shaped(&run, shaper)), anew, "{run:?}");
                }
            }
        }
    }

    #[test]
    fn a_character_of_no_face_is_replaced_and_counted() {
        let setting = set(Face::Text, "Pier 天文 τ ≤ 3");
        assert_eq!(setting.replaced, 2);
        assert_eq!(
            setting
                .runs
                .iter()
                .map(|run| run.text.as_str())
                .collect::<String>(),
            "Pier ◊◊ τ ≤ 3"
        );
    }

    #[test]
    fn greek_and_cyrillic_letters_are_in_every_face() {
        for face in Face::ALL {
            let setting = set(face, "Обсерваторія Ђорђе ґ Ѝ Άστρα");
            assert_eq!((setting.replaced, setting.runs.len()), (0, 1), "{face:?}");
        }
    }

    #[test]
    fn figures_are_equally_wide() {
        let one = width(Face::Figures, "1111", 10.0);
        assert!((width(Face::Figures, "8888", 10.0) - one).abs() < 1e-9);
        assert!((one - 24.0).abs() < 1e-9, "600 thousandths of an em each");
    }

    #[test]
    fn no_line_is_wider_than_allowed_and_nothing_is_lost() {
        let text = "A very long title with Donaudampfschifffahrtsgesellschaftskapitän in it";
        let lines = wrap(Face::Text, text, 4.0, 40.0);
        assert!(
            lines
                .iter()
                .all(|line| width(Face::Text, line, 4.0) <= 40.0)
        );
        assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
    }
}
