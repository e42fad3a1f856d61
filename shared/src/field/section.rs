//! How a section of the plan and its answers are declared.

/// A set of named answers: each with its name in the JSON interface and, where a form offers it, its words there.
macro_rules! choice {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$vdoc:meta])* $variant:ident = $key:literal $(, $words:literal)?;)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name { $($(#[$vdoc])* #[serde(rename = $key)] $variant,)* }

        impl $crate::field::Answer for $name {
            const KIND: $crate::field::Kind = $crate::field::Kind::Choice(Self::KEYS);
            const ANSWERS: &'static [(&'static str, &'static str)] = &[$($(($key, $words),)?)*];

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
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)* }
            }

            /// The answer with this name.
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|answer| answer.key() == key)
            }
        }
    };
}

/// How an answer is asked for, or that it is not.
macro_rules! words {
    () => {
        None
    };
    ($label:literal, [$($hint:literal)?], [$($not_known:literal)?]) => {
        Some($crate::field::Words {
            label: $label,
            hint: concat!($($hint)?),
            not_known: concat!($($not_known)?),
        })
    };
}

/// What there is, or nothing.
macro_rules! maybe {
    () => {
        None
    };
    ($there:expr) => {
        Some($there)
    };
}

/// The row of an answer that is no number.
macro_rules! other {
    ($path:expr, $plan:ident.$($place:ident).+: $type:ty, $what:expr, $words:expr, $usual:expr, $because:expr) => {
        $crate::field::Other {
            usual: $usual,
            row: $crate::field::OtherField {
                path: $crate::field::Path::new($path),
                what: $what,
                kind: <$type as $crate::field::Answer>::KIND,
                words: $words,
                because: $because,
                answers: <$type as $crate::field::Answer>::ANSWERS,
                key: |$plan| $plan.$($place).+.as_ref().and_then($crate::field::Answer::name),
                set_key: |$plan, key| {
                    let answer = key.and_then(<$type as $crate::field::Answer>::named);
                    let is_known = key.is_none() || answer.is_some();
                    if is_known {
                        $plan.$($place).+ = answer;
                    }
                    is_known
                },
            },
            get: |$plan| $plan.$($place).+.as_ref(),
            set: |$plan, answer| $plan.$($place).+ = answer,
        }
    };
}

/// A section of the plan: numbers with unit and range, whole numbers, and whatever else, all of them as fields of a struct
/// and as rows of the same name. Each may be unknown. What a form asks stands behind `asks`: the question, a hint on how to
/// find the answer where there is one, and what is done when it is not known. Where a value is then taken, `because` says why,
/// `changes` what in the plan it moves, `from` where it comes from, and `takes` the value if it is always the same; a value that
/// hangs on other answers is worked out by [`crate::brief`].
macro_rules! section {
    (
        $(#[$doc:meta])*
        pub struct $name:ident in $place:ident {
            numbers { $(
                #[doc = $ndoc:literal] $number:ident: $unit:ident, $least:literal ..= $most:literal, $why:literal
                $(, asks $nask:literal $(, hint $nhint:literal)? $(, unknown $nunknown:literal)?)?
                $(, $(takes $nusual:expr,)? because $nwhy_taken:literal, changes $neffect:literal, from $nsource:expr)?;
            )* }
            counts { $(
                #[doc = $cdoc:literal] $count:ident: $cleast:literal ..= $cmost:literal, $cwhy:literal
                $(, asks $cask:literal $(, hint $chint:literal)? $(, unknown $cunknown:literal)?)?
                $(, $(takes $cusual:expr,)? because $cwhy_taken:literal, changes $ceffect:literal, from $csource:expr)?;
            )* }
            others { $(
                $(#[doc = $odoc:literal])+ $other:ident: $type:ty
                $(, asks $oask:literal $(, hint $ohint:literal)? $(, unknown $ounknown:literal)?)?
                $(, $(takes $ousual:expr,)? because $owhy_taken:literal, changes $oeffect:literal, from $osource:expr)?;
            )* }
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
            pub const $other: $crate::field::Other<$type> = $crate::field::other!(
                concat!(stringify!($place), ".", stringify!($other)), plan.$place.$other: $type, concat!($($odoc),+),
                $crate::field::words!($($oask, [$($ohint)?], [$($ounknown)?])?),
                $crate::field::maybe!($($(|| $ousual)?)?), $crate::field::maybe!($($crate::field::Because { why: $owhy_taken, effect: $oeffect, source: $osource })?)
            );)*

            $(#[doc = $cdoc]
            pub const $count: $crate::field::Number<$crate::figure::Count> =
                $crate::field::Number::new($crate::field::NumberField {
                    path: $crate::field::Path::new(concat!(stringify!($place), ".", stringify!($count))),
                    what: $cdoc,
                    unit: <$crate::figure::Count as $crate::figure::Measure>::UNIT,
                    least: $cleast as f64,
                    most: $cmost as f64,
                    why: $cwhy,
                    words: $crate::field::words!($($cask, [$($chint)?], [$($cunknown)?])?),
                    usual: $crate::field::maybe!($($($cusual)?)?),
                    because: $crate::field::maybe!($($crate::field::Because { why: $cwhy_taken, effect: $ceffect, source: $csource })?),
                    get: |plan| plan.$place.$count.map(f64::from),
                    set: |plan, value| plan.$place.$count = value.map(|value| value.round() as u32),
                });)*

            $(#[doc = $ndoc]
            pub const $number: $crate::field::Number<$crate::figure::$unit> =
                $crate::field::Number::new($crate::field::NumberField {
                    path: $crate::field::Path::new(concat!(stringify!($place), ".", stringify!($number))),
                    what: $ndoc,
                    unit: <$crate::figure::$unit as $crate::figure::Measure>::UNIT,
                    least: $least,
                    most: $most,
                    why: $why,
                    words: $crate::field::words!($($nask, [$($nhint)?], [$($nunknown)?])?),
                    usual: $crate::field::maybe!($($($nusual)?)?),
                    because: $crate::field::maybe!($($crate::field::Because { why: $nwhy_taken, effect: $neffect, source: $nsource })?),
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

pub(crate) use {choice, maybe, other, section, words};
