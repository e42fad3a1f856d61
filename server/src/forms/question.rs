//! What a question is: an answer of the plan with the words of its row, and how a form takes it.

use stillground::field::{Number, NumberField, Other, OtherField, Path, Words};
use stillground::figure::Measure;
use stillground::site_plan::SitePlan;

/// One question.
pub struct Question {
    /// Where the answer stands in the plan.
    pub path: Path,
    /// What is asked, how to find the answer, and what happens when it is not known.
    pub words: Words,
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
        /// Writes it; whether there is an answer of this name.
        set: fn(&mut SitePlan, Option<&str>) -> bool,
    },
    /// A line of text.
    Text {
        /// Reads it.
        get: fn(&SitePlan) -> Option<&String>,
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
#[derive(Clone, Copy)]
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
        SitePlan::number(&self.path)
    }
}

/// The question for a number of the plan.
pub(super) const fn number<M: Measure>(row: Number<M>) -> Question {
    Question {
        path: row.row.path,
        words: words(row.row.words),
        kind: Kind::Number,
    }
}

/// The question for an answer of a few.
pub(super) const fn choice<T>(row: Other<T>) -> Question {
    Question {
        path: row.row.path,
        words: words(row.row.words),
        kind: Kind::Choice {
            answers: row.row.answers,
            get: row.row.key,
            set: row.row.set_key,
        },
    }
}

/// The question for a row of the plan's numbers, where it has words.
pub(super) fn of_number(row: &NumberField) -> Option<Question> {
    Some(Question {
        path: row.path,
        words: row.words?,
        kind: Kind::Number,
    })
}

/// The question for another row, where it has words and is one of a few answers.
pub(super) fn of_choice(row: &OtherField) -> Option<Question> {
    Some(Question {
        path: row.path,
        words: row.words.filter(|_| !row.answers.is_empty())?,
        kind: Kind::Choice {
            answers: row.answers,
            get: row.key,
            set: row.set_key,
        },
    })
}

/// The question for a line of text.
pub(super) const fn text(row: Other<String>) -> Question {
    Question {
        path: row.row.path,
        words: words(row.row.words),
        kind: Kind::Text {
            get: row.get,
            set: row.set,
        },
    }
}

/// The question for corners or posts; what one of them is called.
pub(super) const fn points(row: Other<Vec<[f64; 2]>>, one: &'static str) -> Question {
    Question {
        path: row.row.path,
        words: words(row.row.words),
        kind: Kind::Points {
            one,
            get: row.get,
            set: row.set,
        },
    }
}

/// The words of a row; one that has none is not asked for, and a form that does so does not compile.
pub(super) const fn words(words: Option<Words>) -> Words {
    match words {
        Some(words) => words,
        None => panic!("the row says nothing behind `asks`"),
    }
}
