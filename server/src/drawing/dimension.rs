//! Dimensions after ISO 129-1: extension lines, filled arrowheads of 15°, the figure above the line and read from below
//! or from the right. Where the figure does not fit between the arrows, the arrows point inwards and the figure stands
//! beyond them. Each dimension has a line of its own, so that no two can meet.

use crate::drawing::pen::{Pen, SIZE};
use crate::drawing::{Anchor, Label, Line, Point, at};
use crate::lettering::{Face, width};

/// Distance between neighbouring dimension lines, mm.
pub const STEP: f64 = 7.0;
/// Distance of the first dimension line from what it measures, mm.
pub const FIRST: f64 = 9.0;
const ARROW: f64 = 2.6;
const OVERSHOOT: f64 = 1.5;
const GAP: f64 = 0.8;

/// A dimension from left to right, its line at the height `line`; `from` and `to` are the points measured.
pub fn across(pen: &mut Pen, from: Point, to: Point, line: f64, text: &str) {
    let (from, to) = if from.x <= to.x {
        (from, to)
    } else {
        (to, from)
    };
    for end in [from, to] {
        let away = if line >= end.y { 1.0 } else { -1.0 };
        pen.line(
            Line::Thin,
            &[
                at(end.x, end.y + away * GAP),
                at(end.x, line + away * OVERSHOOT),
            ],
        );
    }
    let (span, length) = (to.x - from.x, width(Face::Figures, text, SIZE));
    let inside = span >= 2.0 * ARROW + 1.0;
    let text_fits = inside && length + 1.0 <= span;
    let (left, right) = (at(from.x, line), at(to.x, line));
    arrows(pen, left, right, inside);
    let place = if text_fits {
        at((from.x + to.x) / 2.0, line - GAP)
    } else {
        at(to.x + 2.0 * ARROW, line - GAP)
    };
    let tail = if text_fits { 0.0 } else { 2.0 * ARROW + length };
    pen.line(
        Line::Thin,
        &[
            at(from.x - if inside { 0.0 } else { 2.0 * ARROW }, line),
            at(
                to.x + tail.max(if inside { 0.0 } else { 2.0 * ARROW }),
                line,
            ),
        ],
    );
    pen.text(
        place,
        if text_fits {
            Anchor::Middle
        } else {
            Anchor::Start
        },
        text,
    );
}

/// A dimension from top to bottom, its line at `line` from the left.
pub fn upright(pen: &mut Pen, from: Point, to: Point, line: f64, text: &str) {
    let (top, bottom) = if from.y <= to.y {
        (from, to)
    } else {
        (to, from)
    };
    for end in [top, bottom] {
        let away = if line >= end.x { 1.0 } else { -1.0 };
        pen.line(
            Line::Thin,
            &[
                at(end.x + away * GAP, end.y),
                at(line + away * OVERSHOOT, end.y),
            ],
        );
    }
    let (span, length) = (bottom.y - top.y, width(Face::Figures, text, SIZE));
    let inside = span >= 2.0 * ARROW + 1.0;
    let text_fits = inside && length + 1.0 <= span;
    arrows(pen, at(line, top.y), at(line, bottom.y), inside);
    let reach = if inside { 0.0 } else { 2.0 * ARROW };
    let tail = if text_fits { 0.0 } else { 2.0 * ARROW + length };
    pen.line(
        Line::Thin,
        &[
            at(line, top.y - tail.max(reach)),
            at(line, bottom.y + reach),
        ],
    );
    let place = if text_fits {
        at(line - GAP, (top.y + bottom.y) / 2.0)
    } else {
        at(line - GAP, top.y - 2.0 * ARROW)
    };
    let anchor = if text_fits {
        Anchor::Middle
    } else {
        Anchor::Start
    };
    pen.label(Label {
        at: place,
        size: SIZE,
        anchor,
        upright: true,
        bold: false,
        text: text.to_owned(),
    });
}

/// Arrowheads at both ends of a dimension line, within it or against it from outside.
fn arrows(pen: &mut Pen, from: Point, to: Point, inside: bool) {
    let length = (to.x - from.x).hypot(to.y - from.y);
    let (ux, uy) = if length > 0.0 {
        ((to.x - from.x) / length, (to.y - from.y) / length)
    } else {
        (1.0, 0.0)
    };
    let turn = if inside { 1.0 } else { -1.0 };
    arrowhead(pen, from, ux * turn, uy * turn);
    arrowhead(pen, to, -ux * turn, -uy * turn);
}

/// An arrowhead with its tip at a point, its shaft in the direction `(ux, uy)` from there.
pub fn arrowhead(pen: &mut Pen, tip: Point, ux: f64, uy: f64) {
    let half = ARROW * 0.17;
    pen.solid(&[
        tip,
        at(
            tip.x + ux * ARROW - uy * half,
            tip.y + uy * ARROW + ux * half,
        ),
        at(
            tip.x + ux * ARROW + uy * half,
            tip.y + uy * ARROW - ux * half,
        ),
    ]);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Item;
    use crate::drawing::pen::Head;

    fn drawn(span: f64) -> Vec<Item> {
        let mut pen = Pen::default();
        across(&mut pen, at(0.0, 0.0), at(span, 0.0), 10.0, "1234");
        pen.finish(Head {
            name: "test",
            title: String::new(),
            description: String::new(),
            scale: None,
        })
        .items
    }

    fn label(items: &[Item]) -> Label {
        items
            .iter()
            .find_map(|item| {
                if let Item::Text(label) = item {
                    Some(label.clone())
                } else {
                    None
                }
            })
            .expect("a figure")
    }

    #[test]
    fn a_figure_that_fits_stands_in_the_middle_and_one_that_does_not_beyond() {
        assert_eq!(label(&drawn(60.0)).anchor, Anchor::Middle);
        assert_eq!(label(&drawn(4.0)).anchor, Anchor::Start);
    }
}
