//! The plan's numbers as data: path, unit, range and the reason for the range, beside the field itself.

use serde::Serialize;

use crate::figure::Unit;
use crate::site_plan::SitePlan;

/// A number that a person may give.
pub struct NumberField {
    /// Path in the plan, for instance `site.frost_depth_m`.
    pub path: &'static str,
    /// What it is, a sentence from the field's documentation.
    pub what: &'static str,
    /// Unit.
    pub unit: Unit,
    /// Least value taken.
    pub least: f64,
    /// Largest value taken.
    pub most: f64,
    /// Why the range is so.
    pub why: &'static str,
    /// Reads it.
    pub get: fn(&SitePlan) -> Option<f64>,
    /// Writes it; a count is rounded to a whole number.
    pub set: fn(&mut SitePlan, Option<f64>),
}

/// An answer that is no number.
pub struct OtherField {
    /// Path in the plan, for instance `site.soil`.
    pub path: &'static str,
    /// What it is, from the field's documentation.
    pub what: &'static str,
    /// What is taken.
    pub kind: Kind,
}

/// What an answer that is no number may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// One of these names.
    Choice(&'static [&'static str]),
    /// True or false.
    YesOrNo,
    /// A text.
    Text,
    /// Rows of a table, at most so many.
    Rows(&'static [Cell], usize),
    /// Points, at most so many, each east and north of the pier's axis.
    Points(usize),
}

/// A cell in a row of a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cell {
    /// Its name.
    pub name: &'static str,
    /// What it is, with its unit.
    pub what: &'static str,
    /// Whether it is a text; otherwise a number.
    pub is_text: bool,
}

impl Cell {
    /// A number.
    #[must_use]
    pub const fn number(name: &'static str, what: &'static str) -> Self {
        Self {
            name,
            what,
            is_text: false,
        }
    }

    /// A text.
    #[must_use]
    pub const fn text(name: &'static str, what: &'static str) -> Self {
        Self {
            name,
            what,
            is_text: true,
        }
    }
}

/// A type of answer that says what it takes.
pub trait Answer {
    /// What is taken.
    const KIND: Kind;
}

impl<T: Answer> Answer for Option<T> {
    const KIND: Kind = T::KIND;
}

impl Answer for bool {
    const KIND: Kind = Kind::YesOrNo;
}

impl Answer for String {
    const KIND: Kind = Kind::Text;
}

/// Something wrong with a plan: which fields, what was found, what is right.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Problem {
    /// Paths of the fields; more than one where answers contradict each other.
    pub fields: Vec<String>,
    /// The value found, in the first field's unit.
    pub value: Option<f64>,
    /// What is wrong and what would be right, a whole sentence.
    pub said: String,
}

impl Problem {
    /// A contradiction between answers.
    #[must_use]
    pub fn between(fields: &[&str], said: impl Into<String>) -> Self {
        Self {
            fields: fields.iter().map(|&field| field.to_owned()).collect(),
            value: None,
            said: said.into(),
        }
    }
}

/// All that is wrong with a plan, never empty.
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[error("{}", self.0.iter().map(|problem| format!("{}: {}", problem.fields.join(", "), problem.said)).collect::<Vec<_>>().join("; "))]
pub struct Problems(pub Vec<Problem>);

/// A set of named answers.
macro_rules! choice {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$vdoc:meta])* $variant:ident = $key:literal,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $key)] $variant,)* }

        impl $crate::field::Answer for $name {
            const KIND: $crate::field::Kind = $crate::field::Kind::Choice(Self::KEYS);
        }

        impl $name {
            /// Every answer, in the order in which they are offered.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];
            /// Their names in the JSON interface, in the same order.
            pub const KEYS: &'static [&'static str] = &[$($key,)*];

            /// The answer's name in the JSON interface.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)* }
            }

            /// The answer with this name.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|answer| answer.key() == key)
            }
        }
    };
}

/// A section of the plan: numbers with their ranges, whole numbers, and whatever else.
macro_rules! section {
    (
        $(#[$doc:meta])*
        pub struct $name:ident in $place:ident {
            numbers { $(#[doc = $ndoc:literal] $number:ident: $unit:ident, $least:literal ..= $most:literal, $why:literal;)* }
            counts { $(#[doc = $cdoc:literal] $count:ident: $cleast:literal ..= $cmost:literal, $cwhy:literal;)* }
            others { $($(#[doc = $odoc:literal])+ $other:ident: $type:ty,)* }
        }
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Default, serde::Serialize, serde::Deserialize)]
        #[serde(default, deny_unknown_fields)]
        pub struct $name {
            $($(#[doc = $odoc])+ pub $other: $type,)*
            $(#[doc = $cdoc] pub $count: Option<u32>,)*
            $(#[doc = $ndoc] pub $number: Option<f64>,)*
        }

        impl $name {
            /// The section's other answers with what they take.
            pub const OTHERS: &'static [$crate::field::OtherField] = &[
                $($crate::field::OtherField {
                    path: concat!(stringify!($place), ".", stringify!($other)),
                    what: concat!($($odoc),+),
                    kind: <$type as $crate::field::Answer>::KIND,
                },)*
            ];

            /// The section's numbers with their units and ranges.
            pub const NUMBERS: &'static [$crate::field::NumberField] = &[
                $($crate::field::NumberField {
                    path: concat!(stringify!($place), ".", stringify!($count)),
                    what: $cdoc,
                    unit: $crate::figure::Unit::Count,
                    least: $cleast as f64,
                    most: $cmost as f64,
                    why: $cwhy,
                    get: |plan| plan.$place.$count.map(f64::from),
                    set: |plan, value| plan.$place.$count = value.map(|value| value.round() as u32),
                },)*
                $($crate::field::NumberField {
                    path: concat!(stringify!($place), ".", stringify!($number)),
                    what: $ndoc,
                    unit: $crate::figure::Unit::$unit,
                    least: $least,
                    most: $most,
                    why: $why,
                    get: |plan| plan.$place.$number,
                    set: |plan, value| plan.$place.$number = value,
                },)*
            ];
        }
    };
}

pub(crate) use {choice, section};
