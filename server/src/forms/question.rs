//! What a question is: a field of the plan with its label, its hint, and what is taken when the answer is not known.

use stillground::field::NumberField;
use stillground::site_plan::SitePlan;

/// One question.
pub struct Question {
    /// Path of the plan's field, for instance `site.frost_depth_m`.
    pub path: &'static str,
    /// What is asked.
    pub label: &'static str,
    /// How to find the answer.
    pub hint: &'static str,
    /// What happens when it is not known and the design takes no value for it by itself.
    pub not_known: &'static str,
    /// What kind of answer it has.
    pub kind: Kind,
}

/// An answer that may be given: its name in the plan, and its words.
pub type Answer = (&'static str, &'static str);

/// The kind of a question's answer.
pub enum Kind {
    /// A figure with a unit.
    Number,
    /// One of a few.
    Choice {
        /// What may be answered.
        answers: &'static [Answer],
        /// Reads the answer's name.
        get: fn(&SitePlan) -> Option<&'static str>,
        /// Writes it.
        set: fn(&mut SitePlan, Option<&str>),
    },
    /// A line of text.
    Text {
        /// What kind of box.
        input: &'static str,
        /// Reads it.
        get: fn(&SitePlan) -> Option<&str>,
        /// Writes it.
        set: fn(&mut SitePlan, Option<String>),
    },
    /// A product's table, typed in one line.
    Table {
        /// Reads its rows.
        get: fn(&SitePlan) -> Option<Vec<[f64; 3]>>,
        /// Writes them.
        set: fn(&mut SitePlan, Option<Vec<[f64; 3]>>),
    },
    /// Places with a name and a weight.
    Stands,
    /// Corners or posts.
    Points {
        /// What one of them is called.
        one: &'static str,
        /// Reads them.
        get: fn(&SitePlan) -> Option<&Vec<[f64; 2]>>,
        /// Writes them.
        set: fn(&mut SitePlan, Option<Vec<[f64; 2]>>),
    },
}

/// Questions about one thing.
pub struct Topic {
    /// Heading.
    pub heading: &'static str,
    /// What is meant, as one would say it on the site.
    pub intro: &'static str,
    /// The questions that most people can answer.
    pub common: &'static [Question],
    /// The rarer ones.
    pub rare: &'static [Question],
}

impl Topic {
    /// All its questions.
    pub fn questions(&self) -> impl Iterator<Item = &'static Question> + use<> {
        self.common.iter().chain(self.rare)
    }
}

impl Question {
    /// The plan's number behind it.
    #[must_use]
    pub fn number(&self) -> Option<&'static NumberField> {
        SitePlan::number(self.path)
    }
}

/// A question whose answer is a figure.
pub(super) const fn number(
    path: &'static str,
    label: &'static str,
    hint: &'static str,
    not_known: &'static str,
) -> Question {
    Question {
        path,
        label,
        hint,
        not_known,
        kind: Kind::Number,
    }
}

/// A question with a few answers; an answer of the plan that has no words here does not compile.
macro_rules! choice {
    ($path:literal, $type:ident, $($place:ident).+, $label:literal, $hint:literal, $not_known:literal, { $($answer:ident: $words:literal,)* }) => {
        $crate::forms::question::Question {
            path: $path,
            label: $label,
            hint: $hint,
            not_known: $not_known,
            kind: $crate::forms::question::Kind::Choice {
                answers: &[$(($type::$answer.key(), $words)),*],
                get: |plan| plan.$($place).+.map(|answer| match answer { $($type::$answer => $type::$answer.key(),)* }),
                set: |plan, key| plan.$($place).+ = key.and_then($type::from_key),
            },
        }
    };
}

pub(super) use choice;
