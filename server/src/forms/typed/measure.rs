//! Units that a person may write, and how each turns into a field's own unit.

use stillground::figure::{Unit, Units, digits};

mod table;

use super::{Question, Reading};
use table::{DOUBTS, ROWS};

/// What a unit measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Ratio,
    Length,
    Area,
    Volume,
    Mass,
    Time,
    Speed,
    Force,
    Torque,
    Pressure,
    UnitWeight,
    Temperature,
    Difference,
    FreezingIndex,
    Angle,
    AngularAcceleration,
    Frequency,
    Stiffness,
    Inertia,
    LengthPerPressure,
}

impl Kind {
    const fn words(self) -> &'static str {
        match self {
            Self::Ratio => "a bare figure",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Volume => "a volume",
            Self::Mass => "a mass",
            Self::Time => "a time",
            Self::Speed => "a speed",
            Self::Force => "a force",
            Self::Torque => "a torque",
            Self::Pressure => "a pressure",
            Self::UnitWeight => "a weight for a volume",
            Self::Temperature => "a temperature",
            Self::Difference => "a difference of temperature",
            Self::FreezingIndex => "a freezing index",
            Self::Angle => "an angle",
            Self::AngularAcceleration => "an angular acceleration",
            Self::Frequency => "a frequency",
            Self::Stiffness => "a rotational stiffness",
            Self::Inertia => "a moment of inertia",
            Self::LengthPerPressure => "a displacement for a stress",
        }
    }
}

/// A unit as a quotient of whole steps, so that 12 inches are 304.8 mm to the last bit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    kind: Kind,
    times: f64,
    over: f64,
    shift: f64,
    name: &'static str,
}

const fn m(kind: Kind, name: &'static str, times: f64, over: f64) -> Measure {
    Measure {
        kind,
        times,
        over,
        shift: 0.0,
        name,
    }
}

/// A unit, and all its names.
struct Row(&'static [&'static str], Measure);

const fn row(kind: Kind, names: &'static [&'static str], times: f64, over: f64) -> Row {
    Row(names, m(kind, "", times, over))
}

/// Every unit by every name.
fn measures() -> impl Iterator<Item = Measure> {
    ROWS.iter().flat_map(|Row(names, unit)| {
        let named = |&name| Measure { name, ..*unit };
        names.iter().map(named)
    })
}

/// What stands after a figure.
pub enum Match<'a> {
    /// A unit of the right kind, and what follows it.
    Measure(Measure, &'a str),
    /// No unit.
    Bare,
    /// Something else; a whole sentence says what.
    Other(String),
}

/// Takes a unit of the field's kind off the front of a text.
pub fn take(text: &str, unit: Unit) -> Match<'_> {
    let first = text.chars().next();
    if first.is_none_or(|c| c.is_ascii_digit()) {
        return Match::Bare;
    }
    let kind = kind_of(unit);
    let found = measures()
        .filter(|measure| measure.kind == kind)
        .filter_map(|measure| Some((measure, after(text, measure.name)?)));
    if let Some((measure, rest)) = found.max_by_key(|(measure, _)| measure.name.len()) {
        return Match::Measure(measure, rest);
    }
    if let Some((name, rest)) = DOUBTS
        .iter()
        .filter(|doubt| doubt.1 == kind)
        .find_map(|doubt| Some((doubt.0, after(text, doubt.0)?)))
    {
        return Match::Measure(
            Measure {
                kind,
                times: f64::NAN,
                over: 1.0,
                shift: 0.0,
                name,
            },
            rest,
        );
    }
    let word: String = text
        .chars()
        .take_while(|c| !c.is_ascii_digit())
        .take(20)
        .collect();
    let word = word.trim();
    Match::Other(
        match measures().find(|measure| after(word, measure.name) == Some("")) {
            Some(other) => format!(
                "“{word}” is {}, and this asks for {}.",
                other.kind.words(),
                kind.words()
            ),
            None => format!(
                "“{word}” is not a unit this page knows for {}.",
                kind.words()
            ),
        },
    )
}

/// What follows a name at the front of a text, whose spaces do not count; nothing when the name goes on.
fn after<'a>(text: &'a str, name: &str) -> Option<&'a str> {
    let mut rest = text;
    for wanted in name.chars() {
        rest = rest.trim_start_matches([' ', '.', '^', '-']);
        rest = rest.strip_prefix(wanted)?;
    }
    let goes_on = rest
        .chars()
        .next()
        .is_some_and(|c| c.is_alphabetic() || matches!(c, '/' | '^' | '%'));
    let ends_in_letter = name.chars().next_back().is_some_and(char::is_alphanumeric);
    (!(goes_on && ends_in_letter)).then(|| rest.strip_prefix('.').unwrap_or(rest))
}

/// The unit of a bare figure: the reader's own.
pub fn bare(unit: Unit, units: Units) -> Measure {
    let (times, shift) = match units {
        Units::Metric => (1.0, 0.0),
        Units::Imperial => (
            unit.imperial_factor(),
            if unit == Unit::Celsius { -32.0 } else { 0.0 },
        ),
    };
    let base = base(unit);
    Measure {
        kind: kind_of(unit),
        times: base.times,
        over: base.over * times,
        shift,
        name: "",
    }
}

/// Inches, where they need no name.
pub fn inches() -> Measure {
    m(Kind::Length, "in", 254.0, 10_000.0)
}

/// Whether a field asks for a length.
pub fn is_length(unit: Unit) -> bool {
    kind_of(unit) == Kind::Length
}

impl Measure {
    /// Whether inches may stand behind it without their mark.
    pub fn is_feet(&self) -> bool {
        matches!(self.name, "feet" | "foot" | "ft" | "'")
    }

    /// A figure of this unit in the field's own.
    pub fn in_unit(&self, figure: f64, unit: Unit) -> f64 {
        let base = base(unit);
        (figure + self.shift) * (self.times * base.over) / (self.over * base.times)
    }

    /// Whether a smaller part of the same kind may follow, as inches follow feet.
    pub fn may_be_followed_by(&self, next: &Self) -> bool {
        let parts = matches!(
            self.kind,
            Kind::Length | Kind::Mass | Kind::Time | Kind::Angle
        );
        parts && self.kind == next.kind && self.times / self.over > next.times / next.over
    }

    /// The readings of a name that means several sizes.
    pub fn doubt(&self, figure: f64, unit: Unit) -> Option<Question> {
        let (name, _, sizes) = DOUBTS
            .iter()
            .find(|doubt| doubt.0 == self.name && self.times.is_nan())?;
        let readings = sizes.iter().filter_map(|(symbol, words)| {
            let lower = symbol.to_lowercase();
            let Match::Measure(measure, _) = take(&lower, unit) else {
                return None;
            };
            let entry = format!("{} {symbol}", digits(figure));
            Some(Reading {
                words: format!("{} {words}", digits(figure)),
                entry,
                value: super::tidy(measure.in_unit(figure, unit)),
            })
        });
        Some(Question {
            why: format!(
                "“{name}” means different sizes in different countries; choose which one you meant."
            ),
            readings: readings.collect(),
        })
    }
}

/// A text that reads back as this value and nothing else.
pub fn entry(value: f64, unit: Unit) -> String {
    match unit.symbol() {
        "" => digits(value),
        symbol => format!("{} {symbol}", digits(value)),
    }
}

/// An example of what may be typed.
#[must_use]
pub fn example(unit: Unit, units: Units) -> &'static str {
    match (kind_of(unit), units) {
        (Kind::Length, Units::Metric) => "30 cm, 0,3 m or 1 ft 3 in",
        (Kind::Length, Units::Imperial) => "1 ft 3 in, 15\" or 30 cm",
        (Kind::Mass, Units::Metric) => "60 kg or 130 lb",
        (Kind::Mass, Units::Imperial) => "130 lb or 60 kg",
        (Kind::Temperature, Units::Metric) => "10 or 50 °F",
        (Kind::Temperature, Units::Imperial) => "50 or 10 °C",
        (Kind::Force, Units::Metric) => "200 N or 20 kg",
        (Kind::Force, Units::Imperial) => "45 lbf or 200 N",
        (Kind::Torque, _) => "80 N m or 60 lbf ft",
        (Kind::Speed, _) => "12 m/s, 43 km/h or 27 mph",
        (Kind::Time, _) => "300 s or 5 min",
        (Kind::Pressure, _) => "75 kPa or 1500 psf",
        (Kind::Angle, _) => "25 or 25.5",
        (Kind::Area, _) => "0.3 m2 or 3 sq ft",
        (Kind::Volume, _) => "65 l or 0.065 m3",
        _ => "12 or 12.5",
    }
}

fn kind_of(unit: Unit) -> Kind {
    match unit {
        Unit::Metre | Unit::Millimetre | Unit::Micrometre | Unit::FocalMillimetre => Kind::Length,
        Unit::SquareMetre | Unit::SquareMillimetre => Kind::Area,
        Unit::CubicMetre | Unit::BarrowCubicMetre | Unit::Litre | Unit::Millilitre => Kind::Volume,
        Unit::Kilogram | Unit::Tonne => Kind::Mass,
        Unit::Second | Unit::Minute | Unit::Hour | Unit::Day => Kind::Time,
        Unit::MetrePerSecond | Unit::WindMetrePerSecond => Kind::Speed,
        Unit::Newton | Unit::Kilonewton => Kind::Force,
        Unit::NewtonMetre => Kind::Torque,
        Unit::Kilopascal | Unit::Megapascal => Kind::Pressure,
        Unit::KilonewtonPerCubicMetre => Kind::UnitWeight,
        Unit::Celsius => Kind::Temperature,
        Unit::Kelvin => Kind::Difference,
        Unit::CelsiusDay => Kind::FreezingIndex,
        Unit::Degree | Unit::Arcsecond | Unit::Arcminute => Kind::Angle,
        Unit::DegreePerSecondSquared => Kind::AngularAcceleration,
        Unit::Hertz => Kind::Frequency,
        Unit::NewtonMetrePerRadian => Kind::Stiffness,
        Unit::KilogramSquareMetre => Kind::Inertia,
        Unit::MillimetrePerMegapascal => Kind::LengthPerPressure,
        _ => Kind::Ratio,
    }
}

/// The field's own unit in the base of its kind.
fn base(unit: Unit) -> Measure {
    let (times, over) = match unit {
        Unit::Millimetre | Unit::FocalMillimetre => (1.0, 1e3),
        Unit::Micrometre | Unit::Millilitre => (1.0, 1e6),
        Unit::Litre => (1.0, 1e3),
        Unit::Tonne | Unit::Kilonewton | Unit::Kilopascal | Unit::KilonewtonPerCubicMetre => {
            (1e3, 1.0)
        }
        Unit::Megapascal => (1e6, 1.0),
        Unit::Minute => (60.0, 1.0),
        Unit::Hour => (3600.0, 1.0),
        Unit::Day => (86_400.0, 1.0),
        Unit::Arcsecond => (1.0, 3600.0),
        Unit::Arcminute => (1.0, 60.0),
        Unit::PerCent => (1.0, 100.0),
        _ => (1.0, 1.0),
    };
    m(kind_of(unit), "", times, over)
}
