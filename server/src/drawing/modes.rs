//! The natural swings of pier and block: how each bends, how fast, and where it bends.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::stages::motion::rig::Axis;
use stillground::units::hertz;

use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE};
use crate::drawing::{Anchor, Drawing, Label, Line, at};
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
            let share = |ratio: f64| units.say(ratio * 100.0, Unit::PerCent);
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

/// Paper for one swing, mm.
const CELL: (f64, f64) = (40.0, 58.0);
const TITLE: &str = "Natural swings, slowest first: shape, frequency, and where each bends";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout) -> Drawing {
    let mut pen = Pen::default();
    for (i, swing) in layout.swings.iter().enumerate() {
        one(&mut pen, swing, i as f64 * (CELL.0 + 4.0));
    }
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "modes",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

fn one(pen: &mut Pen, swing: &Swing, left: f64) {
    let middle = left + CELL.0 / 2.0;
    let highest = swing.shape.iter().map(|[z, _]| *z).fold(0.1, f64::max);
    let widest = swing
        .shape
        .iter()
        .map(|[_, u]| u.abs())
        .fold(1e-9, f64::max);
    let points: Vec<_> = swing
        .shape
        .iter()
        .map(|[z, u]| at(middle + u / widest * 13.0, CELL.1 - z / highest * CELL.1))
        .collect();
    pen.line(Line::Chain, &[at(middle, -2.0), at(middle, CELL.1 + 2.0)]);
    pen.line(
        Line::Thin,
        &[at(middle - 9.0, CELL.1), at(middle + 9.0, CELL.1)],
    );
    pen.line(Line::Heavy, &points);
    if let Some(&top) = points.last() {
        pen.dot(top, 1.0);
    }
    let heading = Label {
        at: at(left, CELL.1 + 8.0),
        size: SIZE,
        anchor: Anchor::Start,
        upright: false,
        bold: true,
        text: swing.name.clone(),
    };
    pen.label(heading);
    let mut lines = vec![swing.frequency.clone()];
    lines.extend(wrap(Face::Figures, &swing.words, SIZE, CELL.0));
    pen.paragraph(at(left, CELL.1 + 8.0 + LINE_HEIGHT), SIZE, &lines);
}
