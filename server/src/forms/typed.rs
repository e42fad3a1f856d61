//! What a person types into a number's box: figures with or without a unit, fractions, feet and inches.
//!
//! Nothing is guessed: a text with two readings comes back as a question with both of them.

mod measure;
mod number;

pub use measure::example;

use measure::{Match, Measure};
use number::Number;
use stillground::figure::{Unit, Units};

/// What a text means.
#[derive(Debug, Clone, PartialEq)]
pub enum Typed {
    /// Nothing, or words for "not known".
    NotKnown,
    /// A value in the field's own metric unit.
    Value(f64),
    /// More than one reading.
    Ask(Question),
    /// No number of this kind; a whole sentence says why.
    Bad(String),
}

/// A text with more than one reading.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// Why it has to be asked about, a whole sentence.
    pub why: String,
    /// The readings.
    pub readings: Vec<Reading>,
}

/// One reading of an ambiguous text.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// A text with this reading only.
    pub entry: String,
    /// How it reads, in words.
    pub words: String,
    /// The value in the field's metric unit.
    pub value: f64,
}

const NOT_KNOWN: &[&str] = &[
    "",
    "?",
    "-",
    "not known",
    "unknown",
    "not sure",
    "don't know",
    "dont know",
    "do not know",
    "n/a",
    "none known",
];
const WEIGHED_TORQUE: &[&str] = &[
    "kilos",
    "kilo",
    "kilogrammes",
    "kilograms",
    "kgs",
    "kg",
    "k",
];

/// Reads a text as a quantity of the unit; a bare figure is in the reader's own unit.
#[must_use]
pub fn read(text: &str, unit: Unit, units: Units) -> Typed {
    let plain = plain(text);
    if NOT_KNOWN.contains(&plain.as_str()) {
        return Typed::NotKnown;
    }
    if unit == Unit::NewtonMetre
        && let Some(asked) = weighed_torque(&plain)
    {
        return asked;
    }
    if let Some(diameter) = bar_number(&plain, unit) {
        return Typed::Value(diameter);
    }
    match parts(&plain, unit, units) {
        Ok(parts) => total(&parts, unit),
        Err(said) => Typed::Bad(said),
    }
}

/// The diameter of a bar by its number, `#5`: eighths of an inch, true of #3 to #8.
fn bar_number(text: &str, unit: Unit) -> Option<f64> {
    let number: u32 = text.strip_prefix('#')?.trim().parse().ok()?;
    (measure::is_length(unit) && (3..=8).contains(&number))
        .then(|| tidy(measure::inches().in_unit(f64::from(number) / 8.0, unit)))
}

/// One figure with its unit.
struct Part {
    number: Number,
    measure: Measure,
}

/// Lower case, one kind of minus, prime and space.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.trim().to_lowercase().chars() {
        match c {
            '\u{2212}' | '\u{2013}' => out.push('-'),
            '\u{2032}' | '\u{2019}' | '\u{2018}' | '´' => out.push('\''),
            '\u{2033}' | '\u{201d}' | '\u{201c}' => out.push('"'),
            '\u{a0}' | '\u{2009}' | '\u{202f}' | '·' | '⋅' | '\t' => out.push(' '),
            '²' => out.push('2'),
            '³' => out.push('3'),
            'µ' | 'μ' => out.push('u'),
            '½' => out.push_str(" 1/2"),
            '¼' => out.push_str(" 1/4"),
            '¾' => out.push_str(" 3/4"),
            '⅛' => out.push_str(" 1/8"),
            '⅜' => out.push_str(" 3/8"),
            '⅝' => out.push_str(" 5/8"),
            '⅞' => out.push_str(" 7/8"),
            c => out.push(c),
        }
    }
    out.replace("''", "\"").trim().to_owned()
}

fn parts(text: &str, unit: Unit, units: Units) -> Result<Vec<Part>, String> {
    let (negative, mut rest) = match text.strip_prefix(['-', '+']) {
        Some(rest) => (text.starts_with('-'), rest.trim_start()),
        None => (false, text),
    };
    let mut parts: Vec<Part> = Vec::new();
    while !rest.is_empty() {
        let Some((number, after)) = number::take(rest) else {
            return Err(no_number(text, unit, units));
        };
        let number = if negative { number.negated() } else { number };
        let (measure, after) = match measure::take(after.trim_start(), unit) {
            Match::Measure(measure, after) => (measure, after),
            Match::Bare if parts.is_empty() => (measure::bare(unit, units), after),
            // Nobody writes the inches' mark behind feet.
            Match::Bare if parts.last().is_some_and(|part| part.measure.is_feet()) => {
                (measure::inches(), after)
            }
            Match::Bare => {
                return Err(format!(
                    "The last figure in “{text}” has no unit; say what it is, for instance {}.",
                    example(unit, units)
                ));
            }
            Match::Other(said) => return Err(said),
        };
        parts.push(Part { number, measure });
        rest = after.trim_start();
    }
    if parts.is_empty() {
        Err(no_number(text, unit, units))
    } else {
        Ok(parts)
    }
}

fn no_number(text: &str, unit: Unit, units: Units) -> String {
    let text: String = text.chars().take(40).collect();
    format!(
        "“{text}” is not a figure this page can read. Write it like {}, or leave it empty if it is not known.",
        example(unit, units)
    )
}

fn total(parts: &[Part], unit: Unit) -> Typed {
    if parts
        .windows(2)
        .any(|pair| !pair[0].measure.may_be_followed_by(&pair[1].measure))
    {
        return Typed::Bad(
            "Several figures stand here that do not add up to one, as feet and inches would. Write one figure with its unit.".into(),
        );
    }
    if let [part] = parts
        && let Some(question) = part.measure.doubt(part.number.value, unit)
    {
        return Typed::Ask(question);
    }
    let sum = |pick: fn(&Number) -> f64| {
        tidy(
            parts
                .iter()
                .map(|part| part.measure.in_unit(pick(&part.number), unit))
                .sum(),
        )
    };
    let (value, other) = (
        sum(|number| number.value),
        sum(|number| number.other.unwrap_or(number.value)),
    );
    match parts.iter().any(|part| part.number.other.is_some()) {
        false if value.is_finite() => Typed::Value(value),
        false => Typed::Bad("This figure is larger than anything that can be built.".into()),
        true => Typed::Ask(separator_question(value, other, unit)),
    }
}

fn separator_question(value: f64, other: f64, unit: Unit) -> Question {
    let reading = |value: f64, mark: &str| {
        let entry = measure::entry(value, unit);
        Reading {
            words: format!("{entry}, the comma being {mark}"),
            entry,
            value,
        }
    };
    Question {
        why: "A comma before three digits can mean two things; choose which one you meant.".into(),
        readings: vec![
            reading(value, "a decimal mark"),
            reading(other, "between thousands"),
        ],
    }
}

/// A torque stated as a weight.
fn weighed_torque(text: &str) -> Option<Typed> {
    let (number, after) = number::take(text)?;
    WEIGHED_TORQUE.contains(&after.trim()).then_some(())?;
    let figure = stillground::figure::digits(number.value);
    let readings = [
        ("N m", "newton metres", 1.0),
        ("kgf m", "kilogram-force metres", 9.806_65),
        ("lbf ft", "pound-force feet", 1.355_817_948_331_400_4),
    ]
    .into_iter()
    .map(|(symbol, words, newton_metres)| Reading {
        entry: format!("{figure} {symbol}"),
        words: format!("{figure} {words}"),
        value: tidy(number.value * newton_metres),
    })
    .collect();
    Some(Typed::Ask(Question {
        why: "A torque in “kilos” is no torque yet: people mean three different things by it. Look at the tool, and choose what its scale says.".into(),
        readings,
    }))
}

/// The value to twelve digits, free of the last bits' noise.
fn tidy(value: f64) -> f64 {
    format!("{value:.11e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests;
