//! Prices and amounts in words: always with their currency, where one was said, and with the unit that was quoted.

use stillground::design::Design;
use stillground::figure::{Decimal, Units, money as price, ordered};
use stillground::site_plan::prices::{self, lines};
use stillground::stages::costs::{Costs, Money, Offer, reckoned};
use stillground::stages::materials::{Material, StockLength};

/// An amount with its currency.
#[must_use]
pub fn amount(costs: &Costs, money: Money) -> String {
    match &costs.currency {
        Some(currency) => format!("{money}\u{a0}{currency}"),
        None => money.to_string(),
    }
}

/// A price with its currency and the unit it was quoted for.
#[must_use]
pub fn per_unit(costs: &Costs, offer: &Offer) -> String {
    let currency = costs
        .currency
        .as_ref()
        .map(|currency| format!("\u{a0}{currency}"))
        .unwrap_or_default();
    let each = if offer.per == "pcs" {
        "each".to_owned()
    } else {
        format!("per\u{a0}{}", unit(offer.per))
    };
    format!("{}{currency} {each}", price(offer.price))
}

/// How much of a line is ordered: to the last digit where the amount is one, and as the price counts it where it has one.
#[must_use]
pub fn quantity(costs: &Costs, line: &Material, units: Units) -> String {
    let per = prices::per(line.unit, units);
    let own = costs.line(line.id).and_then(|cost| {
        cost.offers
            .iter()
            .find(|offer| offer.id == line.id && offer.per == per)
    });
    match own {
        Some(offer) => counted(offer),
        None if units == Units::Metric => with_unit(reckoned(line.quantity), per),
        None => units.say(line.quantity, line.unit),
    }
}

/// How much an offer counts.
#[must_use]
pub fn counted(offer: &Offer) -> String {
    with_unit(offer.quantity, offer.per)
}

fn with_unit(quantity: Decimal, per: &str) -> String {
    match per {
        "pcs" => ordered(quantity),
        per => format!("{}\u{a0}{}", ordered(quantity), unit(per)),
    }
}

fn unit(per: &str) -> String {
    per.replace(' ', "\u{a0}")
}

/// Most lines without a price that are named in a sentence; more of them stand where the list does.
pub const MOST_NAMES: usize = 12;

/// The lines without a price, in words.
#[must_use]
pub fn unpriced(costs: &Costs) -> Vec<&'static str> {
    costs
        .unpriced
        .iter()
        .map(|id| lines::line(id).map_or(*id, |line| line.what))
        .collect()
}

/// The whole lengths in which a line can be had, each with what is left over and, where it has a price, what it comes to.
#[must_use]
pub fn lengths(costs: &Costs, line: &Material) -> Vec<String> {
    let cost = costs.line(line.id);
    let said = |stock: &StockLength| {
        let offer = cost.and_then(|cost| cost.offers.iter().find(|offer| offer.id == stock.id));
        let counted = if cost.is_some_and(|cost| cost.counted == stock.id) {
            ", which is counted"
        } else {
            ""
        };
        match offer {
            Some(offer) => format!(
                "{}; {}, {}{counted}",
                stock.says,
                per_unit(costs, offer),
                amount(costs, offer.total)
            ),
            None => stock.says.clone(),
        }
    };
    line.stock.iter().map(said).collect()
}

/// The same as one sentence; empty where there are none.
#[must_use]
pub fn lengths_sentence(costs: &Costs, line: &Material) -> String {
    let said = lengths(costs, line);
    if said.is_empty() {
        String::new()
    } else {
        format!("In whole lengths: {}.", said.join(" · "))
    }
}

/// What the total is: of everything, or of what has a price so far.
#[must_use]
pub const fn whole(costs: &Costs) -> &'static str {
    if costs.unpriced.is_empty() {
        "In all"
    } else {
        "So far"
    }
}

/// What has to be said beside the total, each a sentence of its own.
#[must_use]
pub fn remarks(design: &Design) -> Vec<String> {
    let costs = &design.costs;
    let mut said = Vec::new();
    if !costs.is_empty() && !costs.unpriced.is_empty() {
        let names = if costs.unpriced.len() <= MOST_NAMES {
            format!(": {}", unpriced(costs).join(", "))
        } else {
            String::new()
        };
        let have = if costs.unpriced.len() == 1 {
            "has"
        } else {
            "have"
        };
        said.push(format!(
            "{} of {} lines to buy or hire {have} no price, so this is the total so far{names}.",
            costs.unpriced.len(),
            costs.asked,
        ));
    }
    if costs.outdated() > 0 {
        said.push(format!(
            "{} of the prices {} quoted for something other than the line is now; look again where it says so.",
            costs.outdated(),
            if costs.outdated() == 1 { "was" } else { "were" }
        ));
    }
    if !costs.not_counted.is_empty() {
        let names: Vec<String> = costs
            .not_counted
            .iter()
            .filter_map(|id| Some(lines::line(id)?.what.to_owned()))
            .collect();
        said.push(format!(
            "Kept and not counted, since the plan asks for no such line now: {}.",
            names.join(", ")
        ));
    }
    said
}
