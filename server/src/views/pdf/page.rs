//! Pages as data: what stands where, in millimetres, and what it is to a screen reader.

use crate::drawing::{Drawing, Point};
use crate::lettering::Face;

/// One mark on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// A line of text, its beginning on the base line.
    Text {
        /// Beginning.
        at: Point,
        /// Size of type, mm.
        size: f64,
        /// Face.
        face: Face,
        /// The text.
        text: String,
    },
    /// A straight line.
    Rule {
        /// From.
        from: Point,
        /// To.
        to: Point,
        /// Weight, mm.
        weight: f64,
    },
    /// A straight line in a house's colour.
    Band {
        /// From.
        from: Point,
        /// To.
        to: Point,
        /// Weight, mm.
        weight: f64,
        /// Red, green and blue.
        colour: [u8; 3],
    },
    /// Squares of ink, upper left corners and side: a code.
    Squares {
        /// Corners.
        corners: Vec<Point>,
        /// Side, mm.
        side: f64,
    },
    /// A drawing with its upper left corner at a place.
    Drawing {
        /// Corner.
        corner: Point,
        /// Enlargement; one at the scale stated.
        factor: f64,
        /// The drawing.
        drawing: Drawing,
    },
}

/// What a piece of a page is.
#[derive(Debug, Clone, PartialEq)]
pub enum Role {
    /// Title of a sheet.
    Title,
    /// Heading within a sheet.
    Heading,
    /// A paragraph.
    Paragraph,
    /// Cell of a table: number of the table, its row, whether it heads a column.
    Cell {
        /// Table.
        table: usize,
        /// Row.
        row: usize,
        /// Whether it heads a column.
        head: bool,
    },
    /// A picture, and what it shows.
    Figure(String),
    /// Nothing to read: rules, and what repeats on each sheet.
    Ornament,
}

/// Marks that belong together.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What it is.
    pub role: Role,
    /// Its marks.
    pub marks: Vec<Mark>,
}

/// A page.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Name of the sheet it belongs to.
    pub sheet: String,
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// Its pieces in reading order.
    pub pieces: Vec<Piece>,
    /// Whether the sheet begins here.
    pub first: bool,
}
