//! What tightening bends: half a section through base plate and foot of the wall, true to scale and exaggerated, and the
//! bending along the wall against what it can bear.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Kilonewton, Megapascal, NewtonMetre, One, PerCent, Units};
use stillground::stages::anchors::flexure::rounded;
use stillground::stages::anchors::{Flexure, Seat};
use stillground::units::{Length, megapascal, metre, millimetre};

use crate::drawing::dimension::{FIRST, STEP, across, arrowhead, upright};
use crate::drawing::furniture::{dimension_text, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE, rectangle};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Drawing, Form, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    acts: bool,
    outer: f64,
    stud: f64,
    wall: (f64, f64),
    plate: f64,
    gap: f64,
    /// Radius and movement towards the concrete.
    dish: Vec<(f64, f64)>,
    /// Height, movement outwards, share of the stress at the root.
    bent: Vec<(f64, f64, f64)>,
    yield_ratio: f64,
    words: Vec<String>,
}

/// Takes it out of the design; none on grout, where the plate lies flat, and where there is nothing to bend.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let flexure = design
        .anchors
        .flexure
        .as_ref()
        .filter(|_| design.anchors.seat != Seat::Bedded)?;
    let m = |length: Length| metre::get(length);
    let outer = flexure.plate_section.last()?.0;
    let wall = m(design.pier.wall);
    Some(Layout {
        units: brief.units,
        acts: flexure.acts,
        outer: m(outer),
        stud: m(brief.anchors.circle_diameter.value) / 2.0,
        wall: (
            m(design.pier.outside_diameter) / 2.0 - wall,
            m(design.pier.outside_diameter) / 2.0,
        ),
        plate: m(design.pier.plate_thickness),
        gap: m(design.pier.gap),
        dish: flexure
            .plate_section
            .iter()
            .map(|(radius, movement)| (m(*radius), m(*movement)))
            .collect(),
        bent: flexure
            .wall_section
            .iter()
            .map(|(height, movement, share)| (m(*height), m(*movement), *share))
            .collect(),
        yield_ratio: megapascal::get(flexure.wall_stress) / megapascal::get(flexure.yield_strength),
        words: words(brief, flexure),
    })
}

/// The figures below the drawing.
fn words(brief: &Brief, flexure: &Flexure) -> Vec<String> {
    let units = brief.units;
    let mm = |length: Length| units.to_feel(metre::get(length) * 1000.0).to_string();
    let mpa = |stress| units.say(stress, Megapascal);
    let when = if flexure.acts {
        "The plate rests under the column alone"
    } else {
        "Were the nuts under the plate slack or left out"
    };
    let state = if flexure.elastic {
        "it springs back with a fifth in hand"
    } else if flexure.yield_ratio <= 1.0 {
        "it springs back, with less than a fifth in hand"
    } else {
        "it would stay bent"
    };
    vec![
        format!(
            "{when}: {} of pull at each stud draws the plate down by {} there.",
            units.say(flexure.pull, Kilonewton),
            mm(flexure.plate)
        ),
        format!(
            "Stress {} in the wall, {} in the plate, yield strength {}: {state}.",
            mpa(flexure.wall_stress),
            mpa(flexure.plate_stress),
            mpa(flexure.yield_strength)
        ),
        format!(
            "The bending dies away within {} of wall. A fifth of the yield strength stays in hand up to {}.",
            units.to_measure(rounded(millimetre::get(flexure.wall_height))),
            units.say(flexure.most_torque, NewtonMetre)
        ),
    ]
}

impl Layout {
    fn height(&self) -> f64 {
        self.bent.last().map_or(0.0, |(height, ..)| *height)
    }

    /// The round figure by which movements are drawn larger: a sixth of the wall's height at most, and inside the gap.
    fn exaggeration(&self) -> f64 {
        let plate = self
            .dish
            .iter()
            .map(|(_, movement)| movement.abs())
            .fold(0.0, f64::max);
        let wall = self
            .bent
            .iter()
            .map(|(_, movement, _)| movement.abs())
            .fold(0.0, f64::max);
        let room = if self.gap > 0.0 {
            (0.9 * self.gap).min(self.height() / 6.0)
        } else {
            self.height() / 12.0
        };
        let most = (room / plate.max(1e-12)).min(self.height() / 8.0 / wall.max(1e-12));
        let round = (0..5).flat_map(|power| [1.0, 2.0, 5.0].map(|digit| digit * 10f64.powi(power)));
        round
            .take_while(|times| *times <= most)
            .last()
            .unwrap_or(1.0)
    }

    fn title(&self) -> &'static str {
        if self.acts {
            "What tightening bends: plate and foot of the wall"
        } else {
            "What tightening would bend with slack nuts under the plate"
        }
    }
}

/// Paper for a view, mm.
const ROOM: (f64, f64) = (46.0, 66.0);

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let tall = layout.height() + layout.plate + layout.gap + 0.02;
    let scale = match form {
        Form::Sheet | Form::Smaller(_) => form.scale(layout.outer, tall, room),
        // Three views stand below each other.
        Form::Phone | Form::Glance => form.scale(layout.outer, tall, (room.0, room.1 / 2.0)),
    };
    let mut pen = Pen::new(form);
    let times = layout.exaggeration();
    let first = view(scale, 0.0, layout.height() + layout.plate);
    half_section(&mut pen, layout, &first, 1.0);
    dimensions(&mut pen, layout, &first);
    let second = beside(&pen, &first, 12.0);
    half_section(&mut pen, layout, &second, times);
    undeformed(&mut pen, layout, &second);
    let third = beside(&pen, &first, 34.0);
    stress(&mut pen, layout, &third);
    let top = pen.bounds().top - 4.0;
    // On a sheet the names stand in one line, on a telephone each stands over its view.
    let above = |view: &View| match form {
        Form::Sheet | Form::Smaller(_) => top,
        Form::Phone | Form::Glance => view.at(0.0, layout.height() + layout.plate).y - 4.0,
    };
    for (view, text) in [
        (&first, "True to scale".to_owned()),
        (
            &second,
            format!("Movement × {}", layout.units.say(times, One)),
        ),
    ] {
        pen.text(at(view.origin.x, above(view)), Anchor::Start, text);
    }
    pen.text(
        at(third.origin.x, above(&third)),
        Anchor::Middle,
        "Bending of the wall",
    );
    let bounds = pen.bounds();
    let wide = match form {
        Form::Sheet | Form::Smaller(_) => f64::max(bounds.right - bounds.left, 110.0),
        Form::Phone | Form::Glance => PHONE_ROOM,
    };
    let mut y = bounds.bottom + 7.0;
    for line in &layout.words {
        let lines = wrap(Face::Figures, line, SIZE, wide);
        y = pen.paragraph(at(bounds.left, y), SIZE, &lines) + 0.6;
    }
    title_strip(&mut pen, layout.title(), Some(scale), layout.units);
    pen.finish(Head {
        name: "flexure",
        title: layout.title().to_owned(),
        description: layout.words.join(" "),
        scale: Some(scale),
    })
}

/// The view beside what stands on the paper so far, or below it on a telephone.
fn beside(pen: &Pen, first: &View, away: f64) -> View {
    let (bounds, mut view) = (pen.bounds(), *first);
    match pen.form() {
        Form::Sheet | Form::Smaller(_) => view.origin.x = bounds.right + away,
        Form::Phone | Form::Glance => {
            view.origin.y += bounds.bottom + 12.0;
            view.origin.x = bounds.left + away;
        }
    }
    view
}

/// Plate, wall, packing, stud and concrete, with movements so many times as large as they are.
fn half_section(pen: &mut Pen, layout: &Layout, view: &View, times: f64) {
    let plate = |face: f64| layout.dish.iter().map(move |&(r, w)| (r, face - w * times));
    let ring: Vec<Point> = plate(0.0)
        .chain(plate(layout.plate).rev())
        .map(|(x, y)| view.at(x, y))
        .collect();
    pen.hatch(Hatch::Steel, std::slice::from_ref(&ring));
    pen.outline(Line::Thick, &ring);
    let side = |radius: f64| {
        layout
            .bent
            .iter()
            .map(move |&(z, u, _)| (radius + u * times, layout.plate + z))
    };
    let wall: Vec<Point> = side(layout.wall.0)
        .chain(side(layout.wall.1).rev())
        .map(|(x, y)| view.at(x, y))
        .collect();
    pen.hatch(Hatch::Steel, std::slice::from_ref(&wall));
    pen.outline(Line::Thick, &wall);
    if layout.gap > 0.0 {
        pen.rectangle(
            Line::Thin,
            view.at(layout.wall.0, 0.0),
            view.at(layout.wall.1, -layout.gap),
        );
    }
    let ground = view.at(layout.outer, -layout.gap);
    let left = view.at(0.0, -layout.gap);
    pen.line(Line::Heavy, &[left, ground]);
    pen.hatch(
        Hatch::Concrete,
        &[rectangle(left, at(ground.x, ground.y + 4.0))],
    );
    let stud = view.at(layout.stud, -layout.gap);
    let up = view.at(layout.stud, layout.plate);
    pen.line(
        Line::Chain,
        &[at(stud.x, up.y - 5.0), at(stud.x, stud.y + 6.0)],
    );
    arrowhead(pen, at(stud.x, stud.y + 6.5), 0.0, -1.0);
    pen.line(
        Line::Chain,
        &[
            at(
                view.origin.x,
                view.at(0.0, layout.plate + layout.height()).y,
            ),
            at(view.origin.x, stud.y + 6.0),
        ],
    );
}

/// The same before the nuts are turned.
fn undeformed(pen: &mut Pen, layout: &Layout, view: &View) {
    pen.line(
        Line::Dashed,
        &[
            view.at(0.0, 0.0),
            view.at(layout.outer, 0.0),
            view.at(layout.outer, layout.plate),
            view.at(0.0, layout.plate),
        ],
    );
    let top = layout.plate + layout.height();
    pen.line(
        Line::Dashed,
        &[
            view.at(layout.wall.1, layout.plate),
            view.at(layout.wall.1, top),
        ],
    );
}

fn dimensions(pen: &mut Pen, layout: &Layout, view: &View) {
    let number = |length_m: f64| dimension_text(layout.units, length_m * 1000.0);
    let top = layout.plate + layout.height();
    let mut line = view.origin.x - FIRST;
    upright(
        pen,
        view.at(0.0, top),
        view.at(0.0, layout.plate),
        line,
        &number(layout.height()),
    );
    line -= STEP;
    upright(
        pen,
        view.at(0.0, layout.plate),
        view.at(0.0, 0.0),
        line,
        &number(layout.plate),
    );
    let low = view.at(0.0, -layout.gap).y + 6.0 + FIRST;
    across(
        pen,
        view.at(0.0, -layout.gap),
        view.at(layout.stud, -layout.gap),
        low,
        &number(layout.stud),
    );
    across(
        pen,
        view.at(0.0, -layout.gap),
        view.at(layout.outer, -layout.gap),
        low + STEP,
        &number(layout.outer),
    );
}

/// Bending stress along the wall, with the yield strength on either side.
fn stress(pen: &mut Pen, layout: &Layout, view: &View) {
    let unit = 16.0 / layout.yield_ratio.max(1.0);
    let (foot, top) = (
        view.at(0.0, layout.plate),
        view.at(0.0, layout.plate + layout.height()),
    );
    pen.line(Line::Thin, &[foot, top]);
    for side in [-1.0, 1.0] {
        pen.line(
            Line::Dashed,
            &[
                at(foot.x + side * unit, foot.y),
                at(top.x + side * unit, top.y),
            ],
        );
    }
    let curve: Vec<Point> = layout
        .bent
        .iter()
        .map(|&(z, _, share)| {
            at(
                foot.x + share * layout.yield_ratio * unit,
                view.at(0.0, layout.plate + z).y,
            )
        })
        .collect();
    pen.line(Line::Thick, &curve);
    pen.line(
        Line::Thin,
        &[
            at(foot.x - unit - 2.0, foot.y),
            at(
                foot.x + f64::max(unit, layout.yield_ratio * unit) + 2.0,
                foot.y,
            ),
        ],
    );
    let used = layout.units.say(layout.yield_ratio * 100.0, PerCent);
    pen.text(
        at(foot.x, foot.y + LINE_HEIGHT),
        Anchor::Middle,
        format!("{used} of yield"),
    );
    pen.text(
        at(foot.x, foot.y + 2.0 * LINE_HEIGHT),
        Anchor::Middle,
        "dashed: yield",
    );
}
