//! One stud, section along its axis: hole, resin, stud, plate, washers and nuts.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::site_plan::pier::Levelling;
use stillground::units::{Length, millilitre, millimetre, newton_metre};

use crate::drawing::callout::{self, Callout, note};
use crate::drawing::dimension::{FIRST, STEP, across, upright};
use crate::drawing::furniture::{dimension_text, length_text, title_strip, view};
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::scale::View;
use crate::drawing::{Drawing, Form, Line};

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    size: &'static str,
    class: String,
    diameter: f64,
    length: f64,
    embedment: f64,
    hole: (f64, f64),
    gap: f64,
    plate: f64,
    grouted: bool,
    resin_ml: f64,
    torque_n_m: f64,
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Layout {
    let m = |length: Length| millimetre::get(length) / 1000.0;
    let (said, anchors) = (&brief.anchors, &design.anchors);
    Layout {
        units: brief.units,
        size: said.size.value.said(),
        class: said.strength_class.value.named(),
        diameter: m(said.thread().diameter),
        length: m(said.length.value),
        embedment: m(anchors.embedment),
        hole: (m(anchors.hole_diameter), m(anchors.hole_depth)),
        gap: m(design.pier.gap),
        plate: m(design.pier.plate_thickness),
        grouted: brief.pier.levelling.value == Levelling::Grout,
        resin_ml: millilitre::get(anchors.setting.resin_per_hole),
        torque_n_m: newton_metre::get(anchors.torque.set),
    }
}

impl Layout {
    fn number(&self, length_m: f64) -> String {
        dimension_text(self.units, length_m * 1000.0)
    }

    fn say(&self, length_m: f64) -> String {
        length_text(self.units, length_m * 1000.0)
    }

    /// Height of a nut and thickness of a washer, drawn by the thread's size.
    fn nut(&self) -> f64 {
        0.9 * self.diameter
    }

    fn washer(&self) -> f64 {
        0.18 * self.diameter
    }

    /// Upper face of the plate above the concrete.
    fn plate_top(&self) -> f64 {
        self.gap + self.plate
    }

    /// Upper end of the stud above the concrete.
    fn stud_top(&self) -> f64 {
        self.length - self.embedment
    }

    fn top(&self) -> f64 {
        self.stud_top()
            .max(self.plate_top() + self.washer() + self.nut())
    }

    fn below(&self) -> f64 {
        self.hole.1.max(self.embedment)
    }

    /// Half the width that is drawn.
    fn half(&self) -> f64 {
        3.0 * self.diameter
    }

    fn description(&self) -> String {
        format!(
            "A stud {} of {}, {} long, set {} deep with resin in a hole of {} across and {} deep. The plate is {} thick and stands {} \
             above the concrete, {}.",
            self.size,
            self.class,
            self.say(self.length),
            self.say(self.embedment),
            self.say(self.hole.0),
            self.say(self.hole.1),
            self.say(self.plate),
            self.say(self.gap),
            if self.grouted { "on grout" } else { "on nuts" }
        )
    }
}

/// Paper for the view, mm.
const ROOM: (f64, f64) = (70.0, 130.0);
const TITLE: &str = "One stud, section along its axis";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(ROOM, |room| within(layout, form, room))
}

fn within(layout: &Layout, form: Form, room: (f64, f64)) -> Drawing {
    let deep = layout.below() + layout.diameter;
    let scale = form.scale(2.0 * layout.half(), deep + layout.top(), room);
    let view = view(scale, -layout.half(), layout.top());
    let mut pen = Pen::new(form);
    concrete(&mut pen, layout, &view, deep);
    steel(&mut pen, layout, &view);
    dimensions(&mut pen, layout, &view);
    let bounds = pen.bounds();
    callout::column(
        &mut pen,
        notes(layout, &view),
        bounds.right + 9.0,
        bounds.top,
        bounds.bottom,
        56.0,
    );
    title_strip(&mut pen, TITLE, Some(scale), layout.units);
    pen.finish(Head {
        name: "stud-detail",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: Some(scale),
    })
}

fn concrete(pen: &mut Pen, layout: &Layout, view: &View, deep: f64) {
    let half = layout.half();
    let hole = rectangle(
        view.at(-layout.hole.0 / 2.0, 0.0),
        view.at(layout.hole.0 / 2.0, -layout.hole.1),
    );
    pen.hatch(
        Hatch::Concrete,
        &[
            rectangle(view.at(-half, 0.0), view.at(half, -deep)),
            hole.clone(),
        ],
    );
    pen.line(
        Line::Heavy,
        &[view.at(-half, 0.0), view.at(-layout.hole.0 / 2.0, 0.0)],
    );
    pen.line(
        Line::Heavy,
        &[view.at(layout.hole.0 / 2.0, 0.0), view.at(half, 0.0)],
    );
    let stud = rectangle(
        view.at(-layout.diameter / 2.0, 0.0),
        view.at(layout.diameter / 2.0, -layout.embedment),
    );
    pen.hatch(Hatch::Resin, &[hole.clone(), stud]);
    pen.line(Line::Thick, &[hole[0], hole[3], hole[2], hole[1]]);
    if layout.grouted && layout.gap > 0.0 {
        let bed = |from: f64, to: f64| rectangle(view.at(from, layout.gap), view.at(to, 0.0));
        for (from, to) in [
            (-0.9 * half, -layout.diameter / 2.0),
            (layout.diameter / 2.0, 0.9 * half),
        ] {
            pen.hatch(Hatch::Grout, &[bed(from, to)]);
            pen.outline(Line::Thin, &bed(from, to));
        }
    }
}

fn steel(pen: &mut Pen, layout: &Layout, view: &View) {
    let (radius, clear, half) = (
        layout.diameter / 2.0,
        layout.diameter / 2.0 + 0.001,
        layout.half(),
    );
    for (from, to) in [(-half, -clear), (clear, half)] {
        let plate = rectangle(view.at(from, layout.plate_top()), view.at(to, layout.gap));
        pen.hatch(Hatch::Steel, std::slice::from_ref(&plate));
        pen.outline(Line::Thick, &plate);
    }
    // The stud is not hatched: solid parts are drawn whole when cut along their axis.
    pen.rectangle(
        Line::Thick,
        view.at(-radius, layout.stud_top()),
        view.at(radius, -layout.embedment),
    );
    let thread = 0.43 * layout.diameter;
    for side in [-thread, thread] {
        pen.line(
            Line::Hair,
            &[
                view.at(side, layout.stud_top()),
                view.at(side, -layout.embedment),
            ],
        );
    }
    nut(pen, layout, view, layout.plate_top(), 1.0);
    if !layout.grouted && layout.gap >= layout.nut() {
        nut(pen, layout, view, layout.gap, -1.0);
    }
    pen.line(
        Line::Chain,
        &[
            view.at(0.0, layout.top() + 0.25 * layout.diameter),
            view.at(0.0, -layout.below() - 0.5 * layout.diameter),
        ],
    );
}

/// Washer and nut against a face of the plate, upwards or downwards from it.
fn nut(pen: &mut Pen, layout: &Layout, view: &View, face: f64, way: f64) {
    let radius = layout.diameter / 2.0;
    let (outer, flats) = (1.9 * radius, 1.55 * radius);
    let (washer, end) = (
        face + way * layout.washer(),
        face + way * (layout.washer() + layout.nut()),
    );
    for side in [-1.0, 1.0] {
        pen.rectangle(
            Line::Thick,
            view.at(side * radius, face),
            view.at(side * outer, washer),
        );
        pen.rectangle(
            Line::Thick,
            view.at(side * radius, washer),
            view.at(side * flats, end),
        );
    }
}

fn dimensions(pen: &mut Pen, layout: &Layout, view: &View) {
    let half = layout.half();
    let mut line = view.at(-half, 0.0).x - FIRST;
    let face = view.at(-half, 0.0);
    upright(
        pen,
        face,
        view.at(-layout.diameter / 2.0, -layout.embedment),
        line,
        &layout.number(layout.embedment),
    );
    line -= STEP;
    upright(
        pen,
        face,
        view.at(-layout.hole.0 / 2.0, -layout.hole.1),
        line,
        &layout.number(layout.hole.1),
    );
    line -= STEP;
    if layout.gap > 0.0 {
        upright(
            pen,
            view.at(-half, layout.gap),
            face,
            line,
            &layout.number(layout.gap),
        );
        line -= STEP;
    }
    upright(
        pen,
        view.at(-half, layout.plate_top()),
        view.at(-half, layout.gap),
        line,
        &layout.number(layout.plate),
    );
    line -= STEP;
    let ends = (
        view.at(-layout.diameter / 2.0, layout.stud_top()),
        view.at(-layout.diameter / 2.0, -layout.embedment),
    );
    upright(pen, ends.0, ends.1, line, &layout.number(layout.length));
    let low = pen.bounds().bottom + FIRST;
    let depth = -layout.hole.1;
    across(
        pen,
        view.at(-layout.hole.0 / 2.0, depth),
        view.at(layout.hole.0 / 2.0, depth),
        low,
        &format!("ø {}", layout.number(layout.hole.0)),
    );
}

fn notes(layout: &Layout, view: &View) -> Vec<Callout> {
    let radius = layout.diameter / 2.0;
    let torque = layout.units.say(layout.torque_n_m, Unit::NewtonMetre);
    let mut notes = vec![
        note(
            view.at(
                1.2 * radius,
                layout.plate_top() + layout.washer() + 0.5 * layout.nut(),
            ),
            format!("Nut and washer, {torque}, never above the product's own limit"),
        ),
        note(
            view.at(0.8 * layout.half(), layout.gap + layout.plate / 2.0),
            format!("Base plate {}", layout.say(layout.plate)),
        ),
        note(
            view.at(0.2 * radius, -0.55 * layout.embedment),
            format!(
                "Stud {} × {}, {}",
                layout.size,
                layout.say(layout.length),
                layout.class
            ),
        ),
        note(
            view.at(
                (radius + layout.hole.0 / 2.0) / 2.0,
                -0.75 * layout.embedment,
            ),
            format!(
                "Resin, {} into each cleaned hole",
                layout.units.say(layout.resin_ml, Unit::Millilitre)
            ),
        ),
    ];
    if layout.grouted && layout.gap > 0.0 {
        notes.push(note(
            view.at(0.7 * layout.half(), layout.gap / 2.0),
            format!("Grout {}", layout.say(layout.gap)),
        ));
    } else if layout.gap >= layout.nut() {
        notes.push(note(
            view.at(
                1.2 * radius,
                layout.gap - layout.washer() - 0.5 * layout.nut(),
            ),
            "Levelling nut and washer",
        ));
    }
    notes
}
