//! Dowels between block and rock.

use super::words::say_mm;
use super::{Layout, View};
use crate::drawing::pen::Pen;
use crate::drawing::{Line, Point};

/// Draws those of the row in the plane of the section.
pub(super) fn draw(pen: &mut Pen, layout: &Layout, view: &View) {
    let Some(dowels) = layout.dowels else { return };
    for side in [-1.0, 1.0] {
        let x = side * dowels.beside;
        pen.line(
            Line::Thick,
            &[
                view.at(x, dowels.up - layout.depth),
                view.at(x, -(layout.depth + dowels.down)),
            ],
        );
    }
}

/// Where its note points, and what it says.
pub(super) fn note(layout: &Layout, view: &View) -> Option<(Point, String)> {
    let dowels = layout.dowels?;
    let say = |length_m: f64| say_mm(layout.units, length_m);
    Some((
        view.at(dowels.beside, -(layout.depth + 0.5 * dowels.down)),
        format!(
            "{} dowels ø\u{a0}{}, {} in the rock, {} in the block",
            dowels.count,
            say(dowels.diameter),
            say(dowels.down),
            say(dowels.up)
        ),
    ))
}
