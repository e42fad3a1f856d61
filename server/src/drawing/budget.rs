//! Who moves the star: bars of arcseconds beside the budget.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};

use crate::drawing::furniture::title_strip;
use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, SIZE, rectangle};
use crate::drawing::{Anchor, Drawing, Line, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows, in arcseconds.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    budget: f64,
    bars: Vec<Bar>,
}

#[derive(Debug, Clone)]
struct Bar {
    title: String,
    typical: Option<f64>,
    worst: Option<f64>,
}

/// Takes it out of the design; none when nothing is known of any disturbance.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let motion = &design.motion;
    let bars: Vec<Bar> = motion
        .disturbances
        .iter()
        .map(|disturbance| Bar {
            title: disturbance.title.to_owned(),
            typical: disturbance.arcsec,
            worst: disturbance.worst_arcsec,
        })
        .collect();
    bars.iter()
        .any(|bar| bar.typical.is_some())
        .then_some(Layout {
            units: brief.units,
            budget: motion.budget_arcsec,
            bars,
        })
}

impl Layout {
    fn say(&self, arcsec: f64) -> String {
        self.units.say(arcsec, Unit::Arcsecond)
    }

    fn words(&self, bar: &Bar) -> String {
        match (bar.typical, bar.worst) {
            (Some(typical), Some(worst)) if worst > typical * 1.05 => {
                format!("{}; soft ground {}", self.say(typical), self.say(worst))
            }
            (Some(typical), _) => self.say(typical),
            (None, _) => "not known".to_owned(),
        }
    }

    /// Longest thing that is drawn in full; what is much longer than the budget is cut off with a mark.
    fn end(&self) -> f64 {
        let longest = self
            .bars
            .iter()
            .filter_map(|bar| bar.worst.or(bar.typical))
            .fold(self.budget, f64::max);
        longest.min(self.budget * 4.0).max(1e-9)
    }

    fn description(&self) -> String {
        let bars: Vec<String> = self
            .bars
            .iter()
            .map(|bar| format!("{}: {}", bar.title, self.words(bar)))
            .collect();
        format!(
            "The budget is {}. {}.",
            self.say(self.budget),
            bars.join(". ")
        )
    }
}

/// Width of the names, mm.
const NAMES: f64 = 48.0;
/// Length of the bars, mm.
const LENGTH: f64 = 62.0;
/// Width of the figures, mm.
const FIGURES: f64 = 46.0;
const TITLE: &str = "Who moves the star, beside the budget";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout) -> Drawing {
    let mut pen = Pen::default();
    let end = layout.end();
    let x = |arcsec: f64| NAMES + 4.0 + LENGTH * (arcsec / end).min(1.0);
    let mut y = 6.0;
    for bar in &layout.bars {
        y = row(&mut pen, layout, bar, y, x);
    }
    let budget = x(layout.budget);
    pen.line(Line::Heavy, &[at(budget, 3.0), at(budget, y)]);
    pen.text(
        at(budget, 1.6),
        Anchor::Middle,
        format!("budget {}", layout.say(layout.budget)),
    );
    pen.line(Line::Thin, &[at(x(0.0), 3.0), at(x(0.0), y)]);
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "budget",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

/// One disturbance: its name, its bar, a line on to the worst, and the figure below the bar.
fn row(pen: &mut Pen, layout: &Layout, bar: &Bar, top: f64, x: impl Fn(f64) -> f64) -> f64 {
    let names = wrap(Face::Figures, &bar.title, SIZE, NAMES);
    let low = pen.paragraph(at(0.0, top + SIZE * 0.9), SIZE, &names);
    if let Some(typical) = bar.typical {
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
    let figures = wrap(Face::Figures, &layout.words(bar), SIZE, FIGURES);
    low.max(pen.paragraph(at(NAMES + LENGTH + 12.0, top + SIZE * 0.9), SIZE, &figures)) + 0.6
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
