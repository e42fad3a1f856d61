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
/// Least size of a drawing's lettering on a side that is carried to the site, mm: six points.
pub const LEAST_LETTERING: f64 = 2.1;
/// How far letters reach below their line, as a multiple of the size.
const DESCENT_RATIO: f64 = 0.3;

/// A diagram is reduced to no less: capitals of its lettering stay above 2 mm.
const LEAST_FACTOR: f64 = 0.86;

/// Lines that are put on the page together with what comes after them.
#[derive(Debug)]
struct Waiting {
    role: Role,
    face: Face,
    size: f64,
    lines: Vec<String>,
    /// Room before and after, mm.
    before: f64,
    after: f64,
}

/// Pages being filled.
#[derive(Debug)]
pub struct Flow {
    width: f64,
    height: f64,
    /// Pages so far.
    pub pages: Vec<Page>,
    /// Where the next line may begin.
    pub y: f64,
    /// How much of the usual room stands between paragraphs and in tables: a sheet is drawn together where that spares a page.
    pub spacing_factor: f64,
    /// Size of type in tables and paragraphs, as a share of the usual one; small type and headings stay as they are.
    pub type_factor: f64,
    tables: usize,
    /// A heading, and words that lead to a table: they wait for what they stand over.
    waiting: Vec<Waiting>,
}

impl Flow {
    /// No page yet.
    #[must_use]
    pub fn new(paper: Paper) -> Self {
        let (width, height) = paper.size_mm();
        Self {
            width,
            height,
            pages: Vec::new(),
            y: 0.0,
            spacing_factor: 1.0,
            type_factor: 1.0,
            tables: 0,
            waiting: Vec::new(),
        }
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
        self.y -= TITLE * (LEADING_RATIO - DESCENT_RATIO) - 3.5;
    }

    /// Begins a page without a title on it.
    pub fn blank(&mut self, name: &str, first: bool) {
        self.pages.push(Page {
            sheet: name.to_owned(),
            width: self.width,
            height: self.height,
            pieces: Vec::new(),
            first,
        });
        self.y = TOP;
    }

    /// Goes on to a new page of the same sheet.
    pub fn turn(&mut self) {
        let name = self
            .pages
            .last()
            .map(|page| page.sheet.clone())
            .unwrap_or_default();
        self.blank(&name, false);
    }

    /// Makes room: turns the page unless so much height is left, then puts the heading that waited. A page that is still
    /// empty, or has but its title, is never turned.
    pub fn need(&mut self, height: f64) {
        let waiting = std::mem::take(&mut self.waiting);
        let above: f64 = waiting.iter().map(|one| self.height_of(one)).sum();
        if self.left() < height + above && !self.is_bare() {
            self.turn();
        }
        for one in waiting {
            self.y += one.before * self.spacing_factor + one.size;
            self.lines(one.role, one.face, one.size, one.lines);
            self.y += one.after * self.spacing_factor - one.size * (LEADING_RATIO - DESCENT_RATIO);
        }
    }

    fn height_of(&self, one: &Waiting) -> f64 {
        (one.before + one.after) * self.spacing_factor
            + one.size * (1.0 + DESCENT_RATIO + LEADING_RATIO * (one.lines.len().max(1) - 1) as f64)
    }

    /// Whether the page has nothing yet but a title.
    fn is_bare(&self) -> bool {
        self.pages
            .last()
            .is_none_or(|page| page.pieces.iter().all(|piece| piece.role == Role::Title))
    }

    /// How much of the page is taken, from nought to one.
    #[must_use]
    pub fn taken_ratio(&self) -> f64 {
        (self.y - TOP) / self.full()
    }

    /// Goes back to so many pages, as if nothing had come after them.
    pub fn back_to(&mut self, pages: usize) {
        self.pages.truncate(pages);
        self.waiting.clear();
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
            marks.push(Mark::Text {
                at: at(LEFT, self.y),
                size,
                face,
                text,
            });
            self.y += size * LEADING_RATIO;
        }
        self.put(role, marks);
    }

    /// A heading, kept with what follows.
    pub fn heading(&mut self, text: &str) {
        let lines = lettering::wrap(Face::TextBold, text, HEADING, self.room());
        self.waiting.push(Waiting {
            role: Role::Heading,
            face: Face::TextBold,
            size: HEADING,
            lines,
            before: 2.4,
            after: 1.6,
        });
    }

    /// A paragraph that leads to what follows, and is kept with it.
    pub fn lead(&mut self, text: &str) {
        let lines = lettering::wrap(Face::Text, text, BODY, self.room());
        self.waiting.push(Waiting {
            role: Role::Paragraph,
            face: Face::Text,
            size: BODY,
            lines,
            before: 0.0,
            after: BODY * 0.75,
        });
    }

    /// A paragraph.
    pub fn paragraph(&mut self, text: &str) {
        self.styled(Face::Text, BODY * self.type_factor, text);
    }

    /// A paragraph in small type.
    pub fn small(&mut self, text: &str) {
        self.styled(Face::Text, SMALL, text);
    }

    /// A paragraph in a face and size; it may run over the end of a page.
    pub fn styled(&mut self, face: Face, size: f64, text: &str) {
        let lines = lettering::wrap(face, text, size, self.room());
        // No line stands alone at the head or the foot of a page.
        let mut first = if lines.len() <= 3 { lines.len() } else { 2 };
        let mut rest = lines.as_slice();
        while !rest.is_empty() {
            self.need(size * (LEADING_RATIO * (first.max(1) - 1) as f64 + 1.4));
            let fit = (((self.left() - size * 1.4) / (size * LEADING_RATIO)).floor() + 1.0).max(1.0)
                as usize;
            let count = if fit < rest.len() && rest.len() - fit == 1 && fit > 2 {
                fit - 1
            } else {
                fit.min(rest.len())
            };
            let (taken, after) = rest.split_at(count);
            self.y += size;
            self.lines(Role::Paragraph, face, size, taken.to_vec());
            self.y -= size * (LEADING_RATIO - DESCENT_RATIO);
            (rest, first) = (after, after.len().min(2));
            if !rest.is_empty() {
                self.turn();
            }
        }
        self.y += size * 0.75 * self.spacing_factor;
    }

    /// Enlargement of a drawing: one, unless it is too large, or a diagram without a scale that goes on this page when it is
    /// reduced a little.
    fn factor(&self, drawing: &Drawing) -> f64 {
        let bare = self.is_bare() && self.waiting.is_empty();
        let most = if bare { self.left() } else { self.full() };
        let factor = (self.room() / drawing.width)
            .min((most - 10.0) / drawing.height)
            .min(1.0);
        let here = (self.left() - 5.0) / drawing.height;
        if drawing.scale.is_none() && !bare && self.waiting.is_empty() && here >= LEAST_FACTOR {
            factor.min(here)
        } else {
            factor
        }
    }

    /// Whether a drawing goes on this page.
    #[must_use]
    pub fn has_room_for(&self, drawing: &Drawing) -> bool {
        drawing.height * self.factor(drawing) + 5.0 <= self.left()
    }

    /// A drawing, at the scale it states wherever it fits the paper; one that is a little too tall for what its title
    /// leaves of the page is reduced rather than parted from it.
    pub fn drawing(&mut self, drawing: Drawing) {
        let factor = self.factor(&drawing);
        self.drawing_by(drawing, factor, "");
    }

    /// A drawing that takes no more than so much height; where it is reduced for that, it is said where it is larger.
    pub fn drawing_within(&mut self, drawing: Drawing, most: f64, larger: &str) {
        let factor = self.factor_within(&drawing, most);
        self.drawing_by(drawing, factor, larger);
    }

    /// Of the same drawing at smaller and smaller scales, the first whose lettering can be read when it takes no more than
    /// so much height; the last where none can.
    pub fn first_legible<'a>(&self, all: &'a [Drawing], most: f64) -> Option<&'a Drawing> {
        let legible = |drawing: &&Drawing| {
            drawing.least_lettering_mm() * self.factor_within(drawing, most) >= LEAST_LETTERING
        };
        all.iter().find(legible).or(all.last())
    }

    fn factor_within(&self, drawing: &Drawing, most: f64) -> f64 {
        self.factor(drawing).min(most / drawing.height)
    }

    fn drawing_by(&mut self, drawing: Drawing, factor: f64, larger: &str) {
        let height = drawing.height * factor;
        self.need(height + 3.0);
        self.y += 2.0;
        let alt = format!("{}. {}", drawing.title, drawing.description);
        let corner = at(LEFT + (self.room() - drawing.width * factor) / 2.0, self.y);
        let reduced = factor < 0.999 && drawing.scale.is_some();
        self.put(
            Role::Figure(alt),
            vec![Mark::Drawing {
                corner,
                factor,
                drawing,
            }],
        );
        self.y += height
            + if reduced {
                1.0
            } else {
                3.0 * self.spacing_factor
            };
        if reduced {
            let mut said = "Reduced to fit this paper: measure by the scale bar alone.".to_owned();
            if !larger.is_empty() {
                said = format!("{said} {larger}");
            }
            self.small(&said);
        }
    }
}
