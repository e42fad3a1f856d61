//! The table of holes: where each is, and what its stud bears.

use super::Layout;
use crate::drawing::pen::{LINE_HEIGHT, Pen, SIZE};
use crate::drawing::{Anchor, Form, Label, Line, Point, at};
use crate::lettering::{Face, wrap};
use stillground::figure::Units;

/// The table of holes, its upper left corner at a point; gives its right edge and where it ends. On a day's side, where the
/// figures stand below, it says where the holes are and no more.
pub(super) fn table(pen: &mut Pen, layout: &Layout, corner: Point) -> (f64, f64) {
    let is_short = matches!(pen.form(), Form::Smaller(_));
    // Fractions of an inch are wider than millimetres.
    let (columns, shown) = match layout.units {
        _ if is_short => ([0.0, 7.0, 24.0, 41.0, 41.0, 41.0], 3),
        Units::Metric => ([0.0, 7.0, 20.0, 34.0, 51.0, 63.0], 5),
        Units::Imperial => ([0.0, 7.0, 21.0, 36.5, 53.0, 63.0], 5),
    };
    let right = corner.x + columns[shown] + 1.0;
    let mut y = corner.y + LINE_HEIGHT;
    let force = if layout.units == Units::Metric {
        "Pull, kN"
    } else {
        "Pull, kip"
    };
    let heads = ["No.", "East", "North", force, "Used"];
    let row = |pen: &mut Pen, y: f64, cells: [String; 5], bold: bool| {
        for (i, text) in cells.into_iter().take(shown).enumerate() {
            let (x, anchor) = if i == 0 {
                (corner.x + 1.0, Anchor::Start)
            } else {
                (corner.x + columns[i + 1], Anchor::End)
            };
            pen.label(Label {
                at: at(x, y),
                size: SIZE,
                anchor,
                upright: false,
                bold,
                text,
            });
        }
    };
    pen.line(Line::Thick, &[corner, at(right, corner.y)]);
    row(pen, y, heads.map(str::to_owned), true);
    pen.line(Line::Thin, &[at(corner.x, y + 1.5), at(right, y + 1.5)]);
    for (i, &(x, north)) in layout.studs.iter().enumerate() {
        y += LINE_HEIGHT + 0.8;
        let (pull, used) = layout.borne.get(i).map_or_else(Default::default, |borne| {
            (borne.pull.clone(), borne.used.clone())
        });
        row(
            pen,
            y,
            [
                (i + 1).to_string(),
                layout.number(x),
                layout.number(north),
                pull,
                used,
            ],
            false,
        );
    }
    pen.line(Line::Thick, &[at(corner.x, y + 2.0), at(right, y + 2.0)]);
    let mut lines = if layout.studs.is_empty() {
        vec!["No studs are planned.".to_owned()]
    } else {
        vec![format!("{} studs {}", layout.studs.len(), layout.size)]
    };
    if !is_short {
        lines.extend(words(layout, right - corner.x - 2.0));
    }
    let bottom = pen.paragraph(at(corner.x + 1.0, y + 8.0), SIZE, &lines);
    (right, bottom)
}

/// What is said of all holes, and of which load the pulls are.
fn words(layout: &Layout, width: f64) -> Vec<String> {
    let mut lines = Vec::new();
    if !layout.studs.is_empty() {
        lines.extend([
            format!(
                "Holes ø\u{a0}{}, {} deep",
                layout.number(layout.hole),
                layout.say(layout.hole_depth)
            ),
            format!("Embedment {}", layout.say(layout.embedment)),
            format!("Circle ø\u{a0}{}", layout.say(layout.circle)),
        ]);
    }
    lines.extend(wrap(Face::Figures, &layout.worst, SIZE, width));
    lines
}
