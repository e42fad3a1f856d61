//! Drawings as a list of lines, shapes and letters on paper, in millimetres, to a stated scale.
//!
//! Each drawing has a layout, which takes what it needs out of the design, and a drawing function, which puts it on
//! paper. The same list is written as SVG for the page and painted into the PDF. Line types are those of ISO 128-2,
//! dimensions those of ISO 129-1, scales those of ISO 5455; views stand in first-angle projection.

pub mod agreement;
pub mod area;
pub mod axis;
pub mod balloon;
pub mod budget;
pub mod callout;
pub mod coarse;
pub mod column;
pub mod contour;
pub mod cut_away;
pub mod dimension;
pub mod figure;
pub mod flexure;
pub mod floor;
pub mod form;
pub mod front;
pub mod furniture;
pub mod hatch;
pub mod history;
pub mod measuring;
pub mod modes;
pub mod pen;
pub mod pit;
pub mod scale;
pub mod section;
pub mod spectrum;
pub mod stud_detail;
pub mod studs;
pub mod tilt_map;
pub mod torque;
pub mod trail;
pub mod upright;
pub mod veil;
pub mod way;

pub use form::{Form, PHONE_ROOM, PHONE_WIDTH};
use stillground::brief::Brief;
use stillground::design::Design;

/// Names of the drawings, as they stand in a link, in the order in which a set of sheets has them.
pub const NAMES: &[&str] = &[
    "cut-away",
    "section",
    "pit",
    "column",
    "studs",
    "stud-detail",
    "breakout",
    "torque",
    "flexure",
    "floor",
    "tilt-map",
    "trail",
    "history",
    "spectrum",
    "modes",
    "budget",
    "measure-knock",
    "measure-lean",
    "measure-pull",
    "measure-walk",
    "measure-level",
    "agreement",
    "tilt-map-pier",
];

/// The drawing of that name, as a sheet has it; none when there is no such drawing, or when the design has nothing to show
/// on it.
#[must_use]
pub fn by_name(name: &str, brief: &Brief, design: &Design) -> Option<Drawing> {
    drawn(name, brief, design, Form::Sheet)
}

/// The same for a side that it shares with words: as a sheet has it, then with only what is measured on the day, at smaller and
/// smaller scales.
pub fn on_a_side<'a>(
    name: &'a str,
    brief: &'a Brief,
    design: &'a Design,
) -> impl Iterator<Item = Drawing> + 'a {
    const STEPS: u8 = 6;
    let smaller = (0..=STEPS).map(Form::Smaller);
    [Form::Sheet]
        .into_iter()
        .chain(smaller)
        .filter_map(|form| drawn(name, brief, design, form))
}

/// The same for a telephone at the work.
#[must_use]
pub fn at_a_glance(name: &str, brief: &Brief, design: &Design) -> Option<Drawing> {
    drawn(name, brief, design, Form::Glance)
}

/// The same for a telephone.
#[must_use]
pub fn on_a_phone(name: &str, brief: &Brief, design: &Design) -> Option<Drawing> {
    drawn(name, brief, design, Form::Phone)
}

fn drawn(name: &str, brief: &Brief, design: &Design, form: Form) -> Option<Drawing> {
    Some(match name {
        "cut-away" => cut_away::draw(brief, design, form),
        "section" => section::draw(&section::layout(brief, design), form),
        "pit" => pit::draw(&pit::layout(brief, design), form),
        "column" => column::draw(&column::layout(brief, design), form),
        "studs" => studs::draw(&studs::layout(brief, design), form),
        "floor" => floor::draw(&floor::layout(brief, design), form),
        "stud-detail" => stud_detail::draw(&stud_detail::layout(brief, design), form),
        "breakout" => studs::areas::draw(&studs::areas::layout(brief, design)?, form),
        "torque" => torque::draw(&torque::layout(brief, design)?, form),
        "flexure" => flexure::draw(&flexure::layout(brief, design)?, form),
        "tilt-map" => tilt_map::draw(&tilt_map::layout(brief, design)?, form),
        "trail" => trail::draw(&trail::layout(brief, design)?, form),
        "history" => history::draw(&history::layout(brief, design)?, form),
        "spectrum" => spectrum::draw(&spectrum::layout(brief, design)?, form),
        "modes" => modes::draw(&modes::layout(brief, design)?, form),
        "budget" => budget::draw(&budget::layout(brief, design)?, form),
        "measure-knock" => measuring::knock(&measuring::layout(brief, design), form),
        "measure-lean" => measuring::lean(&measuring::layout(brief, design), form),
        "measure-pull" => measuring::pull(&measuring::layout(brief, design), form),
        "measure-level" => measuring::level(&measuring::layout(brief, design), form),
        "measure-walk" => measuring::walk(&measuring::route(brief, design)?, form),
        "tilt-map-pier" => tilt_map::draw_of_pier(&tilt_map::of_pier(brief, design)?, form),
        "agreement" => agreement::draw(&agreement::layout(brief, design)?, form),
        _ => return None,
    })
}

/// A place on paper, millimetres from the upper left corner, y downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// A place on paper.
#[must_use]
pub const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// Types of line, ISO 128-2, with their weights of 0.25, 0.35, 0.5 and 0.7 mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Line {
    /// Cut outlines and what must be seen first: continuous, extra thick.
    Heavy,
    /// Visible edges: continuous, thick.
    Thick,
    /// Dimensions, leaders: continuous, thin.
    Thin,
    /// Hatching: finer still, so that it stays behind.
    Hair,
    /// Hidden edges: dashed, thin.
    Dashed,
    /// Axes: long dash and dot, thin.
    Chain,
    /// Neighbouring parts and extents: long dash and two dots, thin.
    Phantom,
}

impl Line {
    /// Every type.
    pub const ALL: [Self; 7] = [
        Self::Heavy,
        Self::Thick,
        Self::Thin,
        Self::Hair,
        Self::Dashed,
        Self::Chain,
        Self::Phantom,
    ];

    /// Weight, mm.
    #[must_use]
    pub const fn weight_mm(self) -> f64 {
        match self {
            Self::Heavy => 0.7,
            Self::Thick => 0.5,
            Self::Thin | Self::Dashed | Self::Chain | Self::Phantom => 0.25,
            Self::Hair => 0.13,
        }
    }

    /// Lengths of dashes and gaps, mm; empty for a continuous line.
    #[must_use]
    pub const fn dashes_mm(self) -> &'static [f64] {
        match self {
            Self::Dashed => &[2.5, 1.0],
            Self::Chain => &[6.0, 1.0, 0.6, 1.0],
            Self::Phantom => &[6.0, 1.0, 0.6, 1.0, 0.6, 1.0],
            _ => &[],
        }
    }

    /// Its name in a style sheet.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Heavy => "heavy",
            Self::Thick => "thick",
            Self::Thin => "thin",
            Self::Hair => "hair",
            Self::Dashed => "dashed",
            Self::Chain => "chain",
            Self::Phantom => "phantom",
        }
    }
}

/// Which point of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

/// A piece of lettering.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Where its anchor stands, on the base line.
    pub at: Point,
    /// Size of type, mm.
    pub size: f64,
    /// Anchor.
    pub anchor: Anchor,
    /// Whether it reads upwards, for dimensions of heights.
    pub upright: bool,
    /// Whether it is heavier.
    pub bold: bool,
    /// The text.
    pub text: String,
}

/// One thing on the paper.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// Lines that share a type, each an open run of points, or a closed one.
    Path {
        /// The runs.
        runs: Vec<Vec<Point>>,
        /// Whether each is closed.
        closed: bool,
        /// Type of line.
        line: Line,
    },
    /// A shape filled with ink: arrowheads, bars.
    Solid {
        /// Its corners.
        corners: Vec<Point>,
    },
    /// A circle.
    Circle {
        /// Centre.
        centre: Point,
        /// Radius.
        radius: f64,
        /// Type of line.
        line: Line,
    },
    /// A dot of ink.
    Dot {
        /// Centre.
        centre: Point,
        /// Radius.
        radius: f64,
    },
    /// Lettering.
    Text(Label),
}

/// A drawing, ready for paper.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Name in links.
    pub name: &'static str,
    /// Title.
    pub title: String,
    /// What it shows, in words: for those who cannot see it.
    pub description: String,
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// What it is laid out for.
    pub form: Form,
    /// Denominator of the scale; none for a diagram, and on a telephone.
    pub scale: Option<u32>,
    /// What is on it.
    pub items: Vec<Item>,
}

impl Drawing {
    /// Size of its smallest lettering, mm; infinite where it has none.
    #[must_use]
    pub fn least_lettering_mm(&self) -> f64 {
        let size = |item: &Item| match item {
            Item::Text(label) => Some(label.size),
            _ => None,
        };
        self.items
            .iter()
            .filter_map(size)
            .fold(f64::INFINITY, f64::min)
    }
}

#[cfg(test)]
#[allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test fails by panicking"
)]
mod tests;
