//! Level on the base plate, straightedge against the column.

use super::{Layout, ROOM, Sketch, box_of};
use crate::drawing::callout::note;
use crate::drawing::{Drawing, Form, Line, at};

const TITLE: &str = "Level and straightedge at the finished pier, looking north";
/// Height of a level, m.
const LEVEL_M: f64 = 0.05;
/// Width of a straightedge, m.
const EDGE_M: f64 = 0.03;

/// Most of the column's height and of the block beside the plate that a telephone shows, m: what is measured is at the foot.
const NEAR_M: (f64, f64) = (0.5, 0.1);

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    let mut layout = layout.clone();
    let (mut beyond, mut slope) = (0.4, 0.012);
    if form.is_phone() {
        let pier = &mut layout.pier;
        pier.height = pier.height.min(NEAR_M.0);
        layout.half = layout.half.min(pier.plate_half + NEAR_M.1);
        (beyond, slope) = (0.15, 0.03);
    }
    of_near(&layout, form, beyond, slope)
}

/// Draws so much of it, ground so far beyond the block, the straightedge at that slope.
fn of_near(layout: &Layout, form: Form, beyond: f64, slope: f64) -> Drawing {
    form.fitted(ROOM, |room| {
        let pier = &layout.pier;
        let top = pier.top() + 0.15;
        let mut sketch = Sketch::new(layout, form, room, layout.half + beyond, top);
        let (pen, view) = (&mut sketch.pen, sketch.view);
        let seat = pier.foot() + pier.plate_thickness;
        let length = pier.plate_half.max(0.15);
        let level = box_of(&view, (-length, seat + LEVEL_M), (length, seat));
        pen.outline(Line::Thick, &level);
        let bubble = view.at(-0.75 * length, seat + 0.5 * LEVEL_M);
        let half = (0.3 * view.mm(LEVEL_M)).max(0.4);
        pen.rectangle(
            Line::Thin,
            at(bubble.x - 2.5 * half, bubble.y - half),
            at(bubble.x + 2.5 * half, bubble.y + half),
        );
        let lean = slope * pier.height;
        let edge = [
            view.at(pier.radius, pier.top() - pier.top_plate_thickness),
            view.at(pier.radius + EDGE_M, pier.top() - pier.top_plate_thickness),
            view.at(pier.radius + EDGE_M + lean, seat + LEVEL_M),
            view.at(pier.radius + lean, seat + LEVEL_M),
        ];
        pen.outline(Line::Thick, &edge);
        let gap = view.at(
            pier.radius + 0.5 * lean,
            seat + LEVEL_M + 0.02 * pier.height,
        );
        let notes = vec![
            note(
                view.at(
                    pier.radius + 0.5 * (EDGE_M + lean),
                    seat + 0.6 * pier.height,
                ),
                "Straightedge against the column, on two sides",
            ),
            note(gap, "Measure the gap at its foot"),
            note(
                bubble,
                "Level on the plate, turned end for end: the middle of both readings",
            ),
            note(
                view.at(0.8 * pier.plate_half, pier.upstand + 0.5 * pier.gap),
                if layout.stands {
                    "Nuts: whether one moves under a short spanner"
                } else {
                    "Nuts: the torque at which each turns on, after a week"
                },
            ),
        ];
        sketch.finish(layout, "measure-level", TITLE, notes)
    })
}
