//! The star's trail over its seeing disc while somebody walks past, and the same enlarged.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Arcsecond, Pixel, Units};
use stillground::units::millimetre;

use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE, SMALL};
use crate::drawing::{Anchor, Drawing, Form, Label, Line, Point, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows, in arcseconds east and north.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    seeing: f64,
    pixel: f64,
    trail: f64,
    trail_pixels: Option<f64>,
    points: Vec<[f64; 2]>,
}

/// Takes it out of the design; none where the walk is not known.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let walk = &design.motion.walk;
    let points = walk.drawn.as_ref()?.turns_arcsec.clone();
    let focal = millimetre::get(brief.load.focal_length.value);
    let pixel =
        stillground::units::ARCSEC_PER_RADIAN * millimetre::get(brief.load.pixel.value) / focal;
    let usable =
        points.len() > 1 && points.iter().flatten().all(|v| v.is_finite()) && pixel.is_finite();
    usable.then_some(Layout {
        units: brief.units,
        seeing: brief.load.seeing_arcsec.value,
        pixel,
        trail: walk.trail_arcsec?,
        trail_pixels: walk.trail_pixels,
        points,
    })
}

impl Layout {
    fn say(&self, arcsec: f64) -> String {
        self.units.say(arcsec, Arcsecond)
    }

    /// Middle of the trail and half its size.
    fn spread(&self) -> ([f64; 2], f64) {
        let ends = |axis: usize| {
            self.points
                .iter()
                .map(|point| point[axis])
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                    (low.min(v), high.max(v))
                })
        };
        let ((west, east), (south, north)) = (ends(0), ends(1));
        (
            [(west + east) / 2.0, (south + north) / 2.0],
            ((east - west).max(north - south) / 2.0).max(1e-6),
        )
    }

    fn description(&self) -> String {
        let pixels = self.trail_pixels.map_or_else(String::new, |pixels| {
            format!(", {} on the sensor", self.units.say(pixels, Pixel))
        });
        format!(
            "While somebody walks past, the star draws a trail {} long{pixels}. The seeing disc is {} wide.",
            self.say(self.trail),
            self.say(self.seeing)
        )
    }
}

/// Radius of each picture on a sheet, mm.
const RADIUS: f64 = 36.0;
const TITLE: &str = "Star trail during a walk, over the seeing disc";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((2.0 * RADIUS, 0.0), |room| {
        within(layout, form, 0.5 * room.0)
    })
}

fn within(layout: &Layout, form: Form, radius: f64) -> Drawing {
    let mut pen = Pen::new(form);
    let (middle, half) = layout.spread();
    let reach = (layout.seeing / 2.0).max(half + middle[0].abs().max(middle[1].abs()));
    let scale = radius / reach;
    let left = at(radius, radius);
    pen.circle(Line::Thick, left, layout.seeing / 2.0 * scale);
    path(&mut pen, layout, left, scale, [0.0, 0.0]);
    let pixel = layout.pixel * scale;
    if pixel < 2.0 * radius {
        pen.rectangle(
            Line::Thin,
            at(left.x - pixel / 2.0, left.y - pixel / 2.0),
            at(left.x + pixel / 2.0, left.y + pixel / 2.0),
        );
    }
    caption(
        &mut pen,
        radius,
        at(0.0, 2.0 * radius + 6.0),
        &format!(
            "Ring: seeing of {}. Square: one pixel, {}.",
            layout.say(layout.seeing),
            layout.say(layout.pixel)
        ),
    );
    let times = enlargement(0.85 * reach / half);
    let right = match form {
        Form::Sheet | Form::Smaller(_) => at(3.0 * radius + 14.0, radius),
        Form::Phone | Form::Glance => at(radius, pen.bounds().bottom + 8.0 + radius),
    };
    pen.circle(Line::Thin, right, radius);
    path(&mut pen, layout, right, scale * times, middle);
    bar(
        &mut pen,
        layout,
        at(right.x, right.y + radius - 5.0),
        (radius, scale * times),
    );
    caption(
        &mut pen,
        radius,
        at(right.x - radius, right.y + radius + 6.0),
        &format!(
            "The trail {} times as large, {} from end to end.",
            times,
            layout.say(layout.trail)
        ),
    );
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "trail",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

fn path(pen: &mut Pen, layout: &Layout, centre: Point, scale: f64, middle: [f64; 2]) {
    let place = |point: &[f64; 2]| {
        at(
            centre.x + (point[0] - middle[0]) * scale,
            centre.y - (point[1] - middle[1]) * scale,
        )
    };
    pen.line(
        Line::Thin,
        &layout.points.iter().map(place).collect::<Vec<_>>(),
    );
}

/// A round number of times, at most what fits.
fn enlargement(most: f64) -> f64 {
    let power = 10f64.powf(most.max(1.0).log10().floor());
    [5.0, 2.0, 1.0]
        .into_iter()
        .map(|digit| digit * power)
        .find(|&times| times <= most.max(1.0))
        .unwrap_or(1.0)
}

fn bar(pen: &mut Pen, layout: &Layout, middle: Point, (radius, scale): (f64, f64)) {
    let length = enlargement_below(radius * 0.7 / scale);
    let half = length * scale / 2.0;
    pen.line(
        Line::Thick,
        &[at(middle.x - half, middle.y), at(middle.x + half, middle.y)],
    );
    let label = Label {
        at: at(middle.x, middle.y - 1.2),
        size: SMALL,
        anchor: Anchor::Middle,
        upright: false,
        bold: false,
        text: layout.say(length),
    };
    pen.label(label);
}

/// The largest of 1, 2 and 5 times a power of ten that is not more.
fn enlargement_below(most: f64) -> f64 {
    let power = 10f64.powf(most.max(1e-9).log10().floor());
    [5.0, 2.0, 1.0]
        .into_iter()
        .map(|digit| digit * power)
        .find(|&length| length <= most * 1.000_001)
        .unwrap_or(power)
}

fn caption(pen: &mut Pen, radius: f64, corner: Point, text: &str) {
    let lines = wrap(Face::Figures, text, SIZE, 2.0 * radius);
    pen.paragraph(at(corner.x, corner.y + LINE_HEIGHT * 0.2), SIZE, &lines);
}
