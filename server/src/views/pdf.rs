//! The plan as sheets of paper: the set that is carried to the site, the file with all that can be checked, and the drilling
//! template at full size.
//!
//! [`flow`] lays out lines, tables and drawings on pages without drawing anything; [`frame`] puts title, revision and
//! page of pages on each; [`paint`] turns the pages into PDF. The same sheet gives the same bytes. A character that the
//! typefaces lack is printed as ◊, and the cover says how many there are.

mod code;
mod flow;
mod frame;
mod page;
mod paint;
mod sheets;
mod table;
pub mod template;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;

/// What is put on paper.
#[derive(Debug, Clone, Copy)]
pub struct Sheet<'a> {
    /// Complete inputs.
    pub brief: &'a Brief,
    /// The design.
    pub design: &'a Design,
    /// Number of the saved revision; none for a plan that is not saved.
    pub revision: Option<i64>,
    /// Day on which it is printed, as it is to stand on the sheet; none: left to be written in.
    pub date: Option<&'a str>,
    /// Link that opens the plan for reading; none: no code is printed.
    pub view_link: Option<&'a str>,
    /// Address that says whether this revision is still the newest; none: no code of it is printed.
    pub check_link: Option<&'a str>,
    /// The house that prints it, where it has a name or colours.
    pub letterhead: Option<&'a Letterhead>,
    /// What the record says of how it was built; empty where nothing was entered, and on prints that do not show it.
    pub built: &'a [Built],
}

/// Something that was measured while the pier was built.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Built {
    /// What.
    pub title: String,
    /// What the plan expects.
    pub planned: String,
    /// What was found.
    pub found: String,
    /// What follows, in a word or two.
    pub verdict: &'static str,
    /// Who found it, and when.
    pub by: String,
}

/// What a house prints at the head of its sheets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Letterhead {
    /// Its name.
    pub name: Option<String>,
    /// The colour of the rule below the head: red, green and blue.
    pub accent: Option<[u8; 3]>,
}

/// Size of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Paper {
    /// 210 × 297 mm, ISO 216.
    A4,
    /// 8½ × 11 inches.
    Letter,
    /// 420 × 297 mm, ISO 216, lying: for the template.
    A3,
    /// 594 × 420 mm, likewise.
    A2,
    /// 841 × 594 mm, likewise.
    A1,
    /// 1189 × 841 mm, likewise.
    A0,
}

impl Paper {
    /// Width and height, mm.
    #[must_use]
    pub const fn size_mm(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
            Self::A3 => (420.0, 297.0),
            Self::A2 => (594.0, 420.0),
            Self::A1 => (841.0, 594.0),
            Self::A0 => (1189.0, 841.0),
        }
    }

    /// The paper that is usual where such units are.
    #[must_use]
    pub const fn usual(units: Units) -> Self {
        match units {
            Units::Metric => Self::A4,
            Units::Imperial => Self::Letter,
        }
    }

    /// The paper with this name.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        match key {
            "a4" => Some(Self::A4),
            "letter" => Some(Self::Letter),
            "a3" => Some(Self::A3),
            "a2" => Some(Self::A2),
            "a1" => Some(Self::A1),
            "a0" => Some(Self::A0),
            _ => None,
        }
    }

    /// The paper for sheets of words, whatever the size that the template is drawn on.
    #[must_use]
    pub const fn for_words(self) -> Self {
        match self {
            Self::Letter => Self::Letter,
            _ => Self::A4,
        }
    }
}

/// Why no PDF could be made; a fault of ours, never of the plan's.
#[derive(Debug, thiserror::Error)]
pub enum Fault {
    /// A font file cannot be read.
    #[error("the typeface {0:?} cannot be read")]
    Face(crate::lettering::Face),
    /// The PDF's writer refused.
    #[error("the PDF cannot be written: {0}")]
    Writer(String),
}

/// The site set: what is carried to the site, one side a day.
///
/// # Errors
/// When a font file is broken or the writer refuses.
pub fn plan(sheet: &Sheet<'_>, paper: Paper) -> Result<Vec<u8>, Fault> {
    let flow = sheets::site_set(sheet, paper.for_words());
    paint::paint(frame::framed(sheet, flow), &frame::heading(sheet))
}

/// The file: everything that can be checked.
///
/// # Errors
/// When a font file is broken or the writer refuses.
pub fn file(sheet: &Sheet<'_>, paper: Paper) -> Result<Vec<u8>, Fault> {
    let flow = sheets::file(sheet, paper.for_words());
    paint::paint(frame::framed(sheet, flow), &frame::heading(sheet))
}

/// The drilling template at full size, tiled over as many sheets as it takes.
///
/// # Errors
/// When a font file is broken or the writer refuses.
pub fn template(sheet: &Sheet<'_>, paper: Paper) -> Result<Vec<u8>, Fault> {
    let flow = template::tiles(sheet, paper);
    paint::paint(frame::framed(sheet, flow), &frame::heading(sheet))
}
