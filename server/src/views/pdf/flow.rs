//! Text, tables and drawings laid out on one page after another.

use crate::drawing::{Drawing, at};
use crate::lettering::{self, Face};
use crate::views::pdf::Paper;
use crate::views::pdf::page::{Mark, Page, Piece, Role};

/// Free paper at the left, where sheets are bound, mm.
pub const LEFT: f64 = 18.0;
/// Free paper at the right, mm.
pub const RIGHT: f64 = 14.0;
/// Where the text begins below the head of the sheet, mm.
pub const TOP: f64 = 22.0;
/// Paper below the text, with the foot of the sheet in it, mm.
pub const BOTTOM: f64 = 33.0;

/// Size of the text, mm: ten points.
pub const BODY: f64 = 3.53;
/// Size of small text, mm: eight and a half points.
pub const SMALL: f64 = 3.0;
/// Size of headings, mm.
pub const HEADING: f64 = 4.4;
/// Size of a sheet's title, mm.
pub const TITLE: f64 = 6.2;
/// Distance of lines, as a multiple of the size.
pub const LEADING_RATIO: f64 = 1.36;

/// Pages being filled.
#[derive(Debug)]
pub struct Flow {
    width: f64,
    height: f64,
    /// Pages so far.
    pub pages: Vec<Page>,
    /// Where the next line may begin.
    pub y: f64,
    tables: usize,
}

impl Flow {
    /// No page yet.
    #[must_use]
    pub fn new(paper: Paper) -> Self {
        let (width, height) = paper.size_mm();
        Self { width, height, pages: Vec::new(), y: 0.0, tables: 0 }
    }

    /// Width of the text.
    #[must_use]
    pub fn room(&self) -> f64 {
        self.width - LEFT - RIGHT
    }

    /// Height left on this page.
    #[must_use]
    pub fn left(&self) -> f64 {
        self.height - BOTTOM - self.y
    }

    /// Height of an empty page.
    #[must_use]
    pub fn full(&self) -> f64 {
        self.height - BOTTOM - TOP
    }

    /// Begins a sheet on a new page, with its title.
    pub fn sheet(&mut self, name: &str) {
        self.blank(name, true);
        self.y += TITLE;
        let lines = lettering::wrap(Face::TextBold, name, TITLE, self.room());
        self.lines(Role::Title, Face::TextBold, TITLE, lines);
        self.y += 1.5;
    }

    /// Begins a page without a title on it.
    pub fn blank(&mut self, name: &str, first: bool) {
        self.pages.push(Page { sheet: name.to_owned(), width: self.width, height: self.height, pieces: Vec::new(), first });
        self.y = TOP;
    }

    /// Goes on to a new page of the same sheet.
    pub fn turn(&mut self) {
        let name = self.pages.last().map(|page| page.sheet.clone()).unwrap_or_default();
        self.blank(&name, false);
    }

    /// Turns the page unless so much height is left; a page that is still empty is never turned.
    pub fn need(&mut self, height: f64) {
        if self.left() < height && self.y > TOP {
            self.turn();
        }
    }

    /// Number of the next table.
    pub fn next_table(&mut self) -> usize {
        self.tables += 1;
        self.tables
    }

    /// Puts a piece on the page.
    pub fn put(&mut self, role: Role, marks: Vec<Mark>) {
        if let Some(page) = self.pages.last_mut().filter(|_| !marks.is_empty()) {
            page.pieces.push(Piece { role, marks });
        }
    }

    fn lines(&mut self, role: Role, face: Face, size: f64, lines: Vec<String>) {
        let mut marks = Vec::new();
        for text in lines {
            marks.push(Mark::Text { at: at(LEFT, self.y), size, face, text });
            self.y += size * LEADING_RATIO;
        }
        self.put(role, marks);
    }

    /// A heading, kept with what follows.
    pub fn heading(&mut self, text: &str) {
        self.need(38.0);
        self.y += 2.0 + HEADING;
        let lines = lettering::wrap(Face::TextBold, text, HEADING, self.room());
        self.lines(Role::Heading, Face::TextBold, HEADING, lines);
        self.y -= 1.0;
    }

    /// A paragraph.
    pub fn paragraph(&mut self, text: &str) {
        self.styled(Face::Text, BODY, text);
    }

    /// A paragraph in small type.
    pub fn small(&mut self, text: &str) {
        self.styled(Face::Text, SMALL, text);
    }

    /// A paragraph in a face and size; it may run over the end of a page.
    pub fn styled(&mut self, face: Face, size: f64, text: &str) {
        let mut lines = lettering::wrap(face, text, size, self.room()).into_iter().peekable();
        while lines.peek().is_some() {
            self.need(size * (LEADING_RATIO + 0.4));
            let fit = ((self.left() - size) / (size * LEADING_RATIO)).floor().max(1.0) as usize;
            self.y += size;
            let taken: Vec<String> = lines.by_ref().take(fit).collect();
            self.lines(Role::Paragraph, face, size, taken);
            self.y -= size * (LEADING_RATIO - 1.0);
        }
        self.y += size * 0.75;
    }

    /// A drawing, at the scale it states wherever it fits the paper.
    pub fn drawing(&mut self, drawing: Drawing) {
        let factor = (self.room() / drawing.width).min((self.full() - 5.0) / drawing.height).min(1.0);
        self.need(drawing.height * factor + 4.0);
        self.y += 2.0;
        let height = drawing.height * factor;
        let alt = format!("{}. {}", drawing.title, drawing.description);
        let corner = at(LEFT + (self.room() - drawing.width * factor) / 2.0, self.y);
        let reduced = factor < 0.999 && drawing.scale.is_some();
        self.put(Role::Figure(alt), vec![Mark::Drawing { corner, factor, drawing }]);
        self.y += height + 3.0;
        if reduced {
            self.small("Reduced to fit this paper: measure by the scale bar, not by the scale stated.");
        }
    }
}
