//! Amounts are right to the last digit, and a price never means something else than it did.

use std::collections::{BTreeMap, BTreeSet};

use rust_decimal::prelude::ToPrimitive;

use super::*;
use crate::decided::design_plan;
use crate::design::Design;
use crate::halfspace::NoShelf;
use crate::site_plan::SitePlan;
use crate::site_plan::block::{Mix, Reinforcement};
use crate::site_plan::prices::lines::LINES;
use crate::stock::Stock;

fn price(price: f64, per: &str) -> Price {
    Price {
        price,
        per: per.to_owned(),
        item: None,
    }
}

fn priced(prices: &[(&str, f64, &str)], change: impl Fn(&mut SitePlan)) -> Design {
    let mut plan = SitePlan::unknown();
    let lines: BTreeMap<String, Price> = prices
        .iter()
        .map(|(id, value, per)| ((*id).to_owned(), price(*value, per)))
        .collect();
    plan.prices = Prices {
        currency: Some("EUR".into()),
        lines: Some(lines),
    };
    change(&mut plan);
    design_plan(&plan, &NoShelf).unwrap()
}

fn cents(amount: i64) -> Money {
    Money(Decimal::new(amount, 2))
}

#[test]
fn amounts_are_rounded_once_and_half_upwards() {
    let amount = |price, quantity| amount(Decimal::new(price, 4), Decimal::new(quantity, 3));
    assert_eq!(amount(1_455_000, 4_200), cents(61_110));
    assert_eq!(amount(50, 1_000), cents(1), "half a cent");
    assert_eq!(amount(49, 1_000), cents(0));
    assert_eq!(
        amount(1_000, 3_000),
        cents(30),
        "three times ten cents are thirty"
    );
    assert_eq!(serde_json::to_string(&cents(30)).unwrap(), "0.3");
}

#[test]
fn groups_and_whole_are_the_sums_of_their_lines() {
    let design = priced(
        &[
            ("stud", 0.1, "pcs"),
            ("nut", 0.2, "pcs"),
            ("masks", 0.7, "pcs"),
        ],
        |_| {},
    );
    let costs = &design.costs;
    assert_eq!(costs.lines.len(), 3);
    assert_eq!(costs.total, costs.lines.iter().map(|line| line.total).sum());
    assert_eq!(
        costs.total,
        costs.groups.iter().map(|group| group.total).sum()
    );
    assert_eq!(costs.line("stud").unwrap().total, cents(50));
    let asked = design
        .materials
        .iter()
        .filter(|line| line.supply != Supply::Have)
        .count();
    assert_eq!((costs.asked, costs.unpriced.len()), (asked, asked - 3));
    assert!(
        !costs.unpriced.contains(&"torque-wrench"),
        "what one has costs nothing more"
    );
}

#[test]
fn a_price_keeps_the_unit_that_it_was_quoted_for() {
    let quoted = [("concrete-ready", 150.0, "yd³")];
    // The same parts, whatever units they are read in.
    let ready = |plan: &mut SitePlan| {
        plan.block.mix = Some(Mix::Ready);
        plan.stock = Some(Stock::Metric);
    };
    let metric = priced(&quoted, ready);
    let imperial = priced(&quoted, |plan| {
        ready(plan);
        plan.units = Some(Units::Imperial);
    });
    assert_eq!(metric.costs, imperial.costs);
    let line = metric
        .costs
        .line("concrete-ready")
        .unwrap()
        .offer()
        .unwrap()
        .clone();
    let cubic_metres = metric
        .materials
        .iter()
        .find(|line| line.id == "concrete-ready")
        .unwrap()
        .quantity;
    assert_eq!(line.per, "yd³");
    assert!(
        (line.quantity.to_f64().unwrap() - cubic_metres / 0.9144f64.powi(3)).abs() <= 0.0005,
        "{line:?}"
    );
    assert_eq!(
        line.total.0,
        (line.quantity * line.price)
            .round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero)
    );
}

#[test]
fn a_price_for_another_size_is_said_to_be_one() {
    let with = |item: &str, units| {
        let mut plan = SitePlan::unknown();
        plan.units = Some(units);
        plan.stock = Some(Stock::Metric);
        let price = Price {
            item: Some(item.to_owned()),
            ..price(2.0, "pcs")
        };
        plan.prices.lines = Some([("nut".to_owned(), price)].into());
        design_plan(&plan, &NoShelf).unwrap().costs
    };
    let now = priced(&[], |_| {})
        .materials
        .iter()
        .find(|line| line.id == "nut")
        .unwrap()
        .clone();
    assert_eq!(with("Nut M20, 8.8", Units::Metric).outdated(), 1);
    assert_eq!(
        (
            with(&now.item, Units::Metric).outdated(),
            with(&now.item, Units::Imperial).outdated()
        ),
        (0, 0)
    );
    assert_eq!(
        with(&now.other_words, Units::Metric).outdated(),
        0,
        "other units are no other thing"
    );
}

#[test]
fn a_line_without_a_price_counts_the_cheapest_of_its_stock_lengths() {
    let rods = [("stud-rod-1m", 9.0, "pcs"), ("stud-rod-2m", 14.0, "pcs")];
    let design = priced(&rods, |_| {});
    let line = design.costs.line("stud").unwrap().clone();
    assert_eq!(
        line.total,
        line.offers.iter().map(|offer| offer.total).min().unwrap()
    );
    let own = priced(&[rods[0], rods[1], ("stud", 40.0, "pcs")], |_| {});
    assert_eq!(own.costs.line("stud").unwrap().counted, "stud");
    assert_eq!(own.costs.line("stud").unwrap().offers.len(), 3);
}

#[test]
fn a_price_whose_line_went_is_kept_and_not_counted() {
    let plain = |plan: &mut SitePlan| plan.block.reinforcement = Some(Reinforcement::Plain);
    let design = priced(
        &[("rebar", 8.0, "pcs"), ("stud-rod-3ft", 5.0, "pcs")],
        plain,
    );
    assert_eq!(design.costs.not_counted, ["rebar", "stud-rod-3ft"]);
    assert_eq!(
        (design.costs.total, design.costs.is_empty()),
        (cents(0), true)
    );
}

#[test]
fn every_line_may_have_a_price_and_the_dearest_order_is_still_a_sum() {
    let all: Vec<(&str, f64, &str)> = LINES
        .iter()
        .map(|line| (line.id, 1e9, per(line.unit, Units::Metric)))
        .collect();
    let design = priced(&all, |_| {});
    assert!(design.costs.unpriced.is_empty() && design.costs.total > cents(0));
    let names: BTreeSet<&str> = LINES.iter().map(|line| line.id).collect();
    assert_eq!(names.len(), LINES.len());
}
