//! Materials: everything to order or hire, with what it is for.

mod column;
mod digging;
mod dowels;
mod floor;
mod frost;
mod lengths;
mod pouring;
mod safety;
mod sold;
mod studs;
#[cfg(test)]
mod tests;
mod tools;
mod wiring;

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Unit, UnitOf, Units};
use crate::notes::{Found, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::excavation::Excavation;
use crate::stages::floor::Floor;
use crate::stages::parts::Part;
use crate::stages::pier::Pier;
use crate::stock::Stock;

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

/// A quantity as it is asked for at a counter: where inches are sold up to whole feet, square feet and pounds, to quarters of a
/// gallon, and to quarters of a cubic yard or, of less than one, to tenths.
fn as_asked_for(stock: Stock, quantity: f64, unit: Unit) -> f64 {
    let step = match (stock, unit) {
        (Stock::Inch, Unit::Metre | Unit::SquareMetre | Unit::Kilogram) => 1.0,
        (Stock::Inch, Unit::Litre) => 0.25,
        (Stock::Inch, Unit::CubicMetre) if quantity * unit.imperial_factor() > 0.5 => 0.25,
        (Stock::Inch, Unit::CubicMetre) => 0.1,
        _ => return quantity,
    } / unit.imperial_factor();
    // What a plant's or a shop's own step rounds by is no more of it.
    (quantity / step - 1e-3).ceil() * step
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
        line.quantity = as_asked_for(job.brief.stock.value, line.quantity, line.unit);
    }
    lines
}
