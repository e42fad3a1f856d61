//! What widens the star: bars of growth beside what is asked; where the eye looks, bars of movement.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Arcsecond, Unit, Units};
use stillground::stages::motion::{Disturbance, Measure};

use crate::drawing::furniture::title_strip;
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, SIZE, rectangle};
use crate::drawing::{Anchor, Drawing, Form, Line, PHONE_ROOM, at};
use crate::lettering::{Face, width, wrap};

/// What the drawing shows: growths in per cent, or movements in arcseconds.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    unit: Unit,
    limit: f64,
    bars: Vec<Bar>,
}

#[derive(Debug, Clone)]
struct Bar {
    title: String,
    typical: Option<f64>,
    worst: Option<f64>,
    /// The movement behind a growth.
    arcsec: Option<f64>,
}

impl Bar {
    fn of(one: &Disturbance, unit: Unit) -> Self {
        let grown = one.star_growth_ratio;
        let (typical, worst, arcsec) = match unit {
            Unit::PerCent => (
                grown.map(|grown| 100.0 * grown.expected),
                grown.map(|grown| 100.0 * grown.worst),
                one.arcsec,
            ),
            _ => (one.arcsec, one.worst_arcsec, None),
        };
        Self {
            title: one.title.to_owned(),
            typical,
            worst,
            arcsec,
        }
    }
}

/// Takes it out of the design; none when nothing is known of any disturbance.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let motion = &design.motion;
    let (unit, limit) = match motion.budget.measure {
        Measure::EyeMovement => (Unit::Arcsecond, motion.budget.arcsec),
        Measure::StarWidth | Measure::FrameBlur => {
            (Unit::PerCent, 100.0 * motion.budget.asked_growth_ratio)
        }
    };
    let bars: Vec<Bar> = motion
        .disturbances
        .iter()
        .map(|one| Bar::of(one, unit))
        .collect();
    bars.iter()
        .any(|bar| bar.typical.is_some())
        .then_some(Layout {
            units: brief.units,
            unit,
            limit,
            bars,
        })
}

/// Least growth that is said, per cent: less cannot be seen on any star.
const LEAST_PER_CENT: f64 = 0.01;

impl Layout {
    fn say(&self, value: f64) -> String {
        match self.unit {
            Unit::PerCent if value < LEAST_PER_CENT => {
                format!("less than {}", self.units.say(LEAST_PER_CENT, self.unit))
            }
            unit => self.units.say(value, unit),
        }
    }

    fn title(&self) -> &'static str {
        match self.unit {
            Unit::PerCent => "What moves the star, against the limit",
            _ => "What moves the star, beside what the eye bears",
        }
    }

    fn words(&self, bar: &Bar) -> String {
        let moved = bar.arcsec.map_or_else(String::new, |arcsec| {
            format!("; moves it {}", self.units.say(arcsec, Arcsecond))
        });
        let shows = |worst: f64| self.unit != Unit::PerCent || worst >= LEAST_PER_CENT;
        match (bar.typical, bar.worst) {
            (Some(typical), Some(worst)) if worst > typical * 1.05 && shows(worst) => {
                format!("{}, at worst {}{moved}", self.say(typical), self.say(worst))
            }
            (Some(typical), _) => format!("{}{moved}", self.say(typical)),
            (None, _) => "not known".to_owned(),
        }
    }

    /// Longest thing that is drawn in full; what is much longer than the limit is cut off with a mark.
    fn end(&self) -> f64 {
        let longest = self
            .bars
            .iter()
            .filter_map(|bar| bar.worst.or(bar.typical))
            .fold(self.limit, f64::max);
        longest.min(self.limit * 4.0).max(1e-9)
    }

    fn description(&self) -> String {
        let bars: Vec<String> = self
            .bars
            .iter()
            .map(|bar| format!("{}: {}", bar.title, self.words(bar)))
            .collect();
        format!(
            "The limit is {}. {}.",
            self.say(self.limit),
            bars.join(". ")
        )
    }
}

/// Where the parts of a row stand, mm.
#[derive(Debug, Clone, Copy)]
struct Columns {
    /// Width of the names.
    names: f64,
    /// Where the bars begin.
    bars: f64,
    /// Length of the bars.
    length: f64,
    /// Where the figures begin; none where they stand with the name above the bar.
    figures: Option<f64>,
}

const ON_A_SHEET: Columns = Columns {
    names: 48.0,
    bars: 52.0,
    length: 62.0,
    figures: Some(122.0),
};
/// Width of the figures, mm.
const FIGURES: f64 = 46.0;
/// What a bar that is cut off needs beyond its end, mm.
const CUT: f64 = 4.0;

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted((ON_A_SHEET.length, 0.0), |(room, _)| {
        let columns = match form {
            Form::Sheet | Form::Smaller(_) => ON_A_SHEET,
            Form::Phone | Form::Glance => Columns {
                names: PHONE_ROOM,
                bars: 0.5,
                length: room - CUT,
                figures: None,
            },
        };
        within(layout, form, columns)
    })
}

fn within(layout: &Layout, form: Form, columns: Columns) -> Drawing {
    let mut pen = Pen::new(form);
    let end = layout.end();
    let x = |value: f64| columns.bars + columns.length * (value / end).min(1.0);
    let (zero, limit) = (x(0.0), x(layout.limit));
    let mut y = 6.0;
    for bar in &layout.bars {
        let top = y;
        y = row(&mut pen, layout, bar, (y, columns), x);
        // With its name above it, each bar has its own piece of the two lines.
        if columns.figures.is_none() {
            let low = y - 1.6;
            let high = (low - 6.4).max(top);
            pen.line(Line::Heavy, &[at(limit, high), at(limit, low)]);
            pen.line(Line::Thin, &[at(zero, high), at(zero, low)]);
        }
    }
    if columns.figures.is_some() {
        pen.line(Line::Heavy, &[at(limit, 3.0), at(limit, y)]);
    }
    let words = format!("asked: at most {}", layout.say(layout.limit));
    // Over its line, and within the paper.
    let half = 0.5 * width(Face::Figures, &words, SIZE);
    let middle = match form {
        Form::Sheet | Form::Smaller(_) => limit,
        Form::Phone | Form::Glance => limit.min(PHONE_ROOM - half).max(half),
    };
    pen.text(at(middle, 1.6), Anchor::Middle, words);
    if columns.figures.is_some() {
        pen.line(Line::Thin, &[at(zero, 3.0), at(zero, y)]);
    }
    title_strip(&mut pen, layout.title(), None, layout.units);
    pen.finish(Head {
        name: "budget",
        title: layout.title().to_owned(),
        description: layout.description(),
        scale: None,
    })
}

/// One disturbance: its name, its bar, a line on to the worst, and the figure beside the bar or with the name above it.
fn row(
    pen: &mut Pen,
    layout: &Layout,
    bar: &Bar,
    (top, columns): (f64, Columns),
    x: impl Fn(f64) -> f64,
) -> f64 {
    let name = match columns.figures {
        Some(_) => bar.title.clone(),
        None => format!("{}: {}", bar.title, layout.words(bar)),
    };
    let names = wrap(Face::Figures, &name, SIZE, columns.names);
    let low = pen.paragraph(at(0.0, top + SIZE * 0.9), SIZE, &names);
    let Some(figures) = columns.figures else {
        let bar_top = low - 2.0;
        shape(pen, layout, bar, bar_top, x);
        return bar_top + 7.0;
    };
    shape(pen, layout, bar, top, x);
    let words = wrap(Face::Figures, &layout.words(bar), SIZE, FIGURES);
    low.max(pen.paragraph(at(figures, top + SIZE * 0.9), SIZE, &words)) + 0.6
}

/// The bar, and the line on to the worst.
fn shape(pen: &mut Pen, layout: &Layout, bar: &Bar, top: f64, x: impl Fn(f64) -> f64) {
    let Some(typical) = bar.typical else { return };
    let shape = rectangle(at(x(0.0), top), at(x(typical).max(x(0.0) + 0.4), top + 3.6));
    pen.hatch(Hatch::Steel, std::slice::from_ref(&shape));
    pen.outline(Line::Thick, &shape);
    let worst = bar.worst.unwrap_or(typical);
    if worst > typical {
        pen.line(
            Line::Thin,
            &[at(x(typical), top + 1.8), at(x(worst), top + 1.8)],
        );
        pen.line(
            Line::Thin,
            &[at(x(worst), top + 0.6), at(x(worst), top + 3.0)],
        );
    }
    if worst > layout.end() * 1.000_001 {
        cut(pen, x(worst), top);
    }
}

/// The mark of a bar that goes on beyond the paper.
fn cut(pen: &mut Pen, x: f64, top: f64) {
    for shift in [1.2, 2.6] {
        pen.line(
            Line::Thick,
            &[
                at(x + shift - 0.6, top + 4.2),
                at(x + shift + 0.6, top - 0.6),
            ],
        );
    }
}
