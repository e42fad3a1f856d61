//! A question as it stands on a page: one shape for every field, with its label, hint, fault, control and unit.

use stillground::field::Path;
use stillground::figure::{Unit, Units};
use stillground::path;
use stillground::site_plan::SitePlan;
use stillground::site_plan::anchors::{Size, StrengthClass};
use stillground::site_plan::block::Concrete;
use stillground::site_plan::pier::Steel;

use crate::forms::question::{Kind, Question};
use crate::forms::questions;
use crate::forms::reading::Fault;
use crate::forms::sheet::Sheet;
use crate::planned::Planned;
use crate::views::words::sentence;

/// A field.
#[derive(Debug, Clone)]
pub struct FieldView {
    /// Name in the form.
    pub name: String,
    /// Identifier on the page.
    pub id: String,
    /// What is asked.
    pub label: String,
    /// How to find the answer; may be empty.
    pub hint: String,
    /// What is wrong with the answer.
    pub error: Option<String>,
    /// Readings to choose from.
    pub readings: Vec<ReadingView>,
    /// What the box holds.
    pub text: String,
    /// The unit of a bare figure; empty where there is none.
    pub unit: &'static str,
    /// What is assumed while the answer is not known.
    pub taken: Option<TakenView>,
    /// The control.
    pub control: Control,
}

/// What is assumed in a line, and why.
#[derive(Debug, Clone)]
pub struct TakenView {
    /// What.
    pub line: String,
    /// Why, and what it changes; empty where the line says it all.
    pub why: String,
}

/// A reading of an ambiguous text.
#[derive(Debug, Clone)]
pub struct ReadingView {
    /// What is sent when it is chosen.
    pub entry: String,
    /// How it reads.
    pub words: String,
}

/// How a field is answered.
#[derive(Debug, Clone)]
pub enum Control {
    /// A line to type in, of this kind.
    Line(&'static str),
    /// One of a few.
    Choice(Vec<OptionView>),
    /// Rows of lines.
    Rows(RowsView),
}

/// An answer to choose.
#[derive(Debug, Clone)]
pub struct OptionView {
    /// Its name in the plan; empty for "not known".
    pub key: &'static str,
    /// Its words.
    pub words: &'static str,
    /// Whether it is chosen.
    pub chosen: bool,
}

/// Rows of lines, with buttons that add and remove them.
#[derive(Debug, Clone)]
pub struct RowsView {
    /// What a row is called.
    pub one: &'static str,
    /// The rows.
    pub rows: Vec<RowView>,
    /// Whether "there are none" is ticked.
    pub none: bool,
    /// What ticking it says.
    pub none_words: &'static str,
}

/// A row.
#[derive(Debug, Clone)]
pub struct RowView {
    /// Its place in the list, from 0.
    pub index: usize,
    /// What it is called.
    pub title: String,
    /// Its boxes.
    pub boxes: Vec<FieldView>,
}

/// What a field is shown with.
pub struct Desk<'a> {
    /// What the boxes hold.
    pub sheet: &'a Sheet,
    /// What is wrong.
    pub faults: &'a [Fault],
    /// The design, where there is one.
    pub planned: Option<&'a Planned>,
    /// Units in which the page is shown.
    pub units: Units,
}

impl<'a> Desk<'a> {
    /// With which a plan's answers are read as they stand, with nothing typed.
    pub fn of_plan(sheet: &'a Sheet, planned: Option<&'a Planned>, plan: &SitePlan) -> Self {
        Self {
            sheet,
            faults: &[],
            planned,
            units: plan.units.unwrap_or_default(),
        }
    }
}

impl Desk<'_> {
    /// Whether an answer is of the family that is sold where the plan is built; what belongs to no family always is.
    fn is_sold(&self, path: &Path, key: &str) -> bool {
        let family = if *path == path!(anchors.size) {
            Size::from_key(key).map(Size::stock)
        } else if *path == path!(anchors.strength_class) {
            StrengthClass::from_key(key).map(StrengthClass::stock)
        } else if *path == path!(block.concrete) {
            Concrete::from_key(key).map(Concrete::stock)
        } else if *path == path!(pier.steel) {
            Steel::from_key(key).map(Steel::stock)
        } else {
            None
        };
        let here = self.planned.map(|planned| planned.brief.stock.value);
        family.zip(here).is_none_or(|(family, here)| family == here)
    }

    /// A question.
    #[must_use]
    pub fn field(&self, question: &'static Question) -> FieldView {
        let unit = question.number().map(|field| field.unit);
        let mut field = self.line(question.path.into(), question.words.label.to_owned(), unit);
        field.hint = question.words.hint.to_owned();
        field.control = match &question.kind {
            Kind::Number => Control::Line("text"),
            Kind::Table { .. } => Control::Line("text"),
            Kind::Text { .. } => Control::Line("text"),
            Kind::Choice { answers, .. } => {
                let offered = |key: &str| self.is_sold(&question.path, key);
                Control::Choice(options(answers, &field.text, offered))
            }
            Kind::Stands => Control::Rows(self.stands(&question.path)),
            Kind::Points { one, .. } => Control::Rows(self.points(&question.path, one)),
        };
        let empty = match &field.control {
            Control::Rows(rows) => !rows.none && rows.rows.iter().all(RowView::is_empty),
            _ => field.text.trim().is_empty(),
        };
        field.taken = (empty && field.error.is_none()).then(|| self.taken(question));
        field
    }

    fn line(&self, name: String, label: String, unit: Option<Unit>) -> FieldView {
        let fault = self
            .faults
            .iter()
            .find(|fault| fault.fields.contains(&name));
        let readings = fault
            .map(|fault| fault.readings.as_slice())
            .unwrap_or_default();
        FieldView {
            id: id(&name),
            label,
            hint: String::new(),
            error: fault.map(|fault| fault.said.clone()),
            readings: readings
                .iter()
                .map(|reading| ReadingView {
                    entry: reading.entry.clone(),
                    words: reading.words.clone(),
                })
                .collect(),
            text: self.sheet.text(&name).unwrap_or_default().to_owned(),
            unit: unit.map_or("", |unit| self.units.convert(0.0, unit).1),
            taken: None,
            control: Control::Line("text"),
            name,
        }
    }

    /// What is assumed while a question is not answered.
    fn taken(&self, question: &'static Question) -> TakenView {
        let assumption = self.planned.and_then(|planned| {
            planned
                .design
                .assumptions
                .iter()
                .find(|taken| taken.field == question.path)
        });
        match assumption {
            Some(assumption) => TakenView {
                line: format!(
                    "Assumed: {}",
                    questions::answer_words(assumption, self.units)
                ),
                why: format!(
                    "{} It changes: {}.",
                    sentence(&assumption.why),
                    assumption.effect.trim_end_matches('.')
                ),
            },
            None => TakenView {
                line: format!("Left open. {}", question.words.not_known),
                why: String::new(),
            },
        }
    }

    fn stands(&self, list: &str) -> RowsView {
        let row = |index: usize| {
            let part = |name: &str, label: &str, unit| {
                self.line(format!("{list}[{index}].{name}"), label.to_owned(), unit)
            };
            let boxes = vec![
                part("name", "Name", None),
                part("x_m", "East", Some(Unit::Metre)),
                part("y_m", "North", Some(Unit::Metre)),
                part("mass_kg", "Mass", Some(Unit::Kilogram)),
            ];
            RowView {
                index,
                title: format!("Place {}", index + 1),
                boxes,
            }
        };
        self.rows(
            list,
            "place",
            "Nobody is anywhere near it during an exposure",
            &row,
        )
    }

    fn points(&self, list: &str, one: &'static str) -> RowsView {
        let row = |index: usize| {
            let part = |j: usize, label: &str| {
                self.line(
                    format!("{list}[{index}][{j}]"),
                    label.to_owned(),
                    Some(Unit::Metre),
                )
            };
            RowView {
                index,
                title: format!("{one} {}", index + 1),
                boxes: vec![part(0, "East"), part(1, "North")],
            }
        };
        let (one, none) = match one {
            "Post" => ("post", "There are no posts"),
            _ => ("corner", "Nobody walks during an exposure"),
        };
        self.rows(list, one, none, &row)
    }

    fn rows(
        &self,
        list: &str,
        one: &'static str,
        none_words: &'static str,
        row: &dyn Fn(usize) -> RowView,
    ) -> RowsView {
        let count = self.sheet.rows(list);
        RowsView {
            one,
            rows: (0..count).map(row).collect(),
            none: self.sheet.ticked(&format!("{list}~none")),
            none_words,
        }
    }
}

impl RowView {
    fn is_empty(&self) -> bool {
        self.boxes.iter().all(|part| part.text.trim().is_empty())
    }
}

/// Most letters of an answer that stands beside others in a line.
const SHORT_ANSWER: usize = 14;

impl FieldView {
    /// Whether its answers are so short that several stand in a line.
    #[must_use]
    pub fn has_short_answers(&self) -> bool {
        let short = |option: &OptionView| option.words.chars().count() <= SHORT_ANSWER;
        matches!(&self.control, Control::Choice(options) if options.iter().all(short))
    }

    /// Identifiers of what describes the control.
    #[must_use]
    pub fn described_by(&self) -> String {
        let parts = [
            (self.error.is_some(), "error"),
            (!self.hint.is_empty(), "hint"),
            (self.taken.is_some(), "taken"),
            (!self.unit.is_empty(), "unit"),
        ];
        parts
            .iter()
            .filter(|(there, _)| *there)
            .map(|(_, part)| format!("{}-{part}", self.id))
            .collect::<Vec<_>>()
            .join(" ")
    }
}

/// The identifier of a field on the page.
#[must_use]
pub fn id(path: &str) -> String {
    path.replace("].", "-")
        .replace(['.', '[', ']', '~'], "-")
        .trim_end_matches('-')
        .to_owned()
}

fn options(
    answers: &'static [(&'static str, &'static str)],
    chosen: &str,
    offered: impl Fn(&str) -> bool,
) -> Vec<OptionView> {
    let answers = answers.iter().chain(&[("", "Not known")]);
    answers
        .filter(|(key, _)| *key == chosen || offered(key))
        .map(|(key, words)| OptionView {
            key,
            words,
            chosen: *key == chosen,
        })
        .collect()
}
