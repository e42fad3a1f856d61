//! Parts as they are sold where the pier is built, in the words of its counters.

use crate::figure::inches::nominal;
use crate::figure::{Kilogram, Unit, Units};
use crate::stock::{Stock, goods, words};
use crate::units::customary::INCH_MM;
use crate::units::{kilogram, millilitre};

use super::Job;

impl Job<'_> {
    /// A size as a shop names it, with the reader's own units behind it where these are others: a drill of 18 mm is sold as
    /// that, and so is one of 11/16 in.
    pub(super) fn mm(&self, value: f64) -> String {
        let metric = Units::Metric.say(value, Unit::Millimetre);
        let inches = Units::Imperial.say(value, Unit::Millimetre);
        match (self.stock(), self.units) {
            (Stock::Metric, Units::Metric) => metric,
            (Stock::Inch, Units::Imperial) => inches,
            (Stock::Metric, Units::Imperial) => format!("{metric} ({inches})"),
            (Stock::Inch, Units::Metric) => format!("{inches} ({metric})"),
        }
    }

    /// Stone of 10 or 20 mm, or of 3/8 or 3/4 in.
    pub(super) fn stone(&self, millimetres: f64) -> String {
        let inches = if millimetres > 15.0 { 0.75 } else { 0.375 };
        self.mm(self.stock().either(millimetres, inches * INCH_MM))
    }

    /// A bag of dry concrete, as it is asked for.
    pub(super) fn bag(&self) -> String {
        let bag = self.brief.block.bag.value;
        match goods::near_size(self.stock(), Unit::Kilogram, kilogram::get(bag)) {
            Some(says) if Stock::of(self.units) == self.stock() => says.replace(' ', "\u{a0}"),
            _ => self.say(bag, Kilogram),
        }
    }

    /// The row of the catalogue that a line is.
    pub(super) fn row_of(&self, id: &str) -> Option<&'static str> {
        let of = |part: &str| {
            let part = self.parts.iter().find(|found| found.part == part)?;
            part.stock_row.filter(|_| part.sold)
        };
        match id {
            "tube" => of("column"),
            "base-plate" => of("base plate"),
            "top-plate" => of("top plate"),
            "stud" | "nut" | "washer" | "drill-bit" => of("studs"),
            "concrete-ready" => of("concrete"),
            "concrete-bagged" => of("bags"),
            "rebar" => of("bars"),
            "cement" => of("cement"),
            "grout" => Some("grout-bag"),
            "mixer" => Some("mixer"),
            "duct" => Some("duct-length"),
            "form-timber" | "joists" => Some("timber-length"),
            "form-plywood" | "pit-cover" => Some("sheet-thick"),
            "resin-cartridge" => goods::near_row(
                self.stock(),
                Unit::Millilitre,
                millilitre::get(self.brief.anchors.product.cartridge.value),
            )
            .map(|row| row.name()),
            _ => None,
        }
    }

    /// A cartridge of resin, as it is asked for.
    pub(super) fn cartridge(&self, millilitres: f64) -> String {
        words::cartridge(self.stock(), self.units, millilitres)
    }

    /// A saw cut and the like, in whole steps of a rule.
    pub(super) fn cut(&self, metres: f64) -> String {
        self.about_mm(1000.0 * metres)
    }

    /// A round size of common practice as a shop names it.
    pub(super) fn about_mm(&self, value: f64) -> String {
        self.mm(self.stock().either(value, nominal(value)))
    }

    /// The same for a longer one.
    pub(super) fn about_m(&self, value: f64) -> String {
        self.m(self.about(value))
    }

    /// A round length of common practice as a tape of what is sold has it, m.
    pub(super) fn about(&self, value: f64) -> f64 {
        self.stock().either(value, nominal(value * 1000.0) / 1000.0)
    }

    /// What is sold where the pier is built.
    pub(super) fn stock(&self) -> Stock {
        self.brief.stock.value
    }

    /// The size in which something is sold, in its row's unit.
    pub(super) fn good(&self, name: &str) -> f64 {
        goods::size(name, self.stock())
    }

    /// The same as it is asked for at a counter, in the reader's units behind it where the counter's are others.
    pub(super) fn sold(&self, name: &str) -> String {
        let says = goods::says(name, self.stock()).replace(' ', "\u{a0}");
        if Stock::of(self.units) == self.stock() {
            return says;
        }
        let value = self.good(name);
        match goods::unit(name, self.stock()) {
            Some(unit) => format!("{says} ({})", self.say(value, unit)),
            None => says,
        }
    }

    /// A sheet of plywood as it is sold.
    pub(super) fn sheet(&self) -> String {
        format!(
            "Plywood {}, sheets of {} × {}",
            self.sold("sheet-thick"),
            self.sold("sheet-long"),
            self.sold("sheet-wide")
        )
    }

    /// Its area, m².
    pub(super) fn sheet_m2(&self) -> f64 {
        self.good("sheet-long") * self.good("sheet-wide")
    }
}
