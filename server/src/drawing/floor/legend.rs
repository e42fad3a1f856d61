//! Who stands where, and what the lines mean.

use stillground::figure::Unit;

use crate::drawing::callout::list_from;
use crate::drawing::floor::Layout;
use crate::drawing::pen::{Pen, SIZE};
use crate::drawing::{Line, Point, at};
use crate::lettering::{Face, wrap};

/// Who stands where, and what the lines mean.
pub fn write(pen: &mut Pen, layout: &Layout, corner: Point, wide: f64) {
    let stands: Vec<String> = layout
        .stands
        .iter()
        .map(|stand| layout.stand_words(stand))
        .collect();
    let mut y = list_from(pen, at(corner.x, corner.y + SIZE), wide, 1.0, &stands) + 2.0;
    let mut key = |pen: &mut Pen, line: Line, text: String| {
        pen.line(line, &[at(corner.x, y - 1.2), at(corner.x + 12.0, y - 1.2)]);
        y = pen.paragraph(
            at(corner.x + 15.0, y),
            SIZE,
            &wrap(Face::Figures, &text, SIZE, wide - 15.0),
        ) + 1.0;
    };
    key(
        pen,
        Line::Dashed,
        format!(
            "Block below, {}\u{a0}×\u{a0}{}",
            layout.say(layout.block.0),
            layout.say(layout.block.1)
        ),
    );
    if layout.walk.len() > 1 {
        key(
            pen,
            Line::Chain,
            format!(
                "Path, a person of {}",
                layout.units.say(layout.walker, Unit::Kilogram)
            ),
        );
    }
    if let Some(quiet) = layout.quiet {
        key(
            pen,
            Line::Phantom,
            format!(
                "Beyond {} a person who stands costs the star less than is asked",
                layout.say(quiet)
            ),
        );
    }
    if !layout.joists.is_empty() {
        key(
            pen,
            Line::Thin,
            "Joists, as they might lie in the way that was said".to_owned(),
        );
    }
    if layout.door.is_some() {
        key(pen, Line::Heavy, "Door".to_owned());
    }
    if !layout.posts.is_empty() {
        pen.solid(&[
            at(corner.x + 5.0, y - 2.2),
            at(corner.x + 7.0, y - 2.2),
            at(corner.x + 7.0, y - 0.2),
            at(corner.x + 5.0, y - 0.2),
        ]);
        y = pen.paragraph(
            at(corner.x + 15.0, y),
            SIZE,
            &[format!("{} posts", layout.posts.len())],
        ) + 1.0;
    }
    pen.paragraph(
        at(corner.x, y + 1.0),
        SIZE,
        &wrap(
            Face::Figures,
            &format!("{}.", layout.kind_words()),
            SIZE,
            wide,
        ),
    );
}
