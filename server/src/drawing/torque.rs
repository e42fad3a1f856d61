//! The torque of a nut on a bar from loose to broken: the band to work in, and where harm begins.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::units::newton_metre;

use crate::drawing::callout::{self, SHEET_WIDTH};
use crate::drawing::furniture::title_strip;
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE, rectangle};
use crate::drawing::{Anchor, Drawing, Form, Label, Line, at};
use crate::lettering::{Face, width};

/// What the drawing shows, in newton metres.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    band: (f64, f64),
    proof: f64,
    end: f64,
    marks: Vec<(f64, String)>,
}

/// Takes it out of the design; none without studs.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let torque = &design.anchors.torque;
    let value = newton_metre::get;
    let mut marks = vec![(
        value(torque.used),
        if brief.anchors.torque.is_some() {
            "stated"
        } else {
            "recommended"
        }
        .to_owned(),
    )];
    marks.extend(
        torque
            .limits
            .iter()
            .map(|limit| (value(limit.torque), format!("limit: {}", limit.what))),
    );
    marks.push((
        value(torque.yields),
        "a typical stud reaches its proof load".to_owned(),
    ));
    marks.push((value(torque.breaks), "a typical stud breaks".to_owned()));
    marks.retain(|(torque, _)| torque.is_finite() && *torque > 0.0);
    marks.push((0.0, "loose: the nut holds nothing".to_owned()));
    let end = marks.iter().map(|(torque, _)| *torque).fold(0.0, f64::max);
    let drawn = !design.anchors.studs.is_empty() && end > 0.0;
    drawn.then(|| Layout {
        units: brief.units,
        band: (value(torque.low), value(torque.high)),
        proof: value(torque.yields),
        end,
        marks,
    })
}

impl Layout {
    fn say(&self, torque: f64) -> String {
        self.units.say(torque, Unit::NewtonMetre)
    }

    /// Length of the bar on a sheet: no mark's words, which begin below it, reach beyond the paper.
    fn length(&self) -> f64 {
        let room = |(torque, what): &(f64, String)| {
            let words = format!("{}, {what}", self.say(*torque));
            let left = SHEET_WIDTH - 5.0 - width(Face::Figures, &words, SIZE);
            left * self.end / torque.max(1e-9)
        };
        self.marks.iter().map(room).fold(LENGTH, f64::min)
    }

    fn description(&self) -> String {
        let marks: Vec<String> = self
            .marks
            .iter()
            .map(|(torque, what)| format!("{}: {what}", self.say(*torque)))
            .collect();
        format!(
            "The band to work in runs from {} to {}. {}.",
            self.say(self.band.0),
            self.say(self.band.1),
            marks.join("; ")
        )
    }
}

/// The marks as numbers below the bar, and the list of what they are.
fn numbered(pen: &mut Pen, layout: &Layout, marks: &[(f64, String)], (length, bottom): (f64, f64)) {
    let mut left = length + BETWEEN;
    for (i, (torque, _)) in marks.iter().enumerate() {
        let x = length * torque / layout.end;
        // Numbers stand side by side from the right, each below its mark or as near as its neighbours let it.
        left = x.min(left - BETWEEN);
        pen.dot(at(x, bottom), 0.7);
        pen.line(
            Line::Thin,
            &[at(x, 0.0), at(x, bottom + 1.5), at(left, bottom + 5.5)],
        );
        pen.label(Label {
            at: at(left, bottom + 9.2),
            size: SIZE,
            anchor: Anchor::Middle,
            upright: false,
            bold: true,
            text: (i + 1).to_string(),
        });
    }
    let texts: Vec<String> = marks
        .iter()
        .map(|(torque, what)| format!("{}, {what}", layout.say(*torque)))
        .collect();
    callout::list(pen, &texts);
}

/// From one number to the next, mm.
const BETWEEN: f64 = 5.5;
/// Length of the bar, mm.
const LENGTH: f64 = 100.0;
const TITLE: &str = "Torque on a nut: working range and limits";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((layout.length(), 0.0), |(length, _)| {
        within(layout, form, length)
    })
}

fn within(layout: &Layout, form: Form, length: f64) -> Drawing {
    let mut pen = Pen::new(form);
    let x = |torque: f64| length * torque / layout.end;
    let (top, bottom) = (0.0, 6.0);
    let band = rectangle(
        at(x(layout.band.0), top),
        at(x(layout.band.1.max(layout.band.0)), bottom),
    );
    pen.hatch(Hatch::Steel, std::slice::from_ref(&band));
    pen.outline(Line::Thick, &band);
    // Beyond proof a stud stretches for good: a coarser hatch, up to where it breaks.
    pen.hatch(
        Hatch::Area,
        &[rectangle(at(x(layout.proof), top), at(length, bottom))],
    );
    pen.rectangle(Line::Thin, at(0.0, top), at(length, bottom));
    pen.text(
        at((x(layout.band.0) + x(layout.band.1)) / 2.0, top - 1.5),
        Anchor::Middle,
        format!(
            "{} to {}",
            layout.say(layout.band.0),
            layout.say(layout.band.1)
        ),
    );
    let mut marks = layout.marks.clone();
    marks.sort_by(|a, b| b.0.total_cmp(&a.0));
    if form.is_phone() {
        numbered(&mut pen, layout, &marks, (length, bottom));
        marks.clear();
    }
    // From the right, each mark ends one line lower than the last, so that no leader runs through another's words.
    for (i, (torque, what)) in marks.iter().enumerate() {
        let low = bottom + 5.0 + i as f64 * (LINE_HEIGHT + 0.8);
        pen.line(
            Line::Thin,
            &[at(x(*torque), top - 0.0), at(x(*torque), low)],
        );
        pen.dot(at(x(*torque), bottom), 0.7);
        pen.text(
            at(x(*torque) + 1.5, low + 0.25 * SIZE),
            Anchor::Start,
            format!("{}, {what}", layout.say(*torque)),
        );
    }
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "torque",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}
