//! A knock: somebody knocks at the pier's top, and the telephone that lies there, from above.

use super::{Layout, ROOM, Sketch};
use crate::drawing::callout::note;
use crate::drawing::dimension::arrowhead;
use crate::drawing::figure;
use crate::drawing::furniture::north;
use crate::drawing::pen::{Pen, SIZE, rectangle};
use crate::drawing::{Anchor, Drawing, Form, Label, Line, Point, at};

/// A telephone, m.
const TELEPHONE_M: (f64, f64) = (0.075, 0.15);
/// Paper for the plate from above, mm.
const PLATE: f64 = 40.0;
/// Half of the telephone's width on paper, at least, mm.
const LEAST: f64 = 3.2;
/// Length of an arrow, mm.
const ARROW: f64 = 11.0;

const TITLE: &str = "A knock at the pier’s top, and the telephone that hears it, from above";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((60.0, ROOM.1), |room| {
        let place = (layout.pier.top_plate_half + 0.55).max(layout.half.min(0.8));
        let hand = layout.hand();
        let top = (layout.pier.top() + 0.2).max(figure::PERSON_M + 0.1);
        let mut sketch = Sketch::new(layout, form, room, place.max(layout.half) + 0.4, top);
        let (pen, view) = (&mut sketch.pen, sketch.view);
        let fist = view.at(layout.pier.radius.max(0.05) + 0.03, hand);
        let foot = if place < layout.half {
            layout.pier.upstand
        } else {
            0.0
        };
        figure::reaching(pen, view.at(place, foot), view.mm(figure::PERSON_M), fist);
        let lies = view.at(0.0, layout.pier.top());
        let bounds = pen.bounds();
        let centre = match form {
            Form::Sheet | Form::Smaller(_) => at(
                bounds.right + 14.0 + PLATE / 2.0 + ARROW,
                bounds.top + 18.0 + PLATE / 2.0,
            ),
            Form::Phone | Form::Glance => at(
                (bounds.left + bounds.right) / 2.0,
                bounds.bottom + 18.0 + 0.35 * PLATE,
            ),
        };
        let size = if form == Form::Sheet {
            PLATE
        } else {
            0.7 * PLATE
        };
        let [telephone, aside, along] = from_above(pen, layout, centre, size);
        let notes = vec![
            note(lies, "The telephone, flat on the pier’s top"),
            note(fist, "Knock once with the heel of the hand, at the top"),
            note(telephone, "Taped down, its long side north and south"),
            note(aside, "Three knocks along east and west, ten seconds apart"),
            note(along, "Then three along north and south"),
        ];
        sketch.finish(layout, "measure-knock", TITLE, notes)
    })
}

/// The top plate with the telephone and its axes; where it is named, and where both knocks are.
fn from_above(pen: &mut Pen, layout: &Layout, centre: Point, size: f64) -> [Point; 3] {
    let side = (2.0 * layout.pier.top_plate_half).max(TELEPHONE_M.1 * 1.1);
    let mm = |length: f64| length / side * size;
    let half = mm(layout.pier.top_plate_half);
    pen.rectangle(
        Line::Thick,
        at(centre.x - half, centre.y - half),
        at(centre.x + half, centre.y + half),
    );
    // On a large plate it is drawn larger than it is, or its axes could not be read.
    let wide = (0.5 * mm(TELEPHONE_M.0)).max(LEAST);
    let tall = wide * TELEPHONE_M.1 / TELEPHONE_M.0;
    let telephone = rectangle(
        at(centre.x - wide, centre.y - tall),
        at(centre.x + wide, centre.y + tall),
    );
    pen.outline(Line::Heavy, &telephone);
    for share in [-0.55, 0.55] {
        let y = centre.y + share * tall;
        pen.line(
            Line::Thin,
            &[at(centre.x - wide - 3.0, y), at(centre.x + wide + 3.0, y)],
        );
    }
    // Its axes.
    let (east, up) = (
        at(centre.x + wide + 5.5, centre.y),
        at(centre.x, centre.y - tall - 5.5),
    );
    for (tip, ux, uy) in [(east, -1.0, 0.0), (up, 0.0, 1.0)] {
        pen.line(Line::Thin, &[centre, tip]);
        arrowhead(pen, tip, ux, uy);
    }
    let letter = |pen: &mut Pen, place: Point, text: &str| {
        pen.label(Label {
            at: place,
            size: SIZE,
            anchor: Anchor::Start,
            upright: false,
            bold: true,
            text: text.to_owned(),
        });
    };
    letter(pen, at(centre.x + wide + 0.9, centre.y - 0.9), "x");
    letter(pen, at(centre.x + 1.0, centre.y - tall - 1.4), "y");
    // Both knocks point at the plate.
    let edge = half.max(tall);
    let west = at(centre.x - edge - 1.0, centre.y);
    pen.line(Line::Thick, &[at(west.x - ARROW, west.y), west]);
    arrowhead(pen, west, -1.0, 0.0);
    let south = at(centre.x, centre.y + edge + 1.0);
    pen.line(Line::Thick, &[at(south.x, south.y + ARROW), south]);
    arrowhead(pen, south, 0.0, 1.0);
    north(pen, at(centre.x + edge + 4.0, centre.y + edge + ARROW));
    [
        at(centre.x + 0.6 * wide, centre.y + 0.8 * tall),
        at(west.x - 0.6 * ARROW, west.y),
        at(south.x, south.y + 0.6 * ARROW),
    ]
}
