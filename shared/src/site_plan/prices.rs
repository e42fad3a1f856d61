//! Prices: what the reader was quoted for lines of the materials, none of it known to the engine.
//!
//! A price is kept with the unit that it was quoted for and is never turned into another: a cubic yard that costs 150
//! still costs 150 when the reader's units change to metres. What the line was called then is kept too, so that a price
//! of one size is not taken for that of another without a word.

pub mod lines;

use std::collections::BTreeMap;

use rust_decimal::prelude::FromPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};

use crate::field::Problem;
use crate::figure::{Unit, Units};
use crate::site_plan::{SitePlan, TITLE_LENGTH, text_problem};

use lines::{LINES, Line};

/// Longest name of a currency, in characters.
pub const CURRENCY_LENGTH: usize = 12;
/// Highest price for one of anything: enough for currencies of which a cubic metre of concrete takes millions.
pub const MOST: f64 = 1e9;
/// Decimals of a price that are kept.
const DECIMALS: u32 = 4;

/// Prices.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Prices {
    /// The currency of all of them, a word or a sign.
    pub currency: Option<String>,
    /// The price of each line, by the line's name.
    pub lines: Option<BTreeMap<String, Price>>,
}

/// What one of a thing costs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Price {
    /// Price of one unit.
    pub price: f64,
    /// The unit that it is for, as the line is ordered: its metric symbol, its imperial one, or `pcs`.
    pub per: String,
    /// What the line was called when it was quoted.
    #[serde(default)]
    pub item: Option<String>,
}

impl Price {
    /// The price as it is reckoned.
    pub fn exact(&self) -> Decimal {
        exact(self.price, DECIMALS)
    }
}

impl Prices {
    /// The price of a line.
    pub fn of(&self, id: &str) -> Option<&Price> {
        self.lines.as_ref()?.get(id)
    }
}

/// The unit of an order in words, as a price names it.
pub fn per(unit: Unit, units: Units) -> &'static str {
    match (unit, units) {
        (Unit::Count, _) => "pcs",
        (unit, Units::Metric) => unit.symbol(),
        (unit, Units::Imperial) => unit.imperial_symbol(),
    }
}

/// In which system a price's unit is one of the line's.
pub fn system(line: &Line, said: &str) -> Option<Units> {
    [Units::Metric, Units::Imperial]
        .into_iter()
        .find(|&units| per(line.unit, units) == said)
}

/// Currencies and prices that are none.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let prices = &plan.prices;
    let currency = prices.currency.as_deref().and_then(currency_problem);
    currency
        .into_iter()
        .chain(
            prices
                .lines
                .iter()
                .flatten()
                .flat_map(|(id, price)| line_problems(id, price)),
        )
        .collect()
}

/// A currency that is no short word or sign; one that begins like a formula would be run by a spreadsheet.
fn currency_problem(text: &str) -> Option<Problem> {
    let count = text.chars().count();
    let fits = |letter: char| {
        letter.is_alphabetic() || is_sign(letter) || matches!(letter, '.' | ' ' | '\u{a0}')
    };
    let begins = text
        .chars()
        .next()
        .is_some_and(|letter| letter.is_alphabetic() || is_sign(letter));
    let said = match count {
        0 => "Write the currency, or leave it out.".to_owned(),
        count if count > CURRENCY_LENGTH => {
            format!(
                "This is {count} characters long; a currency takes 1 to {CURRENCY_LENGTH}, for instance EUR."
            )
        }
        _ if !begins || !text.chars().all(fits) => {
            format!(
                "A currency is 1 to {CURRENCY_LENGTH} letters, or its sign, for instance EUR or kr; no figures and no other marks."
            )
        }
        _ => return text_problem("prices.currency", text, CURRENCY_LENGTH),
    };
    Some(Problem {
        fields: vec!["prices.currency".to_owned()],
        value: None,
        said,
    })
}

/// Whether a letter is a currency's sign (general category Sc of Unicode).
const fn is_sign(letter: char) -> bool {
    matches!(letter, '$' | '¢'..='¥' | '֏' | '؋' | '৲' | '৳' | '৻' | '૱' | '௹' | '฿' | '៛' | '\u{20a0}'..='\u{20c1}' | '﷼' | '﹩' | '＄' | '￠' | '￡' | '￥' | '￦')
}

fn line_problems(id: &str, price: &Price) -> Vec<Problem> {
    let problem = |member: &str, value: Option<f64>, said: String| Problem {
        fields: vec![format!("prices.lines.{id}{member}")],
        value,
        said,
    };
    let Some(line) = lines::line(id) else {
        let id: String = id.chars().take(40).collect();
        let said = format!(
            "No list of materials has a line “{id}”; the names stand in the design's materials, for instance {}.",
            LINES[0].id
        );
        return vec![Problem {
            fields: vec![format!("prices.lines.{id}")],
            value: None,
            said,
        }];
    };
    let mut found = Vec::new();
    found.extend(price_problem(price.price).map(|said| {
        problem(
            ".price",
            Some(price.price).filter(|price| price.is_finite()),
            said,
        )
    }));
    if system(line, &price.per).is_none() {
        let (metric, imperial) = (
            per(line.unit, Units::Metric),
            per(line.unit, Units::Imperial),
        );
        let known = if metric == imperial {
            format!("“{metric}”")
        } else {
            format!("“{metric}” or “{imperial}”")
        };
        found.push(problem(
            ".per",
            None,
            format!("This line is ordered, and priced, by {known}."),
        ));
    }
    if let Some(item) = &price.item {
        found.extend(text_problem(
            &format!("prices.lines.{id}.item"),
            item,
            TITLE_LENGTH,
        ));
    }
    found
}

/// A figure as the decimal number that was meant, to so many decimals.
pub fn exact(figure: f64, decimals: u32) -> Decimal {
    let meant = Decimal::from_f64(figure).unwrap_or_default();
    meant.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
}

/// What is wrong with a figure as a price; none when it is one.
pub fn price_problem(price: f64) -> Option<String> {
    if !(0.0..=MOST).contains(&price) {
        return Some(format!(
            "{} is outside the range of 0 to {}: a thing costs nothing at least, and no unit of a pier's materials costs more.",
            Units::Metric.say(price, Unit::Count),
            Units::Metric.say(MOST, Unit::Count)
        ));
    }
    let meant = Decimal::from_f64(price).unwrap_or_default();
    (meant.normalize().scale() > DECIMALS).then(|| "A price takes up to four decimals.".to_owned())
}

#[cfg(test)]
mod tests;
