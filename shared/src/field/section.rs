//! How a section of the plan and its answers are declared.

/// A set of named answers.
macro_rules! choice {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$vdoc:meta])* $variant:ident = $key:literal,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $key)] $variant,)* }

        impl $crate::field::Answer for $name {
            const KIND: $crate::field::Kind = $crate::field::Kind::Choice(Self::KEYS);

            fn name(&self) -> Option<&'static str> {
                Some(self.key())
            }

            fn named(name: &str) -> Option<Self> {
                Self::from_key(name)
            }
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

/// A section of the plan: numbers with unit and range, whole numbers, and whatever else, all of them as fields of a struct
/// and as rows of the same name. Each may be unknown.
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
            $($(#[doc = $odoc])+ pub $other: Option<$type>,)*
            $(#[doc = $cdoc] pub $count: Option<u32>,)*
            $(#[doc = $ndoc] pub $number: Option<f64>,)*
        }

        /// The rows of the section's answers.
        #[allow(non_upper_case_globals, reason = "a row has the name of its field, so that one search finds both")]
        impl $name {
            $($(#[doc = $odoc])+
            pub const $other: $crate::field::Other<$type> = $crate::field::Other {
                row: $crate::field::OtherField {
                    path: $crate::field::Path::new(concat!(stringify!($place), ".", stringify!($other))),
                    what: concat!($($odoc),+),
                    kind: <$type as $crate::field::Answer>::KIND,
                    key: |plan| plan.$place.$other.as_ref().and_then($crate::field::Answer::name),
                    set_key: |plan, key| {
                        let answer = key.and_then(<$type as $crate::field::Answer>::named);
                        let is_known = key.is_none() || answer.is_some();
                        if is_known {
                            plan.$place.$other = answer;
                        }
                        is_known
                    },
                },
                get: |plan| plan.$place.$other.as_ref(),
                set: |plan, answer| plan.$place.$other = answer,
            };)*

            $(#[doc = $cdoc]
            pub const $count: $crate::field::Number<$crate::field::Count> =
                $crate::field::Number::new($crate::field::NumberField {
                    path: $crate::field::Path::new(concat!(stringify!($place), ".", stringify!($count))),
                    what: $cdoc,
                    unit: $crate::figure::Unit::Count,
                    least: $cleast as f64,
                    most: $cmost as f64,
                    why: $cwhy,
                    get: |plan| plan.$place.$count.map(f64::from),
                    set: |plan, value| plan.$place.$count = value.map(|value| value.round() as u32),
                });)*

            $(#[doc = $ndoc]
            pub const $number: $crate::field::Number<$crate::field::$unit> =
                $crate::field::Number::new($crate::field::NumberField {
                    path: $crate::field::Path::new(concat!(stringify!($place), ".", stringify!($number))),
                    what: $ndoc,
                    unit: $crate::figure::Unit::$unit,
                    least: $least,
                    most: $most,
                    why: $why,
                    get: |plan| plan.$place.$number,
                    set: |plan, value| plan.$place.$number = value,
                });)*

            /// The section's numbers.
            pub const NUMBERS: &'static [$crate::field::NumberField] =
                &[$(Self::$count.row,)* $(Self::$number.row,)*];

            /// The section's other answers.
            pub const OTHERS: &'static [$crate::field::OtherField] = &[$(Self::$other.row,)*];
        }
    };
}

pub(crate) use {choice, section};
