//! How a finished pier is measured: one drawing for each way, all from the same elevation.

mod elevation;
mod level;
mod top;
mod walk;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::units::metre;

use crate::drawing::callout::{self, Callout, note};
use crate::drawing::dimension::{FIRST, across, arrowhead, upright};
use crate::drawing::figure;
use crate::drawing::furniture::{title_strip, view};
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::scale::View;
use crate::drawing::upright::Upright;
use crate::drawing::{Drawing, Form, Line, at};

pub use level::draw as level;
pub use top::draw as knock;
pub use walk::{draw as walk, layout as route};

/// Highest that somebody reaches without a step, m.
const REACH_M: f64 = 1.35;
/// Height of a telescope on its mount above the pier's top, m.
const TELESCOPE_M: f64 = 0.75;
/// Most of the block's depth that is drawn, m.
const SHOWN_M: f64 = 0.45;
/// Room beside the block, m.
const BESIDE_M: f64 = 0.35;
/// Paper for the view itself, mm.
const ROOM: (f64, f64) = (96.0, 105.0);

/// What the drawings show, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    pier: Upright,
    half: f64,
    depth: f64,
    /// Whether it stood already.
    stands: bool,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    Layout {
        units: brief.units,
        pier: Upright::of(brief, design),
        half: 0.5 * metre::get(design.block.length),
        depth: metre::get(design.block.depth),
        stands: design.schedule.is_empty(),
    }
}

impl Layout {
    /// How much of the block is drawn below the ground: what is measured is above it.
    fn shown_depth(&self) -> f64 {
        self.depth.min(SHOWN_M)
    }

    /// Where somebody stands beside the block.
    fn place(&self) -> f64 {
        (self.half + BESIDE_M).max(0.8)
    }

    /// How high a strap or a hand comes, at the pier's top or below it.
    fn hand(&self) -> f64 {
        (self.pier.top() - 0.08).clamp(0.1, REACH_M)
    }
}

/// What stands over a drawing, and the view it is drawn in.
struct Sketch {
    pen: Pen,
    view: View,
}

impl Sketch {
    /// An elevation from the block's left to `right` metres beyond the axis, and up to `top`.
    fn new(layout: &Layout, form: Form, room: (f64, f64), right: f64, top: f64) -> Self {
        let left = layout.half + 0.1;
        // Nobody measures on it: it is as large as fits.
        let scale = Form::Phone.scale(left + right, top + layout.shown_depth() + 0.05, room);
        let view = view(scale, -left, top);
        let mut pen = Pen::new(form);
        elevation::draw(&mut pen, layout, &view, right);
        Self { pen, view }
    }

    /// Puts the notes, the title and the words for those who cannot see it.
    fn finish(
        mut self,
        layout: &Layout,
        name: &'static str,
        title: &str,
        notes: Vec<Callout>,
    ) -> Drawing {
        let bounds = self.pen.bounds();
        let said: Vec<String> = notes.iter().map(|note| note.text.clone()).collect();
        callout::column(
            &mut self.pen,
            notes,
            bounds.right + 9.0,
            bounds.top,
            bounds.bottom,
            callout::room(&bounds, 46.0),
        );
        title_strip(&mut self.pen, title, None, layout.units);
        self.pen.finish(Head {
            name,
            title: title.to_owned(),
            description: format!("{title}. {}.", said.join(". ")),
            scale: None,
        })
    }
}

const LEAN: &str = "A lean: somebody steps to a marked place and away again, looking north";

/// Somebody steps to a marked place and away.
#[must_use]
pub fn lean(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| {
        let (place, away) = (layout.place(), layout.place() + 1.1);
        let top = (layout.pier.top() + TELESCOPE_M + 0.5).max(figure::PERSON_M + 0.1);
        let mut sketch = Sketch::new(layout, form, room, away + 0.4, top);
        let (pen, view) = (&mut sketch.pen, sketch.view);
        let tube = elevation::telescope(pen, layout, &view);
        let star = view.at(0.9, top - 0.05);
        pen.line(Line::Chain, &[tube, star]);
        pen.dot(star, 0.9);
        let tall = view.mm(figure::PERSON_M);
        figure::draw(pen, view.at(place, 0.0), tall);
        figure::outlined(pen, view.at(away, 0.0), tall);
        // A cross on the ground.
        let mark = view.at(place, 0.0);
        for side in [-1.0, 1.0] {
            pen.line(
                Line::Heavy,
                &[
                    at(mark.x - 2.2, mark.y - side * 1.2),
                    at(mark.x + 2.2, mark.y + side * 1.2),
                ],
            );
        }
        let low = view.at(0.0, -layout.shown_depth()).y;
        across(
            pen,
            at(view.at(0.0, 0.0).x, low),
            at(mark.x, mark.y),
            low + FIRST,
            "?",
        );
        let head = view.at(away, 0.9);
        let notes = vec![
            note(
                star,
                "A star high in the sky, followed with guiding off and tracking on",
            ),
            note(head, "Away: half a minute"),
            note(
                view.at(place, 0.85),
                "On the place: half a minute, three times in all",
            ),
            note(
                mark,
                "The marked place; measure how far east and north of the axis it is",
            ),
        ];
        sketch.finish(layout, "measure-lean", LEAN, notes)
    })
}

const PULL: &str = "A pull: a luggage scale at the pier’s top, looking north";

/// A luggage scale at a height.
#[must_use]
pub fn pull(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| {
        let (place, hand) = (layout.place().max(layout.pier.radius + 1.1), layout.hand());
        let top = (layout.pier.top() + TELESCOPE_M).max(figure::PERSON_M + 0.1);
        let mut sketch = Sketch::new(layout, form, room, place + 0.4, top);
        let (pen, view) = (&mut sketch.pen, sketch.view);
        elevation::telescope(pen, layout, &view);
        let strap = layout.pier.radius;
        for up in [-0.02, 0.02] {
            pen.line(
                Line::Thick,
                &[view.at(-strap, hand + up), view.at(strap, hand + up)],
            );
        }
        let grip = view.at(place - 0.32, hand);
        let scale = (
            view.at(strap + 0.22, hand + 0.05),
            view.at(strap + 0.4, hand - 0.05),
        );
        pen.line(
            Line::Thick,
            &[view.at(strap, hand), view.at(strap + 0.22, hand)],
        );
        pen.rectangle(Line::Thick, scale.0, scale.1);
        pen.line(Line::Thick, &[view.at(strap + 0.4, hand), grip]);
        figure::reaching(pen, view.at(place, 0.0), view.mm(figure::PERSON_M), grip);
        let tip = view.at(strap + 0.62, hand + 0.14);
        pen.line(Line::Thin, &[view.at(strap + 0.3, hand + 0.14), tip]);
        arrowhead(pen, tip, -1.0, 0.0);
        let left = view.at(-layout.half, 0.0).x - FIRST;
        upright(pen, view.at(-strap, hand), view.at(-strap, 0.0), left, "?");
        let notes = vec![
            note(
                tip,
                "Level and slowly; hold for ten seconds, then let go slowly",
            ),
            note(view.at(strap + 0.31, hand), "Luggage scale"),
            note(
                view.at(0.0, hand),
                "Strap round the pier; measure its height above the ground",
            ),
        ];
        sketch.finish(layout, "measure-pull", PULL, notes)
    })
}

/// A rectangle between two places of a view.
fn box_of(view: &View, a: (f64, f64), b: (f64, f64)) -> Vec<crate::drawing::Point> {
    rectangle(view.at(a.0, a.1), view.at(b.0, b.1))
}
