//! The star through time while somebody walks: its turn east and north, beside the swing that is the limit.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Arcsecond, Unit, Units};
use stillground::stages::motion::trail::Drawn;

use crate::drawing::axis::{Axis, steps};
use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, Pen, SIZE as LETTERS};
use crate::drawing::{Anchor, Drawing, Form, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    drawn: Drawn,
    budget: f64,
    peak: f64,
    rms: f64,
}

/// Takes it out of the design; none where the walk is not known.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let (motion, walk) = (&design.motion, &design.motion.walk);
    let drawn = walk
        .drawn
        .clone()
        .filter(|drawn| drawn.turns_arcsec.len() > 1)?;
    let layout = Layout {
        units: brief.units,
        drawn,
        budget: motion.budget_arcsec,
        peak: walk.peak_arcsec?,
        rms: walk.rms_arcsec?,
    };
    layout
        .drawn
        .turns_arcsec
        .iter()
        .flatten()
        .all(|turn| turn.is_finite())
        .then_some(layout)
}

impl Layout {
    fn say(&self, arcsec: f64) -> String {
        self.units.say(arcsec, Arcsecond)
    }

    fn seconds(&self, time: f64) -> String {
        self.units.say(time, Unit::Second)
    }

    /// Times of the first and the last point.
    fn times(&self) -> (f64, f64) {
        let lasts = self.drawn.step_s * (self.drawn.turns_arcsec.len() - 1) as f64;
        (self.drawn.from_s, self.drawn.from_s + lasts)
    }

    /// Largest turn along one axis, at least a fifth of what is allowed.
    fn most(&self) -> f64 {
        self.drawn
            .turns_arcsec
            .iter()
            .flatten()
            .map(|turn| turn.abs())
            .fold(0.2 * self.budget, f64::max)
    }

    fn description(&self) -> String {
        let (from, to) = self.times();
        let loudest = (0..self.drawn.turns_arcsec.len())
            .max_by(|&a, &b| {
                let far =
                    |i: usize| self.drawn.turns_arcsec[i][0].hypot(self.drawn.turns_arcsec[i][1]);
                far(a).total_cmp(&far(b))
            })
            .unwrap_or(0);
        format!(
            "The star's turn to the east and to the north from {} to {} after the walk began. It is farthest from rest after {}, by {}; \
             its root mean square is {}. The limit, for a swing all through an exposure, is {}.",
            self.seconds(from),
            self.seconds(to),
            self.seconds(from + self.drawn.step_s * loudest as f64),
            self.say(self.peak),
            self.say(self.rms),
            self.say(self.budget)
        )
    }
}

/// Size of each of the two pictures on a sheet, mm.
const SIZE: (f64, f64) = (132.0, 30.0);
/// Paper between them, mm.
const GAP: f64 = 9.0;
const TITLE: &str = "Star movement over time during a walk";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(SIZE, |room| within(layout, form, (room.0, SIZE.1)))
}

fn within(layout: &Layout, form: Form, size: (f64, f64)) -> Drawing {
    let mut pen = Pen::new(form);
    let most = layout.most() * 1.08;
    for (axis, name) in [(0, "east"), (1, "north")] {
        one(&mut pen, layout, (axis, name), most, size);
    }
    let (from, to) = layout.times();
    let low = 2.0 * size.1 + GAP;
    let time = Axis {
        from: at(0.0, low),
        to: at(size.0, low),
        low: from,
        high: to,
    };
    let marks = match form {
        Form::Sheet | Form::Smaller(_) => 8,
        Form::Phone | Form::Glance => 3,
    };
    for value in steps(from, to, marks) {
        time.mark(&mut pen, value, at(0.0, 1.2), &layout.seconds(value));
    }
    let budget = layout.say(layout.budget);
    let where_it_is = if layout.budget < most {
        format!("Dashed: {budget}, the limit of a lasting swing.")
    } else {
        format!("Limit of a lasting swing: {budget}, beyond the picture.")
    };
    let words = format!("{where_it_is} Time after the walk began.");
    let wide = match form {
        Form::Sheet | Form::Smaller(_) => size.0 + 20.0,
        Form::Phone | Form::Glance => PHONE_ROOM,
    };
    let lines = wrap(Face::Figures, &words, LETTERS, wide);
    let left = match form {
        Form::Sheet | Form::Smaller(_) => 0.0,
        Form::Phone | Form::Glance => pen.bounds().left,
    };
    pen.paragraph(at(left, low + 10.0), LETTERS, &lines);
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "history",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

fn one(pen: &mut Pen, layout: &Layout, (axis, name): (usize, &str), most: f64, size: (f64, f64)) {
    let top = axis as f64 * (size.1 + GAP);
    let middle = top + size.1 / 2.0;
    let y = |turn: f64| middle - turn / most * size.1 / 2.0;
    let count = (layout.drawn.turns_arcsec.len() - 1) as f64;
    let place = |(i, turn): (usize, &[f64; 2])| at(size.0 * i as f64 / count, y(turn[axis]));
    pen.rectangle(Line::Hair, at(0.0, top), at(size.0, top + size.1));
    pen.line(Line::Hair, &[at(0.0, middle), at(size.0, middle)]);
    for budget in [layout.budget, -layout.budget]
        .into_iter()
        .filter(|budget| budget.abs() < most)
    {
        pen.line(Line::Dashed, &[at(0.0, y(budget)), at(size.0, y(budget))]);
    }
    pen.line(
        Line::Thin,
        &layout
            .drawn
            .turns_arcsec
            .iter()
            .enumerate()
            .map(place)
            .collect::<Vec<Point>>(),
    );
    pen.text(
        at(0.0, top - 1.4),
        Anchor::Start,
        format!("Towards the {name}"),
    );
    let turns = Axis {
        from: at(size.0, top + size.1),
        to: at(size.0, top),
        low: -most,
        high: most,
    };
    for value in steps(0.0, most, 2) {
        turns.mark(pen, value, at(1.2, 0.0), &layout.say(value));
    }
}
