//! Parts as they are asked for at a counter.

use crate::field::Answer;
use crate::figure::{Figure, Millimetre, Unit, Units};
use crate::rules::tubes;
use crate::site_plan::anchors::{Size, StrengthClass};
use crate::site_plan::block::Concrete;
use crate::site_plan::pier::Steel;
use crate::stock::Stock;
use crate::stock::goods::{self, COLUMN_STEELS, CONCRETES};
use crate::table::Table;
use crate::units::{Length, millimetre};

/// A named answer as it is said: by its key, or by the words of its row where the key is only for programs.
fn said<T: Answer>(answer: &T, stock: Stock) -> &'static str {
    let key = answer.name().unwrap_or_default();
    let words = T::ANSWERS.iter().find(|(name, _)| *name == key);
    match stock {
        Stock::Metric => key,
        Stock::Inch => words.map_or(key, |(_, words)| words),
    }
}

/// The family of a row.
fn family(table: &Table, key: &str) -> Stock {
    table
        .row(key)
        .and_then(|row| Stock::from_key(row.text("stock")))
        .unwrap_or(Stock::Metric)
}

impl Size {
    /// As it is asked for, `M16` or `5/8″-11`.
    pub fn said(self) -> &'static str {
        said(&self, self.stock())
    }
}

impl StrengthClass {
    /// As it is asked for, `8.8` or `F1554 grade 36`.
    pub fn said(self) -> &'static str {
        said(&self, self.stock())
    }
}

impl StrengthClass {
    /// As it stands in a sentence, `class 8.8` or `F1554 grade 36`.
    pub fn named(self) -> String {
        self.stock()
            .either(format!("class {}", self.said()), self.said().to_owned())
    }
}

impl Concrete {
    /// The family that sells it.
    pub fn stock(self) -> Stock {
        family(&CONCRETES, self.key())
    }

    /// As it is ordered, `C30/37` or `4,500 psi`.
    pub fn said(self) -> &'static str {
        said(&self, self.stock())
    }
}

impl Steel {
    /// The family that sells it.
    pub fn stock(self) -> Stock {
        family(&COLUMN_STEELS, self.key())
    }

    /// As it is asked for, `S235` or `A53 grade B pipe, A36 plate`.
    pub fn said(self) -> &'static str {
        said(&self, self.stock())
    }

    /// That of the tube alone.
    pub fn of_tube(self) -> &'static str {
        self.cell("tube")
    }

    /// That of the plates alone.
    pub fn of_plate(self) -> &'static str {
        self.cell("plate")
    }

    fn cell(self, column: &str) -> &'static str {
        COLUMN_STEELS
            .row(self.key())
            .map_or(self.key(), |row| row.text(column))
    }
}

/// A cartridge of resin, `300 ml` or `10 oz (300 ml)`: where its reader has the units of the counter, in the counter's words.
pub fn cartridge(stock: Stock, units: Units, millilitres: f64) -> String {
    match goods::near_size(stock, Unit::Millilitre, millilitres) {
        Some(says) if Stock::of(units) == stock => says.replace(' ', "\u{a0}"),
        // What somebody read off a cartridge is said to the last digit.
        _ => Figure {
            digits: units.entry(millilitres, Unit::Millilitre),
            ..units.figure(millilitres, Unit::Millilitre)
        }
        .to_string(),
    }
}

/// A column's tube: `219.1 mm × 8 mm`, or where it is a row of pipe `8 5/8″ × 0.322″ pipe (NPS 8 schedule 40)`.
pub fn tube(stock: Stock, units: Units, outside: Length, wall: Length) -> Option<String> {
    let [outside_mm, wall_mm] = [outside, wall].map(millimetre::get);
    let row = tubes::sold(stock, outside_mm, wall_mm)?;
    let (across, thick) = row.inches?;
    let pipe = format!(
        "{across}\u{2033} × {thick}\u{2033} pipe ({})",
        nominal(row.name)
    );
    Some(match units {
        Units::Imperial => pipe,
        Units::Metric => format!(
            "{pipe}, {} × {}",
            units.say(outside, Millimetre),
            units.say(wall, Millimetre)
        ),
    })
}

/// `NPS 8 schedule 40` of `NPS 8 Sch 40`.
fn nominal(name: &str) -> String {
    name.replace("Sch", "schedule")
        .replace("STD", "standard weight")
        .replace("XS", "extra strong")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_said_as_they_are_asked_for() {
        assert_eq!(Size::Unc5_8.said(), "5/8\u{2033}-11");
        assert_eq!(Size::M16.said(), "M16");
        assert_eq!(Concrete::Psi4000.said(), "4,000 psi");
        assert_eq!(Concrete::C30.said(), "C30/37");
        assert_eq!(StrengthClass::A193B8M.said(), "316 stainless, A193 B8M");
        assert_eq!(
            (Steel::A53.of_tube(), Steel::A53.of_plate()),
            ("A53 grade B", "A36")
        );
        assert_eq!(Steel::S235.of_tube(), "S235");
        let (outside, wall) = (millimetre::new(219.1), millimetre::new(8.18));
        assert_eq!(
            tube(Stock::Inch, Units::Imperial, outside, wall).as_deref(),
            Some("8 5/8\u{2033} × 0.322\u{2033} pipe (NPS 8 schedule 40)")
        );
        assert_eq!(tube(Stock::Metric, Units::Metric, outside, wall), None);
        let (outside, wall) = (millimetre::new(406.4), millimetre::new(9.53));
        assert_eq!(
            tube(Stock::Inch, Units::Imperial, outside, wall).as_deref(),
            Some("16\u{2033} × 0.375\u{2033} pipe (NPS 16 standard weight)")
        );
    }
}
