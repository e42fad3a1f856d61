//! Column and plates: elevation, and below it the plan of the base plate, beside it that of the top plate.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::site_plan::pier::Steel;
use stillground::stages::pier::figures::fill_words;
use stillground::units::{Length, millimetre};

use crate::drawing::callout::{self, Callout, note};
use crate::drawing::dimension::{FIRST, across, upright};
use crate::drawing::furniture::{axes, dimension_text, length_text, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen};
use crate::drawing::scale::View;
use crate::drawing::{Anchor, Drawing, Form, Line, Point, at};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    height: f64,
    diameter: f64,
    wall: f64,
    plate: (f64, f64),
    top_plate: (f64, f64),
    bolt_circle: f64,
    weld_leg: f64,
    ribs: usize,
    studs: Vec<(f64, f64)>,
    hole: f64,
    steel: Steel,
    fill: &'static str,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let m = |length: Length| millimetre::get(length) / 1000.0;
    let pier = &design.pier;
    Layout {
        units: brief.units,
        height: m(pier.height),
        diameter: m(pier.outside_diameter),
        wall: m(pier.wall),
        plate: (m(pier.plate_side), m(pier.plate_thickness)),
        top_plate: (
            m(brief.pier.top_plate_side.value),
            m(brief.pier.top_plate_thickness.value),
        ),
        bolt_circle: m(brief.pier.top_bolt_circle.value),
        weld_leg: m(brief.pier.weld_leg.value),
        ribs: brief.pier.stiffener_count.value.round().clamp(0.0, 12.0) as usize,
        studs: design
            .anchors
            .studs
            .iter()
            .map(|stud| (m(stud.x), m(stud.y)))
            .collect(),
        hole: m(design.anchors.hole_diameter),
        steel: brief.pier.steel.value,
        fill: fill_words(brief.pier.fill.value),
    }
}

impl Layout {
    fn say(&self, length_m: f64) -> String {
        length_text(self.units, length_m * 1000.0)
    }

    fn number(&self, length_m: f64) -> String {
        dimension_text(self.units, length_m * 1000.0)
    }

    /// Widest thing in the elevation.
    fn widest(&self) -> f64 {
        self.plate.0.max(self.top_plate.0).max(self.diameter)
    }

    fn description(&self) -> String {
        format!(
            "A round column {} across with a wall of {}, {}, welded between a base plate {} square and {} thick and a top plate {} square \
             and {} thick; {} over all. The mount's bolts stand on a circle of {}. Steel {}.",
            self.say(self.diameter),
            self.say(self.wall),
            self.fill,
            self.say(self.plate.0),
            self.say(self.plate.1),
            self.say(self.top_plate.0),
            self.say(self.top_plate.1),
            self.say(self.height),
            self.say(self.bolt_circle),
            self.steel.said()
        )
    }
}

/// Paper for the views, mm.
const ROOM: (f64, f64) = (74.0, 150.0);
/// Free paper between the views, mm.
const BETWEEN: f64 = 20.0;
const TITLE: &str = "Column and plates: elevation, and both plates from above";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let half = layout.widest() / 2.0;
    let scale = form.scale(
        layout.plate.0 + layout.top_plate.0,
        layout.height + layout.plate.0,
        room,
    );
    let elevation = view(scale, -half, layout.height);
    let mut base = elevation;
    base.origin.y += BETWEEN + elevation.mm(layout.plate.0.max(layout.diameter) / 2.0);
    let mut top = base;
    top.origin.x += elevation.mm(half + layout.top_plate.0.max(layout.diameter) / 2.0) + BETWEEN;
    let mut pen = Pen::new(form);
    stand(&mut pen, layout, &elevation);
    base_plan(&mut pen, layout, &base);
    top_plan(&mut pen, layout, &top);
    let bounds = pen.bounds();
    let x = elevation.at(half, 0.0).x + 22.0;
    callout::column(
        &mut pen,
        notes(layout, &elevation),
        x,
        bounds.top,
        elevation.at(0.0, 0.0).y,
        62.0,
    );
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "column",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

fn stand(pen: &mut Pen, layout: &Layout, view: &View) {
    let (low, high) = (layout.plate.1, layout.height - layout.top_plate.1);
    let plates = [
        (layout.plate.0 / 2.0, 0.0, low),
        (layout.top_plate.0 / 2.0, high, layout.height),
    ];
    for (half, from, to) in plates {
        pen.rectangle(Line::Thick, view.at(-half, to), view.at(half, from));
    }
    let (radius, inner) = (layout.diameter / 2.0, layout.diameter / 2.0 - layout.wall);
    pen.rectangle(Line::Thick, view.at(-radius, high), view.at(radius, low));
    for side in [-1.0, 1.0] {
        pen.line(
            Line::Dashed,
            &[view.at(side * inner, low), view.at(side * inner, high)],
        );
    }
    if layout.ribs > 0 {
        let (out, up) = (
            (layout.plate.0 / 2.0).max(radius),
            low + (layout.plate.0 / 2.0 - radius).max(0.0) * 1.2,
        );
        for side in [-1.0, 1.0] {
            pen.outline(
                Line::Thick,
                &[
                    view.at(side * radius, low),
                    view.at(side * out, low),
                    view.at(side * radius, up.min(high)),
                ],
            );
        }
    }
    let (a, b) = (view.at(0.0, layout.height), view.at(0.0, 0.0));
    pen.line(Line::Chain, &[at(a.x, a.y - 3.0), at(b.x, b.y + 3.0)]);
    upright(
        pen,
        view.at(-layout.top_plate.0 / 2.0, layout.height),
        view.at(-layout.plate.0 / 2.0, 0.0),
        pen.bounds().left - FIRST,
        &layout.number(layout.height),
    );
}

fn plate(pen: &mut Pen, view: &View, side: f64, diameter: f64, wall: f64) {
    pen.rectangle(
        Line::Thick,
        view.at(-side / 2.0, side / 2.0),
        view.at(side / 2.0, -side / 2.0),
    );
    pen.circle(Line::Thin, view.at(0.0, 0.0), view.mm(diameter / 2.0));
    pen.circle(
        Line::Thin,
        view.at(0.0, 0.0),
        view.mm((diameter / 2.0 - wall).max(0.0)),
    );
    let reach = view.mm(side.max(diameter) / 2.0) + 3.0;
    axes(pen, view.at(0.0, 0.0), reach, reach);
}

fn base_plan(pen: &mut Pen, layout: &Layout, view: &View) {
    plate(pen, view, layout.plate.0, layout.diameter, layout.wall);
    let ring: Vec<Vec<Point>> = [
        layout.diameter / 2.0,
        (layout.diameter / 2.0 - layout.wall).max(0.0),
    ]
    .map(|radius| round(view, radius))
    .to_vec();
    pen.hatch(Hatch::Steel, &ring);
    for &(x, y) in &layout.studs {
        pen.circle(
            Line::Thick,
            view.at(x, y),
            view.mm(layout.hole / 2.0).max(0.3),
        );
    }
    under(pen, layout, view, layout.plate.0, "Base plate");
}

/// A plate's width and name below it.
fn under(pen: &mut Pen, layout: &Layout, view: &View, side: f64, name: &str) {
    let half = side / 2.0;
    let bottom = view.at(0.0, -layout.widest() / 2.0).y;
    across(
        pen,
        view.at(-half, -half),
        view.at(half, -half),
        bottom + FIRST,
        &layout.number(side),
    );
    pen.text(
        at(view.at(0.0, 0.0).x, bottom + FIRST + 6.5),
        Anchor::Middle,
        name,
    );
}

fn top_plan(pen: &mut Pen, layout: &Layout, view: &View) {
    plate(pen, view, layout.top_plate.0, layout.diameter, layout.wall);
    pen.circle(
        Line::Chain,
        view.at(0.0, 0.0),
        view.mm(layout.bolt_circle / 2.0),
    );
    under(pen, layout, view, layout.top_plate.0, "Top plate");
}

/// A circle as a closed run of points, for hatching.
fn round(view: &View, radius: f64) -> Vec<Point> {
    (0..72)
        .map(|step| f64::from(step) * std::f64::consts::TAU / 72.0)
        .map(|angle| view.at(radius * angle.cos(), radius * angle.sin()))
        .collect()
}

fn notes(layout: &Layout, view: &View) -> Vec<Callout> {
    let (low, high) = (layout.plate.1, layout.height - layout.top_plate.1);
    let mut notes = vec![
        note(
            view.at(layout.top_plate.0 * 0.3, high + layout.top_plate.1 / 2.0),
            format!(
                "Top plate {} thick; bolts on ø\u{a0}{}, to be taken from the mount in hand",
                layout.say(layout.top_plate.1),
                layout.number(layout.bolt_circle)
            ),
        ),
        note(
            view.at(layout.diameter / 2.0, (low + high) / 2.0),
            format!(
                "Tube ø\u{a0}{}\u{a0}×\u{a0}{}, {}",
                layout.number(layout.diameter),
                layout.say(layout.wall),
                layout.steel.said()
            ),
        ),
        note(
            view.at(layout.diameter * 0.2, low + (high - low) * 0.35),
            format!("Column {}", layout.fill),
        ),
        note(
            view.at(layout.diameter / 2.0, low),
            format!("Fillet weld all round, leg {}", layout.say(layout.weld_leg)),
        ),
        note(
            view.at(layout.plate.0 * 0.45, low / 2.0),
            format!("Base plate {} thick", layout.say(layout.plate.1)),
        ),
    ];
    if layout.ribs > 0 {
        notes.push(note(
            view.at(
                layout.diameter / 2.0 + 0.2 * (layout.plate.0 - layout.diameter).max(0.0) / 2.0,
                low * 1.5,
            ),
            format!("{} ribs, evenly spread", layout.ribs),
        ));
    }
    notes
}
