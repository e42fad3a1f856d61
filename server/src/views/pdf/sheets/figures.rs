//! Small tables of named figures.

use stillground::figure::{UnitOf, Units};
use stillground::units::Spread;

use crate::views::pdf::flow::Flow;
use crate::views::pdf::table::{Cell, table};

/// Named figures, one a row.
#[derive(Debug)]
pub struct Figures {
    units: Units,
    rows: Vec<Vec<Cell>>,
}

impl Figures {
    /// None yet.
    #[must_use]
    pub fn new(units: Units) -> Self {
        Self {
            units,
            rows: Vec::new(),
        }
    }

    /// A figure.
    #[must_use]
    pub fn with<Q>(mut self, name: &str, quantity: Q, unit: impl UnitOf<Q>) -> Self {
        self.rows
            .push(vec![name.into(), self.units.figure(quantity, unit).into()]);
        self
    }

    /// A figure that may be missing; then the words say so.
    #[must_use]
    pub fn maybe<Q>(
        self,
        name: &str,
        value: Option<Q>,
        unit: impl UnitOf<Q>,
        missing: &str,
    ) -> Self {
        match value {
            Some(value) => self.with(name, value, unit),
            None => self.words(name, missing),
        }
    }

    /// The range and the middle of an uncertain figure.
    #[must_use]
    pub fn spread<Q>(
        mut self,
        name: &str,
        spread: Option<Spread<Q>>,
        unit: impl UnitOf<Q>,
    ) -> Self {
        let Some(Spread { low, typical, high }) = spread else {
            return self.words(name, "not known");
        };
        let say = |value: Q| self.units.say(value, unit);
        let words = format!("{}, between {} and {}", say(typical), say(low), say(high));
        self.rows.push(vec![name.into(), Cell::Said(words)]);
        self
    }

    /// Words instead of a figure.
    #[must_use]
    pub fn words(mut self, name: &str, words: &str) -> Self {
        self.rows
            .push(vec![name.into(), Cell::Said(words.to_owned())]);
        self
    }

    /// Puts the table on the page.
    /// Many figures stand in two columns.
    pub fn put(self, flow: &mut Flow) {
        if self.rows.len() < 5 {
            table(flow, &[("What", 1.0), ("How much", 1.2)], &self.rows);
            return;
        }
        let blank = || vec![Cell::from(""), Cell::from("")];
        let mut rows = self.rows.into_iter();
        let mut pairs = Vec::new();
        while let Some(left) = rows.next() {
            pairs.push(
                left.into_iter()
                    .chain(rows.next().unwrap_or_else(blank))
                    .collect(),
            );
        }
        table(
            flow,
            &[
                ("What", 1.15),
                ("How much", 1.0),
                ("What", 1.15),
                ("How much", 1.0),
            ],
            &pairs,
        );
    }
}
