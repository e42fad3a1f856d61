//! Costs: what the materials come to at the prices that the reader was quoted.
//!
//! Amounts are decimal from end to end: prices to a ten-thousandth, quantities to a thousandth, totals to a hundredth, each
//! line rounded once, half upwards. What is shown can be multiplied and added again by hand to the last digit.

#[cfg(test)]
mod tests;

use rust_decimal::{Decimal, RoundingStrategy, serde::float};
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Units, money};
use crate::site_plan::prices::{Price, Prices, exact, lines, per, system};
use crate::stages::materials::{Group, Material, Supply};

/// Decimals of a quantity.
const QUANTITY_DECIMALS: u32 = 3;
/// Decimals of an amount.
const AMOUNT_DECIMALS: u32 = 2;

/// An amount of money, to a hundredth of the currency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize)]
pub struct Money(#[serde(with = "float")] pub Decimal);

impl std::fmt::Display for Money {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&money(self.0))
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        Self(amounts.map(|amount| amount.0).sum())
    }
}

/// What the materials come to.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Costs {
    /// The currency; none was said.
    pub currency: Option<String>,
    /// The lines that have a price, in the order of the materials.
    pub lines: Vec<LineCost>,
    /// The parts of the work, those without a priced line left out.
    pub groups: Vec<GroupCost>,
    /// All lines that have a price.
    pub total: Money,
    /// Lines that are bought or hired, or have a price.
    pub asked: usize,
    /// Of these, the names of those that have no price: the total is without them.
    pub unpriced: Vec<&'static str>,
    /// Prices that are kept and not counted, since this plan has no such line.
    pub not_counted: Vec<&'static str>,
}

/// What a line comes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineCost {
    /// The line.
    pub id: &'static str,
    /// Whose price is counted: the line's own, or that of a stock length where the line has none.
    pub counted: &'static str,
    /// What it comes to.
    pub total: Money,
    /// The line's own price, and those of the stock lengths.
    pub offers: Vec<Offer>,
}

/// A price times what is needed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Offer {
    /// The line, or the stock length.
    pub id: &'static str,
    /// Price of one.
    #[serde(with = "float")]
    pub price: Decimal,
    /// Unit that it was quoted for.
    pub per: &'static str,
    /// How much, in that unit, to a thousandth.
    #[serde(with = "float")]
    pub quantity: Decimal,
    /// What it comes to.
    pub total: Money,
    /// What the line was called when it was quoted, where that was something else.
    pub quoted_for: Option<String>,
}

/// What a part of the work comes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GroupCost {
    /// The part.
    pub group: Group,
    /// Its lines that have a price.
    pub total: Money,
    /// Its lines that are bought or hired and have none.
    pub unpriced: usize,
}

impl LineCost {
    /// The price that is counted.
    pub fn offer(&self) -> Option<&Offer> {
        self.offers.iter().find(|offer| offer.id == self.counted)
    }
}

impl Costs {
    /// What a line comes to; none without a price.
    pub fn line(&self, id: &str) -> Option<&LineCost> {
        self.lines.iter().find(|line| line.id == id)
    }

    /// Whether no line of the plan has a price.
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }

    /// How many prices were quoted for something that the line was then and is not now.
    pub fn outdated(&self) -> usize {
        self.lines
            .iter()
            .filter_map(LineCost::offer)
            .filter(|offer| offer.quoted_for.is_some())
            .count()
    }
}

/// A quantity as it is reckoned, to a thousandth of its unit.
pub fn reckoned(quantity: f64) -> Decimal {
    exact(quantity, QUANTITY_DECIMALS)
}

/// What an amount of something comes to at a price, rounded once, half upwards.
pub fn amount(price: Decimal, quantity: Decimal) -> Money {
    let whole = price.saturating_mul(quantity);
    Money(whole.round_dp_with_strategy(AMOUNT_DECIMALS, RoundingStrategy::MidpointAwayFromZero))
}

/// Reckons what the materials come to.
pub fn stage(brief: &Brief, materials: &[Material]) -> Costs {
    let prices = &brief.prices;
    let lines: Vec<LineCost> = materials
        .iter()
        .filter_map(|line| cost(prices, line))
        .collect();
    let priced = |line: &Material| lines.iter().any(|cost| cost.id == line.id);
    let missing = |line: &&Material| line.supply != Supply::Have && !priced(line);
    let unpriced: Vec<&'static str> = materials
        .iter()
        .filter(missing)
        .map(|line| line.id)
        .collect();
    Costs {
        currency: prices.currency.clone(),
        groups: groups(materials, &lines, &unpriced),
        total: lines.iter().map(|line| line.total).sum(),
        asked: lines.len() + unpriced.len(),
        not_counted: not_counted(prices, materials),
        lines,
        unpriced,
    }
}

/// The line's own price counts; without one the cheapest of the stock lengths that have a price.
fn cost(prices: &Prices, line: &Material) -> Option<LineCost> {
    let own = prices
        .of(line.id)
        .and_then(|price| offer(line.id, price, line, None));
    let has_own = own.is_some();
    let stock = line.stock.iter().filter_map(|stock| {
        offer(
            stock.id,
            prices.of(stock.id)?,
            line,
            Some(f64::from(stock.pieces)),
        )
    });
    let offers: Vec<Offer> = own.into_iter().chain(stock).collect();
    let counted = if has_own {
        offers.first()
    } else {
        offers.iter().min_by_key(|offer| offer.total)
    }?;
    Some(LineCost {
        id: line.id,
        counted: counted.id,
        total: counted.total,
        offers,
    })
}

/// A price times what is needed in the unit that it was quoted for.
fn offer(id: &'static str, price: &Price, line: &Material, pieces: Option<f64>) -> Option<Offer> {
    let known = lines::line(id)?;
    let units: Units = system(known, &price.per)?;
    let quantity = pieces.unwrap_or_else(|| units.convert(line.quantity, known.unit).0);
    let least = Decimal::new(1, QUANTITY_DECIMALS);
    let (price_of_one, quantity) = (price.exact(), reckoned(quantity).max(least));
    let was = |item: &&String| **item != line.item && **item != line.other_words;
    Some(Offer {
        id,
        price: price_of_one,
        per: per(known.unit, units),
        quantity,
        total: amount(price_of_one, quantity),
        quoted_for: price.item.as_ref().filter(was).cloned(),
    })
}

fn groups(materials: &[Material], costs: &[LineCost], unpriced: &[&str]) -> Vec<GroupCost> {
    let mut groups: Vec<GroupCost> = Vec::new();
    for line in materials {
        let Some(cost) = costs.iter().find(|cost| cost.id == line.id) else {
            continue;
        };
        match groups.iter_mut().find(|known| known.group == line.group) {
            Some(known) => known.total.0 += cost.total.0,
            None => groups.push(GroupCost {
                group: line.group,
                total: cost.total,
                unpriced: 0,
            }),
        }
    }
    for group in &mut groups {
        group.unpriced = materials
            .iter()
            .filter(|line| line.group == group.group && unpriced.contains(&line.id))
            .count();
    }
    groups
}

/// Prices of lines that this plan has not, or not in these units.
fn not_counted(prices: &Prices, materials: &[Material]) -> Vec<&'static str> {
    let has = |id: &str| {
        materials
            .iter()
            .any(|line| line.id == id || line.stock.iter().any(|stock| stock.id == id))
    };
    prices
        .lines
        .iter()
        .flatten()
        .filter(|(id, _)| !has(id))
        .filter_map(|(id, _)| Some(lines::line(id)?.id))
        .collect()
}
