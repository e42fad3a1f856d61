//! Materials: everything to order or hire, with what it is for.

mod column;
mod digging;
mod dowels;
mod floor;
mod frost;
mod lengths;
mod pouring;
mod safety;
mod studs;
#[cfg(test)]
mod tests;
mod tools;
mod wiring;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::inches::nominal;
use crate::figure::{Kilogram, Unit, UnitOf, Units};
use crate::notes::{Found, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::parts::Part;
use crate::stages::pier::Pier;
use crate::stock::{INCH_MM, Stock, goods};
use crate::units::{kilogram, millilitre};

pub use lengths::StockLength;

/// Which part of the work a line belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Group {
    /// Setting out and digging.
    Digging,
    /// Formwork, steel, ducts, concrete and its care.
    Concrete,
    /// The steel column.
    Column,
    /// Studs, resin, grout.
    Studs,
    /// The observing floor.
    Floor,
    /// Power, data and earth.
    Wiring,
    /// Tools to have, borrow or hire.
    Tools,
    /// What keeps people whole.
    Safety,
}

impl Group {
    /// The group's heading.
    #[must_use]
    pub const fn heading(self) -> &'static str {
        match self {
            Self::Digging => "Setting out and digging",
            Self::Concrete => "Form, steel, ducts and concrete",
            Self::Column => "Column",
            Self::Studs => "Studs, resin and bed",
            Self::Floor => "Observing floor",
            Self::Wiring => "Power, data and earth",
            Self::Tools => "Tools",
            Self::Safety => "Safety",
        }
    }
}

/// Whether a thing is bought or hired.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Supply {
    /// Bought, and used up or kept.
    Buy,
    /// Hired, or borrowed.
    Hire,
    /// Owned already, or borrowed for the day.
    Have,
}

impl Supply {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Buy => "buy",
            Self::Hire => "hire",
            Self::Have => "have ready",
        }
    }
}

/// One line of the order.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Material {
    /// Stable name of the line, whatever sizes and units it is written in; one of [`LINES`](crate::site_plan::prices::lines::LINES).
    pub id: &'static str,
    /// What.
    pub item: String,
    /// How much, with waste, in `unit`.
    pub quantity: f64,
    /// Unit.
    pub unit: Unit,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: String,
    /// Waste, stock length, hire, and the like.
    pub note: String,
    /// Which part of the work.
    pub group: Group,
    /// Bought or hired.
    pub supply: Supply,
    /// Name of its row in the catalogue; none where it has none.
    pub stock_row: Option<&'static str>,
    /// Whole lengths in which the same can be had; empty where it is not sold by length.
    pub stock: Vec<StockLength>,
    /// The same item in the other system's words, so that a price is known again after the units were changed.
    #[serde(skip)]
    pub other_words: String,
}

/// What the lists are made from.
struct Job<'a> {
    brief: &'a Brief,
    /// Whose words the lines are written in.
    units: Units,
    excavation: &'a Excavation,
    block: &'a Block,
    pier: &'a Pier,
    anchors: &'a Anchors,
    parts: &'a [Part],
}

impl Job<'_> {
    fn people(&self) -> f64 {
        self.brief.work.people.value.max(1.0)
    }

    fn say<Q>(&self, quantity: Q, unit: impl UnitOf<Q>) -> String {
        self.units.say(quantity, unit)
    }

    fn m(&self, value: f64) -> String {
        self.say(value, Unit::Metre)
    }

    /// A size as a shop names it, with the reader's own units behind it where these are others: a drill of 18 mm is sold as
    /// that, and so is one of 11/16 in.
    fn mm(&self, value: f64) -> String {
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
    fn stone(&self, millimetres: f64) -> String {
        let inches = if millimetres > 15.0 { 0.75 } else { 0.375 };
        self.mm(self.stock().either(millimetres, inches * INCH_MM))
    }

    /// A bag of dry concrete, as it is asked for.
    fn bag(&self) -> String {
        let bag = self.brief.block.bag.value;
        match goods::near_size(self.stock(), Unit::Kilogram, kilogram::get(bag)) {
            Some(says) if Stock::of(self.units) == self.stock() => says.replace(' ', "\u{a0}"),
            _ => self.say(bag, Kilogram),
        }
    }

    /// The row of the catalogue that a line is.
    fn row_of(&self, id: &str) -> Option<&'static str> {
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
            "cement" => Some("cement-bag"),
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
    fn cartridge(&self, millilitres: f64) -> String {
        match goods::near_size(self.stock(), Unit::Millilitre, millilitres) {
            Some(says) if Stock::of(self.units) == self.stock() => says.replace(' ', "\u{a0}"),
            _ => self.say(millilitres, Unit::Millilitre),
        }
    }

    /// A saw cut and the like, in whole steps of a rule.
    fn cut(&self, metres: f64) -> String {
        self.about_mm(1000.0 * metres)
    }

    /// A round size of common practice as a shop names it.
    fn about_mm(&self, value: f64) -> String {
        self.mm(self.stock().either(value, nominal(value)))
    }

    /// The same for a longer one.
    fn about_m(&self, value: f64) -> String {
        self.m(self.stock().either(value, nominal(value * 1000.0) / 1000.0))
    }

    /// What is sold where the pier is built.
    fn stock(&self) -> Stock {
        self.brief.stock.value
    }

    /// The size in which something is sold, in its row's unit.
    fn good(&self, name: &str) -> f64 {
        goods::size(name, self.stock())
    }

    /// The same as it is asked for at a counter, in the reader's units behind it where the counter's are others.
    fn sold(&self, name: &str) -> String {
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
    fn sheet(&self) -> String {
        format!(
            "Plywood {}, sheets of {} × {}",
            self.sold("sheet-thick"),
            self.sold("sheet-long"),
            self.sold("sheet-wide")
        )
    }

    /// Its area, m².
    fn sheet_m2(&self) -> f64 {
        self.good("sheet-long") * self.good("sheet-wide")
    }
}

/// A list in the making.
struct List {
    group: Group,
    lines: Vec<Material>,
}

impl List {
    fn of(group: Group) -> Self {
        Self {
            group,
            lines: Vec::new(),
        }
    }

    fn buy(
        &mut self,
        id: &'static str,
        item: impl Into<String>,
        quantity: (f64, Unit),
        purpose: &str,
        note: impl Into<String>,
    ) {
        self.line(Supply::Buy, id, item.into(), quantity, purpose, note.into());
    }

    fn hire(
        &mut self,
        id: &'static str,
        item: impl Into<String>,
        quantity: (f64, Unit),
        purpose: &str,
        note: impl Into<String>,
    ) {
        self.line(
            Supply::Hire,
            id,
            item.into(),
            quantity,
            purpose,
            note.into(),
        );
    }

    fn have(
        &mut self,
        id: &'static str,
        item: impl Into<String>,
        quantity: (f64, Unit),
        purpose: &str,
        note: impl Into<String>,
    ) {
        self.line(
            Supply::Have,
            id,
            item.into(),
            quantity,
            purpose,
            note.into(),
        );
    }

    /// A line of nothing is no line.
    fn line(
        &mut self,
        supply: Supply,
        id: &'static str,
        item: String,
        (quantity, unit): (f64, Unit),
        purpose: &str,
        note: String,
    ) {
        if quantity.is_finite() && quantity > 0.0 {
            let (group, purpose) = (self.group, purpose.to_owned());
            let other_words = String::new();
            self.lines.push(Material {
                id,
                item,
                quantity,
                unit,
                purpose,
                note,
                group,
                supply,
                stock_row: None,
                stock: Vec::new(),
                other_words,
            });
        }
    }

    /// Says in which whole lengths the line before can be had as well.
    fn or_in_lengths(&mut self, stock: Vec<StockLength>) {
        if let Some(line) = self.lines.last_mut() {
            line.stock = stock;
        }
    }
}

/// So many pieces.
fn pieces(number: f64) -> (f64, Unit) {
    (number.ceil(), Unit::Count)
}

/// Rounded up to a step, so that a list shows what a shop sells.
fn up(value: f64, step: f64) -> f64 {
    ((value / step - 1e-9).ceil() * step * 1e6).round() / 1e6
}

/// Lists what to order.
#[must_use]
pub fn stage(
    brief: &Brief,
    excavation: &Excavation,
    block: &Block,
    pier: &Pier,
    anchors: &Anchors,
    floor: &Floor,
    parts: &[Part],
) -> Found<Vec<Material>> {
    let mut lines = lines_of(
        &Job {
            brief,
            units: brief.units,
            excavation,
            block,
            pier,
            anchors,
            parts,
        },
        floor,
    );
    let other = lines_of(
        &Job {
            brief,
            units: brief.units.other(),
            excavation,
            block,
            pier,
            anchors,
            parts,
        },
        floor,
    );
    for (line, other) in lines.iter_mut().zip(other) {
        line.other_words = other.item;
    }
    Found {
        value: lines,
        notes: Notes::default(),
    }
}

fn lines_of(job: &Job, floor: &Floor) -> Vec<Material> {
    let lists = [
        digging::list(job),
        pouring::list(job),
        column::list(job),
        studs::list(job),
        floor::list(job, floor),
        wiring::list(job),
        tools::list(job),
        safety::list(job),
    ];
    let mut lines: Vec<Material> = lists.into_iter().flat_map(|list| list.lines).collect();
    for line in &mut lines {
        line.stock_row = job.row_of(line.id);
    }
    lines
}
