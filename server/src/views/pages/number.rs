//! A figure on a page: digits parted at the decimal mark so that a column aligns there, the unit apart from them.

use stillground::figure::{Amount, UnitOf, Units};

/// A figure's parts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Number {
    /// Sign and digits before the decimal mark, or words.
    pub whole: String,
    /// The decimal mark and the digits behind it.
    pub part: String,
    /// The unit; empty for a ratio.
    pub unit: &'static str,
    /// Whether it is words and no figure.
    pub words: bool,
}

impl Number {
    /// A quantity in the reader's units; none is "not known".
    #[must_use]
    pub fn of<Q>(quantity: Option<Q>, unit: impl UnitOf<Q>, units: Units) -> Self {
        let amount = quantity.map(|quantity| Amount::of(quantity, unit));
        match amount.filter(|amount| amount.value.is_finite()) {
            Some(amount) => Self::split(units.figure(amount.value, amount.unit)),
            None => Self::words("not known"),
        }
    }

    /// Words where a figure would stand.
    #[must_use]
    pub fn words(said: impl Into<String>) -> Self {
        Self {
            whole: said.into(),
            part: String::new(),
            unit: "",
            words: true,
        }
    }

    fn split(figure: stillground::figure::Figure) -> Self {
        let (whole, part) = match figure.digits.find('.') {
            Some(mark) => (
                figure.digits[..mark].to_owned(),
                figure.digits[mark..].to_owned(),
            ),
            None => (figure.digits, String::new()),
        };
        Self {
            whole,
            part,
            unit: figure.unit,
            words: false,
        }
    }

    /// Digits and unit in one run.
    #[must_use]
    pub fn text(&self) -> String {
        match self.unit {
            "" => format!("{}{}", self.whole, self.part),
            unit @ ("°" | "%") => format!("{}{}{unit}", self.whole, self.part),
            unit => format!(
                "{}{}\u{a0}{}",
                self.whole,
                self.part,
                unit.replace(' ', "\u{a0}")
            ),
        }
    }
}
