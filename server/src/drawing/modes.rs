//! The natural swings of pier and block: how each bends, how fast, and where it bends.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{PerCent, Unit, Units};
use stillground::stages::motion::rig::Axis;
use stillground::units::hertz;

use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE};
use crate::drawing::{Anchor, Drawing, Form, Label, Line, Point, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    swings: Vec<Swing>,
}

/// One swing.
#[derive(Debug, Clone)]
struct Swing {
    name: String,
    frequency: String,
    words: String,
    shape: Vec<[f64; 2]>,
}

/// Most swings that are drawn.
const MOST: usize = 4;

/// Takes it out of the design; none where the swings are not known.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let units = brief.units;
    let swings: Vec<Swing> = design
        .motion
        .modes
        .iter()
        .filter(|mode| mode.shape.len() > 1)
        .take(MOST)
        .enumerate()
        .map(|(i, mode)| {
            let f = mode.frequency.map(hertz::get);
            let say = |value| units.say(value, Unit::Hertz);
            let share = |ratio: f64| units.say(ratio * 100.0, PerCent);
            let way = if mode.plane == Axis::X {
                "east–west"
            } else {
                "north–south"
            };
            Swing {
                name: format!("{} {way}", i + 1),
                frequency: say(f.typical),
                words: format!(
                    "{} to {}; bends in ground {}, joint {}, column {}, mount {}",
                    say(f.low),
                    say(f.high),
                    share(mode.ground_share_ratio),
                    share(mode.joint_share_ratio),
                    share(mode.column_share_ratio),
                    share(mode.mount_share_ratio)
                ),
                shape: mode.shape.clone(),
            }
        })
        .collect();
    (!swings.is_empty()).then_some(Layout { units, swings })
}

impl Layout {
    fn description(&self) -> String {
        let swings: Vec<String> = self
            .swings
            .iter()
            .map(|swing| format!("{}: {}, {}", swing.name, swing.frequency, swing.words))
            .collect();
        format!("The slowest natural swings. {}.", swings.join(". "))
    }
}

/// Paper for one swing, mm, and on a telephone, where two stand beside each other.
const CELL: (f64, f64) = (40.0, 58.0);
const PHONE_CELL: (f64, f64) = (31.5, 44.0);
const TITLE: &str = "Natural frequencies and mode shapes, slowest first";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    let mut pen = Pen::new(form);
    let (row, cell) = match form {
        Form::Sheet | Form::Smaller(_) => (MOST, CELL),
        Form::Phone | Form::Glance => (2, PHONE_CELL),
    };
    for swings in layout.swings.chunks(row) {
        let bounds = pen.bounds();
        // The first row stands at the top.
        let top = if bounds.bottom.is_finite() {
            bounds.bottom + 8.0
        } else {
            0.0
        };
        for (i, swing) in swings.iter().enumerate() {
            one(&mut pen, swing, at(i as f64 * (cell.0 + 4.0), top), cell);
        }
    }
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "modes",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

/// One swing in its cell, whose upper left corner is given.
fn one(pen: &mut Pen, swing: &Swing, corner: Point, cell: (f64, f64)) {
    let (left, middle) = (corner.x, corner.x + cell.0 / 2.0);
    let foot = corner.y + cell.1;
    let highest = swing.shape.iter().map(|[z, _]| *z).fold(0.1, f64::max);
    let widest = swing
        .shape
        .iter()
        .map(|[_, u]| u.abs())
        .fold(1e-9, f64::max);
    let points: Vec<_> = swing
        .shape
        .iter()
        .map(|[z, u]| at(middle + u / widest * 13.0, foot - z / highest * cell.1))
        .collect();
    pen.line(
        Line::Chain,
        &[at(middle, corner.y - 2.0), at(middle, foot + 2.0)],
    );
    pen.line(
        Line::Thin,
        &[at(middle - 9.0, foot), at(middle + 9.0, foot)],
    );
    pen.line(Line::Heavy, &points);
    if let Some(&top) = points.last() {
        pen.dot(top, 1.0);
    }
    let heading = Label {
        at: at(left, foot + 8.0),
        size: SIZE,
        anchor: Anchor::Start,
        upright: false,
        bold: true,
        text: swing.name.clone(),
    };
    pen.label(heading);
    let mut lines = vec![swing.frequency.clone()];
    lines.extend(wrap(Face::Figures, &swing.words, SIZE, cell.0));
    pen.paragraph(at(left, foot + 8.0 + LINE_HEIGHT), SIZE, &lines);
}
