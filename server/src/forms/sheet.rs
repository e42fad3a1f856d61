//! A sheet of answers as texts: what a browser sent, or what a saved plan puts back into the boxes.

use stillground::figure::Units;
use stillground::path;
use stillground::site_plan::SitePlan;

use super::question::{Kind, Question};
use super::questions;
use super::step::Step;
use super::table;

/// Most pairs that are looked at; a page has fewer than half of them.
const MOST_PAIRS: usize = 2000;
/// Highest row that is looked at: one past what the longest list takes, so that too many are still said to be so.
const LAST_ROW: usize = 64;

/// Names and texts, in the order in which they came.
#[derive(Debug, Clone, Default)]
pub struct Sheet {
    pairs: Vec<(String, String)>,
}

impl Sheet {
    /// What a browser sent.
    #[must_use]
    pub fn sent(mut pairs: Vec<(String, String)>) -> Self {
        pairs.truncate(MOST_PAIRS);
        Self { pairs }
    }

    /// A plan's answers to a step's questions, in the reader's units.
    #[must_use]
    pub fn of(step: Step, plan: &SitePlan) -> Self {
        let mut sheet = Self::default();
        for question in questions::of(step) {
            sheet.fill(question, plan);
        }
        sheet
    }

    /// The text with this name.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<&str> {
        self.pairs
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, text)| text.as_str())
    }

    /// Whether a box was ticked.
    #[must_use]
    pub fn ticked(&self, name: &str) -> bool {
        self.text(name).is_some_and(|text| !text.is_empty())
    }

    /// Writes a text in place of the one there was.
    pub fn put(&mut self, name: impl Into<String>, text: impl Into<String>) {
        let name = name.into();
        self.pairs.retain(|(key, _)| *key != name);
        self.pairs.push((name, text.into()));
    }

    /// All names and texts.
    pub fn pairs(&self) -> impl Iterator<Item = (&str, &str)> {
        self.pairs
            .iter()
            .map(|(name, text)| (name.as_str(), text.as_str()))
    }

    /// How many rows a list has on this sheet.
    #[must_use]
    pub fn rows(&self, list: &str) -> usize {
        let start = format!("{list}[");
        let row = |name: &str| {
            name.strip_prefix(&start)?
                .split(']')
                .next()?
                .parse::<usize>()
                .ok()
        };
        self.pairs
            .iter()
            .filter_map(|(name, _)| row(name))
            .max()
            .map_or(0, |last| last.min(LAST_ROW) + 1)
    }

    /// Takes a row out of a list; those below move up.
    pub fn remove_row(&mut self, list: &str, gone: usize) {
        let start = format!("{list}[");
        let pairs = std::mem::take(&mut self.pairs);
        self.pairs = pairs
            .into_iter()
            .filter_map(|(name, text)| Some((moved_up(&name, &start, gone)?, text)))
            .collect();
    }

    /// Takes a question out, its list's rows with it.
    pub fn take_out(&mut self, path: &str) {
        let (row, mark) = (format!("{path}["), format!("{path}~"));
        self.pairs.retain(|(name, _)| {
            name != path && !name.starts_with(&row) && !name.starts_with(&mark)
        });
    }

    fn fill(&mut self, question: &'static Question, plan: &SitePlan) {
        let units = plan.units.unwrap_or_default();
        match &question.kind {
            Kind::Number => {
                let field = question.number();
                let shown =
                    field.and_then(|field| Some(units.entry((field.get)(plan)?, field.unit)));
                self.put(question.path, shown.unwrap_or_default());
            }
            Kind::Choice { get, .. } => self.put(question.path, get(plan).unwrap_or_default()),
            Kind::Table { get, .. } => self.put(
                question.path,
                get(plan)
                    .map(|rows| table::write(&rows))
                    .unwrap_or_default(),
            ),
            Kind::Text { get, .. } => self.put(question.path, get(plan).map_or("", String::as_str)),
            Kind::Stands => self.fill_stands(plan, units),
            Kind::Points { get, .. } => self.fill_points(&question.path, get(plan), units),
        }
    }

    fn fill_stands(&mut self, plan: &SitePlan, units: Units) {
        let stands = plan.floor.stands.as_deref();
        self.none(&path!(floor.stands), stands.is_some_and(<[_]>::is_empty));
        for (i, stand) in stands.unwrap_or_default().iter().enumerate() {
            let path = format!("floor.stands[{i}]");
            self.put(format!("{path}.name"), stand.name.clone());
            self.put(
                format!("{path}.x_m"),
                units.entry(stand.x_m, stillground::figure::Unit::Metre),
            );
            self.put(
                format!("{path}.y_m"),
                units.entry(stand.y_m, stillground::figure::Unit::Metre),
            );
            self.put(
                format!("{path}.mass_kg"),
                units.entry(stand.mass_kg, stillground::figure::Unit::Kilogram),
            );
        }
    }

    fn fill_points(&mut self, list: &str, points: Option<&Vec<[f64; 2]>>, units: Units) {
        self.none(list, points.is_some_and(Vec::is_empty));
        for (i, point) in points
            .map(Vec::as_slice)
            .unwrap_or_default()
            .iter()
            .enumerate()
        {
            for (j, coordinate) in point.iter().enumerate() {
                self.put(
                    format!("{list}[{i}][{j}]"),
                    units.entry(*coordinate, stillground::figure::Unit::Metre),
                );
            }
        }
    }

    fn none(&mut self, list: &str, none: bool) {
        if none {
            self.put(format!("{list}~none"), "yes");
        }
    }
}

fn moved_up(name: &str, start: &str, gone: usize) -> Option<String> {
    let Some((row, rest)) = name
        .strip_prefix(start)
        .and_then(|rest| rest.split_once(']'))
    else {
        return Some(name.to_owned());
    };
    match row.parse::<usize>() {
        Ok(row) if row == gone => None,
        Ok(row) if row > gone => Some(format!("{start}{}]{rest}", row - 1)),
        _ => Some(name.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::Sheet;

    #[test]
    fn rows_move_up_when_one_goes() {
        let pair = |name: &str, text: &str| (name.to_owned(), text.to_owned());
        let mut sheet = Sheet::sent(vec![
            pair("walk[0][0]", "a"),
            pair("walk[1][0]", "b"),
            pair("walk[2][0]", "c"),
            pair("walker", "d"),
        ]);
        sheet.remove_row("walk", 1);
        assert_eq!(sheet.rows("walk"), 2);
        assert_eq!(sheet.text("walk[1][0]"), Some("c"));
        assert_eq!(sheet.text("walker"), Some("d"));
    }
}
