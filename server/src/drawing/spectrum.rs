//! The walk's spectrum: how much the star moves at which frequency, with the steps and the pier's own swings marked.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Arcsecond, Unit, Units};
use stillground::units::hertz;

use crate::drawing::axis::{Axis, steps};
use crate::drawing::furniture::title_strip;
use crate::drawing::pen::{Head, LINE_HEIGHT, Pen, SIZE as LETTERS, SMALL};
use crate::drawing::{Anchor, Drawing, Form, Line, PHONE_ROOM, Point, at};
use crate::lettering::{Face, width, wrap};

/// What the drawing shows.
#[derive(Debug, Clone)]
pub struct Layout {
    units: Units,
    lines: Vec<[f64; 2]>,
    pace: f64,
    /// The pier's own swings, hertz.
    modes: Vec<f64>,
}

/// Takes it out of the design; none where the walk is not known.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let lines = design.motion.walk.drawn.as_ref()?.spectrum.clone();
    let usable = lines.len() > 2
        && lines
            .iter()
            .flatten()
            .all(|value| value.is_finite() && *value >= 0.0)
        && lines[0][0] > 0.0;
    let modes = design
        .motion
        .frequencies
        .iter()
        .map(|frequency| hertz::get(*frequency))
        .collect();
    usable.then(|| Layout {
        units: brief.units,
        lines,
        pace: hertz::get(brief.floor.pace.value),
        modes,
    })
}

impl Layout {
    fn hertz(&self, frequency: f64) -> String {
        self.units.say(frequency, Unit::Hertz)
    }

    fn arcsec(&self, amplitude: f64) -> String {
        self.units.say(amplitude, Arcsecond)
    }

    fn band(&self) -> (f64, f64) {
        (
            self.lines.first().map_or(0.5, |line| line[0]),
            self.lines.last().map_or(50.0, |line| line[0]),
        )
    }

    fn loudest(&self) -> [f64; 2] {
        self.lines.iter().copied().fold(
            [0.0; 2],
            |most, line| if line[1] > most[1] { line } else { most },
        )
    }

    fn within(&self) -> impl Iterator<Item = f64> + '_ {
        let (low, high) = self.band();
        self.modes
            .iter()
            .copied()
            .filter(move |frequency| (low..=high).contains(frequency))
    }

    /// Amplitude at a frequency that has a line of its own.
    fn at(&self, frequency: f64) -> f64 {
        let off = |line: &&[f64; 2]| (line[0] - frequency).abs();
        self.lines
            .iter()
            .min_by(|a, b| off(a).total_cmp(&off(b)))
            .map_or(0.0, |line| line[1])
    }

    fn words(&self) -> String {
        let [frequency, amplitude] = self.loudest();
        let modes: Vec<String> = self
            .within()
            .map(|mode| {
                format!(
                    "{}, where the star moves by {}",
                    self.hertz(mode),
                    self.arcsec(self.at(mode))
                )
            })
            .collect();
        let modes = if modes.is_empty() {
            "All of the pier's own swings are faster than this".to_owned()
        } else {
            format!("The pier's own swings are at {}", modes.join("; "))
        };
        format!(
            "The star moves most at {}, by {}. The steps come at {} and its multiples, marked below the line. {modes}.",
            self.hertz(frequency),
            self.arcsec(amplitude),
            self.hertz(self.pace)
        )
    }
}

/// How far to the right each level of names is taken.
#[derive(Debug, Default)]
struct Levels(Vec<f64>);

impl Levels {
    /// The lowest level with room for a name of that width about a place; places come from left to right.
    fn level(&mut self, middle: f64, width: f64) -> usize {
        let free = self
            .0
            .iter()
            .position(|taken| middle - width / 2.0 > *taken + 1.5)
            .unwrap_or(self.0.len());
        if free == self.0.len() {
            self.0.push(f64::NEG_INFINITY);
        }
        if let Some(taken) = self.0.get_mut(free) {
            *taken = middle + width / 2.0;
        }
        free
    }
}

/// Size of the picture on a sheet, mm.
const SIZE: (f64, f64) = (132.0, 46.0);
const TITLE: &str = "Star movement by frequency during a walk";

/// Draws it.
#[must_use]
pub fn draw(layout: &Layout, form: Form) -> Drawing {
    form.fitted(SIZE, |room| within(layout, form, (room.0, SIZE.1)))
}

fn within(layout: &Layout, form: Form, size: (f64, f64)) -> Drawing {
    let mut pen = Pen::new(form);
    let (low, high) = layout.band();
    let most = layout.loudest()[1].max(1e-9) * 1.08;
    let across = Axis {
        from: at(0.0, size.1),
        to: at(size.0, size.1),
        low: low.log10(),
        high: high.log10(),
    };
    let up = Axis {
        from: at(size.0, size.1),
        to: at(size.0, 0.0),
        low: 0.0,
        high: most,
    };
    let place = |[frequency, amplitude]: [f64; 2]| {
        at(across.place(frequency.log10()).x, up.place(amplitude).y)
    };
    pen.rectangle(Line::Hair, at(0.0, 0.0), at(size.0, size.1));
    pen.line(
        Line::Thick,
        &layout
            .lines
            .iter()
            .map(|line| place(*line))
            .collect::<Vec<Point>>(),
    );
    let mut high_up = Levels::default();
    for frequency in layout.within() {
        let x = across.place(frequency.log10()).x;
        let name = layout.hertz(frequency);
        let top =
            -1.0 - LINE_HEIGHT * high_up.level(x, width(Face::Figures, &name, LETTERS)) as f64;
        pen.line(Line::Chain, &[at(x, top), at(x, size.1)]);
        pen.text(at(x, top - 1.2), Anchor::Middle, name);
    }
    for n in 1..=20 {
        let frequency = f64::from(n) * layout.pace;
        if (low..=high).contains(&frequency) {
            let x = across.place(frequency.log10()).x;
            pen.line(Line::Thin, &[at(x, size.1), at(x, size.1 + 1.2)]);
        }
    }
    let mut taken = f64::NEG_INFINITY;
    for frequency in [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 40.0]
        .into_iter()
        .filter(|f| (low..=high).contains(f))
    {
        let name = layout.hertz(frequency);
        let (x, half) = (
            across.place(frequency.log10()).x,
            0.5 * width(Face::Figures, &name, SMALL),
        );
        if x - half > taken + 1.0 {
            across.mark(&mut pen, frequency.log10(), at(0.0, 2.4), &name);
            taken = x + half;
        }
    }
    for value in steps(0.0, most, 4) {
        up.mark(&mut pen, value, at(1.2, 0.0), &layout.arcsec(value));
    }
    let wide = match form {
        Form::Sheet | Form::Smaller(_) => size.0 + 20.0,
        Form::Phone | Form::Glance => PHONE_ROOM,
    };
    let lines = wrap(Face::Figures, &layout.words(), LETTERS, wide);
    let left = match form {
        Form::Sheet | Form::Smaller(_) => 0.0,
        Form::Phone | Form::Glance => pen.bounds().left,
    };
    pen.paragraph(at(left, size.1 + 7.0 + LINE_HEIGHT), LETTERS, &lines);
    title_strip(&mut pen, TITLE, None, layout.units);
    pen.finish(Head {
        name: "spectrum",
        title: TITLE.to_owned(),
        description: layout.words(),
        scale: None,
    })
}
