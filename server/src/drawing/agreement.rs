//! What was measured beside what was foreseen and what the fitted pier shows: a line for each measurement, all over what was
//! foreseen.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units, significant};
use stillground::proof::Agreement;

use crate::drawing::axis::Axis;
use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, Pen, SIZE};
use crate::drawing::{Drawing, Form, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, wrap};

/// What the drawing shows.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    rows: Vec<Row>,
}

/// A measurement; all but its words over what was foreseen.
#[derive(Debug, Clone)]
struct Row {
    name: String,
    words: String,
    /// Where nine of ten piers of the plan would be.
    foreseen: [f64; 2],
    /// What was measured, and where nine of ten repetitions would be.
    measured: [f64; 3],
    fitted: Option<f64>,
}

/// From the middle to where nineteen of twenty lie, in standard deviations.
const NINE_OF_TEN: f64 = 1.645;

impl Row {
    fn of(one: &Agreement, units: Units) -> Self {
        let unit = if one.unit == "Hz" {
            Unit::Hertz
        } else {
            Unit::Arcsecond
        };
        let say = |value: f64| units.say(value, unit);
        let over = |value: f64| value / one.foreseen;
        let whisker = (NINE_OF_TEN * one.sd_ratio).exp();
        let fitted = one
            .fitted
            .map_or_else(String::new, |fitted| format!(", fitted {}", say(fitted)));
        Self {
            name: one.measurement.clone(),
            words: format!(
                "measured {}, foreseen {}{fitted}",
                say(one.measured),
                say(one.foreseen)
            ),
            foreseen: one.foreseen_between.map(over),
            measured: [
                over(one.measured) / whisker,
                over(one.measured),
                over(one.measured) * whisker,
            ],
            fitted: one.fitted.map(over),
        }
    }

    fn all(&self) -> impl Iterator<Item = f64> {
        self.foreseen
            .into_iter()
            .chain(self.measured)
            .chain(self.fitted)
    }
}

/// Takes it out of the design; none where nothing was measured.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let fitted = design.fitted.as_ref()?;
    let fits = |one: &&Agreement| one.foreseen > 0.0 && one.measured > 0.0;
    let rows: Vec<Row> = fitted
        .agreement
        .iter()
        .filter(fits)
        .map(|one| Row::of(one, brief.units))
        .filter(|row| row.all().all(|value| value.is_finite() && value > 0.0))
        .collect();
    (!rows.is_empty()).then_some(Layout {
        units: brief.units,
        rows,
    })
}

impl Layout {
    /// The axis: logarithms of the least and the largest factor, with foreseen in between.
    fn ends(&self) -> (f64, f64) {
        let all = self.rows.iter().flat_map(Row::all);
        let (low, high) = all.fold((0.8f64, 1.25f64), |(low, high), value| {
            (low.min(value), high.max(value))
        });
        ((low.max(0.05) / 1.05).ln(), (high.min(20.0) * 1.05).ln())
    }

    fn description(&self) -> String {
        let rows: Vec<String> = self
            .rows
            .iter()
            .map(|row| format!("{}: {}", row.name, row.words))
            .collect();
        format!("{TITLE}. {}.", rows.join(". "))
    }
}

const TITLE: &str =
    "Measured beside foreseen: dot with whiskers as measured, bar as foreseen, ring as fitted";
/// Length of the axis on a sheet, mm.
const LENGTH: f64 = 96.0;
/// Where it begins on a sheet: beyond the names.
const NAMES: f64 = 66.0;
/// Factors that may be marked on the axis.
const MARKS: [f64; 13] = [
    0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0, 20.0,
];

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    let (names, from, length) = match form {
        Form::Sheet | Form::Smaller(_) => (NAMES - 4.0, NAMES, LENGTH),
        Form::Phone | Form::Glance => (PHONE_ROOM, 2.0, PHONE_ROOM - 6.0),
    };
    let mut pen = Pen::new(form);
    let (low, high) = layout.ends();
    let axis_at = |y: f64| Axis {
        from: at(from, y),
        to: at(from + length, y),
        low,
        high,
    };
    let mut y = 4.0;
    let mut lines: Vec<(f64, f64)> = Vec::new();
    for row in &layout.rows {
        let text = format!("{}: {}", row.name, row.words);
        let words = wrap(Face::Figures, &text, SIZE, names);
        let below = pen.paragraph(at(0.0, y + SIZE), SIZE, &words);
        let middle = match form {
            Form::Sheet | Form::Smaller(_) => 0.5 * (y + below) - 0.6,
            Form::Phone | Form::Glance => below + 1.0,
        };
        put(&mut pen, row, &axis_at(middle));
        lines.push((middle - 3.0, middle + 3.0));
        y = match form {
            Form::Sheet | Form::Smaller(_) => below + 2.4,
            Form::Phone | Form::Glance => middle + 4.5,
        };
    }
    let axis = axis_at(y + 1.0);
    let one = axis.place(0.0).x;
    match form {
        Form::Sheet | Form::Smaller(_) => pen.line(Line::Chain, &[at(one, 2.0), at(one, y + 1.0)]),
        // The names stand between the rows there.
        Form::Phone | Form::Glance => lines
            .into_iter()
            .for_each(|(top, bottom)| pen.line(Line::Thin, &[at(one, top), at(one, bottom)])),
    }
    pen.line(Line::Thin, &[axis.from, axis.to]);
    marks(&mut pen, &axis);
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "agreement",
        title: TITLE.to_owned(),
        description: layout.description(),
        scale: None,
    })
}

/// Least paper between two marks, mm.
const APART: f64 = 11.0;

fn marks(pen: &mut Pen, axis: &Axis) {
    let one = axis.place(0.0);
    axis.mark(pen, 0.0, at(0.0, 1.6), "as foreseen");
    let mut taken = vec![one.x - 6.0, one.x + 6.0];
    for mark in MARKS.into_iter().filter(|mark| *mark != 1.0) {
        let value = mark.ln();
        let place = axis.place(value).x;
        let free = taken.iter().all(|other| (place - other).abs() >= APART);
        if value > axis.low && value < axis.high && free {
            axis.mark(
                pen,
                value,
                at(0.0, 1.6),
                &format!("× {}", significant(mark, 2)),
            );
            taken.push(place);
        }
    }
}

fn put(pen: &mut Pen, row: &Row, axis: &Axis) {
    let place = |factor: f64| axis.place(factor.ln().clamp(axis.low, axis.high));
    let [from, to] = row.foreseen.map(place);
    let bar = |a: Point, b: Point, half: f64| {
        [
            at(a.x, a.y - half),
            at(b.x, a.y - half),
            at(b.x, a.y + half),
            at(a.x, a.y + half),
        ]
    };
    pen.outline(Line::Thin, &bar(from, to, 1.5));
    let [low, middle, high] = row.measured.map(place);
    pen.line(Line::Thick, &[low, high]);
    for end in [low, high] {
        pen.line(
            Line::Thick,
            &[at(end.x, end.y - 1.1), at(end.x, end.y + 1.1)],
        );
    }
    pen.dot(middle, 1.1);
    if let Some(fitted) = row.fitted {
        pen.circle(Line::Thick, place(fitted), 2.1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::PHONE_WIDTH;

    fn layout() -> Layout {
        let row = |name: &str, factor: f64| Row {
            name: name.to_owned(),
            words: "measured 14.2 Hz, foreseen 16.3 Hz, fitted 14.4 Hz".to_owned(),
            foreseen: [0.6, 1.5],
            measured: [factor / 1.1, factor, factor * 1.1],
            fitted: Some(0.98 * factor),
        };
        Layout {
            units: Units::Metric,
            rows: vec![row("Knock 1, east and west", 0.87), row("Lean 1", 12.0)],
        }
    }

    #[test]
    fn it_fits_a_sheet_and_a_telephone_and_says_each_measurement() {
        let sheet = draw(&layout(), Form::Sheet);
        assert!(
            sheet.width <= crate::drawing::callout::SHEET_WIDTH,
            "{}",
            sheet.width
        );
        let phone = draw(&layout(), Form::Phone);
        assert!(phone.width <= PHONE_WIDTH, "{}", phone.width);
        assert!(phone.description.contains("Lean 1: measured"));
    }
}
